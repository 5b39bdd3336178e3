/** What is said about allergens. */
export const ALLERGEN_LIST = {
  title: 'Allergene',
  euList: 'EU 1169/2011, Anhang II',
  usList: 'USA: FALCPA 2004, FASTER Act 2021',
  none: 'keine angegeben',
  onTheFloor: 'was unterwegs dazukam',
  broughtBy: 'Kommt hinein mit',
  source: (ingredient: string, through: readonly string[]): string =>
    through.length === 0 ? ingredient : `${ingredient}, über ${through.join(' › ')}`,
  also: (product: string): string => `${product} außerdem`,
  mayContain: 'Kann enthalten, sagt der Betrieb',
  missing: 'Nicht bekannt von',
  takesBack: 'Nimmt Teig oder Brot zurück: Was darin ist, kommt mit.',
  caution:
    'Wie bei den Zutaten im Buch angegeben: Packungen lesen. Örtliche Vorschriften und eigene fachkundige Beratung gehen vor; jedes Land hat seine Liste.',
} as const;

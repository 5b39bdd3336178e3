/** What is said about allergens. */
export const ALLERGEN_LIST = {
  title: 'Allergènes',
  euList: 'UE 1169/2011, annexe II',
  usList: 'États-Unis\u00a0: FALCPA 2004, FASTER Act 2021',
  none: 'aucun déclaré',
  onTheFloor: 'ce qui a été ajouté en route',
  broughtBy: 'Apporté par',
  source: (ingredient: string, through: readonly string[]): string =>
    through.length === 0 ? ingredient : `${ingredient}, par ${through.join(' › ')}`,
  also: (product: string): string => `${product}, en plus`,
  mayContain: 'Peut contenir, dit le fournil',
  missing: 'Inconnu pour',
  takesBack: 'Reprend de la pâte ou du pain\u00a0: ce qu’ils contiennent vient avec.',
  caution:
    'Selon les ingrédients du livre\u00a0: lire les emballages. Les règles locales et votre propre conseil agréé priment\u202f; chaque pays a sa liste.',
} as const;

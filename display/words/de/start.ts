/** What the start page says. */
export const START = {
  lead: 'Jeder Teig im Haus, auf einer Wand und auf jedem Handy.',
  pages: 'Seiten',
  address: 'Adresse dieser Backstube:',
} as const;

/** The pages by their addresses, in the order in which they are offered: name and whom it is for. */
export function startLinks(): readonly { readonly href: string; readonly name: string; readonly more: string }[] {
  return [
    { href: '/wall', name: 'Wand', more: 'für den Bildschirm, den alle sehen' },
    { href: '/wall/setup', name: 'Wand einrichten', more: 'Größe, Abstand, Sprache und Aussehen dieses Bildschirms' },
    { href: '/phone', name: 'Handy', more: 'für die Hand, wo immer sie ist' },
    { href: '/station', name: 'Posten', more: 'für ein festes Gerät an Kneter, Tisch oder Ofen' },
    { href: '/day', name: 'Der Tag', more: 'Bestellungen, der Plan dazu, das Tagesblatt' },
    { href: '/weigh', name: 'Abwiegen', more: 'was in den Kessel kommt, Zeile für Zeile, und das Wasser' },
    { href: '/formulas', name: 'Rezeptbuch', more: 'Rezepte, Arbeitsschritte, Produkte und Chargengrößen' },
    { href: '/kitchen', name: 'Backstube', more: 'Kneter, Plätze, Behälter und Öfen, dazu die Einstellungen des Betriebs' },
    { href: '/records', name: 'Aufzeichnungen', more: 'was geschah, Teig für Teig: suchen, zurückverfolgen, drucken' },
    { href: '/devices', name: 'Geräte', more: 'wer eingelassen ist, und wer dazukommt' },
  ];
}

/** What the start page says. */
export const START = {
  lead: 'Chaque pâte de la maison, sur un écran mural et sur chaque téléphone.',
  pages: 'Pages',
  address: 'Adresse de ce fournil\u00a0:',
} as const;

/** The pages by their addresses, in the order in which they are offered: name and whom it is for. */
export function startLinks(): readonly { readonly href: string; readonly name: string; readonly more: string }[] {
  return [
    { href: '/wall', name: 'Écran mural', more: 'pour l’écran que tout le monde voit' },
    { href: '/wall/setup', name: 'Régler l’écran mural', more: 'taille, distance, langue et aspect de cet écran' },
    { href: '/phone', name: 'Téléphone', more: 'pour la main, où qu’elle soit' },
    { href: '/station', name: 'Poste', more: 'pour un écran fixé près du pétrin, du tour ou du four' },
    { href: '/day', name: 'La journée', more: 'commandes, le plan qui leur va, la feuille du jour' },
    { href: '/weigh', name: 'Pesée', more: 'ce qui va dans la cuve, ligne par ligne, et l’eau' },
    { href: '/formulas', name: 'Livre de recettes', more: 'recettes, méthodes, produits et tailles de pétrissée' },
    { href: '/kitchen', name: 'Fournil', more: 'pétrins, lieux de repos, contenants et fours, et les réglages de la maison' },
    { href: '/records', name: 'Registre', more: 'ce qui s’est passé, pétrissée par pétrissée : chercher, tracer, imprimer' },
    { href: '/devices', name: 'Appareils', more: 'qui est admis, et qui l’est ensuite' },
  ];
}

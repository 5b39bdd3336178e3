/** What is said about allergens. */
export const ALLERGEN_LIST = {
  title: 'Allergens',
  euList: 'EU 1169/2011, Annex II',
  usList: 'US: FALCPA 2004, FASTER Act 2021',
  none: 'none declared',
  onTheFloor: 'what was put in on the floor',
  broughtBy: 'Brought in by',
  source: (ingredient: string, through: readonly string[]): string =>
    through.length === 0 ? ingredient : `${ingredient}, through ${through.join(' › ')}`,
  also: (product: string): string => `${product} also`,
  mayContain: 'May contain, says the kitchen',
  missing: 'Not known of',
  takesBack: 'Takes dough or bread back: what that contains comes with it.',
  caution:
    'As the book’s ingredients declare it: read the packs. Local codes and your own licensed advice come first; lists differ by country.',
} as const;

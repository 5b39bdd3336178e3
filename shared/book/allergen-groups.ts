import { allergenSchema, type Allergen } from '../documents/allergen.ts';

/** The fourteen groups of EU 1169/2011, Annex II, in its order. */
export const EU_GROUPS = [
  'gluten',
  'crustaceans',
  'egg',
  'fish',
  'peanut',
  'soybean',
  'milk',
  'nuts',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
] as const;
export type EuGroup = (typeof EU_GROUPS)[number];

/** The nine of the United States: FALCPA 2004 with the FASTER Act of 2021, in the order in which the laws have them. */
export const US_GROUPS = ['milk', 'egg', 'fish', 'crustaceans', 'treeNuts', 'wheat', 'peanut', 'soybean', 'sesame'] as const;
export type UsGroup = (typeof US_GROUPS)[number];

/** The group of Annex II to which an allergen belongs. */
export function euGroupOf(allergen: Allergen): EuGroup {
  switch (allergen) {
    case 'wheat':
    case 'rye':
    case 'barley':
    case 'oats':
      return 'gluten';
    case 'almond':
    case 'hazelnut':
    case 'walnut':
    case 'cashew':
    case 'pecan':
    case 'brazil-nut':
    case 'pistachio':
    case 'macadamia':
      return 'nuts';
    default:
      return allergen;
  }
}

/**
 * The group of the American nine to which an allergen belongs; null for what they have not. Wheat is one of them, gluten is
 * not: rye, barley and oats are on no American list.
 */
export function usGroupOf(allergen: Allergen): UsGroup | null {
  const group = euGroupOf(allergen);
  switch (group) {
    case 'gluten':
      return allergen === 'wheat' ? 'wheat' : null;
    case 'nuts':
      return 'treeNuts';
    case 'celery':
    case 'mustard':
    case 'sulphites':
    case 'lupin':
    case 'molluscs':
      return null;
    default:
      return group;
  }
}

/** Allergens in the order of the schema, each once. */
export function inOrder(allergens: readonly Allergen[]): readonly Allergen[] {
  return allergenSchema.options.filter((allergen) => allergens.includes(allergen));
}

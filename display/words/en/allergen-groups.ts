import type { EuGroup, UsGroup } from '../../../shared/book/allergen-groups.ts';

/** The fourteen groups by the words of EU 1169/2011, Annex II, shortened. */
export const EU_GROUP_NAMES: Readonly<Record<EuGroup, string>> = {
  gluten: 'cereals containing gluten',
  crustaceans: 'crustaceans',
  egg: 'eggs',
  fish: 'fish',
  peanut: 'peanuts',
  soybean: 'soybeans',
  milk: 'milk',
  nuts: 'nuts',
  celery: 'celery',
  mustard: 'mustard',
  sesame: 'sesame seeds',
  sulphites: 'sulphur dioxide and sulphites',
  lupin: 'lupin',
  molluscs: 'molluscs',
};

/** The American nine by the words of the laws. */
export const US_GROUP_NAMES: Readonly<Record<UsGroup, string>> = {
  milk: 'milk',
  egg: 'egg',
  fish: 'fish',
  crustaceans: 'crustacean shellfish',
  treeNuts: 'tree nuts',
  wheat: 'wheat',
  peanut: 'peanuts',
  soybean: 'soybeans',
  sesame: 'sesame',
};

import type { EuGroup, UsGroup } from '../../../shared/book/allergen-groups.ts';

/** The fourteen groups by the French words of EU 1169/2011, Annex II, shortened (from memory). */
export const EU_GROUP_NAMES: Readonly<Record<EuGroup, string>> = {
  gluten: 'céréales contenant du gluten',
  crustaceans: 'crustacés',
  egg: 'œufs',
  fish: 'poissons',
  peanut: 'arachides',
  soybean: 'soja',
  milk: 'lait',
  nuts: 'fruits à coque',
  celery: 'céleri',
  mustard: 'moutarde',
  sesame: 'graines de sésame',
  sulphites: 'anhydride sulfureux et sulfites',
  lupin: 'lupin',
  molluscs: 'mollusques',
};

/** The American nine in French (our own words: the laws are English). */
export const US_GROUP_NAMES: Readonly<Record<UsGroup, string>> = {
  milk: 'lait',
  egg: 'œuf',
  fish: 'poisson',
  crustaceans: 'crustacés',
  treeNuts: 'fruits à coque',
  wheat: 'blé',
  peanut: 'arachides',
  soybean: 'soja',
  sesame: 'sésame',
};

import type { EuGroup, UsGroup } from '../../../shared/book/allergen-groups.ts';

/** The fourteen groups by the German words of EU 1169/2011, Annex II, shortened (from memory). */
export const EU_GROUP_NAMES: Readonly<Record<EuGroup, string>> = {
  gluten: 'glutenhaltiges Getreide',
  crustaceans: 'Krebstiere',
  egg: 'Eier',
  fish: 'Fische',
  peanut: 'Erdnüsse',
  soybean: 'Sojabohnen',
  milk: 'Milch',
  nuts: 'Schalenfrüchte',
  celery: 'Sellerie',
  mustard: 'Senf',
  sesame: 'Sesamsamen',
  sulphites: 'Schwefeldioxid und Sulphite',
  lupin: 'Lupinen',
  molluscs: 'Weichtiere',
};

/** The American nine in German (our own words: the laws are English). */
export const US_GROUP_NAMES: Readonly<Record<UsGroup, string>> = {
  milk: 'Milch',
  egg: 'Ei',
  fish: 'Fisch',
  crustaceans: 'Krebstiere',
  treeNuts: 'Baumnüsse',
  wheat: 'Weizen',
  peanut: 'Erdnüsse',
  soybean: 'Sojabohnen',
  sesame: 'Sesam',
};

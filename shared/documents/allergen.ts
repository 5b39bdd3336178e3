import { z } from 'zod';

/** EU 1169/2011 Annex II, the named cereals and nuts kept apart; as printed on the ingredient, never worked out by us. */
export const allergenSchema = z.enum([
  'wheat',
  'rye',
  'barley',
  'oats',
  'crustaceans',
  'egg',
  'fish',
  'peanut',
  'soybean',
  'milk',
  'almond',
  'hazelnut',
  'walnut',
  'cashew',
  'pecan',
  'brazil-nut',
  'pistachio',
  'macadamia',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
]);

export type Allergen = z.infer<typeof allergenSchema>;

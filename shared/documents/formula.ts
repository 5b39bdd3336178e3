import { z } from 'zod';
import { gramsSchema, keySchema, nameSchema, piecesSchema, remarkSchema, tagLettersSchema } from './names.ts';
import { stepSchema } from './method.ts';

/** Kinds of ingredient, by what they count towards in the totals. */
export const ingredientKindSchema = z.enum(['flour', 'water', 'salt', 'yeast', 'fat', 'sugar', 'egg', 'dairy', 'seed', 'other']);

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

export const ingredientSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  kind: ingredientKindSchema,
  /** Water in it, where it counts towards hydration (egg, milk). */
  waterPct: z.number().min(0).max(100).optional(),
  allergens: z.array(allergenSchema).default([]),
});

/** A line of a part: an ingredient's weight, or the weight taken of an earlier part. */
export const partItemSchema = z.union(
  [z.strictObject({ item: keySchema, g: gramsSchema }), z.strictObject({ part: nameSchema, g: gramsSchema })],
  'a line is { "item": ingredient, "g": grams } or { "part": name of an earlier part, "g": grams }',
);

/** Poolish, levain, soaker, and last the dough itself. */
export const partSchema = z.strictObject({
  name: nameSchema,
  role: z.enum(['preferment', 'soaker', 'dough']).default('preferment'),
  items: z.array(partItemSchema).min(1).max(60),
});

/** Ingredients with their method. Every save is a new version; a running batch keeps the one it began with. */
export const formulaSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  letters: tagLettersSchema,
  kind: z.enum(['dough', 'prep', 'ferment']).default('dough'),
  parts: z.array(partSchema).min(1).max(20),
  doughC: z.number().min(-5).max(45).optional(),
  method: z.array(stepSchema).min(1).max(40),
});

/** What a cut becomes: its piece weight and its own way from the dividing on. */
export const productSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  formula: keySchema,
  /** Dough in one piece, in grams. */
  pieceG: gramsSchema.refine((g) => g > 0, 'a piece weighs more than nothing'),
  /** Share of the dough's weight lost in the oven, per cent. */
  bakeLossPct: z.number().min(0).max(60).default(0),
  /** Pieces that one slot takes. */
  piecesPerSlot: piecesSchema.optional(),
  caution: remarkSchema.optional(),
  way: z.array(stepSchema).min(1).max(40),
});

export type Ingredient = z.infer<typeof ingredientSchema>;
export type Formula = z.infer<typeof formulaSchema>;
export type Product = z.infer<typeof productSchema>;

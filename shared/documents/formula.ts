import { z } from 'zod';
import { allergenSchema } from './allergen.ts';
import { keepingSchema } from './keeping.ts';
import { gramsSchema, keySchema, minutesSchema, nameSchema, piecesSchema, remarkSchema, tagLettersSchema } from './names.ts';
import { sidePrepSchema, stepSchema } from './method.ts';

/** Kinds of ingredient, by what they count towards in the totals. */
export const ingredientKindSchema = z.enum(['flour', 'water', 'salt', 'yeast', 'fat', 'sugar', 'egg', 'dairy', 'seed', 'other']);

/** How yeast is bought. Doughs written with one form are weighed with another by their customary ratios. */
export const yeastFormSchema = z.enum(['fresh', 'dry', 'instant']);
export type YeastForm = z.infer<typeof yeastFormSchema>;

export const ingredientSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  kind: ingredientKindSchema,
  /** Water in it, where it counts towards hydration (egg, milk). */
  waterPct: z.number().min(0).max(100).optional(),
  allergens: z.array(allergenSchema).default([]),
  /** For yeast: missing where nobody said. */
  yeastForm: yeastFormSchema.optional(),
});

/**
 * A line of a part: an ingredient's weight, the weight taken of an earlier part, of what another formula makes, or, in a
 * living ferment, of what was kept back of the pot itself.
 */
export const partItemSchema = z.union(
  [
    z.strictObject({ item: keySchema, g: gramsSchema }),
    z.strictObject({ part: nameSchema, g: gramsSchema }),
    z.strictObject({ formula: keySchema, g: gramsSchema }),
    z.strictObject({ seed: z.literal(true), g: gramsSchema }),
  ],
  'a line is { "item": ingredient, "g": grams }, { "part": name of an earlier part, "g": grams }, { "formula": another formula, "g": grams } or { "seed": true, "g": grams }',
);

/** Poolish, levain, soaker, and last the dough itself. */
export const partSchema = z.strictObject({
  name: nameSchema,
  role: z.enum(['preferment', 'soaker', 'dough']).default('preferment'),
  items: z.array(partItemSchema).min(1).max(60),
});

/** What a dough takes back of earlier dough or bread. */
export const putBackKindSchema = z.enum(['scrap', 'trim', 'oldDough', 'oldBread']);
export type PutBackKind = z.infer<typeof putBackKindSchema>;
export const takesBackSchema = z.strictObject({
  what: putBackKindSchema,
  /** At most so much, per cent of the flour of the dough. */
  capPct: z.number().min(0).max(100),
  /** Not older than this. */
  ageMin: minutesSchema,
});

/** Ingredients with their method. Every save is a new version; a running batch keeps the one it began with. */
export const formulaSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  letters: tagLettersSchema,
  kind: z.enum(['dough', 'prep', 'ferment']).default('dough'),
  parts: z.array(partSchema).min(1).max(20),
  doughC: z.number().min(-5).max(45).optional(),
  /** For a living ferment: so much stays in the pot to be fed again. Missing where it is made anew each time. */
  seedG: gramsSchema.optional(),
  /** Left on the bench, the scraper and in the bowl between mixing and pieces, per cent of the dough. */
  handlingLossPct: z.number().min(0).max(30).optional(),
  /** By how much its bulk warms itself in an hour at room temperature, in kelvin; missing: not at all. */
  selfHeatKPerH: z.number().min(0).max(3).optional(),
  takesBack: z.array(takesBackSchema).max(4).default([]),
  /** For a prep that has to be kept cold or hot; missing: it does not. */
  keeping: keepingSchema.optional(),
  sidePreps: z.array(sidePrepSchema).max(20).default([]),
  method: z.array(stepSchema).min(1).max(40),
  note: remarkSchema.optional(),
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
  /** Where a deck takes more or fewer of them in a slot. */
  deckRoom: z
    .array(z.strictObject({ deck: keySchema, piecesPerSlot: piecesSchema }))
    .max(40)
    .optional(),
  /** Slots where it bakes best, best first: the hot back, the side. */
  prefersSlots: z.array(keySchema).max(40).optional(),
  /** How long it keeps once it is ready, so that it may be made early; missing: until it is wanted, within its day. */
  keepsMin: minutesSchema.optional(),
  /** Shaped, proved and baked in loads of so many pieces, apart from each other after this step. */
  loads: z.strictObject({ after: keySchema, pieces: piecesSchema }).optional(),
  sidePreps: z.array(sidePrepSchema).max(20).default([]),
  /** It has to be kept cold or hot, once it is filled or baked; missing: only what goes into it says so, until it is baked. */
  keeping: keepingSchema.optional(),
  caution: remarkSchema.optional(),
  way: z.array(stepSchema).min(1).max(40),
});

export type Ingredient = z.infer<typeof ingredientSchema>;
export type Part = z.infer<typeof partSchema>;
export type PartItem = z.infer<typeof partItemSchema>;
export type Formula = z.infer<typeof formulaSchema>;
export type Product = z.infer<typeof productSchema>;

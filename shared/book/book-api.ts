import { z } from 'zod';
import { formulaSchema, ingredientSchema, productSchema } from '../documents/formula.ts';
import { keySchema, nameSchema } from '../documents/names.ts';

const version = z.number().int().min(1);
const keptSchema = z.strictObject({ version, atMs: z.number().int().nullable() });

/** A formula as the book lists it: what a search looks at, and no more. */
export const bookEntrySchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  letters: z.string(),
  kind: formulaSchema.shape.kind,
  version,
  isArchived: z.boolean(),
  /** When this version was kept; null in older journals. */
  atMs: z.number().int().nullable(),
  /** All water ÷ all flour ×100; null where there is no flour. */
  hydrationPct: z.number().nullable(),
  /** Of its own lines, not of what it takes from other formulas. */
  ingredientIds: z.array(keySchema),
  products: z.array(z.strictObject({ id: keySchema, name: nameSchema, version })),
});
export type BookEntry = z.infer<typeof bookEntrySchema>;

/** The whole book without its formulas' insides: answer of `GET /api/book`. */
export const bookIndexSchema = z.strictObject({
  entries: z.array(bookEntrySchema),
  ingredients: z.array(ingredientSchema),
  ingredientsVersion: z.number().int().min(0),
});
export type BookIndex = z.infer<typeof bookIndexSchema>;

/** One formula with what belongs to it: answer of `GET /api/book/formulas/:id?version=N`. */
export const bookFormulaSchema = z.strictObject({
  formula: formulaSchema,
  version,
  /** The newest version; another than `version` where an older one was asked for. */
  newestVersion: version,
  isArchived: z.boolean(),
  /** Oldest first. */
  history: z.array(keptSchema),
  /** Every formula that it takes from, at any depth, in the version in force. */
  needs: z.array(formulaSchema),
  products: z.array(z.strictObject({ product: productSchema, version })),
});
export type BookFormula = z.infer<typeof bookFormulaSchema>;

/** Version of the book file that this program writes and reads. */
export const BOOK_FORMAT = 1;

/** The whole book as one JSON file: export and import. */
export const bookFileSchema = z.strictObject({
  format: z.literal(BOOK_FORMAT, `this program reads format ${BOOK_FORMAT}`),
  ingredients: z.array(ingredientSchema).max(5000),
  formulas: z.array(formulaSchema).max(5000),
  products: z.array(productSchema).max(5000).default([]),
  /** Ids of formulas that are out of the way. */
  archived: z.array(keySchema).max(5000).default([]),
});
export type BookFile = z.infer<typeof bookFileSchema>;

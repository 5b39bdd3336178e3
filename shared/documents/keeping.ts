import { z } from 'zod';
import { keySchema } from './names.ts';

/** Why food has to be kept out of warmth: egg in it, milk, cream or cheese, cooked vegetables or meat, or a filling of any other kind. */
export const keepingKindSchema = z.enum(['egg', 'dairy', 'cooked', 'filled']);
export type KeepingKind = z.infer<typeof keepingKindSchema>;

/**
 * Food that has to be kept cold or hot, by the rule set that the house has chosen. Its time counts from the beginning of a step on:
 * the one that is named; else, for a prep, its first, and for a product the first that takes something that is kept itself.
 */
export const keepingSchema = z.strictObject({ kind: keepingKindSchema, from: keySchema.optional() });
export type Keeping = z.infer<typeof keepingSchema>;

import { z } from 'zod';
import { keySchema, serviceDateSchema } from '../documents/names.ts';
import { idSchema } from '../ids.ts';

/** Rows of one answer; more are asked for from where the last ended. */
export const ROWS_AT_ONCE = 60;

const periodShape = { from: serviceDateSchema.optional(), to: serviceDateSchema.optional() };
const textSchema = z.string().trim().min(1).max(80);

/** What can be asked of the records, by name, and what each question takes: as the query of `GET /api/records/NAME`. */
export const QUESTIONS = {
  /** Names of what is in the books now, for lists to choose from. */
  names: z.strictObject({}),
  /** Batches, preps and pots that fit everything that is said, the newest first; `before` is where the last answer ended. */
  batches: z.strictObject({
    ...periodShape,
    formula: keySchema.optional(),
    product: keySchema.optional(),
    lot: textSchema.optional(),
    place: keySchema.optional(),
    device: idSchema.optional(),
    reason: textSchema.optional(),
    tag: textSchema.optional(),
    before: textSchema.optional(),
  }),
  /** Everything that is known of one batch, whichever part of it is named. */
  batch: z.strictObject({ id: idSchema }),
  /** What the days of a period teach: durations, rises, ripeness, heat, losses, each against what formula and kitchen assume. */
  lessons: z.strictObject(periodShape),
  /** How the calls of a period were, by the measures of alarm management. */
  calls: z.strictObject(periodShape),
  /** Lot numbers that were weighed, the last used first: those that begin with a text, those of an ingredient. */
  lots: z.strictObject({ text: textSchema.optional(), ingredient: keySchema.optional() }),
  /**
   * Both ways through the house, in one step each: from a lot number to every product that holds it, or from the products of a day, or one
   * batch, cut or load, to every lot number in them. Regulation (EC) 178/2002 article 18 asks for the supplier one step back and the
   * customer one step forward; what lies between is the house's own, and asked for as soon as something has to be taken back.
   */
  trace: z.union([
    z.strictObject({ lot: textSchema, ingredient: keySchema.optional(), after: textSchema.optional() }),
    z.strictObject({ product: keySchema, date: serviceDateSchema }),
    z.strictObject({ id: idSchema }),
  ]),
  /** One day as it was; the last one where none is named. */
  day: z.strictObject({ date: serviceDateSchema.optional() }),
  /** Week by week; the last half year where nothing is said. */
  weeks: z.strictObject(periodShape),
} as const;

/** The name of a question. */
export type QuestionName = keyof typeof QUESTIONS;
/** What a question is asked with. */
export type QuestionOf<Name extends QuestionName> = z.infer<(typeof QUESTIONS)[Name]>;

/** Whether there is such a question. */
export function isQuestion(name: string): name is QuestionName {
  return Object.hasOwn(QUESTIONS, name);
}

/** How far the records are: made of events up to `sequence` of `of`. */
export const recordsProgressSchema = z.strictObject({ sequence: z.number().int().min(0), of: z.number().int().min(0) });
export type RecordsProgress = z.infer<typeof recordsProgressSchema>;

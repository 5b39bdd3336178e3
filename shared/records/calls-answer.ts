import { z } from 'zod';
import { nthSchema } from './lessons-answer.ts';

const countSchema = z.number().int().min(0);
const timesSchema = z.strictObject({ n: countSchema, medianMin: z.number().nullable(), ninetiethMin: z.number().nullable() });

/** A step that called more often than others. */
export const offenderSchema = z.strictObject({
  formula: z.string(),
  /** The document that the step is of. */
  subject: z.strictObject({ kind: z.enum(['formula', 'product']), id: z.string() }),
  step: z.string(),
  verb: z.string(),
  nth: nthSchema,
  calls: countSchema,
  late: countSchema,
  lost: countSchema,
  /** Of all calls of the period. */
  share: z.number(),
  /** By how much it was done or begun after it was due; the middle of all times. */
  lateMin: z.number().nullable(),
  /** What to write instead, by what was found; null where the evidence is not enough. */
  advice: z
    .strictObject({
      /** work: it takes so long. coming: it is over so long after it was due, each time. */
      by: z.enum(['work', 'coming']),
      fromMin: z.number(),
      toMin: z.number(),
    })
    .nullable(),
});
export type Offender = z.infer<typeof offenderSchema>;

/** How the calls of a period were. Windows last ten minutes. */
export const alarmHealthSchema = z.strictObject({
  calls: countSchema,
  windows: z.strictObject({
    /** In which the house worked, or something called. */
    worked: countSchema,
    mean: z.number().nullable(),
    peak: z.strictObject({ calls: countSchema, fromMs: z.number().int() }).nullable(),
    inFlood: countSchema,
    /** Windows in which something called, the oldest first. */
    calling: z.array(z.strictObject({ fromMs: z.number().int(), calls: countSchema })),
  }),
  levels: z.strictObject({ call: countSchema, late: countSchema, lost: countSchema }),
  /** From the first call of a step until somebody heard it, until it was done or begun. */
  heard: timesSchema,
  done: timesSchema,
  /** Steps that called and were never heard, done or not. */
  neverHeard: countSchema,
  /** Of those, the ones that were not done either. */
  neverAnswered: countSchema,
  /** Calls that were taken back with the tap that had brought them on. */
  undone: countSchema,
  repeats: countSchema,
  standing: countSchema,
  shelved: z.strictObject({ times: countSchema, minutes: z.number() }),
  offenders: z.array(offenderSchema),
});
export type AlarmHealth = z.infer<typeof alarmHealthSchema>;

export const callsAnswerSchema = z.strictObject({
  from: z.string(),
  to: z.string(),
  health: alarmHealthSchema,
  /** Each date with calls or work, the oldest first. */
  days: z.array(z.strictObject({ date: z.string(), calls: countSchema, peak: countSchema, worked: countSchema })),
});
export type CallsAnswer = z.infer<typeof callsAnswerSchema>;

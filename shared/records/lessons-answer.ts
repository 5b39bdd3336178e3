import { z } from 'zod';

const figureSchema = z.number();
/** The how manieth of its verb a step is in its document; null where it is the only one. */
export const nthSchema = z.number().int().min(1).nullable();

/** How values are spread: quartiles and tenths between neighbours in proportion, and the interval that holds the median with 95 %. */
export const spreadSchema = z.strictObject({
  n: z.number().int().min(1),
  median: figureSchema,
  quarter: figureSchema,
  threeQuarters: figureSchema,
  tenth: figureSchema,
  nineTenths: figureSchema,
  medianLow: figureSchema,
  medianHigh: figureSchema,
});
export type Spread = z.infer<typeof spreadSchema>;

/** By how much it moves in 30 days, and between which figures that lies with 95 %. */
export const trendSchema = z.strictObject({ perMonth: figureSchema, low: figureSchema, high: figureSchema });
export type Trend = z.infer<typeof trendSchema>;

/**
 * What a lesson is about, and in what its figures are. minutes: of a step. rise: kelvins that a mixer warms dough by. ripeness: per cent of a
 * rest's minutes at which bakers closed it. heat: per cent of a bake's minutes that it takes in a place. leftOver: per cent of a dough
 * that no piece was made of. piecesLost: per cent of the pieces that were planned.
 */
export const lessonAboutSchema = z.enum(['minutes', 'rise', 'ripeness', 'heat', 'leftOver', 'piecesLost']);
export type LessonAbout = z.infer<typeof lessonAboutSchema>;

/** A part of what a lesson rests on: one station, deck or formula, or batches from one size to another (pieces, or grams where there are none). */
export const lessonGroupSchema = z.strictObject({
  by: z.enum(['station', 'size', 'deck', 'formula']),
  /** Missing for a size. */
  id: z.string().optional(),
  sizes: z.strictObject({ from: figureSchema, to: figureSchema, unit: z.enum(['pieces', 'grams']) }).optional(),
  n: z.number().int().min(1),
  median: figureSchema,
  /** Drawn towards the whole lesson's median, the more the less is known. */
  estimate: figureSchema,
});
export type LessonGroup = z.infer<typeof lessonGroupSchema>;

export const lessonSchema = z.strictObject({
  about: lessonAboutSchema,
  subject: z.strictObject({ kind: z.enum(['formula', 'product', 'mixer', 'deck', 'slot']), id: z.string() }),
  /** The formula that the subject is, or is made of; null for a mixer or a place. */
  formula: z.string().nullable(),
  /** For minutes and ripeness: which step, and what it does. */
  step: z.strictObject({ id: z.string(), verb: z.string(), kind: z.string(), nth: nthSchema }).nullable(),
  spread: spreadSchema,
  /** The median drawn towards what is known of others like it, the more the less is known of this one. */
  estimate: figureSchema,
  trend: trendSchema.nullable(),
  /** What the documents in force say; null where they say nothing. */
  assumed: figureSchema.nullable(),
  /** For minutes: what the step adds for each piece, which is taken out of all figures here. */
  minutesPerPiece: figureSchema,
  /** Minutes that one piece more took, as found; null where sizes do not differ. */
  foundPerPiece: z.strictObject({ minutes: figureSchema, low: figureSchema, high: figureSchema }).nullable(),
  /** The median of how long it was planned for, with its pieces; null where nothing was planned. */
  planned: figureSchema.nullable(),
  /** Times that were not counted: forgotten taps, two taps at once, rests that nobody came to in time. */
  leftOut: z.number().int().min(0),
  groups: z.array(lessonGroupSchema),
  /** To write into the document; null where the evidence is not enough, or where the floor goes by what was learned already. */
  proposal: z.strictObject({ fromMin: figureSchema, toMin: figureSchema }).nullable(),
  /** Somebody has left such a proposal as it is. */
  left: z.strictObject({ foundMin: figureSchema, atMs: z.number().int() }).nullable(),
});
export type Lesson = z.infer<typeof lessonSchema>;

/** That a step's minutes were written otherwise in a later version, from a lesson or by hand. */
export const minutesChangeSchema = z.strictObject({
  subject: z.strictObject({ kind: z.enum(['formula', 'product']), id: z.string() }),
  step: z.string(),
  fromMin: figureSchema,
  toMin: figureSchema,
  version: z.number().int(),
  atMs: z.number().int().nullable(),
});
export type MinutesChange = z.infer<typeof minutesChangeSchema>;

/** What the days of a period teach. Dates are of the house's zone, both included. */
export const lessonsAnswerSchema = z.strictObject({
  from: z.string(),
  to: z.string(),
  lessons: z.array(lessonSchema),
  /** The newest first. */
  changes: z.array(minutesChangeSchema),
  /** What was lost by name, in grams. */
  losses: z.array(z.strictObject({ what: z.string(), grams: figureSchema, times: z.number().int() })),
});
export type LessonsAnswer = z.infer<typeof lessonsAnswerSchema>;

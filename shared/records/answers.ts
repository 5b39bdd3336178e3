import { z } from 'zod';
import { recordsProgressSchema } from './questions.ts';

const msSchema = z.number().int();

/** A batch, prep, pot, cut or load as the records have it. Instants in ms since 1970. */
export const pieceRowSchema = z.strictObject({
  id: z.string(),
  kind: z.enum(['batch', 'prep', 'ferment', 'cut', 'load']),
  tag: z.string(),
  serviceDate: z.string(),
  formula: z.string(),
  formulaVersion: z.number().int(),
  product: z.string().nullable(),
  productVersion: z.number().int().nullable(),
  parentId: z.string().nullable(),
  plannedStartMs: msSchema,
  startedMs: msSchema.nullable(),
  endedMs: msSchema.nullable(),
  ending: z.enum(['finished', 'divided', 'discarded']).nullable(),
  grams: z.number(),
  scaledToG: z.number(),
  scrapG: z.number(),
  pieces: z.number().nullable(),
  plannedPieces: z.number().nullable(),
  allergens: z.array(z.string()),
});
export type PieceRow = z.infer<typeof pieceRowSchema>;

/** A step that was begun, planned against actual. */
export const stepRowSchema = z.strictObject({
  pieceId: z.string(),
  round: z.number().int(),
  step: z.string(),
  position: z.number().int(),
  verb: z.string(),
  kind: z.string(),
  status: z.enum(['started', 'done', 'skipped']),
  startedMs: msSchema.nullable(),
  endedMs: msSchema.nullable(),
  plannedStartMs: msSchema.nullable(),
  plannedEndMs: msSchema.nullable(),
  targetMin: z.number().nullable(),
  factor: z.number().nullable(),
  moreMin: z.number(),
  station: z.string().nullable(),
  helpers: z.array(z.string()),
  startedBy: z.string().nullable(),
  endedBy: z.string().nullable(),
  pieces: z.number().nullable(),
  isInferred: z.boolean(),
  place: z.string().nullable(),
});
export type StepRow = z.infer<typeof stepRowSchema>;

/** A lot number that went into a workpiece, or came into it with something else. */
export const lotRowSchema = z.strictObject({
  ingredient: z.string(),
  lot: z.string(),
  /** Where it was weighed in, and when. */
  weighedInto: z.string(),
  weighedTag: z.string(),
  weighedMs: msSchema,
  grams: z.number(),
});
export type LotRow = z.infer<typeof lotRowSchema>;

export const callRowSchema = z.strictObject({
  pieceId: z.string(),
  step: z.string(),
  level: z.enum(['call', 'late', 'lost']),
  dueMs: msSchema,
  raisedMs: msSchema,
  heardMs: msSchema.nullable(),
  endedMs: msSchema.nullable(),
  became: z.enum(['done', 'stronger', 'undone']).nullable(),
  soundedCount: z.number().int(),
});
export type CallRow = z.infer<typeof callRowSchema>;

/** What one way of writing a name stands for now. */
const namedSchema = z.strictObject({ id: z.string(), name: z.string() });
export const namesAnswerSchema = z.strictObject({
  zone: z.string(),
  units: z.strictObject({ temperature: z.enum(['C', 'F']), weight: z.enum(['g', 'lb']) }),
  house: z.string(),
  formulas: z.array(namedSchema),
  products: z.array(namedSchema),
  ingredients: z.array(namedSchema),
  places: z.array(namedSchema),
  stations: z.array(namedSchema),
  mixers: z.array(namedSchema),
  decks: z.array(namedSchema),
  slots: z.array(namedSchema),
  /** Devices by the name that they were given; who was forgotten has none. */
  devices: z.array(namedSchema),
  /** The first and last service date in the records; null where there is none. */
  firstDate: z.string().nullable(),
  lastDate: z.string().nullable(),
});
export type NamesAnswer = z.infer<typeof namesAnswerSchema>;

export const batchesAnswerSchema = z.strictObject({
  pieces: z.array(pieceRowSchema),
  /** What to ask with for the rows after these; null at the end. */
  before: z.string().nullable(),
});
export type BatchesAnswer = z.infer<typeof batchesAnswerSchema>;

/** One batch from flour to what became of each load. `events` are the journal's, with the documents that were in force. */
export const batchAnswerSchema = z.strictObject({
  /** The batch, prep or pot itself, then its cuts and loads as they were made; where several were joined, all of them. */
  pieces: z.array(pieceRowSchema),
  /** What was drawn or put back into it. */
  sources: z.array(pieceRowSchema),
  steps: z.array(stepRowSchema),
  calls: z.array(callRowSchema),
  lots: z.array(lotRowSchema),
  events: z.array(z.unknown()),
});
export type BatchAnswer = z.infer<typeof batchAnswerSchema>;

/** What every answer comes in. */
export const answeredSchema = z.strictObject({ progress: recordsProgressSchema, answer: z.unknown() });

/** An order of a day, and by when so many pieces were there. */
export const orderRowSchema = z.strictObject({
  id: z.string(),
  product: z.string(),
  pieces: z.number().int(),
  readyMs: msSchema,
  isWithdrawn: z.boolean(),
});
export type OrderRow = z.infer<typeof orderRowSchema>;

/** How long a deck had something in it, out of how long the ovens worked that day. */
export const deckUseSchema = z.strictObject({
  deck: z.string(),
  slots: z.number().int(),
  /** Sum over its slots of the minutes in which something lay in them. */
  slotMin: z.number(),
  /** From the day's first load to its last unloading, in minutes. */
  spanMin: z.number(),
});
export type DeckUse = z.infer<typeof deckUseSchema>;

/** What is no longer there, or was saved, of a day. */
export const spoiledRowSchema = z.strictObject({
  pieceId: z.string(),
  tag: z.string(),
  what: z.string(),
  reason: z.string().nullable(),
  grams: z.number(),
  pieces: z.number().nullable(),
});

export const dayAnswerSchema = z.strictObject({
  date: z.string(),
  /** The days in the records beside it; null at either end. */
  previous: z.string().nullable(),
  next: z.string().nullable(),
  isClosed: z.boolean(),
  pieces: z.array(pieceRowSchema),
  steps: z.array(stepRowSchema),
  /** What each step held, by piece and step: mixers and slots. */
  uses: z.array(z.strictObject({ pieceId: z.string(), step: z.string(), kind: z.string(), resource: z.string() })),
  orders: z.array(orderRowSchema),
  decks: z.array(deckUseSchema),
  spoiled: z.array(spoiledRowSchema),
  saved: z.array(spoiledRowSchema),
  calls: z.strictObject({ call: z.number().int(), late: z.number().int(), lost: z.number().int() }),
});
export type DayAnswer = z.infer<typeof dayAnswerSchema>;

/** One week, Monday to Sunday, of service dates. */
export const weekRowSchema = z.strictObject({
  /** Its Monday. */
  monday: z.string(),
  days: z.number().int(),
  batches: z.number().int(),
  finishedPieces: z.number(),
  discardedPieces: z.number(),
  /** Of the finished ones, how far off the plan their last steps ended: median minutes, positive late; null without a plan. */
  offMin: z.number().nullable(),
  /** Share of steps that began more than five minutes later than planned. */
  lateShare: z.number().nullable(),
  lateCalls: z.number().int(),
  lostCalls: z.number().int(),
  /** Share of the ovens' time in which their slots were full. */
  ovenShare: z.number().nullable(),
});
export const weeksAnswerSchema = z.strictObject({ weeks: z.array(weekRowSchema) });
export type WeeksAnswer = z.infer<typeof weeksAnswerSchema>;

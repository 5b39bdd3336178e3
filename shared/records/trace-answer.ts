import { z } from 'zod';
import { pieceRowSchema } from './answers.ts';

const msSchema = z.number().int();
const countSchema = z.number().int().min(0);

/** How something goes on into something else: by an edge of the genealogy, but a feed, which only goes on in the same pot. */
export const traceKindSchema = z.enum(['draw', 'putBack', 'divide', 'load', 'join']);
export type TraceKind = z.infer<typeof traceKindSchema>;

/** A workpiece on the way between lots and products. */
export const traceNodeSchema = z.strictObject({
  piece: pieceRowSchema,
  /** Onward: how the lot came in; back: how it went on. Null: it is what was asked about. */
  via: traceKindSchema.or(z.literal('weighed')).nullable(),
  /** Steps between it and the lot, or what was asked about: the least. */
  hops: countSchema,
  /** Feeds of pots that lie between: the least. A pot that is kept carries what was once in it on for ever, in less and less of it. */
  feeds: countSchema,
  /** Onward, of a pot: how often it has been fed since the lot came in. */
  fedSince: countSchema,
  /** Whether it is in there still, or was till it ended: a line that was weighed anew after a draw is in what was drawn alone. */
  isInIt: z.boolean(),
  atMs: msSchema,
});
export type TraceNode = z.infer<typeof traceNodeSchema>;

/** All that went one way from one workpiece into another. */
export const traceEdgeSchema = z.strictObject({
  kind: traceKindSchema,
  fromId: z.string(),
  toId: z.string(),
  grams: z.number(),
  times: countSchema,
  firstMs: msSchema,
  lastMs: msSchema,
});
export type TraceEdge = z.infer<typeof traceEdgeSchema>;

/** A lot number, and how much of it was weighed where. */
export const traceLotSchema = z.strictObject({
  ingredient: z.string(),
  lot: z.string(),
  /** Where it was weighed. */
  pieceId: z.string(),
  tag: z.string(),
  serviceDate: z.string(),
  formula: z.string(),
  /** Weighed in so many times, for the first time at an instant. A line that several lots share counts in even parts. */
  grams: z.number(),
  times: countSchema,
  firstMs: msSchema,
  lastMs: msSchema,
  /** Back: feeds of pots between it and what was asked about, the least. */
  feeds: countSchema,
  /** It was weighed anew later: only what was drawn before that holds it. */
  isReplaced: z.boolean(),
});
export type TraceLot = z.infer<typeof traceLotSchema>;

/** One step forward: where a product of a day was to go, by the label of the order, which is never a person's name. */
export const traceOrderSchema = z.strictObject({ label: z.string().nullable(), pieces: countSchema, readyMs: msSchema });
export type TraceOrder = z.infer<typeof traceOrderSchema>;

/** Pieces, and what became of them. */
const piecesShape = { finished: countSchema, discarded: countSchema, here: countSchema };

/** A product of a day that holds the lot, or that was asked about. */
export const traceProductSchema = z.strictObject({
  product: z.string(),
  serviceDate: z.string(),
  ...piecesShape,
  feeds: countSchema,
  hops: countSchema,
  /** The batches, cuts and loads that they are. */
  pieceIds: z.array(z.string()),
  orders: z.array(traceOrderSchema),
});
export type TraceProduct = z.infer<typeof traceProductSchema>;

export const traceAnswerSchema = z.strictObject({
  direction: z.enum(['onward', 'back']),
  /** Nearest first, as far as one answer goes. */
  lots: z.array(traceLotSchema),
  lotsLeftOut: countSchema,
  lotsG: z.number(),
  /** The workpieces, nearest first, as far as one answer goes; what went from one of them into another. */
  nodes: z.array(traceNodeSchema),
  nodesLeftOut: countSchema,
  edges: z.array(traceEdgeSchema),
  /** Summed by product and service date: the fewest feeds between first, then by date. */
  products: z.array(traceProductSchema),
  /** Of all of them, those of other pages too. */
  total: z.strictObject({ products: countSchema, days: countSchema, ...piecesShape, carried: countSchema }),
  /** What is on the floor, holds it and is no product yet: pots, doughs, fillings. To be set apart. */
  stillHere: z.array(traceNodeSchema),
  /** What to ask with for the products after these; null at the end. */
  after: z.string().nullable(),
});
export type TraceAnswer = z.infer<typeof traceAnswerSchema>;

/** A lot number to choose from. */
export const knownLotSchema = z.strictObject({
  ingredient: z.string(),
  lot: z.string(),
  firstMs: msSchema,
  lastMs: msSchema,
  times: countSchema,
});
export type KnownLot = z.infer<typeof knownLotSchema>;
export const lotsAnswerSchema = z.strictObject({ lots: z.array(knownLotSchema) });
export type LotsAnswer = z.infer<typeof lotsAnswerSchema>;

import { z } from 'zod';
import { idSchema } from '../ids.ts';
import { clockTimeSchema, instantMsSchema, keySchema, minutesSchema, nameSchema, piecesSchema, serviceDateSchema } from './names.ts';

/** Orders that one day may have, and standing orders of the house. */
export const MOST_ORDERS = 500;

/** Wanted cold enough to pack, or straight from the oven. */
export const orderFormSchema = z.enum(['cooled', 'hot']);
export type OrderForm = z.infer<typeof orderFormSchema>;

const wanted = {
  productId: keySchema,
  pieces: piecesSchema,
  form: orderFormSchema.default('cooled'),
  /** How fresh at the earliest: at most so long from out of the oven until it is wanted. */
  freshMin: minutesSchema.optional(),
  /** What it takes to load the van or carry it out, before the instant at which it is wanted. */
  loadingMin: minutesSchema.optional(),
  /** How much a minute late weighs against others: 1 as usual, up to 9. */
  weight: z.number().int().min(1).max(9).default(1),
  /** Whom it is for: the shop, the market stall. Never a person's name. */
  label: nameSchema.optional(),
};

/** So many pieces of a product, ready by an instant. */
export const orderSchema = z.strictObject({
  id: idSchema,
  serviceDate: serviceDateSchema,
  readyMs: instantMsSchema,
  ...wanted,
  /** The standing order that it came from. */
  standingId: keySchema.optional(),
});
export type Order = z.infer<typeof orderSchema>;

/** An order that comes every week on the same days (ISO 8601: Monday is 1). */
export const standingOrderSchema = z.strictObject({
  id: keySchema,
  weekdays: z.array(z.number().int().min(1).max(7)).min(1).max(7),
  readyAt: clockTimeSchema,
  ...wanted,
});
export type StandingOrder = z.infer<typeof standingOrderSchema>;

/** What somebody has fixed, whatever the planner would rather do. */
export const pinSchema = z.discriminatedUnion('kind', [
  /** This step begins then. `cut` and `load` count from 0 and say which part of a dough that is not divided yet. */
  z.strictObject({
    id: idSchema,
    kind: z.literal('startsAt'),
    workpieceId: idSchema,
    cut: z.number().int().min(0).max(40).optional(),
    load: z.number().int().min(0).max(100).optional(),
    stepId: keySchema,
    startMs: instantMsSchema,
  }),
  /** This order before all others. */
  z.strictObject({ id: idSchema, kind: z.literal('first'), orderId: idSchema }),
]);
export type Pin = z.infer<typeof pinSchema>;

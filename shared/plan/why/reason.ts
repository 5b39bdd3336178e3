import { z } from 'zod';
import { instantMsSchema, keySchema } from '../../documents/names.ts';
import { plannedStepSchema } from '../../floor/events.ts';
import { idSchema } from '../../ids.ts';
import { tentativeChangeSchema } from '../tentative-change.ts';
import { batchKeySchema } from '../proposed.ts';

const place = { batchKey: batchKeySchema, cut: plannedStepSchema.shape.cut, load: plannedStepSchema.shape.load, stepId: keySchema };
const resourceSchema = z.strictObject({ kind: z.string(), id: z.string() });

/** What is not right with the day, and by how many minutes. */
export const troubleSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('late'), orderId: idSchema, byMin: z.number().min(0) }),
  z.strictObject({ kind: z.literal('spoils'), ...place, byMin: z.number().min(0) }),
  z.strictObject({ kind: z.literal('pinBroken'), ...place, atMs: instantMsSchema, byMin: z.number().min(0) }),
]);
export type Trouble = z.infer<typeof troubleSchema>;

/** What holds it back, found by following the day from the trouble to what it waits for. */
export const causeSchema = z.discriminatedUnion('kind', [
  /** The step at `at` waits for a resource that another has until an instant. */
  z.strictObject({
    kind: z.literal('busy'),
    at: z.strictObject(place),
    resource: resourceSchema,
    by: z.strictObject(place),
    untilMs: instantMsSchema,
  }),
  /** Nobody is there, or it is out of use, until an instant. */
  z.strictObject({ kind: z.literal('closed'), at: z.strictObject(place), resource: resourceSchema, untilMs: instantMsSchema }),
  /** Nothing holds it: begun at once it takes longer than there is. */
  z.strictObject({ kind: z.literal('tooShort'), at: z.strictObject(place), beginsMs: instantMsSchema }),
  z.strictObject({ kind: z.literal('pinned'), at: z.strictObject(place), atMs: instantMsSchema }),
  /** What is under way already takes until then. */
  z.strictObject({ kind: z.literal('begun'), at: z.strictObject(place) }),
]);
export type Cause = z.infer<typeof causeSchema>;

const minutesSchema = z.number().int().min(1);

/** Something that may be done about a day. */
export const changeSchema = z.union([
  tentativeChangeSchema,
  /** The order before all others. */
  z.strictObject({ kind: z.literal('first'), orderId: idSchema }),
  /** The shift at a station, or at all of them where none is named, begins so much earlier, or ends so much later. */
  z.strictObject({ kind: z.literal('openEarlier'), stationId: keySchema.nullable(), minutes: minutesSchema }),
  z.strictObject({ kind: z.literal('openLonger'), stationId: keySchema.nullable(), minutes: minutesSchema }),
  /** One more pair of hands at a station; where that was found, from when to when more than its own hands are at work. */
  z.strictObject({
    kind: z.literal('oneMoreHand'),
    stationId: keySchema,
    fromMs: instantMsSchema.optional(),
    toMs: instantMsSchema.optional(),
  }),
  /** So many more of a counted vessel. */
  z.strictObject({ kind: z.literal('moreVessels'), vesselId: keySchema, count: z.number().int().min(1) }),
  /** The other dough begins so much earlier, or later, than it does. */
  z.strictObject({ kind: z.literal('beginEarlier'), ...place, minutes: minutesSchema, startMs: instantMsSchema }),
  z.strictObject({ kind: z.literal('beginLater'), ...place, minutes: minutesSchema, startMs: instantMsSchema }),
]);
export type Change = z.infer<typeof changeSchema>;

/** A change that was tried, and what the day came to with it. */
export const remedySchema = z.strictObject({
  change: changeSchema,
  /** Minutes that are left of the trouble: of the order late, of all doughs that wait too long, off the pin. */
  troubleLeftMin: z.number().min(0),
  /** Minutes late that all orders together were without it, and still are with it. */
  beforeMin: z.number().min(0),
  leftMin: z.number().min(0),
});
export type Remedy = z.infer<typeof remedySchema>;

/** Why the day does not fit, and what would make it fit. Nothing is claimed that was not tried. */
export const reasonSchema = z.strictObject({
  trouble: troubleSchema,
  /** Others of its kind with the same cause, the worst first. */
  also: z.array(troubleSchema),
  cause: causeSchema.nullable(),
  remedies: z.array(remedySchema),
});
export type Reason = z.infer<typeof reasonSchema>;

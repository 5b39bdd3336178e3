import { z } from 'zod';
import { instantMsSchema, keySchema } from '../../documents/names.ts';
import { plannedStepSchema } from '../../floor/events.ts';
import { idSchema } from '../../ids.ts';
import { tentativeChangeSchema } from '../tentative-change.ts';
import { batchKeySchema } from '../proposed.ts';

const place = { batchKey: batchKeySchema, cut: plannedStepSchema.shape.cut, load: plannedStepSchema.shape.load, stepId: keySchema };
const resourceSchema = z.strictObject({ kind: z.string(), id: z.string() });

/** What is not right with the day. */
export const troubleSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('late'), orderId: idSchema, byMin: z.number().min(0) }),
  z.strictObject({ kind: z.literal('spoils'), ...place, byMin: z.number().min(0) }),
  z.strictObject({ kind: z.literal('pinBroken'), ...place, atMs: instantMsSchema }),
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

/** A change that was tried: with it the trouble is gone, or so many minutes of it are left. */
export const remedySchema = z.strictObject({
  change: z.union([
    tentativeChangeSchema,
    /** Somebody is at a station so much earlier. */
    z.strictObject({ kind: z.literal('openEarlier'), stationId: keySchema, minutes: z.number().int().min(1) }),
    /** One more pair of hands at a station. */
    z.strictObject({ kind: z.literal('oneMoreHand'), stationId: keySchema }),
    /** The other dough begins so much earlier than it does. */
    z.strictObject({ kind: z.literal('beginEarlier'), ...place, minutes: z.number().int().min(1), startMs: instantMsSchema }),
  ]),
  /** Minutes late that all orders together still are with it. */
  leftMin: z.number().min(0),
});
export type Remedy = z.infer<typeof remedySchema>;

/** Why the day does not fit, and what would make it fit. Nothing is claimed that was not tried. */
export const reasonSchema = z.strictObject({ trouble: troubleSchema, cause: causeSchema.nullable(), remedies: z.array(remedySchema) });
export type Reason = z.infer<typeof reasonSchema>;

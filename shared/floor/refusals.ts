import { z } from 'zod';
import { instantMsSchema, keySchema } from '../documents/names.ts';
import { idSchema } from '../ids.ts';
import { tagSchema } from './events.ts';

const what = { tag: tagSchema.optional(), stepId: keySchema.optional() };

/**
 * Why a command was refused, in facts. Screens put them into words. Each code stands in DEVELOPERS.md.
 */
export const refusalSchema = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('workpieceUnknown'), workpieceId: idSchema }),
  z.strictObject({ code: z.literal('workpieceFinished'), ...what, atMs: instantMsSchema }),
  z.strictObject({ code: z.literal('stepUnknown'), ...what }),
  /** Somebody was first: who, where and when. */
  z.strictObject({
    code: z.literal('stepAlreadyDone'),
    ...what,
    atMs: instantMsSchema,
    deviceId: idSchema.optional(),
    stationId: keySchema.optional(),
    skipped: z.boolean(),
  }),
  z.strictObject({
    code: z.literal('stepAlreadyStarted'),
    ...what,
    atMs: instantMsSchema,
    deviceId: idSchema.optional(),
    stationId: keySchema.optional(),
  }),
  z.strictObject({ code: z.literal('stepNotReached'), ...what, currentStepId: keySchema }),
  z.strictObject({ code: z.literal('mixerBusy'), ...what, mixerId: keySchema, busyWithTag: tagSchema }),
  z.strictObject({ code: z.literal('mixerUnknown'), ...what, mixerId: keySchema }),
  z.strictObject({ code: z.literal('slotTaken'), ...what, slotId: keySchema, takenByTag: tagSchema, freeSlotIds: z.array(keySchema) }),
  z.strictObject({ code: z.literal('slotUnknown'), ...what, slotId: keySchema }),
  z.strictObject({ code: z.literal('noFreeSlot'), ...what, deckIds: z.array(keySchema), takenByTags: z.array(tagSchema) }),
  z.strictObject({ code: z.literal('cutsTooHeavy'), ...what, neededG: z.number(), hasG: z.number() }),
  z.strictObject({ code: z.literal('productUnknown'), ...what, productId: keySchema }),
  z.strictObject({ code: z.literal('nothingCalls'), ...what }),
  z.strictObject({ code: z.literal('alreadyHeard'), ...what, atMs: instantMsSchema }),
  z.strictObject({ code: z.literal('notHeld'), ...what }),
  /** Undo is the device's own, for its last command only. */
  z.strictObject({ code: z.literal('nothingToUndo') }),
  z.strictObject({ code: z.literal('workRestsOnIt'), ...what }),
  z.strictObject({ code: z.literal('dayAlreadyOpen'), serviceDate: z.string() }),
  z.strictObject({ code: z.literal('documentMissing'), kind: z.enum(['formula', 'product']), id: keySchema }),
  /** The call that the server meant to raise is no longer true; told to nobody. */
  z.strictObject({ code: z.literal('callOutdated'), ...what }),
  /** The device's role does not allow it. */
  z.strictObject({ code: z.literal('forbidden') }),
  /** The journal could not keep it (full or failing disk): nothing happened, the phone keeps the tap. */
  z.strictObject({ code: z.literal('notKept'), cause: z.enum(['diskFull', 'journalFailed']) }),
]);

export type Refusal = z.infer<typeof refusalSchema>;
export type RefusalCode = Refusal['code'];

/** What became of a command; kept with its id, so that a repeat gets the same answer for ever. */
export const outcomeSchema = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), sequence: z.number().int().min(0), undoable: z.boolean() }),
  z.strictObject({ ok: z.literal(false), refusal: refusalSchema }),
]);
export type Outcome = z.infer<typeof outcomeSchema>;

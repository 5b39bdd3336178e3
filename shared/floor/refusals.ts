import { z } from 'zod';
import type { FaultFacts } from '../documents/fault-facts.ts';
import { instantMsSchema, keySchema } from '../documents/names.ts';
import { idSchema } from '../ids.ts';
import { allergenSchema } from '../documents/allergen.ts';
import { putBackKindSchema } from '../documents/formula.ts';
import { ruleSetSchema } from '../documents/house.ts';
import { lineIdSchema, resourceBlocked, resourceSchema, tagSchema } from './events.ts';

const what = { tag: tagSchema.optional(), stepId: keySchema.optional() };

/** Its shape stands in fault-facts.ts; here it is believed, so that no phone carries every fault of a desk's documents. */
const faultFactsSaid = z.custom<FaultFacts>((value) => typeof value === 'object' && value !== null && 'code' in value);

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
  /** Every bowl that fits the mixer is in use. */
  z.strictObject({ code: z.literal('noFreeBowl'), ...what, mixerId: keySchema, takenByTags: z.array(tagSchema) }),
  /** Being cleaned or out of order; until when, where somebody said. */
  z.strictObject({
    code: z.literal('resourceBlocked'),
    ...what,
    resource: resourceSchema,
    why: resourceBlocked.shape.why,
    untilMs: instantMsSchema.optional(),
  }),
  /** What was in the mixer before had allergens that this dough has not. */
  z.strictObject({
    code: z.literal('changeOverNeeded'),
    ...what,
    mixerId: keySchema,
    allergens: z.array(allergenSchema),
    cleanMin: z.number(),
  }),
  z.strictObject({
    code: z.literal('vesselsShort'),
    ...what,
    vesselId: keySchema,
    needed: z.number().int(),
    free: z.number().int(),
    /** When enough of them will have had their turn-round, where that is known. */
    freeMs: instantMsSchema.optional(),
  }),
  /** Nothing of what this step takes stands anywhere. */
  z.strictObject({ code: z.literal('nothingToDraw'), ...what, formulaId: keySchema, neededG: z.number() }),
  z.strictObject({ code: z.literal('notEnoughToDraw'), ...what, formulaId: keySchema, neededG: z.number(), hasG: z.number() }),
  /** It has not cooled as its method asks; by when it will have. */
  z.strictObject({ code: z.literal('notCooled'), ...what, fromTag: tagSchema, cooledMs: instantMsSchema }),
  /** It would take of the seed that the pot is fed from again. */
  z.strictObject({
    code: z.literal('lastOfFerment'),
    ...what,
    fromTag: tagSchema,
    neededG: z.number(),
    hasG: z.number(),
    seedG: z.number(),
  }),
  /** What is drawn, put back or lost is more than there is. */
  z.strictObject({ code: z.literal('moreThanThere'), ...what, fromTag: tagSchema, neededG: z.number(), hasG: z.number() }),
  /** What is named as the source does not make what the step takes. */
  z.strictObject({ code: z.literal('wrongSource'), ...what, fromTag: tagSchema }),
  z.strictObject({ code: z.literal('putBackNotTaken'), ...what, kind: putBackKindSchema }),
  z.strictObject({ code: z.literal('putBackTooOld'), ...what, fromTag: tagSchema, ageMin: z.number(), mostMin: z.number() }),
  z.strictObject({ code: z.literal('putBackOverCap'), ...what, capG: z.number(), alreadyG: z.number() }),
  /** It is past the mixer: nothing can be mixed into it any more. */
  z.strictObject({ code: z.literal('pastMixing'), ...what }),
  z.strictObject({ code: z.literal('morePiecesThanThere'), ...what, wanted: z.number().int(), has: z.number().int() }),
  z.strictObject({ code: z.literal('noPieces'), ...what }),
  /** Joined can only be mixes of one formula that stand at one step. */
  z.strictObject({ code: z.literal('notJoinable'), ...what, otherTag: tagSchema }),
  z.strictObject({ code: z.literal('notUnderWay'), ...what }),
  z.strictObject({ code: z.literal('alreadyThere'), ...what, stationId: keySchema.optional(), placeId: keySchema.optional() }),
  z.strictObject({ code: z.literal('stationNeeded'), ...what }),
  z.strictObject({ code: z.literal('stationUnknown'), ...what, stationId: keySchema }),
  z.strictObject({ code: z.literal('placeUnknown'), ...what, placeId: keySchema }),
  z.strictObject({ code: z.literal('deckUnknown'), deckId: keySchema }),
  z.strictObject({ code: z.literal('notInOven'), ...what }),
  z.strictObject({ code: z.literal('noSuchSlot'), slotId: keySchema }),
  z.strictObject({ code: z.literal('noTestPiece'), slotId: keySchema }),
  z.strictObject({ code: z.literal('programmeMissing'), placeId: keySchema }),
  z.strictObject({ code: z.literal('resourceUnknown'), resource: resourceSchema }),
  z.strictObject({ code: z.literal('notBlocked'), resource: resourceSchema }),
  z.strictObject({ code: z.literal('ingredientUnknown'), ...what, ingredientId: keySchema }),
  /** The instant does not lie between what came before and what came after. */
  z.strictObject({ code: z.literal('timeOutOfOrder'), ...what, earliestMs: instantMsSchema, latestMs: instantMsSchema }),
  z.strictObject({ code: z.literal('nothingChanges'), ...what }),
  z.strictObject({ code: z.literal('tagOfOther'), ...what, wantedTag: tagSchema }),
  z.strictObject({ code: z.literal('notAFerment'), ...what }),
  z.strictObject({ code: z.literal('dayNotOpen'), serviceDate: z.string() }),
  /** Somebody else has changed the document since this device saw it. */
  z.strictObject({ code: z.literal('documentChanged'), version: z.number().int() }),
  z.strictObject({
    code: z.literal('documentFaulty'),
    faults: z.array(z.strictObject({ path: z.string(), message: z.string(), facts: faultFactsSaid.optional() })).min(1),
  }),
  z.strictObject({ code: z.literal('cutsTooHeavy'), ...what, neededG: z.number(), hasG: z.number() }),
  z.strictObject({ code: z.literal('productUnknown'), ...what, productId: keySchema }),
  z.strictObject({ code: z.literal('nothingCalls'), ...what }),
  z.strictObject({ code: z.literal('alreadyHeard'), ...what, atMs: instantMsSchema }),
  z.strictObject({ code: z.literal('notHeld'), ...what }),
  /** This phase of the bake asks for nothing, or is none of the bake that is in. */
  z.strictObject({ code: z.literal('nothingAsked'), ...what, phase: z.number().int() }),
  z.strictObject({ code: z.literal('promptAnswered'), ...what, phase: z.number().int() }),
  /** A test that was asked for before has not sounded yet. */
  z.strictObject({ code: z.literal('soundTestWaits'), atMs: instantMsSchema }),
  /** Nothing else may sound while a dough is being lost. */
  z.strictObject({ code: z.literal('beingLost'), tag: tagSchema }),
  /** No test has sounded that an answer could be about. */
  z.strictObject({ code: z.literal('noSoundTest') }),
  /** Somebody was first: what they said, and when. */
  z.strictObject({ code: z.literal('soundTestAnswered'), heard: z.boolean(), atMs: instantMsSchema }),
  /** The weigh-out has no such line: another version of the page, or the batch was changed. */
  z.strictObject({ code: z.literal('lineUnknown'), ...what, lineId: lineIdSchema }),
  z.strictObject({ code: z.literal('notWeighed'), ...what, lineId: lineIdSchema }),
  /** It is mixed: what is in the bowl can no longer be weighed, scaled or watered otherwise. */
  z.strictObject({ code: z.literal('alreadyMixed'), ...what }),
  /** So far from what was to be expected that somebody should look again; said again knowingly, it counts. */
  z.strictObject({ code: z.literal('wildReading'), ...what, celsius: z.number(), expectedC: z.number() }),
  /** Food that has been out for longer than the house's rule set allows, or was not cooled as it asks. */
  z.strictObject({
    code: z.literal('pastHoldingLimit'),
    ...what,
    limitMs: instantMsSchema,
    ruleSet: ruleSetSchema,
    clause: z.string(),
    why: z.enum(['time', 'secondSpell', 'wentBackLate', 'cooling']),
  }),
  /** More than the mixer takes, or less than it can mix. */
  z.strictObject({ code: z.literal('outsideMixer'), ...what, mixerId: keySchema, leastG: z.number(), mostG: z.number() }),
  /** Undo is the device's own, for its last command only. */
  z.strictObject({ code: z.literal('nothingToUndo') }),
  z.strictObject({ code: z.literal('workRestsOnIt'), ...what }),
  z.strictObject({ code: z.literal('dayAlreadyOpen'), serviceDate: z.string() }),
  z.strictObject({ code: z.literal('documentMissing'), kind: z.enum(['formula', 'product', 'ingredient']), id: keySchema }),
  z.strictObject({ code: z.literal('orderUnknown'), orderId: idSchema }),
  z.strictObject({ code: z.literal('tooManyOrders'), most: z.number().int() }),
  z.strictObject({ code: z.literal('pinUnknown'), pinId: idSchema }),
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

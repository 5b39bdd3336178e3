import { z } from 'zod';
import { formulaSchema, ingredientSchema, productSchema, putBackKindSchema } from '../documents/formula.ts';
import { houseSchema } from '../documents/house.ts';
import { kitchenSchema } from '../documents/kitchen.ts';
import { MOST_ORDERS, orderSchema, pinSchema, standingOrderSchema } from '../documents/order.ts';
import { batchKeySchema, proposedStepSchema } from '../plan/proposed.ts';
import {
  celsiusSchema,
  gramsSchema,
  instantMsSchema,
  keySchema,
  minutesSchema,
  piecesSchema,
  remarkSchema,
  serviceDateSchema,
} from '../documents/names.ts';
import { idSchema } from '../ids.ts';
import {
  callKeySchema,
  callLevelSchema,
  despiteSchema,
  lessonShape,
  lineIdSchema,
  lossNamed,
  lotNumberSchema,
  MOST_MOVED,
  MOST_WARNINGS,
  movedStepSchema,
  plannedStepSchema,
  planWarningSchema,
  readWhereSchema,
  resourceBlocked,
  resourceSchema,
  tagSchema,
  waterTaken,
} from './events.ts';

/** Minutes that "a little more" offers; any whole number within its range is accepted. */
export const MORE_TIME_MINUTES = [1, 2, 5] as const;
/** Minutes for which a call may be held. */
export const HOLD_MINUTES = [5, 10, 20] as const;

/** Loads that one tap may make of a cut. */
const MOST_LOADS = 40;
/** Mixes that one tap may join in a tub. */
const MOST_JOINED = 10;

const onStep = { workpieceId: idSchema, stepId: keySchema };

// What a thumb can say. Each names the step that it believes in.
export const startStep = z.strictObject({
  type: z.literal('startStep'),
  ...onStep,
  mixerId: keySchema.optional(),
  despite: z.array(despiteSchema).max(despiteSchema.options.length).optional(),
});
export const finishStep = z.strictObject({
  type: z.literal('finishStep'),
  ...onStep,
  /** For a load: where it went in. Missing: the first free slots of the decks that will do. */
  slotIds: z.array(keySchema).min(1).max(40).optional(),
  /** For a divide: what it really became. Missing: as planned. */
  cuts: z
    .array(z.strictObject({ productId: keySchema, pieces: piecesSchema }))
    .min(1)
    .max(20)
    .optional(),
  piecesDone: z.number().int().min(0).max(100_000).optional(),
  /** Only so many pieces are done and go on, as a load of their own; the rest stays at this step. */
  loadPieces: piecesSchema.optional(),
  /** What it takes of ferments and preps, and how much of each. Missing: what the formula says, of what stands readiest. Empty: nothing. */
  draws: z
    .array(z.strictObject({ fromWorkpieceId: idSchema, grams: gramsSchema }))
    .max(20)
    .optional(),
  /** How much of the water held back went in. Missing: all of it. */
  usedHeldBackG: gramsSchema.optional(),
  /** For a feed: what went into the pot. Missing: what the formula says, scaled to the amount that is planned. */
  feed: z.strictObject({ seedG: gramsSchema, flourG: gramsSchema, waterG: gramsSchema }).optional(),
  /** Which mixer the next phase begins on. */
  mixerId: keySchema.optional(),
  despite: z.array(despiteSchema).max(despiteSchema.options.length).optional(),
});
/** So many pieces are done by now. */
export const reportProgress = z.strictObject({
  type: z.literal('reportProgress'),
  ...onStep,
  piecesDone: z.number().int().min(0).max(100_000),
});
/** The device's station works on it too. */
export const helpStep = z.strictObject({ type: z.literal('helpStep'), ...onStep });
export const handOver = z.strictObject({ type: z.literal('handOver'), ...onStep, toStationId: keySchema });
/** Where the dough really is: this step is under way, those before it are over. */
export const sayWhere = z.strictObject({
  type: z.literal('sayWhere'),
  ...onStep,
  /** For how long already. */
  sinceMin: minutesSchema.optional(),
});
/** It stands somewhere else now; with minutes, its call is set aside for so long. */
export const moveWorkpiece = z.strictObject({
  type: z.literal('moveWorkpiece'),
  workpieceId: idSchema,
  placeId: keySchema,
  holdMin: z.number().int().min(1).max(720).optional(),
});
export const correctTime = z.strictObject({
  type: z.literal('correctTime'),
  ...onStep,
  edge: z.enum(['start', 'end']),
  toMs: instantMsSchema,
});
export const correctCount = z.strictObject({
  type: z.literal('correctCount'),
  workpieceId: idSchema,
  pieces: z.number().int().min(0).max(100_000),
  reason: remarkSchema.optional(),
});
/** It bore a wrong tag. Where another dough of the formula bears the right one, they change tags. */
export const correctTag = z.strictObject({ type: z.literal('correctTag'), workpieceId: idSchema, toTag: tagSchema });
/** It goes on in loads of so many pieces each; what is left over stays as it is. */
export const makeLoads = z.strictObject({
  type: z.literal('makeLoads'),
  workpieceId: idSchema,
  pieces: z.array(piecesSchema).min(1).max(MOST_LOADS),
});
/** Mixes of one formula that go on in one tub. */
export const joinWorkpieces = z.strictObject({
  type: z.literal('joinWorkpieces'),
  workpieceIds: z.array(idSchema).min(2).max(MOST_JOINED),
});
/** More of a ferment or a prep than the way says, or at another time. */
export const drawFrom = z.strictObject({
  type: z.literal('drawFrom'),
  fromWorkpieceId: idSchema,
  toWorkpieceId: idSchema,
  grams: gramsSchema,
  despite: z.array(despiteSchema).max(despiteSchema.options.length).optional(),
});
export const putBack = z.strictObject({
  type: z.literal('putBack'),
  fromWorkpieceId: idSchema,
  toWorkpieceId: idSchema,
  what: putBackKindSchema,
  grams: gramsSchema,
});
/** A pot is to be fed at an instant, up to so much. */
export const planFeed = z.strictObject({ type: z.literal('planFeed'), workpieceId: idSchema, feedMs: instantMsSchema, grams: gramsSchema });
/** What went in beside the way: more flour, a seed topping, a lot number. */
export const addIngredient = z.strictObject({
  type: z.literal('addIngredient'),
  ...onStep,
  ingredientId: keySchema,
  grams: gramsSchema,
  lotNumber: lotNumberSchema.optional(),
});
export const nameLoss = z.strictObject({
  type: z.literal('nameLoss'),
  workpieceId: idSchema,
  what: lossNamed.shape.what,
  grams: gramsSchema,
  pieces: z.number().int().min(0).max(100_000).optional(),
});
export const giveMoreTime = z.strictObject({ type: z.literal('giveMoreTime'), ...onStep, minutes: z.number().int().min(1).max(720) });
/** What a phase of a bake asks for is done. */
export const answerPrompt = z.strictObject({ type: z.literal('answerPrompt'), ...onStep, phase: z.number().int().min(0).max(19) });
export const hearCall = z.strictObject({ type: z.literal('hearCall'), ...onStep });
/** Everything that sounds at the moment: a foot pedal, a key on the wall. */
export const hearAllCalls = z.strictObject({ type: z.literal('hearAllCalls') });
export const holdWorkpiece = z.strictObject({ type: z.literal('holdWorkpiece'), ...onStep, minutes: z.number().int().min(1).max(120) });
export const releaseWorkpiece = z.strictObject({ type: z.literal('releaseWorkpiece'), ...onStep });
export const skipStep = z.strictObject({ type: z.literal('skipStep'), ...onStep, reason: remarkSchema });
export const discardWorkpiece = z.strictObject({ type: z.literal('discardWorkpiece'), workpieceId: idSchema, reason: remarkSchema });
/** Food past its holding limit may be used for so many minutes more: the responsible person's decision, with its reason. */
export const decideHolding = z.strictObject({
  type: z.literal('decideHolding'),
  workpieceId: idSchema,
  reason: remarkSchema,
  minutes: z.number().int().min(1).max(240),
});
export const readTemperature = z.strictObject({
  type: z.literal('readTemperature'),
  workpieceId: idSchema,
  where: readWhereSchema,
  celsius: celsiusSchema,
  despite: z.array(despiteSchema).max(despiteSchema.options.length).optional(),
});
/** The air of a rest place as somebody read it: a draughty bench, a shelf that is warmer than it should be. */
export const readPlace = z.strictObject({ type: z.literal('readPlace'), placeId: keySchema, celsius: celsiusSchema });
/** Its door stands open for so long. */
/** A load that is in the oven lies in these slots from now on. */
export const moveLoad = z.strictObject({ type: z.literal('moveLoad'), workpieceId: idSchema, slotIds: z.array(keySchema).min(1).max(40) });
/** A piece of dough goes into a slot, to see how hot it is there. */
export const startTestPiece = z.strictObject({
  type: z.literal('startTestPiece'),
  slotId: keySchema,
  /** What it takes at the reference. */
  referenceMin: z.number().positive().max(120),
});
/** The piece is as the reference is after its minutes; or it is thrown away. */
export const endTestPiece = z.strictObject({ type: z.literal('endTestPiece'), slotId: keySchema, isDone: z.boolean() });
export const openPlace = z.strictObject({
  type: z.literal('openPlace'),
  placeId: keySchema,
  minutes: z.number().int().min(1).max(240),
});
/** The retarder's programme begins now. */
export const beginProgramme = z.strictObject({ type: z.literal('beginProgramme'), placeId: keySchema });
export const setDeck = z.strictObject({ type: z.literal('setDeck'), deckId: keySchema, temperatureC: celsiusSchema });
/** A mixer is being cleaned, a deck is out of order: nobody can have it, for so long or until it is freed. */
export const blockResource = z.strictObject({
  type: z.literal('blockResource'),
  resource: resourceSchema,
  why: resourceBlocked.shape.why,
  minutes: z.number().int().min(1).max(10_080).optional(),
});
export const freeResource = z.strictObject({ type: z.literal('freeResource'), resource: resourceSchema });
export const closeDay = z.strictObject({ type: z.literal('closeDay'), serviceDate: serviceDateSchema });
/** The kitchen as somebody has edited it, from the version that they saw. */
export const adoptKitchen = z.strictObject({
  type: z.literal('adoptKitchen'),
  fromVersion: z.number().int().min(0),
  kitchen: kitchenSchema,
});
export const adoptHouse = z.strictObject({ type: z.literal('adoptHouse'), fromVersion: z.number().int().min(0), house: houseSchema });
/** A formula as somebody wrote it: version 0 for one that is new. It becomes the next version; what runs keeps its own. */
export const adoptFormula = z.strictObject({
  type: z.literal('adoptFormula'),
  fromVersion: z.number().int().min(0),
  formula: formulaSchema,
});
export const adoptProduct = z.strictObject({
  type: z.literal('adoptProduct'),
  fromVersion: z.number().int().min(0),
  product: productSchema,
});
/** An ingredient, new or as it is now; versions are those of the whole list. */
export const adoptIngredient = z.strictObject({ type: z.literal('adoptIngredient'), ingredient: ingredientSchema });
/** What was found of a step's minutes is not to be written into its document; it says `assumedMin` knowingly. */
export const leaveLesson = z.strictObject({ type: z.literal('leaveLesson'), ...lessonShape });
export const archiveFormula = z.strictObject({ type: z.literal('archiveFormula'), formulaId: keySchema, isArchived: z.boolean() });
/**
 * A book from a file: what it has that is new or different becomes the next version, all of it or nothing. Its formulas
 * are out of the way in the book where `archived` has their ids, and in the way otherwise.
 */
export const bringInBook = z.strictObject({
  type: z.literal('bringInBook'),
  ingredients: z.array(ingredientSchema).max(5000),
  formulas: z.array(formulaSchema).max(5000),
  products: z.array(productSchema).max(5000),
  archived: z.array(keySchema).max(5000).default([]),
});
const dayBatchesSchema = z.array(
  z.strictObject({
    formulaId: keySchema,
    plannedStartMs: instantMsSchema,
    grams: gramsSchema,
    cuts: z.array(z.strictObject({ productId: keySchema, pieces: piecesSchema, grams: gramsSchema })),
  }),
);
/** More batches for a day that is open, by the formulas in force. */
export const planBatches = z.strictObject({
  type: z.literal('planBatches'),
  serviceDate: serviceDateSchema,
  batches: dayBatchesSchema.min(1).max(100),
});
/** Orders of a day: new ones, or, by their ids, others in their place. */
export const placeOrders = z.strictObject({
  type: z.literal('placeOrders'),
  serviceDate: serviceDateSchema,
  orders: z
    .array(orderSchema.omit({ id: true, serviceDate: true }).extend({ id: idSchema.optional() }))
    .min(1)
    .max(MOST_ORDERS),
});
export const withdrawOrders = z.strictObject({ type: z.literal('withdrawOrders'), orderIds: z.array(idSchema).min(1).max(MOST_ORDERS) });
/** The standing orders as somebody has edited them, from the version that they saw. */
export const adoptStanding = z.strictObject({
  type: z.literal('adoptStanding'),
  fromVersion: z.number().int().min(0),
  standing: z.array(standingOrderSchema).max(MOST_ORDERS),
});
export const setPin = z.strictObject({
  type: z.literal('setPin'),
  pin: z.discriminatedUnion('kind', [pinSchema.options[0].omit({ id: true }), pinSchema.options[1].omit({ id: true })]),
});
export const liftPin = z.strictObject({ type: z.literal('liftPin'), pinId: idSchema });
/** A line of the weigh-out is in the bowl. */
export const weighIngredient = z.strictObject({
  type: z.literal('weighIngredient'),
  workpieceId: idSchema,
  lineId: lineIdSchema,
  grams: gramsSchema,
  lotNumbers: z.array(lotNumberSchema).max(4).default([]),
});
export const unweighIngredient = z.strictObject({ type: z.literal('unweighIngredient'), workpieceId: idSchema, lineId: lineIdSchema });
/** There is only so much of a line: everything else is scaled to it. */
export const scaleToLine = z.strictObject({
  type: z.literal('scaleToLine'),
  workpieceId: idSchema,
  lineId: lineIdSchema,
  grams: gramsSchema.refine((g) => g > 0, 'say how much of it there is; without any the batch is discarded instead'),
});
/** The water is in, so warm and with so much ice, reckoned from these temperatures. */
export const takeWater = z.strictObject({
  type: z.literal('takeWater'),
  workpieceId: idSchema,
  mixerId: keySchema.optional(),
  waterC: waterTaken.shape.waterC,
  waterG: gramsSchema,
  iceG: gramsSchema,
  flourC: celsiusSchema,
  roomC: celsiusSchema,
  prefermentC: celsiusSchema.optional(),
});
export const forgetRise = z.strictObject({ type: z.literal('forgetRise'), mixerId: keySchema, formulaId: keySchema.optional() });
/** Plays the burst of a call, so that somebody can say whether it is heard. */
export const askSoundTest = z.strictObject({ type: z.literal('askSoundTest') });
/** Whether the last test was heard on the floor. */
export const answerSoundTest = z.strictObject({ type: z.literal('answerSoundTest'), heard: z.boolean() });
export const undoCommand = z.strictObject({ type: z.literal('undoCommand'), commandId: idSchema });

// What the house says of itself.
export const bringInDay = z.strictObject({
  type: z.literal('bringInDay'),
  house: houseSchema,
  kitchen: kitchenSchema,
  ingredients: z.array(ingredientSchema),
  formulas: z.array(formulaSchema),
  products: z.array(productSchema),
  serviceDate: serviceDateSchema,
  batches: dayBatchesSchema,
  orders: z
    .array(orderSchema.omit({ id: true, serviceDate: true }))
    .max(MOST_ORDERS)
    .optional(),
  standing: z.array(standingOrderSchema).max(MOST_ORDERS).optional(),
});

/** A day that was tried and is kept: its batches, and when each of their steps is to begin. */
export const adoptProposal = z.strictObject({
  type: z.literal('adoptProposal'),
  serviceDate: serviceDateSchema,
  /** Each with the name by which the steps point at it. */
  batches: z.array(dayBatchesSchema.element.extend({ batchKey: batchKeySchema })).max(500),
  steps: z.array(proposedStepSchema),
  warnings: z.array(planWarningSchema).max(MOST_WARNINGS),
});
/** The plan follows the floor: what moves, and why. */
export const adoptReplan = z.strictObject({
  type: z.literal('adoptReplan'),
  isWhole: z.boolean(),
  starts: z.array(plannedStepSchema),
  moved: z.array(movedStepSchema).max(MOST_MOVED),
  warnings: z.array(planWarningSchema).max(MOST_WARNINGS),
});

// What the server says of time and calls; never taken from a client.
export const raiseCall = z.strictObject({ type: z.literal('raiseCall'), ...onStep, level: callLevelSchema });
export const noteSounded = z.strictObject({ type: z.literal('noteSounded'), burst: callLevelSchema, calls: z.array(callKeySchema).min(1) });
/** The day's test of the loudspeakers is due. */
export const askDailySoundTest = z.strictObject({ type: z.literal('askDailySoundTest') });
/** The device that gives this has played the test. */
export const noteSoundTestSounded = z.strictObject({ type: z.literal('noteSoundTestSounded') });
export const anchorClock = z.strictObject({
  type: z.literal('anchorClock'),
  houseMs: instantMsSchema,
  realMs: instantMsSchema,
  pace: z.number().min(1).max(3600),
});
export const noteClockJump = z.strictObject({ type: z.literal('noteClockJump'), byMs: z.number().int() });

/** What clients may send. */
export const clientCommandSchema = z.discriminatedUnion('type', [
  startStep,
  finishStep,
  giveMoreTime,
  answerPrompt,
  hearCall,
  hearAllCalls,
  holdWorkpiece,
  releaseWorkpiece,
  skipStep,
  discardWorkpiece,
  decideHolding,
  readTemperature,
  reportProgress,
  helpStep,
  handOver,
  sayWhere,
  moveWorkpiece,
  correctTime,
  correctCount,
  correctTag,
  makeLoads,
  joinWorkpieces,
  drawFrom,
  putBack,
  planFeed,
  addIngredient,
  nameLoss,
  setDeck,
  readPlace,
  openPlace,
  moveLoad,
  startTestPiece,
  endTestPiece,
  beginProgramme,
  blockResource,
  freeResource,
  closeDay,
  adoptKitchen,
  adoptHouse,
  adoptFormula,
  adoptProduct,
  adoptIngredient,
  archiveFormula,
  leaveLesson,
  bringInBook,
  planBatches,
  placeOrders,
  withdrawOrders,
  adoptStanding,
  setPin,
  liftPin,
  weighIngredient,
  unweighIngredient,
  scaleToLine,
  takeWater,
  forgetRise,
  askSoundTest,
  answerSoundTest,
  undoCommand,
]);
/** What only the server itself gives. */
export const houseCommandSchema = z.discriminatedUnion('type', [
  bringInDay,
  adoptProposal,
  adoptReplan,
  raiseCall,
  noteSounded,
  askDailySoundTest,
  noteSoundTestSounded,
  anchorClock,
  noteClockJump,
]);

export type ClientCommand = z.infer<typeof clientCommandSchema>;
export type HouseCommand = z.infer<typeof houseCommandSchema>;
export type FloorCommand = ClientCommand | HouseCommand;
export type CommandOf<Type extends FloorCommand['type']> = Extract<FloorCommand, { type: Type }>;

/**
 * When a tap was, as its phone can tell: how long ago by the clock that only runs forward (null after a reload, when
 * that clock has begun anew) and by the wall clock. Real milliseconds, whatever the house's pace.
 */
export const tapTimeSchema = z.strictObject({
  agoMonotonicMs: z
    .number()
    .min(0)
    .max(7 * 86_400_000)
    .nullable(),
  agoWallMs: z
    .number()
    .min(-366 * 86_400_000)
    .max(366 * 86_400_000),
});
export type TapTime = z.infer<typeof tapTimeSchema>;

/** What the decider is told beside the command. All instants are house time. */
export interface CommandContext {
  readonly commandId: string;
  readonly deviceId: string;
  /** Where the device says it stands; stations stand for people. */
  readonly stationId: string | null;
  /** When the server has it. */
  readonly nowMs: number;
  /** When the thumb was there: at most nowMs. */
  readonly tapMs: number;
  readonly tapUncertain: boolean;
}

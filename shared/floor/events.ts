import { z } from 'zod';
import { allergenSchema } from '../documents/allergen.ts';
import { formulaSchema, ingredientSchema, productSchema, putBackKindSchema } from '../documents/formula.ts';
import { houseSchema, ruleSetSchema } from '../documents/house.ts';
import { kitchenSchema, vesselSchema } from '../documents/kitchen.ts';
import { MOST_ORDERS, orderSchema, pinSchema, standingOrderSchema } from '../documents/order.ts';
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

/** Version of the events' shape. Older ones are lifted by upcasters when the journal is read. */
export const EVENT_VERSION = 1;

export const callLevelSchema = z.enum(['call', 'late', 'lost']);
/** How pressing a call is: a step wants hands; past its tolerance; being lost. */
export type CallLevel = z.infer<typeof callLevelSchema>;

export const callKeySchema = z.strictObject({ workpieceId: idSchema, stepId: keySchema, level: callLevelSchema });
export const tagSchema = z
  .string()
  .regex(/^[A-Z][a-z]?\d{1,4}([a-z](·\d{1,3})?)?(·\d{1,3})?$/, 'a tag is the letters of the formula and a number, such as C1, Ch2b');
export const plannedCutSchema = z.strictObject({
  productId: keySchema,
  productVersion: z.number().int().min(1),
  pieces: piecesSchema,
  grams: gramsSchema,
});
export const resourceSchema = z.strictObject({
  kind: z.enum(['mixer', 'bowl', 'restPlace', 'vessel', 'deck', 'slot', 'bench', 'station']),
  id: keySchema,
});

/** What a baker may go on with knowingly; it is kept with the fact. */
export const despiteSchema = z.enum(['changeOver', 'lastOfFerment', 'vesselsShort', 'withoutSource', 'notCooled', 'wildReading']);
export type Despite = z.infer<typeof despiteSchema>;

/** For which step of which workpiece a prep is made, and by which rule of order. */
export const servesSchema = z.strictObject({
  workpieceId: idSchema,
  /** The step at which it joins, on the batch's method or on the way of one of its products. */
  stepId: keySchema,
  readyMin: minutesSchema,
  notBeforeStepId: keySchema.optional(),
  withinMin: minutesSchema.optional(),
});
export type Serves = z.infer<typeof servesSchema>;

/** What a step's due time was computed from, pinned where it began, so that later versions cannot move the past. */
export const pinsSchema = z.strictObject({
  earliestMin: minutesSchema.optional(),
  targetMin: minutesSchema,
  latestMin: minutesSchema.optional(),
  /** Learned factor on the target; 1 until records teach another. */
  factor: z.number().positive().default(1),
  model: z.enum(['nominal', 'perKelvin', 'q10', 'cardinal', 'levain']).default('nominal'),
  houseVersion: z.number().int().min(0),
});
export type StepPins = z.infer<typeof pinsSchema>;

export const lotNumberSchema = z.string().trim().min(1, 'a lot number cannot be empty').max(80);
export const lotSchema = z.strictObject({ ingredientId: keySchema, lotNumber: lotNumberSchema });
export type Lot = z.infer<typeof lotSchema>;
/** A line of what is weighed out: the n-th item of the m-th part of the formula, counted from 0, as `0-3`. */
export const lineIdSchema = z.string().regex(/^\d{1,2}-\d{1,2}$/, 'a line is the index of its part, a hyphen, and its index in it');
/** What can be read of a workpiece; the mixing water, the flour, the tap and the room are the house's and read beside it. */
export const readWhereSchema = z.enum(['dough', 'core', 'water', 'filling', 'room', 'flour', 'tap', 'preferment']);
export type ReadWhere = z.infer<typeof readWhereSchema>;
export const vesselsHeldSchema = z.strictObject({ vesselId: keySchema, count: z.number().int().min(1) });
export type VesselsHeld = z.infer<typeof vesselsHeldSchema>;

/** A step of a workpiece, or of a cut or load (counted from 0) that it is still to be divided into. */
const placedStep = {
  workpieceId: idSchema,
  cut: z.number().int().min(0).max(40).optional(),
  load: z.number().int().min(0).max(100).optional(),
  stepId: keySchema,
};
/** When a step is planned to begin and end, and what it takes: mixer, deck, station. */
export const plannedStepSchema = z.strictObject({
  ...placedStep,
  plannedStartMs: instantMsSchema,
  plannedEndMs: instantMsSchema.optional(),
  resources: z.array(resourceSchema),
});
export type PlannedStep = z.infer<typeof plannedStepSchema>;
/** Moves told with one plan, and warnings. */
export const MOST_MOVED = 400;
export const MOST_WARNINGS = 100;
/** What was moved by more than two minutes, and what moved it: another step, or the workpiece's own. */
export const movedStepSchema = z.strictObject({
  ...placedStep,
  fromMs: instantMsSchema,
  toMs: instantMsSchema,
  because: z
    .strictObject({
      what: z.enum(['resource', 'dough', 'order', 'pin', 'search']),
      resource: resourceSchema.optional(),
      workpieceId: idSchema.optional(),
      stepId: keySchema.optional(),
    })
    .optional(),
});
export type MovedStep = z.infer<typeof movedStepSchema>;
/** What will not be right as the day stands: a dough waits too long, an order is late. */
export const planWarningSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('spoils'), ...placedStep, atMs: instantMsSchema, byMin: z.number().min(0) }),
  z.strictObject({ kind: z.literal('late'), orderId: idSchema, atMs: instantMsSchema, byMin: z.number().min(0) }),
  z.strictObject({ kind: z.literal('short'), orderId: idSchema, pieces: z.number().int().min(1) }),
  z.strictObject({ kind: z.literal('pinBroken'), pinId: idSchema, atMs: instantMsSchema }),
]);
export type PlanWarning = z.infer<typeof planWarningSchema>;

const onStep = { workpieceId: idSchema, stepId: keySchema, atMs: instantMsSchema };
const childSchema = z.strictObject({
  workpieceId: idSchema,
  tag: tagSchema,
  productId: keySchema,
  productVersion: z.number().int().min(1),
  pieces: piecesSchema,
  grams: gramsSchema,
});

// What the house, the kitchen and the books say.
export const houseAdopted = z.strictObject({ type: z.literal('houseAdopted'), version: z.number().int().min(1), house: houseSchema });
export const kitchenAdopted = z.strictObject({
  type: z.literal('kitchenAdopted'),
  version: z.number().int().min(1),
  kitchen: kitchenSchema,
});
export const ingredientsAdopted = z.strictObject({
  type: z.literal('ingredientsAdopted'),
  version: z.number().int().min(1),
  ingredients: z.array(ingredientSchema),
});
/** One ingredient more, or another wording of one; the list gets the next version. */
export const ingredientAdopted = z.strictObject({
  type: z.literal('ingredientAdopted'),
  version: z.number().int().min(1),
  ingredient: ingredientSchema,
});
export const formulaAdopted = z.strictObject({
  type: z.literal('formulaAdopted'),
  version: z.number().int().min(1),
  formula: formulaSchema,
  /** Missing in older journals. */
  atMs: instantMsSchema.optional(),
});
export const productAdopted = z.strictObject({
  type: z.literal('productAdopted'),
  version: z.number().int().min(1),
  product: productSchema,
  atMs: instantMsSchema.optional(),
});
/** A step of a formula, or of a product's way, with the minutes that stand there, and those that were found. */
export const lessonShape = {
  subject: z.strictObject({ kind: z.enum(['formula', 'product']), id: keySchema }),
  stepId: keySchema,
  assumedMin: minutesSchema,
  foundMin: minutesSchema,
};
/** Out of the way in the book, with its letters free for another; or back again. What runs keeps it. */
export const formulaArchived = z.strictObject({
  type: z.literal('formulaArchived'),
  formulaId: keySchema,
  isArchived: z.boolean(),
  atMs: instantMsSchema,
});
/** What was found of a step's minutes was not taken over: whoever manages keeps what the document says. */
export const lessonLeft = z.strictObject({
  type: z.literal('lessonLeft'),
  ...lessonShape,
  atMs: instantMsSchema,
});

// Orders, and what the planner was told to keep.
/** An order as it is now: new, or changed where its id is known. */
export const orderPlaced = z.strictObject({ type: z.literal('orderPlaced'), order: orderSchema, atMs: instantMsSchema });
export const orderWithdrawn = z.strictObject({ type: z.literal('orderWithdrawn'), orderId: idSchema, atMs: instantMsSchema });
export const standingAdopted = z.strictObject({
  type: z.literal('standingAdopted'),
  version: z.number().int().min(1),
  standing: z.array(standingOrderSchema).max(MOST_ORDERS),
  atMs: instantMsSchema,
});
export const pinSet = z.strictObject({ type: z.literal('pinSet'), pin: pinSchema, atMs: instantMsSchema });
export const pinLifted = z.strictObject({ type: z.literal('pinLifted'), pinId: idSchema, atMs: instantMsSchema });

// The day and its plan.
export const dayOpened = z.strictObject({ type: z.literal('dayOpened'), serviceDate: serviceDateSchema });
export const dayClosed = z.strictObject({ type: z.literal('dayClosed'), serviceDate: serviceDateSchema, carriedOver: z.array(idSchema) });
export const workpiecePlanned = z.strictObject({
  type: z.literal('workpiecePlanned'),
  workpieceId: idSchema,
  kind: z.enum(['batch', 'prep', 'ferment']),
  tag: tagSchema,
  serviceDate: serviceDateSchema,
  formulaId: keySchema,
  formulaVersion: z.number().int().min(1),
  plannedStartMs: instantMsSchema,
  grams: gramsSchema,
  cuts: z.array(plannedCutSchema),
  serves: servesSchema.optional(),
});
/** A pot that stands already is to be fed at an instant, up to so much. */
export const feedPlanned = z.strictObject({
  type: z.literal('feedPlanned'),
  workpieceId: idSchema,
  feedMs: instantMsSchema,
  grams: gramsSchema,
  atMs: instantMsSchema,
});
/** A proposal of the planner, kept because somebody adopted it; due times are never stored. */
export const planAdopted = z.strictObject({
  type: z.literal('planAdopted'),
  planId: idSchema,
  /** Whole: it takes the place of the plan before. Otherwise only what is named here moves. */
  isWhole: z.boolean().default(true),
  starts: z.array(plannedStepSchema),
  moved: z.array(movedStepSchema).max(MOST_MOVED).default([]),
  warnings: z.array(planWarningSchema).max(MOST_WARNINGS).default([]),
  atMs: instantMsSchema.optional(),
});

// Work on a workpiece.
export const stepStarted = z.strictObject({
  type: z.literal('stepStarted'),
  ...onStep,
  stationId: keySchema.optional(),
  resources: z.array(resourceSchema),
  /** Given free as it begins: the mixer, where the bowl stands elsewhere meanwhile. */
  freed: z.array(resourceSchema).optional(),
  pins: pinsSchema,
  despite: z.array(despiteSchema).optional(),
  /** The phone's clocks disagreed about when the tap was; arrival counted. */
  tapUncertain: z.literal(true).optional(),
});
export const stepProgressed = z.strictObject({ type: z.literal('stepProgressed'), ...onStep, piecesDone: z.number().int().min(0) });
export const stepHandedOver = z.strictObject({
  type: z.literal('stepHandedOver'),
  ...onStep,
  fromStationId: keySchema,
  toStationId: keySchema,
});
/** Somebody at another station works on it too. */
export const stepHelped = z.strictObject({ type: z.literal('stepHelped'), ...onStep, stationId: keySchema });
export const stepDone = z.strictObject({
  type: z.literal('stepDone'),
  ...onStep,
  stationId: keySchema.optional(),
  piecesDone: z.number().int().min(0).optional(),
  /** Closed because a later step was seen to have begun, not by a tap of its own. */
  inferred: z.literal(true).optional(),
  despite: z.array(despiteSchema).optional(),
  tapUncertain: z.literal(true).optional(),
});
/** It was not so far: these steps are not done, the first of them is under way again or waits. */
export const stepsReopened = z.strictObject({
  type: z.literal('stepsReopened'),
  workpieceId: idSchema,
  stepIds: z.array(keySchema).min(1),
  atMs: instantMsSchema,
});
/** What is no longer there, and why. */
export const lossNamed = z.strictObject({
  type: z.literal('lossNamed'),
  workpieceId: idSchema,
  what: z.enum(['bake', 'trim', 'seed', 'heldBack', 'pieces', 'spill', 'cooking']),
  grams: gramsSchema,
  pieces: z.number().int().min(0).optional(),
  atMs: instantMsSchema,
});
export const stepSkipped = z.strictObject({ type: z.literal('stepSkipped'), ...onStep, reason: remarkSchema });
export const moreTimeGiven = z.strictObject({ type: z.literal('moreTimeGiven'), ...onStep, minutes: z.number().int().min(1).max(720) });
/** What a phase of a bake asked for was done: steam, vent, a turn, the oven set. */
export const promptAnswered = z.strictObject({
  type: z.literal('promptAnswered'),
  ...onStep,
  phase: z.number().int().min(0).max(19),
  stationId: keySchema.optional(),
});
export const workpieceHeld = z.strictObject({ type: z.literal('workpieceHeld'), ...onStep, untilMs: instantMsSchema });
export const workpieceReleased = z.strictObject({ type: z.literal('workpieceReleased'), ...onStep });
export const workpieceMoved = z.strictObject({
  type: z.literal('workpieceMoved'),
  workpieceId: idSchema,
  placeId: keySchema,
  atMs: instantMsSchema,
});
export const workpieceFinished = z.strictObject({ type: z.literal('workpieceFinished'), workpieceId: idSchema, atMs: instantMsSchema });
export const workpieceDiscarded = z.strictObject({
  type: z.literal('workpieceDiscarded'),
  workpieceId: idSchema,
  atMs: instantMsSchema,
  reason: remarkSchema,
});
/** Food past the limit of the house's rule set is used all the same, until an instant: by whose rule, and why. */
export const holdingDecided = z.strictObject({
  type: z.literal('holdingDecided'),
  workpieceId: idSchema,
  limitMs: instantMsSchema,
  ruleSet: ruleSetSchema,
  clause: z.string().min(1).max(100),
  reason: remarkSchema,
  untilMs: instantMsSchema,
  atMs: instantMsSchema,
});
export const ovenLoaded = z.strictObject({
  type: z.literal('ovenLoaded'),
  ...onStep,
  slotIds: z.array(keySchema).min(1),
  pieces: piecesSchema.optional(),
});
/** It lies in other slots of the oven from now on. */
export const loadMoved = z.strictObject({
  type: z.literal('loadMoved'),
  workpieceId: idSchema,
  slotIds: z.array(keySchema).min(1),
  atMs: instantMsSchema,
});
export const ovenUnloaded = z.strictObject({ type: z.literal('ovenUnloaded'), ...onStep, slotIds: z.array(keySchema).min(1) });
export const temperatureRead = z.strictObject({
  type: z.literal('temperatureRead'),
  workpieceId: idSchema,
  where: readWhereSchema,
  celsius: celsiusSchema,
  atMs: instantMsSchema,
  despite: z.array(despiteSchema).optional(),
});
export const ingredientAdded = z.strictObject({
  type: z.literal('ingredientAdded'),
  ...onStep,
  ingredientId: keySchema,
  grams: gramsSchema,
  lotNumber: lotNumberSchema.optional(),
  /** On top of the weight that the workpiece had. */
  isExtra: z.literal(true).optional(),
});
/** A line of the weigh-out is in the bowl; its lot numbers as printed by the supplier. Weighed again, the last counts. */
export const ingredientWeighed = z.strictObject({
  type: z.literal('ingredientWeighed'),
  workpieceId: idSchema,
  lineId: lineIdSchema,
  /** Missing where the line is an earlier part or comes from another formula. */
  ingredientId: keySchema.optional(),
  grams: gramsSchema,
  lotNumbers: z.array(lotNumberSchema).max(4),
  atMs: instantMsSchema,
});
/** It was not in the bowl after all. */
export const ingredientUnweighed = z.strictObject({
  type: z.literal('ingredientUnweighed'),
  workpieceId: idSchema,
  lineId: lineIdSchema,
  atMs: instantMsSchema,
});
/** There is not enough of something: everything else is scaled to it, before it is mixed. */
export const batchRescaled = z.strictObject({
  type: z.literal('batchRescaled'),
  workpieceId: idSchema,
  fromG: gramsSchema,
  toG: gramsSchema,
  cuts: z.array(plannedCutSchema),
  atMs: instantMsSchema,
});
/**
 * The water that goes into the bowl, and what its temperature was computed from: `waterG` is all of it, `iceG` of that is ice,
 * `waterC` is how warm the rest was.
 */
export const waterTaken = z.strictObject({
  type: z.literal('waterTaken'),
  workpieceId: idSchema,
  mixerId: keySchema,
  waterC: celsiusSchema,
  waterG: gramsSchema,
  iceG: gramsSchema,
  flourC: celsiusSchema,
  roomC: celsiusSchema,
  prefermentC: celsiusSchema.optional(),
  /** The rise that was reckoned with, in kelvin. */
  riseK: z.number(),
  atMs: instantMsSchema,
});
/** What a dough's temperature after mixing says of the mixer, the formula and the load. */
export const riseLearned = z.strictObject({
  type: z.literal('riseLearned'),
  workpieceId: idSchema,
  mixerId: keySchema,
  formulaId: keySchema,
  loadG: gramsSchema,
  riseK: z.number(),
  atMs: instantMsSchema,
});
/** What was learned of a mixer with a formula is forgotten; of all its formulas where none is named. */
export const riseForgotten = z.strictObject({
  type: z.literal('riseForgotten'),
  mixerId: keySchema,
  formulaId: keySchema.optional(),
  atMs: instantMsSchema,
});
export const waterHeldBackUsed = z.strictObject({
  type: z.literal('waterHeldBackUsed'),
  ...onStep,
  usedG: gramsSchema,
  heldG: gramsSchema,
});

// Genealogy: every edge with its amount.
export const workpieceDivided = z.strictObject({
  type: z.literal('workpieceDivided'),
  ...onStep,
  children: z.array(childSchema).min(1),
  lossG: gramsSchema,
});
/** Boards, racks, deckfuls go on apart from each other; what is left, if anything, stays where it is. */
export const loadsMade = z.strictObject({
  type: z.literal('loadsMade'),
  ...onStep,
  children: z.array(childSchema.extend({ vessels: z.array(vesselsHeldSchema) })).min(1),
  restPieces: z.number().int().min(0),
  restG: gramsSchema,
});
export const workpiecesJoined = z.strictObject({
  type: z.literal('workpiecesJoined'),
  workpieceId: idSchema,
  tag: tagSchema,
  parents: z.array(z.strictObject({ workpieceId: idSchema, grams: gramsSchema })).min(2),
  atMs: instantMsSchema,
});
/** The edge carries what trace needs, so that no fold of years is asked for it. */
export const workpieceDrawn = z.strictObject({
  type: z.literal('workpieceDrawn'),
  fromWorkpieceId: idSchema,
  toWorkpieceId: idSchema,
  grams: gramsSchema,
  /** On top of the weight that the workpiece had: a filling in buns; not levain that its dough's weight counts already. */
  isExtra: z.literal(true).optional(),
  allergens: z.array(allergenSchema),
  lotNumbers: z.array(lotSchema),
  atMs: instantMsSchema,
});
export const scrapPutBack = z.strictObject({
  type: z.literal('scrapPutBack'),
  fromWorkpieceId: idSchema,
  toWorkpieceId: idSchema,
  what: putBackKindSchema,
  grams: gramsSchema,
  allergens: z.array(allergenSchema),
  lotNumbers: z.array(lotSchema),
  atMs: instantMsSchema,
});
export const fermentFed = z.strictObject({
  type: z.literal('fermentFed'),
  workpieceId: idSchema,
  seedG: gramsSchema,
  flourG: gramsSchema,
  waterG: gramsSchema,
  /** What was in the pot and is not the seed. */
  discardedG: gramsSchema,
  atMs: instantMsSchema,
});

// Resources.
export const deckSet = z.strictObject({
  type: z.literal('deckSet'),
  deckId: keySchema,
  temperatureC: celsiusSchema,
  atMs: instantMsSchema,
});
/** The air of a rest place, as somebody read it. */
export const placeRead = z.strictObject({
  type: z.literal('placeRead'),
  placeId: keySchema,
  celsius: celsiusSchema,
  atMs: instantMsSchema,
});
/** Its door stands open for so long: what is in it stands in the air of the room. */
export const placeOpened = z.strictObject({
  type: z.literal('placeOpened'),
  placeId: keySchema,
  minutes: z.number().int().min(1).max(240),
  atMs: instantMsSchema,
});
/** A retarder goes through its temperatures from now on, as the kitchen's document had them then. */
export const programmeBegun = z.strictObject({
  type: z.literal('programmeBegun'),
  placeId: keySchema,
  phases: z
    .array(z.strictObject({ minutes: minutesSchema, temperatureC: celsiusSchema }))
    .min(1)
    .max(12),
  atMs: instantMsSchema,
});
/** Two readings of a dough that stood in one place, so long apart: they tell how fast such a dough takes on the temperature of the air. */
export const driftLearned = z.strictObject({
  type: z.literal('driftLearned'),
  workpieceId: idSchema,
  /** What it stands in; null where it stands in nothing that is counted. */
  vesselKind: vesselSchema.shape.kind.nullable(),
  grams: gramsSchema,
  minutes: z.number().positive().max(10_000),
  beforeC: celsiusSchema,
  afterC: celsiusSchema,
  ambientC: celsiusSchema,
  /** By how much it warmed itself meanwhile; missing: not at all. */
  selfHeatKPerH: z.number().min(0).max(3).optional(),
  atMs: instantMsSchema,
});
/** The baker closed a rest: by so much of its nominal minutes, at the reference temperature, it was ripe. */
export const ripenessLearned = z.strictObject({
  type: z.literal('ripenessLearned'),
  workpieceId: idSchema,
  formulaId: keySchema,
  stepId: keySchema,
  factor: z.number().positive().max(20),
  atMs: instantMsSchema,
});
/** A piece of dough went into a slot, to see how hot it is there; at the reference it takes so many minutes. */
export const testPieceStarted = z.strictObject({
  type: z.literal('testPieceStarted'),
  slotId: keySchema,
  referenceMin: z.number().positive().max(120),
  atMs: instantMsSchema,
});
/** It was as it is at the reference, or was thrown away and says nothing. */
export const testPieceEnded = z.strictObject({
  type: z.literal('testPieceEnded'),
  slotId: keySchema,
  isDone: z.boolean(),
  atMs: instantMsSchema,
});
/** What a bake or a test piece took in these slots, as a multiple of its minutes at the reference. */
export const slotHeatLearned = z.strictObject({
  type: z.literal('slotHeatLearned'),
  slotIds: z.array(keySchema).min(1),
  kind: z.enum(['bake', 'testPiece']),
  minutesShare: z.number().positive().max(20),
  atMs: instantMsSchema,
});
/** A bake goes by another heat of its place than it began with. */
export const bakePaced = z.strictObject({
  type: z.literal('bakePaced'),
  workpieceId: idSchema,
  stepId: keySchema,
  factor: z.number().positive().max(20),
  atMs: instantMsSchema,
});
export const resourceBlocked = z.strictObject({
  type: z.literal('resourceBlocked'),
  resource: resourceSchema,
  why: z.enum(['cleaning', 'allergenChangeOver', 'outOfOrder']),
  untilMs: instantMsSchema.optional(),
  atMs: instantMsSchema,
});
export const resourceFreed = z.strictObject({ type: z.literal('resourceFreed'), resource: resourceSchema, atMs: instantMsSchema });
export const vesselsTaken = z.strictObject({
  type: z.literal('vesselsTaken'),
  workpieceId: idSchema,
  vesselId: keySchema,
  count: z.number().int().min(1),
  atMs: instantMsSchema,
});
export const vesselsReturned = z.strictObject({
  type: z.literal('vesselsReturned'),
  workpieceId: idSchema,
  vesselId: keySchema,
  count: z.number().int().min(1),
  /** When they can be taken again: after their turn-round. */
  freeMs: instantMsSchema,
  atMs: instantMsSchema,
});

// Corrections keep what they correct.
export const timeCorrected = z.strictObject({
  type: z.literal('timeCorrected'),
  workpieceId: idSchema,
  stepId: keySchema,
  edge: z.enum(['start', 'end']),
  fromMs: instantMsSchema,
  toMs: instantMsSchema,
  atMs: instantMsSchema,
});
export const countCorrected = z.strictObject({
  type: z.literal('countCorrected'),
  workpieceId: idSchema,
  fromPieces: z.number().int().min(0),
  toPieces: z.number().int().min(0),
  reason: remarkSchema.optional(),
  atMs: instantMsSchema,
});
export const tagCorrected = z.strictObject({
  type: z.literal('tagCorrected'),
  workpieceId: idSchema,
  fromTag: tagSchema,
  toTag: tagSchema,
  atMs: instantMsSchema,
});
/** Takes back what one command did: the workpieces are again as they were before it. */
export const commandUndone = z.strictObject({
  type: z.literal('commandUndone'),
  undoneCommandId: idSchema,
  workpieceIds: z.array(idSchema),
  atMs: instantMsSchema,
});

// Calls and the clock.
export const callRaised = z.strictObject({
  type: z.literal('callRaised'),
  workpieceId: idSchema,
  stepId: keySchema,
  level: callLevelSchema,
  dueMs: instantMsSchema,
  atMs: instantMsSchema,
});
export const callHeard = z.strictObject({
  type: z.literal('callHeard'),
  workpieceId: idSchema,
  stepId: keySchema,
  level: callLevelSchema,
  atMs: instantMsSchema,
});
export const callSounded = z.strictObject({
  type: z.literal('callSounded'),
  burst: callLevelSchema,
  calls: z.array(callKeySchema).min(1),
  atMs: instantMsSchema,
});
/** Somebody, or the time of day, asks whether a call would be heard. */
export const soundTestAsked = z.strictObject({ type: z.literal('soundTestAsked'), why: z.enum(['daily', 'hand']), atMs: instantMsSchema });
/** The loudspeaker of a device played it, as far as its browser can tell. */
export const soundTestSounded = z.strictObject({ type: z.literal('soundTestSounded'), byDeviceId: idSchema, atMs: instantMsSchema });
/** Somebody on the floor heard it, or did not. */
export const soundTestAnswered = z.strictObject({ type: z.literal('soundTestAnswered'), heard: z.boolean(), atMs: instantMsSchema });
/** House time = houseMs + pace · (real − realMs), from this event on. */
export const clockAnchored = z.strictObject({
  type: z.literal('clockAnchored'),
  houseMs: instantMsSchema,
  realMs: instantMsSchema,
  pace: z.number().min(1).max(3600),
});
/** Somebody or something set the server's clock by so much; all open instants move with it, so nothing fires or is swallowed. */
export const clockJumped = z.strictObject({ type: z.literal('clockJumped'), byMs: z.number().int(), atMs: instantMsSchema });

export const floorEventSchema = z.discriminatedUnion('type', [
  houseAdopted,
  kitchenAdopted,
  ingredientsAdopted,
  ingredientAdopted,
  formulaAdopted,
  productAdopted,
  formulaArchived,
  lessonLeft,
  orderPlaced,
  orderWithdrawn,
  standingAdopted,
  pinSet,
  pinLifted,
  dayOpened,
  dayClosed,
  workpiecePlanned,
  feedPlanned,
  planAdopted,
  stepStarted,
  stepProgressed,
  stepHandedOver,
  stepHelped,
  stepDone,
  stepsReopened,
  lossNamed,
  stepSkipped,
  moreTimeGiven,
  promptAnswered,
  workpieceHeld,
  workpieceReleased,
  workpieceMoved,
  workpieceFinished,
  workpieceDiscarded,
  holdingDecided,
  ovenLoaded,
  ovenUnloaded,
  loadMoved,
  temperatureRead,
  ingredientAdded,
  ingredientWeighed,
  ingredientUnweighed,
  batchRescaled,
  waterTaken,
  riseLearned,
  riseForgotten,
  waterHeldBackUsed,
  workpieceDivided,
  loadsMade,
  workpiecesJoined,
  workpieceDrawn,
  scrapPutBack,
  fermentFed,
  deckSet,
  placeRead,
  placeOpened,
  programmeBegun,
  driftLearned,
  ripenessLearned,
  testPieceStarted,
  testPieceEnded,
  slotHeatLearned,
  bakePaced,
  resourceBlocked,
  resourceFreed,
  vesselsTaken,
  vesselsReturned,
  timeCorrected,
  countCorrected,
  tagCorrected,
  commandUndone,
  callRaised,
  callHeard,
  callSounded,
  soundTestAsked,
  soundTestSounded,
  soundTestAnswered,
  clockAnchored,
  clockJumped,
]);

/** One fact of the trade, in the past tense. */
export type FloorEvent = z.infer<typeof floorEventSchema>;
/** The event of one type. */
export type EventOf<Type extends FloorEvent['type']> = Extract<FloorEvent, { type: Type }>;

/** An event as the journal holds it: in which order, by which command, from which device. */
export const recordedEventSchema = z.strictObject({
  sequence: z.number().int().min(1),
  commandId: idSchema,
  /** Its place among the events of one command, from 0. */
  ordinal: z.number().int().min(0),
  deviceId: idSchema,
  event: floorEventSchema,
});
export type RecordedEvent = z.infer<typeof recordedEventSchema>;

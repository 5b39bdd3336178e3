import { z } from 'zod';
import { gramsSchema, instantMsSchema, keySchema, piecesSchema, serviceDateSchema } from '../documents/names.ts';
import { MOST_ORDERS } from '../documents/order.ts';
import { MOST_MOVED, MOST_WARNINGS, movedStepSchema, plannedStepSchema, planWarningSchema } from '../floor/events.ts';
import { idSchema } from '../ids.ts';
import { plannedCleaningSchema } from './planned-cleaning.ts';
import { batchKeySchema, proposedStepSchema } from './proposed.ts';
import { tentativeChangeSchema } from './tentative-change.ts';
import { tryResultSchema } from './try/try-result.ts';
import { reasonSchema } from './why/reason.ts';

/** Most schedules that one request may have generated. */
export const MOST_SCHEDULES = 1_000_000;
/** Proposals that are kept so that they can be compared; the oldest is dropped. */
export const MOST_PROPOSALS = 8;
/** Most runs of one try of the day. */
export const MOST_RUNS = 5_000;
/** How often a page asks for what still runs, in milliseconds. */
export const ASK_AGAIN_MS = 300;

const seedSchema = z.number().int().min(0).max(0xffff_ffff);

/** Names one activity of a day: batch key or workpiece, cut, load, step, as `country#1|0||shape`. */
export const activityKeySchema = z
  .string()
  .max(240)
  .regex(/^[^|]+\|\d*\|\d*\|[a-z][a-z0-9-]*$/, 'an activity is its batch, cut, load and step with | between them');

/** Body of `POST /api/plan/proposals`: plan the orders of a day, on top of what is on the floor. */
export const proposalAskSchema = z.strictObject({
  serviceDate: serviceDateSchema,
  /** Steps that are to begin exactly then, beside the pins that are kept on the floor. */
  pins: z
    .array(z.strictObject({ key: activityKeySchema, startMs: instantMsSchema }))
    .max(200)
    .default([]),
  /** Orders before all others. */
  firstOrderIds: z.array(idSchema).max(MOST_ORDERS).default([]),
  changes: z.array(tentativeChangeSchema).max(MOST_ORDERS).default([]),
  /** Schedules to generate; missing: what the house usually takes. */
  schedules: z.number().int().min(1).max(MOST_SCHEDULES).optional(),
  seed: seedSchema.default(1),
});
export type ProposalAsk = z.infer<typeof proposalAskSchema>;

/** What a day costs, in minutes and counts that a baker can weigh against those of another. */
export const planFiguresSchema = z.strictObject({
  /** Of the service date, where a day is proposed for one; otherwise all that are planned for. */
  orders: z.number().int().min(0),
  ordersOnTime: z.number().int().min(0),
  /** Of all orders together, and of the latest one. */
  lateMin: z.number().min(0),
  latestMin: z.number().min(0),
  /** By which doughs wait longer than they may. */
  spoilMin: z.number().min(0),
  pinsBroken: z.number().int().min(0),
  /** Away from the wanted ripeness, all rests together, those that mind it less counted for less. */
  ripenessMin: z.number().min(0),
  /** Older than wanted when it is ready, all orders together. */
  staleMin: z.number().min(0),
  /** Away from where the plan had it. */
  movedMin: z.number().min(0),
  /** Hands at work, all stations together. */
  handsMin: z.number().min(0),
  /** When the first of what is planned begins and the last ends; null where nothing is planned. */
  beginsMs: instantMsSchema.nullable(),
  endsMs: instantMsSchema.nullable(),
  /** What the search makes small; only to be compared with another of the same orders. */
  total: z.number(),
});
export type PlanFigures = z.infer<typeof planFiguresSchema>;

/** How far a search has come. */
export const planProgressSchema = z.strictObject({
  schedulesDone: z.number().int().min(0),
  schedules: z.number().int().min(1),
  /** Of the best day found so far; null before the first. */
  best: planFiguresSchema.nullable(),
});
export type PlanProgress = z.infer<typeof planProgressSchema>;

export const proposedBatchSchema = z.strictObject({
  batchKey: batchKeySchema,
  formulaId: keySchema,
  grams: gramsSchema,
  cuts: z.array(z.strictObject({ productId: keySchema, pieces: piecesSchema, grams: gramsSchema })),
  /** When its own first step begins. */
  plannedStartMs: instantMsSchema,
});

/** What will not be right if the proposal is kept. */
export const proposedWarningSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('spoils'),
    batchKey: batchKeySchema,
    cut: plannedStepSchema.shape.cut,
    load: plannedStepSchema.shape.load,
    stepId: keySchema,
    /** From when on it waits too long, and by how much. */
    atMs: instantMsSchema,
    byMin: z.number().min(0),
  }),
  z.strictObject({ kind: z.literal('late'), orderId: idSchema, atMs: instantMsSchema, byMin: z.number().min(0) }),
  z.strictObject({ kind: z.literal('short'), orderId: idSchema, pieces: z.number().int().min(1) }),
  z.strictObject({ kind: z.literal('pinBroken'), key: activityKeySchema, atMs: instantMsSchema }),
]);
export type ProposedWarning = z.infer<typeof proposedWarningSchema>;

/** What makes a day impossible to plan at all: a formula that fits no mixer, an order of a product nobody has. */
export const planFaultSchema = z.looseObject({ code: z.string(), message: z.string() });
export type PlanFault = z.infer<typeof planFaultSchema>;

const proposalHead = {
  id: idSchema,
  serviceDate: serviceDateSchema,
  /** As it was asked for, so that it can be asked for again with one change more. */
  ask: proposalAskSchema,
  askedMs: instantMsSchema,
};

/** Answer of `POST` and `GET /api/plan/proposals/:id`. */
export const proposalSchema = z.discriminatedUnion('status', [
  z.strictObject({ ...proposalHead, status: z.literal('running'), progress: planProgressSchema }),
  z.strictObject({
    ...proposalHead,
    status: z.literal('done'),
    doneMs: instantMsSchema,
    /** Schedules that were generated. */
    schedules: z.number().int().min(0),
    /** Whether orders, kitchen, books or the batches of the day have changed since: then it can no longer be kept. */
    isOutdated: z.boolean(),
    batches: z.array(proposedBatchSchema),
    /** Of every batch, and of what is on the floor already. */
    steps: z.array(proposedStepSchema),
    /** Those of the kitchen's cleanings that are still ahead. */
    cleanings: z.array(plannedCleaningSchema),
    figures: planFiguresSchema,
    /** The latest first. `readyMs` is when it will be ready. */
    late: z.array(z.strictObject({ orderId: idSchema, readyMs: instantMsSchema, byMin: z.number().min(0) })),
    warnings: z.array(proposedWarningSchema).max(MOST_WARNINGS),
    reasons: z.array(reasonSchema),
  }),
  /** It cannot be planned at all, or the planner broke down (`code` is then `crashed`). */
  z.strictObject({ ...proposalHead, status: z.literal('failed'), faults: z.array(planFaultSchema).min(1) }),
]);
export type Proposal = z.infer<typeof proposalSchema>;
export type ProposalDone = Extract<Proposal, { status: 'done' }>;

/** A better way to go on that was found after a re-plan. It is kept and dismissed as proposals are, by its id. */
export const offerSchema = z.strictObject({
  id: idSchema,
  madeMs: instantMsSchema,
  /** Of the plan in force, and of what is offered in its place. */
  before: planFiguresSchema,
  after: planFiguresSchema,
  moved: z.array(movedStepSchema).max(MOST_MOVED),
});
export type Offer = z.infer<typeof offerSchema>;

/** Answer of `GET /api/plan`: the plan in force, and what is on offer beside it. */
export const planStatusSchema = z.strictObject({
  houseMs: instantMsSchema,
  /** Null where the floor follows no plan. */
  plan: z
    .strictObject({
      planId: idSchema,
      /** When it was kept; null for a plan of older journals. */
      madeMs: instantMsSchema.nullable(),
      ageMin: z.number().min(0).nullable(),
      movedMs: instantMsSchema.nullable(),
      moved: z.array(movedStepSchema),
      warnings: z.array(planWarningSchema),
      /** What it comes to, and its cleanings, as it was last looked at; null and none before anybody has. */
      figures: planFiguresSchema.nullable(),
      cleanings: z.array(plannedCleaningSchema),
    })
    .nullable(),
  isReplanning: z.boolean(),
  /** Why the last re-plan came to nothing; null where it went well. */
  fault: planFaultSchema.nullable(),
  offers: z.array(offerSchema),
  /** Those that can still be asked for, the oldest first. */
  proposals: z.array(
    z.strictObject({
      id: idSchema,
      serviceDate: serviceDateSchema,
      status: z.enum(['running', 'done', 'failed']),
      askedMs: instantMsSchema,
      figures: planFiguresSchema.nullable(),
    }),
  ),
});
export type PlanStatus = z.infer<typeof planStatusSchema>;

/** Answer of `POST /api/plan/proposals/:id/keep`: up to where the journal is after it. */
export const keptSchema = z.strictObject({ sequence: z.number().int().min(0) });

/** Body of `POST /api/plan/tries`: play a day that was proposed, or the plan in force where none is named. */
export const tryAskSchema = z.strictObject({
  proposalId: idSchema.optional(),
  runs: z.number().int().min(1).max(MOST_RUNS).default(1_000),
  seed: seedSchema.default(1),
});
export type TryAsk = z.infer<typeof tryAskSchema>;

const tryHead = { id: idSchema, ask: tryAskSchema, askedMs: instantMsSchema };

/** Answer of `POST /api/plan/tries` and `GET /api/plan/tries/:id`. */
export const trySchema = z.discriminatedUnion('status', [
  z.strictObject({ ...tryHead, status: z.literal('running'), runsDone: z.number().int().min(0) }),
  z.strictObject({ ...tryHead, status: z.literal('done'), doneMs: instantMsSchema, result: tryResultSchema }),
  z.strictObject({ ...tryHead, status: z.literal('failed'), faults: z.array(planFaultSchema).min(1) }),
]);
export type Try = z.infer<typeof trySchema>;

/** Query of `GET /api/plan/calendar`. */
export const calendarQuerySchema = z.strictObject({ station: keySchema, date: serviceDateSchema });

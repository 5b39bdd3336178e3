import { z } from 'zod';
import type { BookFaultFacts } from './book-fault-facts.ts';
import { celsiusSchema, keySchema, minutesSchema, nameSchema, piecesSchema, remarkSchema } from './names.ts';

/** The trade's verbs: what a step does to the dough. */
export const verbSchema = z.enum([
  'weigh',
  'feed',
  'ripen',
  'add',
  'firstSpeed',
  'secondSpeed',
  'stand',
  'turnOut',
  'bulk',
  'fold',
  'divide',
  'scale',
  'round',
  'benchRest',
  'shape',
  'tin',
  'fill',
  'lockIn',
  'sheet',
  'turn',
  'chill',
  'prove',
  'retard',
  'temper',
  'top',
  'wash',
  'seed',
  'dust',
  'dock',
  'score',
  'load',
  'bake',
  'partBake',
  'bakeOff',
  'takeOut',
  'depan',
  'cool',
  'wait',
  'glaze',
  'slice',
  'pack',
  'cook',
  'clean',
]);
export type Verb = z.infer<typeof verbSchema>;

/**
 * hands: somebody works, and says when it is done.
 * timed: it waits; the step after it ends it.
 * judged: it runs until its check is passed, time is a guide.
 * bake: phases in the oven; taking out ends it.
 */
export const stepKindSchema = z.enum(['hands', 'timed', 'judged', 'bake']);

/** What a step takes while it lasts. `ids` are the ones that will do, best first; none named means any of the kind. */
export const claimSchema = z.strictObject({
  kind: z.enum(['mixer', 'bowl', 'restPlace', 'vessel', 'deck', 'bench', 'hands']),
  ids: z.array(keySchema).max(40).default([]),
  count: z.number().int().min(1).max(1000).default(1),
  /** One for every so many pieces, instead of a fixed count: a tin a loaf, a board for six. */
  perPieces: piecesSchema.optional(),
  /** The step whose end gives a vessel back. Missing: boards and bannetons when loaded, tins and trays when depanned, or at the end. */
  until: keySchema.optional(),
});

/**
 * What goes in at a step: an ingredient, or what another formula makes (a ferment's, a prep's), which is drawn from
 * what stands ready of it. Per cent of the flour of the dough, or grams a piece, which come on top of the dough's
 * weight; without either, what the formula's parts say of it.
 */
export const additionSchema = z
  .strictObject({
    item: keySchema.optional(),
    formula: keySchema.optional(),
    pct: z.number().min(0).max(1000).optional(),
    gPerPiece: z.number().min(0).max(100_000).optional(),
    /** Kept back at first and added as the dough asks; how much of it was used is a fact of the batch. */
    heldBack: z.boolean().default(false),
  })
  .superRefine((addition, context) => {
    if ((addition.item === undefined) === (addition.formula === undefined))
      context.addIssue({
        code: 'custom',
        path: ['item'],
        message: 'an addition names an item or a formula, one of the two',
        params: inFacts({ code: 'additionOfOne' }),
      });
    if (addition.pct !== undefined && addition.gPerPiece !== undefined)
      context.addIssue({
        code: 'custom',
        path: ['gPerPiece'],
        message: 'an addition is per cent or grams a piece, not both',
        params: inFacts({ code: 'additionInOneWay' }),
      });
    if (addition.heldBack && addition.item === undefined)
      context.addIssue({
        code: 'custom',
        path: ['heldBack'],
        message: 'only an ingredient can be held back',
        params: inFacts({ code: 'heldBackFormula' }),
      });
  });
export type Addition = z.infer<typeof additionSchema>;

/** A filling, topping, soaker or wash that is made beside the rests and joins at a step. */
export const sidePrepSchema = z.strictObject({
  formula: keySchema,
  /** The step at which it goes in, which names the formula among its additions. */
  joins: keySchema,
  /** How long before that step it should be ready. */
  readyMin: minutesSchema.default(0),
  /** It is not begun before this step is. */
  notBefore: keySchema.optional(),
  /** Last minute: not begun earlier than so long before it joins. */
  withinMin: minutesSchema.optional(),
});
export type SidePrep = z.infer<typeof sidePrepSchema>;

export type Claim = z.infer<typeof claimSchema>;

/** A link to an earlier step with its lag: not before `earliestMin`, wanted at `targetMin`, not after `latestMin`. */
export const afterSchema = z.strictObject({
  step: keySchema,
  from: z.enum(['start', 'end']).default('end'),
  earliestMin: minutesSchema.default(0),
  targetMin: minutesSchema.default(0),
  latestMin: minutesSchema.optional(),
});

/** One phase of a bake programme. */
export const bakePhaseSchema = z.strictObject({
  minutes: minutesSchema,
  temperatureC: celsiusSchema.optional(),
  steam: z.enum(['in', 'out']).optional(),
  vent: z.enum(['open', 'closed']).optional(),
  /** The load is turned, or its trays change places, when the phase begins. */
  turn: z.boolean().optional(),
  note: remarkSchema.optional(),
});
export type BakePhase = z.infer<typeof bakePhaseSchema>;

/** How a rest ripens, for the timer that follows the dough: which rate model at which reference temperature. */
export const ripeningSchema = z.discriminatedUnion('model', [
  z.strictObject({ model: z.literal('perKelvin'), referenceC: celsiusSchema, rate: z.number().min(0).max(1) }),
  z.strictObject({ model: z.literal('q10'), referenceC: celsiusSchema, q10: z.number().min(1).max(20) }),
  z.strictObject({
    model: z.literal('cardinal'),
    referenceC: celsiusSchema,
    minC: celsiusSchema,
    optC: celsiusSchema,
    maxC: celsiusSchema,
  }),
  z.strictObject({ model: z.literal('levain'), referenceC: celsiusSchema }),
]);

export const stepSchema = z
  .strictObject({
    id: keySchema,
    verb: verbSchema,
    kind: stepKindSchema,
    station: keySchema.optional(),
    /** How long: not ready before earliest, wanted at target, lost after latest. For hands, target is the work's length. */
    minutes: z.strictObject({ earliest: minutesSchema.optional(), target: minutesSchema, latest: minutesSchema.optional() }),
    /** Added to the target for each piece; make-up takes as long as there are pieces. */
    minutesPerPiece: minutesSchema.optional(),
    /** How long after it is due this step counts as late, and as being lost. No `lost` where waiting never spoils it. */
    toleranceMin: z.strictObject({ late: minutesSchema, lost: minutesSchema.optional() }).default({ late: 5 }),
    /** Whether it begins by itself when the step before is done: a rest does, a bench job does not. */
    beginsByItself: z.boolean().optional(),
    after: z.array(afterSchema).max(8).optional(),
    check: remarkSchema.optional(),
    caution: remarkSchema.optional(),
    claims: z.array(claimSchema).max(12).default([]),
    /** Where the dough stands meanwhile: a rest place of the kitchen. */
    place: keySchema.optional(),
    /** What goes in at this step. */
    additions: z.array(additionSchema).max(40).default([]),
    /** Of a prep: what is left of its weight when the step is done, in per cent; onions cooked down, a stock reduced. */
    yieldPct: z.number().min(1).max(100).optional(),
    /** The words by which the baker may leave this step out, such as "Bake from cold"; missing where it belongs to the way. */
    leaveOut: nameSchema.optional(),
    bake: z.array(bakePhaseSchema).min(1).max(20).optional(),
    /** Core temperature at which the bake is done, where it means something. */
    coreC: celsiusSchema.optional(),
    ripening: ripeningSchema.optional(),
  })
  .superRefine((step, context) => {
    const { earliest, target, latest } = step.minutes;
    if (earliest !== undefined && earliest > target) {
      context.addIssue({
        code: 'custom',
        path: ['minutes', 'earliest'],
        message: `earliest (${earliest} min) must not be after target (${target} min)`,
        params: inFacts({ code: 'earliestAfterTarget', earliestMin: earliest, targetMin: target }),
      });
    }
    if (latest !== undefined && latest < target) {
      context.addIssue({
        code: 'custom',
        path: ['minutes', 'latest'],
        message: `latest (${latest} min) must not be before target (${target} min)`,
        params: inFacts({ code: 'latestBeforeTarget', latestMin: latest, targetMin: target }),
      });
    }
    const { late, lost } = step.toleranceMin;
    if (lost !== undefined && lost < late) {
      context.addIssue({
        code: 'custom',
        path: ['toleranceMin', 'lost'],
        message: `lost (${lost} min) must not come before late (${late} min)`,
        params: inFacts({ code: 'lostBeforeLate', lostMin: lost, lateMin: late }),
      });
    }
    if (step.kind === 'judged' && step.check === undefined) {
      context.addIssue({
        code: 'custom',
        path: ['check'],
        message: 'a judged step needs the check that ends it',
        params: inFacts({ code: 'checkNeeded' }),
      });
    }
    if (step.kind === 'bake') {
      const phases = step.bake;
      if (phases === undefined) {
        context.addIssue({ code: 'custom', path: ['bake'], message: 'a bake needs its phases', params: inFacts({ code: 'phasesNeeded' }) });
      } else {
        const sumMin = phases.reduce((sum, phase) => sum + phase.minutes, 0);
        if (Math.abs(sumMin - target) > 1e-6) {
          context.addIssue({
            code: 'custom',
            path: ['bake'],
            message: `the phases last ${sumMin} min, the target says ${target} min`,
            params: inFacts({ code: 'phasesDiffer', sumMin, targetMin: target }),
          });
        }
      }
    } else if (step.bake !== undefined) {
      context.addIssue({
        code: 'custom',
        path: ['bake'],
        message: `only a bake has phases, and this step's kind is ${step.kind}`,
        params: inFacts({ code: 'phasesOfOther', kind: step.kind }),
      });
    }
  });

/** One thing to be done or waited for. */
export type Step = z.infer<typeof stepSchema>;

/** Whether the step begins when the one before is done, without a tap. */
export function beginsByItself(step: Step): boolean {
  return step.beginsByItself ?? step.kind !== 'hands';
}

/** A work that is over when the step after it begins, with no tap of its own. */
export function endsByNext(step: Step): boolean {
  return step.kind === 'timed' || step.kind === 'bake';
}

/** The step's wanted length in minutes for a number of pieces (null where it has none). */
export function targetMin(step: Step, pieces: number | null): number {
  return step.minutes.target + (step.minutesPerPiece ?? 0) * (pieces ?? 0);
}

/** What screens say a fault of the shape from, beside the English of files. */
function inFacts(facts: BookFaultFacts): { readonly facts: BookFaultFacts } {
  return { facts };
}

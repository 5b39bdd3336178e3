import { MOST_WARNINGS } from '../../../shared/floor/events.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { cleaningsOf } from '../../../shared/plan/build/planned-cleanings.ts';
import { stepsOf } from '../../../shared/plan/build/proposed-steps.ts';
import type { ProposalAsk } from '../../../shared/plan/plan-api.ts';
import { assert } from '../../../shared/result.ts';
import { figuresOf } from './figures.ts';
import { planDay, type PlannedDay } from './planned-day.ts';
import type { PlannerAnswer, ProposedDay, SearchBudget } from './planner-job.ts';
import { reasonsFor } from './reasons.ts';
import type { Tell } from './run-job.ts';
import { unknownOrders } from './tentative.ts';
import { lateOrders, proposedWarnings } from './warnings.ts';

export interface ProposeJob {
  readonly nowMs: number;
  readonly ask: ProposalAsk;
  readonly budget: SearchBudget;
}

/** A day for the orders of a service date: their batches beside what is on the floor, when everything begins, and what does not fit. */
export function propose(state: FloorState, job: ProposeJob, tell: Tell): PlannerAnswer {
  const unknown = unknownOrders(state, job.ask);
  if (unknown.length > 0)
    return {
      kind: 'impossible',
      faults: unknown.map((orderId) => ({ code: 'orderUnknown', message: `there is no order ${orderId}`, orderId })),
    };
  const { schedules } = job.budget;
  const isOfDay = (orderId: string): boolean => state.orders[orderId]?.serviceDate === job.ask.serviceDate;
  const planned = planDay(state, {
    ...job,
    onProgress: (built, best, done) =>
      tell(() => ({ schedulesDone: Math.min(done, schedules), schedules, best: figuresOf(built, best, isOfDay) })),
  });
  if (!planned.ok) return { kind: 'impossible', faults: planned.fault };
  return { kind: 'proposed', day: proposedDay(state, planned.value, job, isOfDay, tell) };
}

function proposedDay(
  floor: FloorState,
  planned: PlannedDay,
  job: ProposeJob,
  isOfDay: (orderId: string) => boolean,
  tell: Tell,
): ProposedDay {
  const { state, batches, built, solution } = planned;
  const steps = [...stepsOf(built, solution)];
  const firstMs = new Map<string, number>();
  for (const { batchKey, plannedStartMs } of steps) firstMs.set(batchKey, Math.min(firstMs.get(batchKey) ?? Infinity, plannedStartMs));
  return {
    schedules: solution.schedules,
    batches: batches.map(({ batchKey, formulaId, grams, cuts }) => {
      const plannedStartMs = firstMs.get(batchKey);
      assert(plannedStartMs !== undefined, `the plan has no step of ${batchKey}`);
      return { batchKey, formulaId, grams, cuts: cuts.map((cut) => ({ ...cut })), plannedStartMs };
    }),
    steps,
    cleanings: cleaningsOf(built, solution),
    figures: figuresOf(built, solution, isOfDay),
    late: lateOrders(state, built, solution),
    warnings: proposedWarnings(state, built, solution, job.ask.serviceDate).slice(0, MOST_WARNINGS),
    reasons: [...reasonsFor(floor, planned, job, tell)],
  };
}

import type { FloorState } from '../../../shared/floor/state.ts';
import { buildDay } from '../../../shared/plan/build/build-day.ts';
import type { BuiltDay } from '../../../shared/plan/build/built-day.ts';
import type { ProposedBatch } from '../../../shared/plan/build/day-input.ts';
import type { DaySolution } from '../../../shared/plan/day/problem.ts';
import { solveDay } from '../../../shared/plan/day/solve-day.ts';
import { batchesFor } from '../../../shared/plan/orders/batches-for.ts';
import type { PlanFault, ProposalAsk } from '../../../shared/plan/plan-api.ts';
import type { Change } from '../../../shared/plan/why/reason.ts';
import { accepted, refused, type Result } from '../../../shared/result.ts';
import { dayInputOf, USUAL_SHIFTS } from './day-input.ts';
import type { SearchBudget } from './planner-job.ts';
import { withChange, withTriedOrders } from './tentative.ts';

/** A day that was planned for orders as they are tried. */
export interface PlannedDay {
  /** The floor with the orders as they are tried. */
  readonly state: FloorState;
  readonly batches: readonly ProposedBatch[];
  readonly built: BuiltDay;
  readonly solution: DaySolution;
}

export interface PlanDayOptions {
  readonly nowMs: number;
  readonly ask: ProposalAsk;
  readonly budget: SearchBudget;
  /** Told now and then how far the search is, with the best day found so far. */
  readonly onProgress?: (built: BuiltDay, best: DaySolution, schedulesDone: number) => void;
}

/** Batches for the orders of a service date, beside what is on the floor, and a plan for all of it; or why there can be none. */
export function planDay(floor: FloorState, { nowMs, ask, budget, onProgress }: PlanDayOptions): Result<PlannedDay, readonly PlanFault[]> {
  const made = dayToPlan(floor, { nowMs, ask, change: null });
  if (!made.ok) return made;
  const { built } = made.value;
  let best: DaySolution | null = null;
  const tell = (schedulesDone: number): void => {
    if (best !== null) onProgress?.(built, best, schedulesDone);
  };
  const onBetter = (better: DaySolution, schedulesDone: number): void => {
    best = better;
    tell(schedulesDone);
  };
  return accepted({ ...made.value, solution: solveDay(built.problem, budget, onBetter, tell) });
}

/** The day of an ask with one change more, before it is planned; or why there can be none. */
export function dayToPlan(
  floor: FloorState,
  { nowMs, ask, change }: { readonly nowMs: number; readonly ask: ProposalAsk; readonly change: Change | null },
): Result<Omit<PlannedDay, 'solution'>, readonly PlanFault[]> {
  const { changes, pins, firstOrderIds } = ask;
  const tried = withChange({ state: withTriedOrders(floor, changes), pins, firstOrderIds, shifts: USUAL_SHIFTS }, change);
  const { state } = tried;
  const orders = Object.values(state.orders).filter(({ serviceDate }) => serviceDate === ask.serviceDate);
  const batches = batchesFor(state, orders, nowMs);
  if (!batches.ok) return refused(batches.fault.map(inWords));
  const wanted = { proposed: batches.value, pins: tried.pins, firstOrderIds: tried.firstOrderIds };
  const input = dayInputOf(state, nowMs, wanted, tried.shifts);
  if (input === null) return refused([{ code: 'noKitchen', message: 'the house has no kitchen yet' }]);
  const built = buildDay(input);
  if (!built.ok) return refused(built.fault.map(inWords));
  return accepted({ state, batches: batches.value, built: built.value });
}

/** A fault with its facts in a line as well, for programs and logs; screens put the facts into words of their own. */
function inWords(fault: { readonly code: string }): PlanFault {
  const facts = Object.entries(fault).map(
    ([name, value]: [string, unknown]) => `${name} ${Array.isArray(value) ? value.join(', ') : String(value)}`,
  );
  return { ...fault, message: facts.join('; ') };
}

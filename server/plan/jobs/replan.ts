import type { PlannedStep } from '../../../shared/floor/events.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { buildDay } from '../../../shared/plan/build/build-day.ts';
import type { BuiltDay } from '../../../shared/plan/build/built-day.ts';
import { cleaningsOf } from '../../../shared/plan/build/planned-cleanings.ts';
import { priceOf } from '../../../shared/plan/day/price-day.ts';
import type { DaySolution } from '../../../shared/plan/day/problem.ts';
import { replanDay } from '../../../shared/plan/day/replan-day.ts';
import { assert } from '../../../shared/result.ts';
import { dayInputOf } from './day-input.ts';
import { figuresOf } from './figures.ts';
import type { Hint } from './moved-because.ts';
import { changesOf } from './plan-changes.ts';
import type { PlannerAnswer, Replanned, SearchBudget, TroubleCost } from './planner-job.ts';
import { planWarnings } from './warnings.ts';

export interface ReplanJob {
  readonly nowMs: number;
  readonly budget: SearchBudget;
}

type Followed = BuiltDay & { readonly previous: NonNullable<BuiltDay['previous']> };

/** A plan in which nothing is amiss: whatever is, is worth a search. */
const NO_TROUBLE: TroubleCost = { spoil: 0, late: 0, pins: 0 };

/**
 * The plan in force made true again: what has begun stays, the rest moves as little as keeps the goals. What was known to
 * be late or to spoil already is no reason to move anything; an order or a pin that makes it worse is.
 */
export function replan(
  state: FloorState,
  { nowMs, budget, hint, known }: ReplanJob & { readonly hint: Hint; readonly known: TroubleCost | null },
): PlannerAnswer {
  const built = followedDay(state, nowMs);
  if (built === null) return { kind: 'nothingPlanned' };
  const previous = known === null ? built.previous : { ...built.previous, cost: known };
  return { kind: 'replanned', plan: replanned(state, built, replanDay(built.problem, previous, budget), hint) };
}

/** A better way to go on, if there is one, beside what the plan in force comes to as it stands. */
export function improve(state: FloorState, { nowMs, budget }: ReplanJob): PlannerAnswer {
  const built = followedDay(state, nowMs);
  if (built === null) return { kind: 'nothingPlanned' };
  const before = figuresOf(built, priceOf(built.problem, built.previous.startsS, built.previous.options));
  const solution = replanDay(built.problem, { ...built.previous, cost: NO_TROUBLE }, budget);
  return { kind: 'improved', before, plan: replanned(state, built, solution, 'search') };
}

/** The day of the plan in force; null where there is none, or nothing of it is left to do. */
function followedDay(state: FloorState, nowMs: number): Followed | null {
  if (state.plan === null) return null;
  const input = dayInputOf(state, nowMs, { proposed: [] });
  if (input === null) return null;
  const built = buildDay(input);
  assert(built.ok, 'what is on the floor can always be built');
  const { previous } = built.value;
  if (previous === null || built.value.steps.every(({ status }) => status !== 'ahead')) return null;
  return { ...built.value, previous };
}

function replanned(state: FloorState, built: BuiltDay, solution: DaySolution, hint: Hint): Replanned {
  const { starts, moved } = changesOf(state, built, solution, hint);
  const { spoil, late, pins } = solution.cost;
  return {
    starts: starts satisfies readonly PlannedStep[],
    moved,
    warnings: planWarnings(state, built, solution),
    figures: figuresOf(built, solution),
    cleanings: cleaningsOf(built, solution),
    cost: { spoil, late, pins },
  };
}

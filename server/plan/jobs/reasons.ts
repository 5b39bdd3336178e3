import type { FloorState } from '../../../shared/floor/state.ts';
import type { PlanProgress } from '../../../shared/plan/plan-api.ts';
import { solveDay } from '../../../shared/plan/day/solve-day.ts';
import { solveFrom } from '../../../shared/plan/day/solve-from.ts';
import { carriedOver } from '../../../shared/plan/why/carried-over.ts';
import { handsNeeded } from '../../../shared/plan/why/hands-needed.ts';
import type { Change, Reason } from '../../../shared/plan/why/reason.ts';
import { lateMinByOrder, pinMinOf, spoilMinOf } from '../../../shared/plan/why/troubles.ts';
import { whyNot, type TriedDay } from '../../../shared/plan/why/why-not.ts';
import { figuresOf } from './figures.ts';
import { dayToPlan, type PlannedDay } from './planned-day.ts';
import type { ProposeJob } from './propose.ts';
import type { Tell } from './run-job.ts';

/** Changes that are tried for a day: so many at most, and at least. */
const MOST_TRIES = 36;
const LEAST_TRIES = 12;
/** Each has so small a share of the day's own schedules, but at least so many. */
const TRY_SHARE = 0.1;
const LEAST_SCHEDULES = 60;
/** All of them together have so many schedules for a day of one activity: about two seconds of this thread. */
const SCHEDULED_ACTIVITIES = 700_000;

/**
 * Why a day does not fit and what would make it fit, by planning it anew with one change and another; nothing where it fits.
 * A try is planned both on from the plan that was found and from nothing, the better one counts; and it is held against one
 * that was planned so as long without a change.
 */
export function reasonsFor(floor: FloorState, planned: PlannedDay, { nowMs, ask, budget }: ProposeJob, tell: Tell): readonly Reason[] {
  const { state, built, solution } = planned;
  const schedules = Math.max(LEAST_SCHEDULES, Math.round(budget.schedules * TRY_SHARE));
  const atOnce = schedules * Math.max(1, built.problem.activities.length);
  const tries = Math.min(MOST_TRIES, Math.max(LEAST_TRIES, Math.floor(SCHEDULED_ACTIVITIES / atOnce)));
  const tryWith = (change: Change | null): TriedDay | null => {
    tell((): PlanProgress => ({ schedulesDone: budget.schedules, schedules: budget.schedules, best: figuresOf(built, solution) }));
    const made = dayToPlan(floor, { nowMs, ask, change });
    if (!made.ok) return null;
    const day = made.value.built;
    const half = { schedules: Math.ceil(schedules / 2), seed: budget.seed };
    const onward = solveFrom(day.problem, carriedOver(built, solution, day), half);
    const anew = solveDay(day.problem, half);
    const tried = anew.cost.total < onward.cost.total ? anew : onward;
    const hands = change?.kind === 'oneMoreHand' ? handsNeeded(day, tried, change.stationId) : null;
    return {
      lateMin: lateMinByOrder(day, tried),
      spoilMin: spoilMinOf(day, tried),
      pinMin: pinMinOf(day, tried),
      ...(change === null || hands === null ? {} : { change: { ...change, ...hands } }),
    };
  };
  return whyNot(built, solution, { orders: new Map(Object.entries(state.orders)), nowMs, tries, tryWith });
}

import type { FloorState } from '../../../shared/floor/state.ts';
import type { Reason } from '../../../shared/plan/why/reason.ts';
import { whyNot, type TriedDay } from '../../../shared/plan/why/why-not.ts';
import { figuresOf, lateByOrder } from './figures.ts';
import { planDay, type PlannedDay } from './planned-day.ts';
import type { ProposeJob } from './propose.ts';

/** Changes that are tried for one trouble at most. */
const TRIES = 8;
/** Each is sought with so small a share of the day's own schedules, but with at least so many. */
const TRY_SHARE = 0.01;
const LEAST_SCHEDULES = 10;

const MINUTE_MS = 60_000;

/** Why a day does not fit and what would make it fit, by planning it anew with one change and another; nothing where it fits. */
export function reasonsFor(
  floor: FloorState,
  { state, built, solution }: PlannedDay,
  { nowMs, ask, budget }: ProposeJob,
): readonly Reason[] {
  const schedules = Math.max(LEAST_SCHEDULES, Math.round(budget.schedules * TRY_SHARE));
  return whyNot(built, solution, {
    orders: new Map(Object.values(state.orders).map((order) => [order.id, order])),
    tries: TRIES,
    tryWith: (change): TriedDay | null => {
      const tried = planDay(floor, { nowMs, ask, budget: { schedules, seed: budget.seed }, change });
      if (!tried.ok) return null;
      const late = lateByOrder(tried.value.built, tried.value.solution);
      return {
        lateMin: new Map([...late].map(([orderId, byMs]) => [orderId, byMs / MINUTE_MS])),
        spoilMin: figuresOf(tried.value.built, tried.value.solution).spoilMin,
      };
    },
  });
}

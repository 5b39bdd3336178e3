import type { PlanFigures } from '../../../shared/plan/plan-api.ts';
import type { BuiltDay } from '../../../shared/plan/build/built-day.ts';
import { PRICES, type DaySolution } from '../../../shared/plan/day/problem.ts';
import { edgeMs, startS } from './place-of-day.ts';

const MINUTE_MS = 60_000;

/** What a solution comes to in minutes and counts; of orders, those that count. */
export function figuresOf(
  built: BuiltDay,
  solution: Omit<DaySolution, 'schedules'>,
  isCounted: (orderId: string) => boolean = () => true,
): PlanFigures {
  const lateMs = new Map([...lateByOrder(built, solution)].filter(([orderId]) => isCounted(orderId)));
  const short = new Set(built.orders.short.map(({ orderId }) => orderId));
  const orders = new Set([...built.goalOrders, ...short].filter(isCounted));
  // Cleanings are of no order: a day that is over does not go on till the next one's.
  const ahead = built.steps.filter(({ status, formulaId }) => status === 'ahead' && formulaId !== null);
  const starts = ahead.map(({ activity }) => edgeMs(built, solution.startsS, activity, 'start'));
  const ends = ahead.map(({ activity }) => edgeMs(built, solution.startsS, activity, 'end'));
  return {
    orders: orders.size,
    ordersOnTime: [...orders].filter((id) => !lateMs.has(id) && !short.has(id)).length,
    lateMin: sum([...lateMs.values()]) / MINUTE_MS,
    latestMin: Math.max(0, ...lateMs.values()) / MINUTE_MS,
    spoilMin: sum(solution.spoiled.map(({ byS }) => byS)) / 60,
    pinsBroken: solution.pinsBroken.length,
    ripenessMin: solution.cost.ripeness / PRICES.ripenessMin,
    staleMin: staleMin(built, solution),
    movedMin: sum(
      built.problem.activities.map(({ previousStartS, fixedStartS }, activity) =>
        previousStartS === null || fixedStartS !== null ? 0 : Math.abs(startS(solution.startsS, activity) - previousStartS) / 60,
      ),
    ),
    handsMin: sum(
      ahead.filter(({ stationId }) => stationId !== null).map(({ activity }) => (built.problem.activities[activity]?.durationS ?? 0) / 60),
    ),
    beginsMs: starts.length === 0 ? null : Math.min(...starts),
    endsMs: ends.length === 0 ? null : Math.max(...ends),
    total: solution.cost.total,
  };
}

/** By how many milliseconds each late order is late: as its latest pieces are. */
export function lateByOrder(built: BuiltDay, { late }: Pick<DaySolution, 'late'>): ReadonlyMap<string, number> {
  const byOrder = new Map<string, number>();
  for (const { goal, byS } of late) {
    const orderId = built.goalOrders[goal];
    if (orderId !== undefined) byOrder.set(orderId, Math.max(byOrder.get(orderId) ?? 0, byS * 1000));
  }
  return byOrder;
}

function staleMin(built: BuiltDay, { startsS }: Pick<DaySolution, 'startsS'>): number {
  return sum(
    built.problem.goals.map(({ fresh, dueS }) => {
      if (fresh === null) return 0;
      const ageMs = built.originMs + dueS * 1000 - edgeMs(built, startsS, fresh.activity, fresh.edge);
      return Math.max(0, ageMs - fresh.mostS * 1000) / MINUTE_MS;
    }),
  );
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}

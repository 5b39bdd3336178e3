import { Crowding, LEVELLED_KIND } from './crowding.ts';
import { activityAt, edgeOffsetS } from './edges.ts';
import { idleS } from './idle.ts';
import { movedPrices } from './moved-price.ts';
import { PRICES, type DayProblem, type DaySolution, type Edge, type PlanResource } from './problem.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

const MINUTE_S = 60;

/**
 * What a plan costs, by what it is for, and what is wrong with it: read from the problem alone, without the search. `options` has an
 * option for every choice. Late goals that come first before all others cost as a broken pin, too.
 */
export function priceOf(problem: DayProblem, startsS: Int32Array, options: Int32Array): Omit<DaySolution, 'schedules'> {
  const at = (activity: number, edge: Edge): number => (startsS[activity] as number) + edgeOffsetS(activityAt(problem, activity), edge);
  const { spoiled, spoil, ripeness } = lagPrices(problem, at);
  const { late, latePrice, freshness, firstPrice } = goalPrices(problem, at);
  const { pinsBroken, pinPrice } = pinPrices(problem, startsS);
  const pins = pinPrice + firstPrice;
  const calm = calmPrice(problem, at, options);
  const moved = movedPrice(problem, startsS);
  const total = spoil + pins + latePrice + ripeness + freshness + calm + moved;
  return {
    startsS: startsS.slice(),
    options: options.slice(),
    cost: { spoil, pins, late: latePrice, ripeness, freshness, calm, moved, total },
    spoiled,
    late,
    pinsBroken,
  };
}

type EdgeTime = (activity: number, edge: Edge) => number;

function lagPrices(problem: DayProblem, at: EdgeTime): { spoiled: DaySolution['spoiled']; spoil: number; ripeness: number } {
  const spoiled: { lag: number; byS: number }[] = [];
  let spoil = 0;
  let ripeness = 0;
  for (const [index, lag] of problem.lags.entries()) {
    const gapS = at(lag.to, lag.toEdge) - at(lag.from, lag.fromEdge);
    if (lag.mostS !== null && gapS > lag.mostS) {
      spoiled.push({ lag: index, byS: gapS - lag.mostS });
      spoil += ((gapS - lag.mostS) / MINUTE_S) * lag.spoilPrice;
    }
    if (lag.targetS !== null) ripeness += (Math.abs(gapS - lag.targetS) / MINUTE_S) * lag.awayPrice;
  }
  return { spoiled, spoil, ripeness };
}

function goalPrices(
  problem: DayProblem,
  at: EdgeTime,
): { late: DaySolution['late']; latePrice: number; freshness: number; firstPrice: number } {
  const late: { goal: number; byS: number }[] = [];
  let latePrice = 0;
  let freshness = 0;
  let firstPrice = 0;
  for (const [index, goal] of problem.goals.entries()) {
    const lateS = at(goal.activity, goal.edge) - goal.dueS;
    if (lateS > 0) {
      late.push({ goal: index, byS: lateS });
      latePrice += (lateS / MINUTE_S) * goal.latePrice;
      if (goal.isFirst) firstPrice += (lateS / MINUTE_S) * PRICES.pinMin;
    } else {
      freshness += (-lateS / MINUTE_S) * goal.earlyPrice;
    }
    if (goal.fresh !== null) {
      const tooOldS = goal.dueS - at(goal.fresh.activity, goal.fresh.edge) - goal.fresh.mostS;
      if (tooOldS > 0) freshness += (tooOldS / MINUTE_S) * goal.fresh.price;
    }
  }
  return { late, latePrice, freshness, firstPrice };
}

function pinPrices(problem: DayProblem, startsS: Int32Array): { pinsBroken: readonly number[]; pinPrice: number } {
  const pinsBroken: number[] = [];
  let pinPrice = 0;
  for (const [index, { pinnedStartS }] of problem.activities.entries()) {
    const startS = startsS[index] as number;
    if (pinnedStartS === null || startS === pinnedStartS) continue;
    pinsBroken.push(index);
    pinPrice += (Math.abs(startS - pinnedStartS) / MINUTE_S) * PRICES.pinMin;
  }
  return { pinsBroken, pinPrice };
}

function movedPrice(problem: DayProblem, startsS: Int32Array): number {
  const prices = movedPrices(problem);
  return problem.activities.reduce(
    (sum, { previousStartS }, index) =>
      previousStartS === null ? sum : sum + (Math.abs((startsS[index] as number) - previousStartS) / MINUTE_S) * (prices[index] as number),
    0,
  );
}

/** Options that are liked less, decks that idle hot between two bakes of one heat, hands that are crowded. */
function calmPrice(problem: DayProblem, at: EdgeTime, options: Int32Array): number {
  let calm = 0;
  for (const [index, choice] of problem.choices.entries()) calm += choice.options[options[index] as number]?.price ?? 0;
  const stays: Stay[][] = problem.resources.map(() => []);
  for (const hold of problem.holds) {
    const option = 'choice' in hold.on ? (options[hold.on.choice] as number) : 0;
    const resource = 'choice' in hold.on ? problem.choices[hold.on.choice]?.options[option]?.resource : hold.on.resource;
    if (resource === undefined) continue;
    const amount = 'choice' in hold.on ? (hold.on.amounts[option] ?? 0) : hold.on.amount;
    const fromS = at(hold.from, hold.fromEdge);
    const toS = at(hold.to, hold.toEdge) + hold.afterS;
    if (toS > fromS) stays[resource]?.push({ fromS, toS, amount, state: hold.states?.[option] ?? NO_STATE });
  }
  for (const [index, resource] of problem.resources.entries()) calm += calmOf(resource, stays[index] ?? []);
  return calm;
}

interface Stay {
  readonly fromS: number;
  readonly toS: number;
  readonly amount: number;
  readonly state: number;
}

const NO_STATE = -1;

function calmOf(resource: PlanResource, stays: readonly Stay[]): number {
  let calm = 0;
  if (resource.idlePrice > 0) {
    const hot = stays.filter(({ state }) => state !== NO_STATE).toSorted((one, other) => one.fromS - other.fromS);
    calm += (idleS(hot) / MINUTE_S) * resource.idlePrice;
  }
  if (resource.kind === LEVELLED_KIND) {
    const crowding = new Crowding(resource.capacity);
    for (const { fromS, toS, amount } of stays) crowding.add(fromS, toS, amount);
    calm += crowding.price();
  }
  return calm;
}

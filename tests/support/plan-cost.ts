import type { DayCost, DayProblem, DaySolution, Goal } from '../../shared/plan/day/problem.ts';
import { PRICES } from '../../shared/plan/day/problem.ts';
import { edgeS, lagS, layHolds, offPin, overstayed, type Schedule } from './plan-validator.ts';

/** What a solver says of a schedule, without its count of schedules. */
export type Said = Omit<DaySolution, 'schedules'>;

/** What moves at once costs at most so many times what moves far off: how it falls between the two is the solver's affair. */
const NEAREST_FACTOR = 4;

/** Work of a station is level where every stretch of this length has the same of it; one in which all hands are busy costs this. */
const LEVEL = { kind: 'station', stretchS: 1800, price: 1 } as const;

/** Costs are sums of many products of floating numbers. */
const CLOSE = 1e-6;

/**
 * What a solution says of itself that is not so: the lags that it calls spoiled, the goals that it calls late, the pins that
 * it calls broken, and what these cost, reckoned anew from the definition. Empty where all of it is true.
 */
export function costFaults(problem: DayProblem, said: Said): string[] {
  const { startsS, cost } = said;
  const faults: string[] = [];
  const compare = (name: string, is: string, says: string): void => {
    if (is !== says) faults.push(`${name}: says ${says} and is ${is}`);
  };
  const near = (name: string, is: number, says: number): void => {
    if (Math.abs(is - says) > CLOSE * Math.max(1, Math.abs(is))) faults.push(`${name}: says ${says} and is ${is}`);
  };
  compare('spoiled', told(overstayed(problem, startsS), 'lag'), told(said.spoiled, 'lag'));
  compare('late goals', told(lateGoals(problem, startsS), 'goal'), told(said.late, 'goal'));
  compare('pins broken', JSON.stringify(offPin(problem, startsS)), JSON.stringify([...said.pinsBroken].sort((a, b) => a - b)));
  const mine = costOf(problem, said);
  near('cost of spoil', mine.spoil, cost.spoil);
  near('cost of pins', mine.pins, cost.pins);
  near('cost of ripeness', mine.ripeness, cost.ripeness);
  near('cost of late', mine.late, cost.late);
  // Which of the two a minute too early belongs to is a matter of names; what it costs is not.
  near('cost of freshness and calm', mine.freshness + mine.calm, cost.freshness + cost.calm);
  const most = NEAREST_FACTOR * mine.moved;
  if (cost.moved < mine.moved - CLOSE || cost.moved > most + CLOSE)
    faults.push(`cost of moved: says ${cost.moved} and is ${mine.moved} to ${most}`);
  near('total', cost.spoil + cost.pins + cost.late + cost.ripeness + cost.freshness + cost.calm + cost.moved, cost.total);
  return faults;
}

/** Which, and by how many seconds, in the order of the problem. */
function told<Key extends string>(list: readonly ({ readonly byS: number } & Readonly<Record<Key, number>>)[], key: Key): string {
  const ordered = list.toSorted((a, b) => a[key] - b[key]);
  return ordered.map((one) => `${key} ${one[key]} by ${one.byS} s`).join(', ') || 'none';
}

/** Goals that are late, and by how many seconds, in the order of the problem. */
export function lateGoals(problem: DayProblem, startsS: ArrayLike<number>): { goal: number; byS: number }[] {
  return problem.goals.flatMap(({ activity, edge, dueS }, goal) => {
    const byS = edgeS(problem, startsS, activity, edge) - dueS;
    return byS > 0 ? [{ goal, byS }] : [];
  });
}

/** The price of a schedule by the definitions in `problem.ts`; `moved` is the least that it can be, nearness left out. */
export function costOf(problem: DayProblem, schedule: Schedule): DayCost {
  const { startsS } = schedule;
  const spoil = sum(overstayed(problem, startsS), ({ lag, byS }) => (problem.lags[lag]?.spoilPrice ?? 0) * minutes(byS));
  const offPins = sum(problem.activities, ({ pinnedStartS }, at) => (pinnedStartS === null ? 0 : minutes(away(startsS, at, pinnedStartS))));
  // An order that is to come before all others is as good as pinned.
  const lateFirst = sum(lateGoals(problem, startsS), ({ goal, byS }) => (problem.goals[goal]?.isFirst === true ? minutes(byS) : 0));
  const pins = PRICES.pinMin * (offPins + lateFirst);
  const late = sum(lateGoals(problem, startsS), ({ goal, byS }) => (problem.goals[goal]?.latePrice ?? 0) * minutes(byS));
  const ripeness = sum(problem.lags, ({ targetS, awayPrice }, at) =>
    targetS === null ? 0 : awayPrice * minutes(Math.abs(lagS(problem, startsS, at) - targetS)),
  );
  const freshness = sum(problem.goals, (goal) => staleCost(problem, startsS, goal));
  const early = sum(
    problem.goals,
    ({ activity, edge, dueS, earlyPrice }) => earlyPrice * minutes(Math.max(0, dueS - edgeS(problem, startsS, activity, edge))),
  );
  const chosen = sum(problem.choices, ({ options }, at) => options[schedule.options[at] ?? 0]?.price ?? 0);
  const calm = early + chosen + idleCost(problem, schedule) + crowdCost(problem, schedule);
  const moved = sum(problem.activities, ({ previousStartS, fixedStartS, isToldAlready }, at) =>
    previousStartS === null || fixedStartS !== null
      ? 0
      : (isToldAlready ? PRICES.toldMin : PRICES.movedMin) * minutes(away(startsS, at, previousStartS)),
  );
  return { spoil, pins, late, ripeness, freshness, calm, moved, total: spoil + pins + late + ripeness + freshness + calm + moved };
}

function staleCost(problem: DayProblem, startsS: ArrayLike<number>, { fresh, dueS }: Goal): number {
  if (fresh === null) return 0;
  return fresh.price * minutes(Math.max(0, dueS - edgeS(problem, startsS, fresh.activity, fresh.edge) - fresh.mostS));
}

/** Minutes for which something stands hot and empty, between two holds in the same state with none between them. */
function idleCost(problem: DayProblem, schedule: Schedule): number {
  const laid = layHolds(problem, schedule);
  return sum(problem.resources, ({ idlePrice }, index) => {
    const on = laid.filter((one) => one.resource === index && one.state !== null && one.toS > one.fromS).sort((a, b) => a.fromS - b.fromS);
    let untilS = -Infinity;
    let state: number | null = null;
    let idleS = 0;
    for (const one of on) {
      if (one.state === state && one.fromS > untilS) idleS += one.fromS - untilS;
      if (one.toS >= untilS) state = one.state;
      untilS = Math.max(untilS, one.toS);
    }
    return idlePrice * minutes(idleS);
  });
}

/** Squares of the share of all hands that is busy, stretch by stretch: half as busy costs a quarter. */
function crowdCost(problem: DayProblem, schedule: Schedule): number {
  const laid = layHolds(problem, schedule);
  return sum(problem.resources, ({ kind, capacity }, index) => {
    if (kind !== LEVEL.kind) return 0;
    const busyS = new Map<number, number>();
    for (const one of laid.filter((candidate) => candidate.resource === index))
      for (let stretch = Math.floor(one.fromS / LEVEL.stretchS); stretch * LEVEL.stretchS < one.toS; stretch += 1) {
        const withinS = Math.min(one.toS, (stretch + 1) * LEVEL.stretchS) - Math.max(one.fromS, stretch * LEVEL.stretchS);
        busyS.set(stretch, (busyS.get(stretch) ?? 0) + withinS * one.amount);
      }
    return LEVEL.price * sum([...busyS.values()], (seconds) => (seconds / (LEVEL.stretchS * Math.max(1, capacity))) ** 2);
  });
}

function away(startsS: ArrayLike<number>, activity: number, fromS: number): number {
  return Math.abs((startsS[activity] ?? Number.NaN) - fromS);
}

function minutes(seconds: number): number {
  return seconds / 60;
}

function sum<One>(all: readonly One[], of: (one: One, index: number) => number): number {
  return all.reduce((total, one, index) => total + of(one, index), 0);
}

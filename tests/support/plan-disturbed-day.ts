import type { Activity, DayProblem, DaySolution, PlanResource } from '../../shared/plan/day/problem.ts';
import type { Random } from '../simulation/support/random.ts';
import { atNow } from './plan-any-day.ts';

/** What goes another way than planned, once an instant has come. */
export interface Disturbed {
  readonly what: string;
  readonly problem: DayProblem;
}

/**
 * A day some time later, with one thing that nobody planned: work takes longer or is done sooner, a start is late, a rest needs more time, a
 * machine is out for a while, somebody is away, an order is wanted sooner, somebody pins a step. Null once everything has begun.
 */
export function disturbed(random: Random, before: DayProblem, solution: Pick<DaySolution, 'startsS' | 'options'>): Disturbed | null {
  const starts = [...solution.startsS].sort((a, b) => a - b);
  const nowBefore = Math.max(0, ...before.activities.flatMap(({ fixedStartS }) => (fixedStartS === null ? [] : [fixedStartS + 1])));
  const ahead = starts.filter((startS) => startS >= nowBefore);
  const [next] = ahead;
  const last = ahead.at(-1);
  if (next === undefined || last === undefined) return null;
  const nowS = Math.min(last, Math.max(nowBefore, next - random.whole(0, 900)) + random.whole(0, 1500));
  const problem = atNow(before, solution, nowS);
  const [what, changed] = random.pick(DISTURBANCES)(random, problem, nowS);
  return { what: `${what} at ${nowS}`, problem: changed };
}

type Disturbance = (random: Random, problem: DayProblem, nowS: number) => readonly [what: string, problem: DayProblem];

const DISTURBANCES: readonly Disturbance[] = [
  longerWork,
  longerWork,
  lateStart,
  lateStart,
  longerRest,
  brokenDown,
  somebodyAway,
  wantedSooner,
  pinned,
  nothing,
];

function longerWork(random: Random, problem: DayProblem, nowS: number): readonly [string, DayProblem] {
  const running = indexesOf(problem, ({ fixedStartS, durationS }) => fixedStartS !== null && fixedStartS + durationS > nowS);
  if (running.length === 0) return nothing(random, problem, nowS);
  const index = random.pick(running);
  return changed('work takes another time', problem, index, ({ fixedStartS, durationS }) => ({
    // Not over before now: that is what it is to be running.
    durationS: Math.max(nowS - (fixedStartS ?? nowS), durationS + random.whole(-300, 1200)),
  }));
}

function lateStart(random: Random, problem: DayProblem, nowS: number): readonly [string, DayProblem] {
  const open = openOf(problem);
  const soonest = open.reduce((best, index) => (previousOf(problem, index) < previousOf(problem, best) ? index : best), open[0] ?? 0);
  if (open.length === 0) return nothing(random, problem, nowS);
  return changed('nobody begins', problem, soonest, ({ previousStartS }) => ({
    releaseS: Math.max(nowS, previousStartS ?? 0) + random.whole(60, 1800),
  }));
}

function longerRest(random: Random, problem: DayProblem): readonly [string, DayProblem] {
  const index = random.whole(0, problem.lags.length - 1);
  const moreS = random.whole(60, 1200);
  const lags = problem.lags.map((lag, at) =>
    at === index
      ? {
          ...lag,
          minS: lag.minS + moreS,
          mostS: lag.mostS === null ? null : lag.mostS + moreS,
          targetS: lag.targetS === null ? null : lag.targetS + moreS,
        }
      : lag,
  );
  return ['a rest needs more time', { ...problem, lags }];
}

function brokenDown(random: Random, problem: DayProblem, nowS: number): readonly [string, DayProblem] {
  return withLess(random, problem, nowS, 'mixer', 'a mixer is out');
}

function somebodyAway(random: Random, problem: DayProblem, nowS: number): readonly [string, DayProblem] {
  return withLess(random, problem, nowS, 'station', 'somebody is away');
}

function withLess(random: Random, problem: DayProblem, nowS: number, kind: string, what: string): readonly [string, DayProblem] {
  const index = random.pick(indexesOfResources(problem, (resource) => resource.kind === kind));
  const untilS = nowS + random.whole(300, 3600);
  const resources = problem.resources.map((one, at): PlanResource => {
    if (at !== index) return one;
    const steps = one.calendar ?? [];
    const capacityAt = (atS: number): number => steps.findLast((step) => step.fromS <= atS)?.capacity ?? one.capacity;
    const kept = steps.filter((step) => step.fromS < nowS || step.fromS > untilS);
    const calendar = [...kept, { fromS: nowS, capacity: 0 }, { fromS: untilS, capacity: capacityAt(untilS) }].sort(
      (a, b) => a.fromS - b.fromS,
    );
    return { ...one, calendar };
  });
  return [what, { ...problem, resources }];
}

function wantedSooner(random: Random, problem: DayProblem): readonly [string, DayProblem] {
  const index = random.whole(0, problem.goals.length - 1);
  return [
    'wanted at another time',
    {
      ...problem,
      goals: problem.goals.map((goal, at) => (at === index ? { ...goal, dueS: goal.dueS + random.whole(-1800, 1800) } : goal)),
    },
  ];
}

function pinned(random: Random, problem: DayProblem, nowS: number): readonly [string, DayProblem] {
  const open = openOf(problem);
  if (open.length === 0) return nothing(random, problem, nowS);
  return changed('somebody pins a step', problem, random.pick(open), ({ previousStartS }) => ({
    pinnedStartS: Math.max(nowS, (previousStartS ?? nowS) + random.whole(-1200, 2400)),
  }));
}

function nothing(_random: Random, problem: DayProblem, _nowS: number): readonly [string, DayProblem] {
  return ['nothing but time', problem];
}

function changed(
  what: string,
  problem: DayProblem,
  index: number,
  change: (activity: Activity) => Partial<Activity>,
): readonly [string, DayProblem] {
  return [what, { ...problem, activities: problem.activities.map((one, at) => (at === index ? { ...one, ...change(one) } : one)) }];
}

function openOf(problem: DayProblem): number[] {
  return indexesOf(problem, ({ fixedStartS }) => fixedStartS === null);
}

function previousOf(problem: DayProblem, index: number): number {
  return problem.activities[index]?.previousStartS ?? Infinity;
}

function indexesOf(problem: DayProblem, is: (activity: Activity) => boolean): number[] {
  return problem.activities.flatMap((one, index) => (is(one) ? [index] : []));
}

function indexesOfResources(problem: DayProblem, is: (resource: PlanResource) => boolean): number[] {
  return problem.resources.flatMap((one, index) => (is(one) ? [index] : []));
}

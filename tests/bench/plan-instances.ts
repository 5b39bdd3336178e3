import type { Arc, Instance } from '../../shared/plan/core/instance.ts';
import { Random } from '../../shared/plan/core/random.ts';

const RESOURCES = 4;
const LONGEST = 10;
const MOST_DEMAND = 10;
/** How many activities earlier a predecessor may lie. */
const REACH = 12;
/** How tight the resources are, by instance in turn: 0 just fits the largest demand, 1 has room for everything at once. */
const ROOMINESS = [0.15, 0.2, 0.3, 0.5];
const MOST_PREDECESSORS = 3;

/** A project of so many activities beside the first and the last, drawn by chance: plain precedence and four resources. */
export function projectOf(activities: number, seed: number): Instance {
  const random = new Random(seed);
  const count = activities + 2;
  const durations = Int32Array.from({ length: count }, (_, activity) => (isInner(activity, count) ? 1 + random.below(LONGEST) : 0));
  const demands = Array.from({ length: RESOURCES }, () =>
    Int32Array.from({ length: count }, (_, activity) =>
      isInner(activity, count) && random.share() < 0.6 ? 1 + random.below(MOST_DEMAND) : 0,
    ),
  );
  const roominess = ROOMINESS[seed % ROOMINESS.length] ?? 0;
  const capacities = Int32Array.from(demands, (needs) => {
    const [most, all] = [Math.max(...needs), needs.reduce((sum, need) => sum + need, 0) / REACH];
    return Math.round(most + roominess * Math.max(0, all - most));
  });
  const arcs = Array.from({ length: activities }, (_, index) => index + 1).flatMap((activity): Arc[] => {
    const before = new Set(
      Array.from({ length: 1 + random.below(MOST_PREDECESSORS) }, () => Math.max(0, activity - 1 - random.below(REACH))),
    );
    return [...[...before].map((from) => precedence(durations, from, activity)), precedence(durations, activity, count - 1)];
  });
  return { durations, demands, capacities, arcs };
}

/**
 * The same project with maximum lags that some schedule keeps: `starts` is one of the project's, and every third arc lets an activity
 * begin at most `slack` later after its predecessor than it does there.
 */
export function withMaximumLags(project: Instance, starts: Int32Array, slack: number): Instance {
  const last = project.durations.length - 1;
  const latest = project.arcs
    .filter(({ from, to }, index) => index % 3 === 0 && from > 0 && to < last)
    .map(({ from, to }): Arc => ({ from: to, to: from, lag: (starts[from] ?? 0) - (starts[to] ?? 0) - slack }));
  return { ...project, arcs: [...project.arcs, ...latest] };
}

function precedence(durations: Int32Array, from: number, to: number): Arc {
  return { from, to, lag: durations[from] ?? 0 };
}

function isInner(activity: number, count: number): boolean {
  return activity > 0 && activity < count - 1;
}

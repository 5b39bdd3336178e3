import type { DayProblem } from '../day/problem.ts';
import { edgeS, resolvedHolds, type ResolvedHold } from './resolved-holds.ts';

/** Why an activity does not begin earlier: what was found first on the way back from it. Indexes of activities and resources. */
export type Holding =
  | { readonly kind: 'busy'; readonly at: number; readonly resource: number; readonly by: number; readonly untilS: number }
  | { readonly kind: 'closed'; readonly at: number; readonly resource: number; readonly untilS: number }
  | { readonly kind: 'released'; readonly at: number }
  | { readonly kind: 'pinned'; readonly at: number }
  | { readonly kind: 'begun'; readonly at: number };

interface Solved {
  readonly startsS: Int32Array;
  readonly options: Int32Array;
}

/**
 * Follows a day back from an activity to what holds it: along the lags that bind, to a resource that another batch has
 * just given free, to somebody who has just come, or to the instant from which on it could begin. Null where nothing
 * binds: it stands later than it needs to.
 */
export function whatHolds(problem: DayProblem, solved: Solved, activity: number): Holding | null {
  const holds = resolvedHolds(problem, solved.startsS, solved.options);
  const seen = new Set<number>();
  let at: number | null = activity;
  while (at !== null && !seen.has(at)) {
    seen.add(at);
    const found = holdingOf(problem, solved, holds, at);
    if (found !== null) return found;
    at = bindingNeighbour(problem, solved, at, seen);
  }
  return null;
}

function holdingOf(problem: DayProblem, { startsS }: Solved, holds: readonly ResolvedHold[], at: number): Holding | null {
  const activity = problem.activities[at];
  const startS = startsS[at] ?? 0;
  if (activity === undefined) return null;
  if (activity.fixedStartS !== null) return { kind: 'begun', at };
  if (activity.pinnedStartS === startS) return { kind: 'pinned', at };
  const begins = holds.filter((hold) => hold.fromS === startS && hold.hold.from === at && hold.hold.fromEdge === 'start');
  for (const own of begins) {
    const blocker = blockerOf(problem, holds, own, activity.batch);
    if (blocker !== null) return { kind: 'busy', at, resource: own.resource, by: blocker.hold.to, untilS: blocker.toS };
  }
  for (const own of begins) {
    if (opensAt(problem, own, startS)) return { kind: 'closed', at, resource: own.resource, untilS: startS };
  }
  return activity.releaseS === startS ? { kind: 'released', at } : null;
}

/** Another batch's hold that ends, set-up included, when the own one begins, and without which the own one would have had room. */
function blockerOf(problem: DayProblem, holds: readonly ResolvedHold[], own: ResolvedHold, batch: number): ResolvedHold | null {
  const resource = problem.resources[own.resource];
  if (resource === undefined) return null;
  const before = holds.filter(
    (other) =>
      other.resource === own.resource &&
      other.index !== own.index &&
      problem.activities[other.hold.to]?.batch !== batch &&
      other.toS > other.fromS &&
      Math.abs(other.toS + setupS(resource.setupS, other.state, own.state) - own.fromS) <= 1,
  );
  return before.sort((a, b) => b.amount - a.amount)[0] ?? null;
}

function setupS(table: readonly (readonly number[])[] | null, from: number | null, to: number | null): number {
  return table === null || from === null || to === null ? 0 : (table[from]?.[to] ?? 0);
}

/** Whether the resource has room for it from this instant on and had none just before. */
function opensAt(problem: DayProblem, own: ResolvedHold, startS: number): boolean {
  const steps = problem.resources[own.resource]?.calendar ?? [];
  const index = steps.findIndex(({ fromS }) => fromS === startS);
  if (index === -1) return false;
  const before = index === 0 ? (problem.resources[own.resource]?.capacity ?? 0) : (steps[index - 1]?.capacity ?? 0);
  return before < own.amount;
}

/** The activity that this one waits for by a lag that binds: one before it, or one that it must not run too far ahead of. */
function bindingNeighbour(problem: DayProblem, { startsS }: Solved, at: number, seen: ReadonlySet<number>): number | null {
  let ahead: number | null = null;
  for (const lag of problem.lags) {
    const gapS = edgeS(problem, startsS, lag.to, lag.toEdge) - edgeS(problem, startsS, lag.from, lag.fromEdge);
    if (lag.to === at && !seen.has(lag.from) && Math.abs(gapS - lag.minS) <= 1) return lag.from;
    if (lag.from === at && !seen.has(lag.to) && lag.mostS !== null && gapS >= lag.mostS - 1) ahead = lag.to;
  }
  return ahead;
}

import type { DayProblem } from '../day/problem.ts';
import { networkOf, type DayNetwork, type Solved } from './day-network.ts';
import { earliestStarts, type Earliest, type Kept } from './earliest.ts';
import { busyS, closedS } from './room-before.ts';

/** Why an activity does not begin earlier. Indexes of activities and resources. */
export type Holding =
  | { readonly kind: 'busy'; readonly at: number; readonly resource: number; readonly by: number; readonly untilS: number }
  | { readonly kind: 'closed'; readonly at: number; readonly resource: number; readonly untilS: number }
  | { readonly kind: 'released'; readonly at: number }
  | { readonly kind: 'pinned'; readonly at: number }
  | { readonly kind: 'begun'; readonly at: number };

/** Shorter than this nobody waits. */
const NOTHING_S = 60;
/** So large a share of what is to be explained has to be. */
const EXPLAINED = 0.5;

const NOTHING: Kept = { turnsOf: () => false, hoursOf: () => false, pins: false };
const ALL: Kept = { turnsOf: () => true, hoursOf: () => true, pins: true };

/** The same of a day that is asked about once. */
export function whatHolds(problem: DayProblem, solved: Solved, activity: number, overS = 0): Holding | null {
  return whatHoldsIn(networkOf(problem, solved), activity, overS);
}

/**
 * What holds an activity back. With nothing but its own lags and what it may begin from, it could be so early; with the turns
 * of one resource, its hours, or a pin kept as well, so much later, at the step nearest to the activity that waits for it.
 * Named is what makes it latest and really was taken, or closed, for so long of the wait: hands that only happened to serve
 * another first are no cause.
 *
 * `overS` is by how much it is too late, in seconds: where its own time makes up half of that, that is named (`released`,
 * `begun`). Null where it stands later than all of that explains: then the order in which the day was made holds it, and
 * nothing that has a name.
 */
export function whatHoldsIn(network: DayNetwork, activity: number, overS = 0): Holding | null {
  const stoodS = network.startsS[activity] ?? 0;
  const alone = earliestStarts(network, NOTHING);
  const aloneS = alone.startsS[activity] ?? 0;
  const all = earliestStarts(network, ALL);
  const allS = all.startsS[activity] ?? 0;
  if (stoodS - allS > Math.max(NOTHING_S, overS * (1 - EXPLAINED))) return null;
  const isOwnTime = overS === 0 ? stoodS - aloneS <= NOTHING_S : aloneS - (stoodS - overS) >= overS * EXPLAINED;
  if (isOwnTime) return sourceOf(alone, activity);
  let found: Holding | null = null;
  let mostS = NOTHING_S;
  for (const kept of oneByOne(network)) {
    const earliest = earliestStarts(network, kept);
    const byS = (earliest.startsS[activity] ?? 0) - aloneS;
    if (byS <= mostS) continue;
    const source = sourceOf(earliest, activity);
    const waitS = source === null ? 0 : Math.min(byS, takenS(network, earliest, alone, source));
    if (waitS <= mostS) continue;
    mostS = waitS;
    found = source;
  }
  // Several things together where none of them does it alone: what it waits for in the end.
  return found ?? sourceOf(all, activity);
}

/** For how long of the wait of a step that stands for it a resource was really taken or closed; a pin always is. */
function takenS({ problem, startsS, holds }: DayNetwork, { because }: Earliest, alone: Earliest, { at }: Holding): number {
  const why = because[at];
  const fromS = alone.startsS[at] ?? 0;
  const toS = startsS[at] ?? 0;
  if (why?.kind === 'turn') {
    const { resource, amount } = why.turn;
    const facts = problem.resources[resource];
    return facts === undefined ? 0 : busyS(facts, holds[resource] ?? [], amount, fromS, toS);
  }
  if (why?.kind === 'hours') {
    const facts = problem.resources[why.resource];
    return facts === undefined ? 0 : closedS(facts, why.amount, fromS, toS);
  }
  return Infinity;
}

/** Each thing that may hold, by itself: pins, then the turns of each resource, then its hours. */
function oneByOne({ problem, turns, manned }: DayNetwork): readonly Kept[] {
  const withTurns = [...new Set(turns.map(({ resource }) => resource))].sort((a, b) => a - b);
  const withHours = [...new Set(manned.map(({ resource }) => resource))].sort((a, b) => a - b);
  const pins = problem.activities.some(({ pinnedStartS }) => pinnedStartS !== null) ? [{ ...NOTHING, pins: true }] : [];
  return [
    ...pins,
    // Whoever has a resource may have it then because of a pin.
    ...withTurns.map((index): Kept => ({ ...NOTHING, pins: true, turnsOf: (resource) => resource === index })),
    ...withHours.map((index): Kept => ({ ...NOTHING, hoursOf: (resource) => resource === index })),
  ];
}

/** Follows an activity back along what made it as late as it is, to the first that is no step of its own way. */
function sourceOf({ because }: Earliest, activity: number): Holding | null {
  const seen = new Set<number>();
  for (let at = activity; !seen.has(at);) {
    seen.add(at);
    const why = because[at];
    switch (why?.kind) {
      case undefined:
        return null;
      case 'link':
        at = why.link.from;
        break;
      case 'turn':
        return { kind: 'busy', at, resource: why.turn.resource, by: why.turn.from, untilS: why.turn.untilS };
      case 'hours':
        return { kind: 'closed', at, resource: why.resource, untilS: why.untilS };
      case 'released':
      case 'pinned':
      case 'begun':
        return { kind: why.kind, at };
    }
  }
  return null;
}

import type { PlanResource } from '../day/problem.ts';
import type { ResolvedHold } from './resolved-holds.ts';

/** Times may be rounded to whole seconds on the way. */
const ROUNDED_S = 1;

/** A hold, and the other one on its resource that had to end before it could begin, with the set-up between them. */
export interface Giver {
  readonly own: ResolvedHold;
  readonly by: ResolvedHold;
  readonly setupS: number;
}

/**
 * For each hold of a resource the one that was in its way last: whose end, a set-up included, is the latest instant before it
 * at which there was no room for it. Holds that always had room have none.
 */
export function giversOf(resource: PlanResource, holds: readonly ResolvedHold[]): readonly Giver[] {
  const lastFirst = holds.toSorted((a, b) => b.toS - a.toS);
  const longestSetupS = Math.max(0, ...(resource.setupS ?? []).flat());
  return holds.flatMap((own): Giver[] => {
    let found: Giver | null = null;
    for (const by of lastFirst) {
      if (by.index === own.index || by.toS > own.fromS + ROUNDED_S) continue;
      if (found !== null && by.toS + longestSetupS <= found.by.toS + found.setupS) break;
      const setupS = setupBetween(resource, by.state, own.state);
      if (by.toS + setupS > own.fromS + ROUNDED_S) continue;
      if (found !== null && by.toS + setupS <= found.by.toS + found.setupS) continue;
      if (setupS > 0 || !hasRoom(resource, holds, own, by.toS - 1)) found = { own, by, setupS };
    }
    return found === null ? [] : [found];
  });
}

/** Whether there is room for a hold beside the others at an instant, as far as those go. */
function hasRoom(resource: PlanResource, holds: readonly ResolvedHold[], own: ResolvedHold, atS: number): boolean {
  const then = holds.filter(({ index, fromS, toS }) => index !== own.index && fromS <= atS && atS < toS);
  if (resource.sharesOneState && own.state !== null && then.some(({ state }) => state !== null && state !== own.state)) return false;
  return then.reduce((sum, { amount }) => sum + amount, own.amount) <= capacityAt(resource, atS);
}

/** How much there is of a resource at an instant. */
export function capacityAt({ capacity, calendar }: PlanResource, atS: number): number {
  return calendar?.findLast(({ fromS }) => fromS <= atS)?.capacity ?? capacity;
}

/** The first instant from `fromS` on from which there is at least `amount` of a resource for so long; Infinity where there never is. */
export function openFromS(resource: PlanResource, amount: number, fromS: number, lengthS: number): number {
  let atS = fromS;
  if (capacityAt(resource, atS) < amount) atS = nextOpeningS(resource, amount, atS);
  for (const step of resource.calendar ?? []) {
    if (step.fromS <= atS) continue;
    if (step.fromS >= atS + lengthS) break;
    if (step.capacity < amount) atS = nextOpeningS(resource, amount, step.fromS);
    if (atS === Infinity) break;
  }
  return atS;
}

function nextOpeningS({ calendar }: PlanResource, amount: number, atS: number): number {
  return calendar?.find(({ fromS, capacity }) => fromS > atS && capacity >= amount)?.fromS ?? Infinity;
}

function setupBetween({ setupS }: PlanResource, from: number | null, to: number | null): number {
  return setupS === null || from === null || to === null ? 0 : (setupS[from]?.[to] ?? 0);
}

/** For how long of a span of time others leave no room for so much of a resource, as if nobody had hours. */
export function busyS(resource: PlanResource, holds: readonly ResolvedHold[], amount: number, fromS: number, toS: number): number {
  const within = holds.filter((hold) => hold.toS > fromS && hold.fromS < toS);
  const instants = [...new Set([fromS, toS, ...within.flatMap((hold) => [hold.fromS, hold.toS])])]
    .filter((atS) => atS >= fromS && atS <= toS)
    .sort((a, b) => a - b);
  return spansS(instants, (atS) => {
    const used = within.reduce((sum, hold) => (hold.fromS <= atS && atS < hold.toS ? sum + hold.amount : sum), 0);
    return used + amount > resource.capacity;
  });
}

/** For how long of a span of time a resource is not there for so much of it, by its hours. */
export function closedS(resource: PlanResource, amount: number, fromS: number, toS: number): number {
  const steps = (resource.calendar ?? []).map((step) => step.fromS).filter((atS) => atS > fromS && atS < toS);
  return spansS([fromS, ...steps, toS], (atS) => capacityAt(resource, atS) < amount);
}

function spansS(instants: readonly number[], counts: (atS: number) => boolean): number {
  return instants.reduce((sum, atS, index) => {
    const nextS = instants[index + 1];
    return nextS !== undefined && counts(atS) ? sum + nextS - atS : sum;
  }, 0);
}

import type { DayNetwork, Link, Manned, Turn } from './day-network.ts';
import { openFromS } from './room-before.ts';

/** What of a day is taken to hold: whose turns are kept, whose hours, and whether pins are. */
export interface Kept {
  readonly turnsOf: (resource: number) => boolean;
  readonly hoursOf: (resource: number) => boolean;
  readonly pins: boolean;
}

/** Why an activity could not be any earlier, as far as what is kept goes. */
export type Because =
  | { readonly kind: 'link'; readonly link: Link }
  | { readonly kind: 'turn'; readonly turn: Turn }
  | { readonly kind: 'hours'; readonly resource: number; readonly amount: number; readonly untilS: number }
  | { readonly kind: 'released' | 'pinned' | 'begun' };

export interface Earliest {
  readonly startsS: Float64Array;
  readonly because: readonly Because[];
}

/**
 * How early everything could begin that leads to an activity if only what is kept held it back, each resource going from one
 * to the next as the day has it. Never later than the day has it: that keeps all of it.
 */
export function earliestStarts({ problem, startsS: stoodS, links, turns, manned }: DayNetwork, kept: Kept): Earliest {
  const startsS = Float64Array.from(problem.activities, ({ fixedStartS, releaseS }, index) =>
    fixedStartS === null ? Math.min(releaseS, stoodS[index] ?? 0) : (stoodS[index] ?? 0),
  );
  const because = problem.activities.map(({ fixedStartS }): Because => ({ kind: fixedStartS === null ? 'released' : 'begun' }));
  const after = problem.activities.map((): (readonly [Link, Because])[] => []);
  for (const link of links) after[link.from]?.push([link, { kind: 'link', link }]);
  for (const turn of turns) if (kept.turnsOf(turn.resource)) after[turn.from]?.push([turn, { kind: 'turn', turn }]);
  const hours = problem.activities.map((): Manned[] => []);
  for (const one of manned) if (kept.hoursOf(one.resource)) hours[one.activity]?.push(one);

  const waiting = new Set(problem.activities.keys());
  const raise = (activity: number, toS: number, why: Because): void => {
    if (problem.activities[activity]?.fixedStartS !== null) return;
    const leastS = Math.min(toS, stoodS[activity] ?? 0);
    if (leastS <= (startsS[activity] ?? 0)) return;
    startsS[activity] = leastS;
    because[activity] = why;
    waiting.add(activity);
  };
  for (const [index, { pinnedStartS }] of problem.activities.entries()) {
    if (kept.pins && pinnedStartS !== null && pinnedStartS === stoodS[index]) raise(index, pinnedStartS, { kind: 'pinned' });
  }
  for (const activity of waiting) {
    waiting.delete(activity);
    for (const { resource, amount, fromAfterS, toAfterS } of hours[activity] ?? []) {
      const facts = problem.resources[resource];
      const fromS = (startsS[activity] ?? 0) + fromAfterS;
      const openS = facts === undefined ? fromS : openFromS(facts, amount, fromS, toAfterS - fromAfterS);
      if (openS <= fromS) continue;
      raise(activity, openS - fromAfterS, {
        kind: 'hours',
        resource,
        amount,
        untilS: Math.min(openS, (stoodS[activity] ?? 0) + fromAfterS),
      });
    }
    for (const [{ to, byS }, why] of after[activity] ?? []) raise(to, (startsS[activity] ?? 0) + byS, why);
  }
  return { startsS, because };
}

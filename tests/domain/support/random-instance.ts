import type { Arc, CapacityStep, Instance } from '../../../shared/plan/core/instance.ts';
import { Random } from '../../simulation/support/random.ts';

/** What a random instance is to be like. */
export interface Shape {
  /** Without the first and the last. */
  readonly activities: number;
  readonly resources: number;
  readonly longest: number;
  readonly capacity: number;
  /** Whether capacities change over time. */
  readonly hasCalendars?: boolean;
}

/** An instance of plain precedence drawn by chance, its activities numbered in no particular order. The same seed draws the same one. */
export function randomInstance(seed: number, { activities, resources, longest, capacity, hasCalendars = false }: Shape): Instance {
  const random = new Random(seed, 'instance');
  const count = activities + 2;
  const inner = shuffled(random, activities);
  const durations = new Int32Array(count);
  for (const activity of inner) durations[activity] = random.whole(0, longest);
  const arcs: Arc[] = [];
  const follow = (from: number, to: number): void => void arcs.push({ from, to, lag: durations[from] ?? 0 });
  for (const [index, to] of inner.entries()) {
    follow(0, to);
    follow(to, count - 1);
    for (const from of inner.slice(Math.max(0, index - 4), index)) if (random.chance(0.25)) follow(from, to);
  }
  const demands = Array.from({ length: resources }, () => {
    const needs = new Int32Array(count);
    for (const activity of inner) needs[activity] = random.chance(0.7) ? random.whole(1, capacity) : 0;
    return needs;
  });
  const instance = { durations, demands, capacities: new Int32Array(resources).fill(capacity), arcs };
  return hasCalendars ? { ...instance, calendars: demands.map((_, resource) => randomCalendar(random, resource, capacity)) } : instance;
}

/** Changes now and then, and at last everything is there again; the first resource of all has no calendar. */
function randomCalendar(random: Random, resource: number, capacity: number): readonly CapacityStep[] | null {
  if (resource === 0) return null;
  const steps: CapacityStep[] = [];
  let from = random.whole(0, 3);
  for (let change = random.whole(1, 3); change > 0; change -= 1) {
    steps.push({ from, capacity: random.whole(0, capacity) });
    from += random.whole(1, 4);
  }
  return [...steps, { from, capacity }];
}

function shuffled(random: Random, count: number): readonly number[] {
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  return numbers
    .map((number) => ({ number, at: random.share() }))
    .sort((one, other) => one.at - other.at)
    .map(({ number }) => number);
}

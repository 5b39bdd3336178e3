import { mostOfEach } from './availability.ts';
import type { Instance } from './instance.ts';
import type { PrecedenceGraph } from './precedence-graph.ts';

/** How many distinct heads are tried, so that the bound of a large instance costs no more than its first schedules. */
const MOST_HEADS = 400;

/**
 * A makespan that no schedule can be below: the longest chain of activities, and for each resource its work: whatever can start no
 * sooner than `head` and leaves `tail` after it fills the resource for its work over its capacity, between the two.
 */
export function lowerBound(instance: Instance, graph: PrecedenceGraph): number {
  const most = mostOfEach(instance);
  return instance.demands.reduce(
    (bound, needs, resource) => Math.max(bound, workBound(needs, most[resource] ?? 0, graph)),
    graph.heads[graph.count - 1] ?? 0,
  );
}

function workBound(needs: Int32Array, capacity: number, { originals, durations, heads, tails }: PrecedenceGraph): number {
  const items = Array.from(originals, (activity, place) => ({
    head: heads[place] ?? 0,
    tail: tails[place] ?? 0,
    work: (needs[activity] ?? 0) * (durations[place] ?? 0),
  })).filter(({ work }) => work > 0);
  items.sort((one, other) => other.tail - one.tail);
  let bound = 0;
  for (const from of thresholds(items.map(({ head }) => head))) {
    let sum = 0;
    for (const { head, tail, work } of items) {
      if (head < from) continue;
      sum += work;
      bound = Math.max(bound, from + Math.ceil(sum / capacity) + tail);
    }
  }
  return bound;
}

/** The distinct values, or evenly chosen ones of too many, the least among them. */
function thresholds(values: readonly number[]): readonly number[] {
  const distinct = [...new Set(values)].sort((one, other) => one - other);
  const step = Math.ceil(distinct.length / MOST_HEADS);
  return distinct.filter((_, index) => index % step === 0);
}

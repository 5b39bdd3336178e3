import type { Arc, Instance } from './instance.ts';
import { rowsOf, type Rows } from './rows.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** An instance whose arcs are all plain precedence, its activities renumbered so that each comes after its predecessors. */
export interface PrecedenceGraph {
  readonly count: number;
  /** The instance's activity at each place of this numbering. */
  readonly originals: Int32Array;
  readonly durations: Int32Array;
  readonly predecessors: Rows;
  readonly successors: Rows;
  /** The earliest start that predecessors allow, were there room for everything. */
  readonly heads: Int32Array;
  /** From an activity's end to the end of everything, at least. */
  readonly tails: Int32Array;
}

/** The graph of an instance whose lags are its durations; null where the arcs run in a circle, so that nothing can ever start. */
export function precedenceGraph(instance: Instance): PrecedenceGraph | null {
  const originals = topologicalOrder(instance);
  if (originals === null) return null;
  const count = originals.length;
  const places = new Int32Array(count);
  for (let place = 0; place < count; place += 1) places[originals[place] as number] = place;
  const durations = originals.map((activity) => instance.durations[activity] as number);
  const before: number[][] = Array.from({ length: count }, () => []);
  const after: number[][] = Array.from({ length: count }, () => []);
  for (const { from, to } of closedArcs(instance)) {
    const [first, second] = [places[from] as number, places[to] as number];
    before[second]?.push(first);
    after[first]?.push(second);
  }
  const [predecessors, successors] = [rowsOf(before), rowsOf(after)];
  const heads = longestFrom(predecessors, durations);
  return { count, originals, durations, predecessors, successors, heads, tails: longestTo(successors, durations) };
}

/** Activities in an order in which each comes after its predecessors, lower numbers first; null where there is none. */
function topologicalOrder(instance: Instance): Int32Array | null {
  const count = instance.durations.length;
  const open = new Int32Array(count);
  const after: number[][] = Array.from({ length: count }, () => []);
  for (const { from, to } of closedArcs(instance)) {
    open[to] = (open[to] as number) + 1;
    after[from]?.push(to);
  }
  const order: number[] = [];
  for (let activity = 0; activity < count; activity += 1) if (open[activity] === 0) order.push(activity);
  for (let next = 0; next < order.length; next += 1) {
    for (const to of after[order[next] as number] ?? []) {
      open[to] = (open[to] as number) - 1;
      if (open[to] === 0) order.push(to);
    }
  }
  return order.length === count ? Int32Array.from(order) : null;
}

/** The arcs, and those that the first and the last activity have by what they mean. */
function closedArcs({ durations, arcs }: Instance): readonly Pick<Arc, 'from' | 'to'>[] {
  const last = durations.length - 1;
  const hasBefore = new Set(arcs.map(({ to }) => to));
  const hasAfter = new Set(arcs.map(({ from }) => from));
  const inner = Array.from({ length: Math.max(0, last - 1) }, (_, index) => index + 1);
  return [
    ...arcs,
    ...inner.filter((activity) => !hasBefore.has(activity)).map((to) => ({ from: 0, to })),
    ...inner.filter((activity) => !hasAfter.has(activity)).map((from) => ({ from, to: last })),
  ];
}

function longestFrom({ offsets, items }: Rows, durations: Int32Array): Int32Array {
  const longest = new Int32Array(durations.length);
  for (let activity = 0; activity < longest.length; activity += 1) {
    for (let at = offsets[activity] as number; at < (offsets[activity + 1] as number); at += 1) {
      const before = items[at] as number;
      longest[activity] = Math.max(longest[activity] as number, (longest[before] as number) + (durations[before] as number));
    }
  }
  return longest;
}

function longestTo({ offsets, items }: Rows, durations: Int32Array): Int32Array {
  const longest = new Int32Array(durations.length);
  for (let activity = longest.length - 1; activity >= 0; activity -= 1) {
    for (let at = offsets[activity] as number; at < (offsets[activity + 1] as number); at += 1) {
      const after = items[at] as number;
      longest[activity] = Math.max(longest[activity] as number, (longest[after] as number) + (durations[after] as number));
    }
  }
  return longest;
}

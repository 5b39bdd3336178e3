import type { PrecedenceGraph } from './precedence-graph.ts';
import type { Profile } from './profile.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/**
 * Serial generation, earliest: one activity after the other at the first instant that its predecessors and the resources allow.
 * `order` names each once, after its predecessors. Fills `starts`; false where an activity has no room within the horizon.
 */
export function generateEarly(
  { durations, predecessors }: PrecedenceGraph,
  profile: Profile,
  order: Int32Array,
  starts: Int32Array,
): boolean {
  const { offsets, items } = predecessors;
  profile.clear();
  for (let index = 0; index < order.length; index += 1) {
    const activity = order[index] as number;
    const duration = durations[activity] as number;
    const end = offsets[activity + 1] as number;
    let from = 0;
    for (let at = offsets[activity] as number; at < end; at += 1) {
      const before = items[at] as number;
      const ready = (starts[before] as number) + (durations[before] as number);
      if (ready > from) from = ready;
    }
    if (duration > 0) {
      from = profile.earliest(activity, duration, from);
      if (from < 0) return false;
      profile.take(activity, duration, from);
    }
    starts[activity] = from;
  }
  return true;
}

/**
 * Serial generation, latest: one activity after the other as late as its successors and the resources allow, everything over by
 * `deadline`. `order` names each once, after its successors. Fills `starts`; false where an activity has no room from 0 on.
 */
export function generateLate(
  { durations, successors }: PrecedenceGraph,
  profile: Profile,
  order: Int32Array,
  deadline: number,
  starts: Int32Array,
): boolean {
  const { offsets, items } = successors;
  profile.clear();
  for (let index = 0; index < order.length; index += 1) {
    const activity = order[index] as number;
    const duration = durations[activity] as number;
    const end = offsets[activity + 1] as number;
    let to = deadline;
    for (let at = offsets[activity] as number; at < end; at += 1) {
      const limit = starts[items[at] as number] as number;
      if (limit < to) to = limit;
    }
    if (duration > 0) {
      to = profile.latest(activity, duration, to);
      if (to < 0) return false;
      profile.take(activity, duration, to);
    }
    starts[activity] = to;
  }
  return true;
}

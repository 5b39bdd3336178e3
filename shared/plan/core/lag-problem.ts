import type { Arc, CapacityStep, Instance } from './instance.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** Two activities that need more of some resource together than there ever is: one has to end before the other begins. */
export interface Conflict {
  readonly one: number;
  readonly other: number;
}

/**
 * An instance as the search with maximum lags wants it. A calendar becomes activities of its own, behind the last: each holds what is
 * missing of the most there ever is, for as long as it is missing, and its start is fixed. So nothing else has to know of calendars.
 */
export interface LagProblem {
  /** Activities and what the calendars add. */
  readonly size: number;
  /** The activity that ends everything. */
  readonly last: number;
  readonly durations: Int32Array;
  /** `needs[resource][activity]`; 0 for what takes no time. */
  readonly needs: readonly Int32Array[];
  /** The most that there ever is of each resource. */
  readonly most: Int32Array;
  /** By resource, who needs it. */
  readonly users: readonly Int32Array[];
  /** The lags, that everything begins after the first activity and ends before the last, and where the calendars' activities are. */
  readonly arcs: readonly Arc[];
  readonly conflicts: readonly Conflict[];
  /** Three by three, sets of which two fit together, but not all. */
  readonly triples: Int32Array;
  /** If there is a schedule at all, one ends by then. */
  readonly horizon: number;
}

/** From `from` to `to`, `amount` of a resource is not there. */
interface Missing {
  readonly resource: number;
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

/** Most sets of three that are kept: they only help to prove, and cost time at every node. */
const MOST_TRIPLES = 4_000;

/** The instance as the search wants it. */
export function lagProblemOf(instance: Instance): LagProblem {
  const { demands, capacities, calendars = [] } = instance;
  const activities = instance.durations.length;
  const horizon = horizonOf(instance);
  const most = capacities.map((capacity, resource) =>
    (calendars[resource] ?? []).reduce((so, step) => Math.max(so, step.capacity), capacity),
  );
  const missing = [...most.keys()].flatMap((resource) =>
    missingOf(resource, capacities[resource] as number, calendars[resource] ?? [], most[resource] as number, horizon),
  );
  const size = activities + missing.length;
  const durations = Int32Array.from([...instance.durations, ...missing.map(({ from, to }) => to - from)]);
  const needs = demands.map((demand, resource) =>
    Int32Array.from({ length: size }, (_, activity) => {
      if (activity < activities) return (durations[activity] as number) > 0 ? (demand[activity] as number) : 0;
      const piece = missing[activity - activities];
      return piece !== undefined && piece.resource === resource ? piece.amount : 0;
    }),
  );
  const users = needs.map((need) => Int32Array.from(need.keys()).filter((activity) => (need[activity] as number) > 0));
  const fixed = missing.flatMap(({ from }, index) => [
    { from: 0, to: activities + index, lag: from },
    { from: activities + index, to: 0, lag: -from },
  ]);
  const arcs = [...instance.arcs, ...enclosing(instance.durations), ...fixed];
  const conflicts = conflictsOf(size, needs, most);
  const triples = triplesOf(size, needs, most);
  return { size, last: activities - 1, durations, needs, most, users, arcs, conflicts, triples, horizon };
}

/** Whether some activity alone needs more of a resource than there ever is. */
export function needsTooMuch({ needs, most }: LagProblem): boolean {
  return needs.some((need, resource) => need.some((amount) => amount > (most[resource] as number)));
}

/** Everything begins after the first activity and has ended when the last begins. */
function enclosing(durations: Int32Array): readonly Arc[] {
  const last = durations.length - 1;
  return Array.from(durations, (duration, activity) => [
    { from: 0, to: activity, lag: 0 },
    { from: activity, to: last, lag: duration },
  ])
    .flat()
    .filter(({ from, to }) => from !== to);
}

/**
 * After the calendars' last change, an instant at which nothing runs and no lag has still to pass can be cut out of any schedule; so
 * the longest of duration and lags of each activity, one after the other, are enough.
 */
function horizonOf({ durations, arcs, calendars = [] }: Instance): number {
  const longest = durations.slice();
  for (const { from, lag } of arcs) longest[from] = Math.max(longest[from] as number, lag);
  const changes = calendars.flatMap((steps) => (steps ?? []).map(({ from }) => from));
  return longest.reduce((sum, length) => sum + length, Math.max(0, ...changes));
}

function missingOf(resource: number, capacity: number, steps: readonly CapacityStep[], most: number, horizon: number): readonly Missing[] {
  const pieces: Missing[] = [];
  let [from, amount] = [0, most - capacity];
  for (const step of steps) {
    if (step.from > from && amount > 0) pieces.push({ resource, from, to: step.from, amount });
    [from, amount] = [Math.max(0, step.from), most - step.capacity];
  }
  if (amount > 0) pieces.push({ resource, from, to: horizon + 1, amount });
  return pieces;
}

function conflictsOf(size: number, needs: readonly Int32Array[], most: Int32Array): readonly Conflict[] {
  const conflicts: Conflict[] = [];
  for (let one = 0; one < size; one += 1) {
    for (let other = one + 1; other < size; other += 1) {
      if (exceeds(needs, most, one, other)) conflicts.push({ one, other });
    }
  }
  return conflicts;
}

function triplesOf(size: number, needs: readonly Int32Array[], most: Int32Array): Int32Array {
  const triples: number[] = [];
  for (let one = 0; one < size; one += 1) {
    for (let other = one + 1; other < size; other += 1) {
      if (exceeds(needs, most, one, other)) continue;
      for (let third = other + 1; third < size; third += 1) {
        if (exceeds(needs, most, one, third) || exceeds(needs, most, other, third)) continue;
        if (exceeds(needs, most, one, other, third)) triples.push(one, other, third);
        if (triples.length >= 3 * MOST_TRIPLES) return Int32Array.from(triples);
      }
    }
  }
  return Int32Array.from(triples);
}

function exceeds(needs: readonly Int32Array[], most: Int32Array, ...activities: readonly number[]): boolean {
  return needs.some(
    (need, resource) => activities.reduce((sum, activity) => sum + (need[activity] as number), 0) > (most[resource] as number),
  );
}

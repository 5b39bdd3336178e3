import type { Instance } from './instance.ts';
import { NarrowProfile } from './narrow-profile.ts';
import { MOST_CAPACITY, packDemands } from './packed-demands.ts';
import type { PrecedenceGraph } from './precedence-graph.ts';
import type { Profile } from './profile.ts';
import { WideProfile } from './wide-profile.ts';

/** Longest horizon that is planned, in the instance's own units of time: the profile holds each instant. */
export const MOST_HORIZON = 2 ** 22;

/**
 * By when everything can be done if it can be done at all: all durations one after the other, once the calendars have nothing more
 * to change. Throws a RangeError where that is later than MOST_HORIZON.
 */
export function horizonOf({ durations, calendars }: Instance): number {
  const last = Math.max(0, ...(calendars ?? []).flatMap((steps) => (steps ?? []).map(({ from }) => from)));
  const horizon = durations.reduce((sum, duration) => sum + duration, last);
  if (horizon > MOST_HORIZON) throw new RangeError(`a plan of ${horizon} units of time is too long; take coarser ones`);
  return horizon;
}

/** The most that there ever is of each resource. Throws a RangeError where that is more than MOST_CAPACITY. */
export function mostOfEach({ capacities, calendars }: Instance): Int32Array {
  return capacities.map((capacity, resource) => {
    const most = Math.max(capacity, ...(calendars?.[resource] ?? []).map((step) => step.capacity));
    if (most > MOST_CAPACITY) throw new RangeError(`a capacity of ${most} is more than can be planned`);
    return most;
  });
}

/** Whether some activity needs more of a resource than there ever is. */
export function hasImpossibleDemand(instance: Instance): boolean {
  const most = mostOfEach(instance);
  return instance.demands.some((needs, resource) =>
    needs.some((need, activity) => need > (most[resource] ?? 0) && (instance.durations[activity] ?? 0) > 0),
  );
}

/** Whether each activity would have room, were it alone with its predecessors. Without it nothing can be planned. */
export function hasRoomForEach({ durations, heads }: PrecedenceGraph, profile: Profile): boolean {
  profile.clear();
  return durations.every((duration, place) => duration === 0 || profile.earliest(place, duration, heads[place] ?? 0) >= 0);
}

/** A profile of all the room that an instance has, its activities numbered as in the graph. No demand is impossible. */
export function profileOf(instance: Instance, { originals, durations, count }: PrecedenceGraph): Profile {
  const { capacities, calendars = [] } = instance;
  // Of what takes no time, the demand means nothing.
  const demands = instance.demands.map((needs) =>
    originals.map((activity, place) => ((durations[place] ?? 0) > 0 ? (needs[activity] ?? 0) : 0)),
  );
  const packed = packDemands(mostOfEach(instance), demands, count);
  const horizon = horizonOf(instance);
  const free = new Int32Array(horizon * packed.words);
  const amounts = capacities.slice();
  const changes = calendars.flatMap((steps, resource) => (steps ?? []).map(({ from, capacity }) => ({ from, capacity, resource })));
  changes.sort((one, other) => one.from - other.from);
  let next = 0;
  for (let instant = 0; instant < horizon; instant += 1) {
    for (let change = changes[next]; change !== undefined && change.from <= instant; change = changes[next]) {
      amounts[change.resource] = change.capacity;
      next += 1;
    }
    packed.pack(amounts, free, instant * packed.words);
  }
  return packed.words === 1
    ? new NarrowProfile(free, packed.needs, packed.guards[0] ?? 0)
    : new WideProfile(free, packed.needs, packed.guards);
}

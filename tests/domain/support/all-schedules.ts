import type { Instance } from '../../../shared/plan/core/instance.ts';
import { capacityAt } from './schedule-faults.ts';

/**
 * Every schedule of a very small instance whose last activity starts by `latest`, by trying every start of every activity in turn and
 * giving up where a lag between two that are placed is not kept or a resource is short. Shares nothing with the planner.
 */
export function allSchedules(instance: Instance, latest: number): readonly (readonly number[])[] {
  const found: (readonly number[])[] = [];
  place(instance, latest, [], (starts) => void found.push(starts));
  return found;
}

/** The least makespan by the same trial, each schedule found bounding those after it; null where there is none by `latest`. */
export function leastWithLags(instance: Instance, latest: number): number | null {
  for (let bound = 0; bound <= latest; bound += 1) {
    let isFound = false;
    place(instance, bound, [], () => {
      isFound = true;
      return true;
    });
    if (isFound) return bound;
  }
  return null;
}

/** By when a schedule ends if there is one: the longest of duration and lags of each activity, once the calendars are constant. */
export function surelyBy({ durations, arcs, calendars = [] }: Instance): number {
  const changes = calendars.flatMap((steps) => (steps ?? []).map(({ from }) => from));
  const longest = [...durations].map((duration, activity) =>
    Math.max(duration, ...arcs.filter(({ from }) => from === activity).map(({ lag }) => lag)),
  );
  return longest.reduce((sum, length) => sum + length, Math.max(0, ...changes));
}

/** True stops the trial. */
function place(
  instance: Instance,
  latest: number,
  starts: readonly number[],
  found: (starts: readonly number[]) => boolean | void,
): boolean {
  const next = starts.length;
  const last = instance.durations.length - 1;
  if (next > last) return found(starts) === true;
  const duration = instance.durations[next] ?? 0;
  const [from, to] = next === 0 ? [0, 0] : windowOf(instance, latest, starts, next);
  for (let start = from; start <= Math.min(to, latest - duration); start += 1) {
    if (hasRoom(instance, starts, next, start) && place(instance, latest, [...starts, start], found)) return true;
  }
  return false;
}

/** Where the lags to and from those that are placed let an activity start. */
function windowOf({ arcs }: Instance, latest: number, starts: readonly number[], next: number): readonly [number, number] {
  let [from, to] = [0, latest];
  for (const arc of arcs) {
    if (arc.to === next && arc.from < next) from = Math.max(from, (starts[arc.from] ?? 0) + arc.lag);
    if (arc.from === next && arc.to < next) to = Math.min(to, (starts[arc.to] ?? 0) - arc.lag);
  }
  return [from, to];
}

/** Whether those that are placed leave room for one more from `start` on. */
function hasRoom(instance: Instance, starts: readonly number[], next: number, start: number): boolean {
  const { durations, demands } = instance;
  for (let instant = start; instant < start + (durations[next] ?? 0); instant += 1) {
    for (const [resource, needs] of demands.entries()) {
      let used = needs[next] ?? 0;
      if (used === 0) continue;
      for (const [activity, begun] of starts.entries()) {
        if (begun <= instant && instant < begun + (durations[activity] ?? 0)) used += needs[activity] ?? 0;
      }
      if (used > capacityAt(instance, resource, instant)) return false;
    }
  }
  return true;
}

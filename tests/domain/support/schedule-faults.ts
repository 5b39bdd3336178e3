import type { Instance } from '../../../shared/plan/core/instance.ts';

/**
 * Everything that is wrong with a schedule, from the definition alone: starts before 0, lags not kept, and instants at which a
 * resource is asked for more than there is. Shares nothing with the planner.
 */
export function scheduleFaults(instance: Instance, starts: ArrayLike<number>): readonly string[] {
  const start = (activity: number): number => starts[activity] ?? Number.NaN;
  const faults = Array.from(instance.durations, (_, activity) => activity).flatMap((activity) =>
    start(activity) >= 0 ? [] : [`${activity} starts at ${start(activity)}`],
  );
  if (starts.length !== instance.durations.length) faults.push(`${starts.length} starts`);
  if (start(0) !== 0) faults.push(`the beginning is at ${start(0)}`);
  for (const { from, to, lag } of instance.arcs) {
    if (!(start(to) - start(from) >= lag)) faults.push(`${from} to ${to} is ${start(to) - start(from)}, not ${lag}`);
  }
  for (const [resource, demands] of instance.demands.entries()) {
    const used = new Map<number, number>();
    for (const [activity, demand] of demands.entries()) {
      const end = start(activity) + (instance.durations[activity] ?? 0);
      for (let instant = start(activity); instant < end; instant += 1) used.set(instant, (used.get(instant) ?? 0) + demand);
    }
    for (const [instant, amount] of used) {
      const there = capacityAt(instance, resource, instant);
      if (amount > there) faults.push(`${amount} of resource ${resource} at ${instant}, where there are ${there}`);
    }
  }
  return faults;
}

/** What there is of a resource at an instant. */
export function capacityAt({ capacities, calendars }: Instance, resource: number, instant: number): number {
  const begun = (calendars?.[resource] ?? []).filter(({ from }) => from <= instant);
  return begun.at(-1)?.capacity ?? capacities[resource] ?? 0;
}

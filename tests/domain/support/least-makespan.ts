import type { Instance } from '../../../shared/plan/core/instance.ts';
import { capacityAt } from './schedule-faults.ts';

/**
 * The least makespan of a very small instance of plain precedence, by trying every start of every activity: for each makespan from
 * 0 up, is there any schedule? Null where there is none up to `longest`. Shares nothing with the planner.
 */
export function leastMakespan(instance: Instance, longest: number): number | null {
  const order = orderOf(instance);
  for (let makespan = 0; makespan <= longest; makespan += 1) {
    const left = instance.demands.map((_, resource) =>
      Array.from({ length: makespan }, (_, instant) => capacityAt(instance, resource, instant)),
    );
    if (fits(instance, makespan, order, left, [])) return makespan;
  }
  return null;
}

/** All activities, each after those that it follows. */
function orderOf({ durations, arcs }: Instance): readonly number[] {
  const order: number[] = [];
  while (order.length < durations.length) {
    const next = [...durations.keys()].find(
      (activity) => !order.includes(activity) && arcs.every(({ from, to }) => to !== activity || order.includes(from)),
    );
    if (next === undefined) throw new Error('the arcs run in a circle');
    order.push(next);
  }
  return order;
}

/** Whether all activities of the order can be placed; `starts` are of those before, by activity, `left` is what they leave. */
function fits(instance: Instance, makespan: number, order: readonly number[], left: readonly number[][], starts: number[]): boolean {
  const [next, ...others] = order;
  if (next === undefined) return true;
  const duration = instance.durations[next] ?? 0;
  const ready = instance.arcs.filter(({ to }) => to === next).map(({ from, lag }) => (starts[from] ?? 0) + lag);
  for (let start = Math.max(0, ...ready); start + duration <= makespan; start += 1) {
    starts[next] = start;
    use(instance, left, next, start, 1);
    const isWithin = left.every((amounts) => amounts.slice(start, start + duration).every((amount) => amount >= 0));
    const isFound = isWithin && fits(instance, makespan, others, left, starts);
    use(instance, left, next, start, -1);
    if (isFound) return true;
  }
  return false;
}

function use({ demands, durations }: Instance, left: readonly number[][], activity: number, start: number, times: number): void {
  for (const [resource, amounts] of left.entries()) {
    const need = demands[resource]?.[activity] ?? 0;
    for (let instant = start; instant < start + (durations[activity] ?? 0); instant += 1)
      amounts[instant] = (amounts[instant] ?? 0) - times * need;
  }
}

import type { Instance } from './instance.ts';
import { lagProblemOf, needsTooMuch } from './lag-problem.ts';
import { LagPropagation } from './lag-propagation.ts';
import { closeLags, CONTRADICTION, copyOf, tighten } from './temporal-closure.ts';

/** Above so many activities, those that stand for calendars counted, propagation costs more than it saves. */
const MOST_ACTIVITIES = 130;

/**
 * A makespan from `from` to `to` that no schedule can be below: the least for which propagation finds no contradiction (a destructive
 * bound, as in Klein and Scholl 1999). `from` where the instance is too large to try.
 */
export function refutedBound(instance: Instance, from: number, to: number): number {
  const problem = lagProblemOf(instance);
  if (problem.size > MOST_ACTIVITIES || needsTooMuch(problem)) return from;
  const closure = closeLags(problem.size, problem.arcs);
  if (closure === null) return from;
  const propagation = new LagPropagation(problem);
  const isRefuted = (makespan: number): boolean => {
    const tried = copyOf(closure);
    return tighten(tried, problem.last, 0, -makespan) === CONTRADICTION || !propagation.propagate(tried);
  };
  let [least, most] = [from, to];
  while (least < most) {
    const middle = Math.floor((least + most) / 2);
    if (isRefuted(middle)) least = middle + 1;
    else most = middle;
  }
  return least;
}

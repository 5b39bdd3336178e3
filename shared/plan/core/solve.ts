import type { Budget, Instance, Outcome } from './instance.ts';
import { solveWithLags } from './lag-search.ts';
import { solvePrecedence } from './precedence-search.ts';

/**
 * Schedules an instance for the least makespan, within the budget: by the search over orders where all arcs are plain precedence,
 * else by the one that knows lags. The same instance, seed and budget give the same outcome. Throws a RangeError where the instance
 * is too long or its capacities are too large to be planned.
 */
export function solveInstance(instance: Instance, budget: Budget): Outcome {
  return isPlainPrecedence(instance) ? solvePrecedence(instance, budget) : solveWithLags(instance, budget);
}

/** Whether each arc only has one activity begin after the other's end. */
export function isPlainPrecedence({ arcs, durations }: Instance): boolean {
  return arcs.every(({ from, lag }) => lag === durations[from]);
}

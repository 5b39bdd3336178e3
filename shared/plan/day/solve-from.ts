import { anneal } from './anneal.ts';
import { compileDay } from './compiled-day.ts';
import { DaySearch } from './day-search.ts';
import { solutionOf } from './day-solution.ts';
import type { PreviousPlan } from './previous-plan.ts';
import type { DayBudget, DayProblem, DaySolution } from './problem.ts';
import { repair } from './repair-day.ts';

/** Near what is known already: it was sought for long before. */
const WARMTH = { share: 0.03, minutes: 10 };

/**
 * Plans a day from a plan of one that is nearly the same: what can stay stays at first, the rest is put beside it, and the
 * search goes on from there. `from` has NOT_PLANNED_S for what that plan had not. Never worse than that plan, mended. The
 * same problem, plan, budget and seed give the same.
 */
export function solveFrom(problem: DayProblem, from: PreviousPlan, budget: DayBudget): DaySolution {
  const day = compileDay(problem);
  const search = new DaySearch(day, budget.seed);
  repair(search, from);
  const schedules = Math.max(0, budget.schedules - 1);
  return solutionOf(day, anneal(search, schedules, WARMTH), schedules + 1);
}

import { anneal } from './anneal.ts';
import { compileDay } from './compiled-day.ts';
import { DaySearch, type PlanCopy } from './day-search.ts';
import { solutionOf } from './day-solution.ts';
import { wentAsPlanned, type PreviousPlan } from './previous-plan.ts';
import { priceOf } from './price-day.ts';
import type { DayBudget, DayCost, DayProblem, DaySolution } from './problem.ts';
import { repair } from './repair-day.ts';

/** Not far from what was: the plan is known, and every move is told to somebody. */
const WARMTH = { share: 0.005, minutes: 2 };
/** A plan that still holds is changed only where spoiling, pins and lateness come to so much less: ten minutes of one order. */
const WORTH_A_CHANGE = 1000;
const SCARCELY = 1e-6;

/**
 * Plans a day again that is under way. What is undisturbed comes back exactly as it was; else the plan is mended and then, within the
 * budget, made better, every move at its price.
 */
export function replanDay(problem: DayProblem, previous: PreviousPlan, budget: DayBudget): DaySolution {
  const day = compileDay(problem);
  const search = new DaySearch(day, budget.seed);
  const isKept = repair(search, previous);
  const mended = search.copy();
  const { cost } = solutionOf(day, mended, 1);
  if (isKept && isGoodAsItIs(cost, previous, wentAsPlanned(day, previous))) return solutionOf(day, mended, 1);
  const schedules = Math.max(0, budget.schedules - 1);
  const better = anneal(search, schedules, WARMTH);
  const found = settled(search, better);
  const isBetter = found.total < mended.total && (!isKept || isWorthIt(cost, priceOfCopy(search, found)));
  return solutionOf(day, isBetter ? found : mended, schedules + 1);
}

/** With nothing spoiled, late or off its pin; or as everybody knows it already. */
function isGoodAsItIs(now: DayCost, { cost }: PreviousPlan, isAsPlanned: boolean): boolean {
  if (now.spoil + now.late + now.pins === 0) return true;
  if (cost !== undefined) return now.spoil + now.late + now.pins <= cost.spoil + cost.late + cost.pins + SCARCELY;
  return isAsPlanned && now.pins === 0;
}

function isWorthIt(before: DayCost, after: DayCost): boolean {
  return before.spoil + before.pins + before.late - (after.spoil + after.pins + after.late) >= WORTH_A_CHANGE;
}

function priceOfCopy({ day }: DaySearch, copy: PlanCopy): DayCost {
  const { startsS, options } = solutionOf(day, copy, 0);
  return priceOf(day.problem, startsS, options).cost;
}

/** Lets every block go back to where it costs least: what was moved on the way and need not be is where it was. */
function settled(search: DaySearch, copy: PlanCopy): PlanCopy {
  const { day, plan, costs, nudger } = search;
  search.load(copy);
  const mark = plan.mark;
  for (let block = 0; block < day.count; block += 1) nudger.nudge(block);
  costs.refreshSince(mark);
  return costs.total < copy.total ? search.copy() : copy;
}

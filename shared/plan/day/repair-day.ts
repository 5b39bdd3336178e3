import { JUST_IN_TIME } from './batch-inserter.ts';
import { batchOrder } from './batch-orders.ts';
import { compileDay, NO_INSTANT_S } from './compiled-day.ts';
import { DaySearch } from './day-search.ts';
import { solutionOf } from './day-solution.ts';
import { previousStarts, putAsBefore, type PreviousPlan } from './previous-plan.ts';
import type { DayProblem, DaySolution } from './problem.ts';
import type { Manner } from './settler.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** An option that the plan had is left only for one with which a block can begin so much sooner. */
const OTHER_OPTION_S = 900;
const AS_BEFORE: Manner = { aheadS: null, isTight: false, isHeldBack: false, whimS: 0, otherOptionS: OTHER_OPTION_S };

/**
 * Mends a plan at once, without a search: what can stay where it was stays there, the rest comes as soon after that as it can, in the order
 * in which it was to begin. A plan that still holds comes back as it was.
 */
export function repairDay(problem: DayProblem, previous: PreviousPlan): DaySolution {
  const search = new DaySearch(compileDay(problem), 0);
  repair(search, previous);
  return solutionOf(search.day, search.copy(), 1);
}

/** Mends the plan of a search that has only what stands in it. Whether everything stayed where it was. */
export function repair(search: DaySearch, previous: PreviousPlan): boolean {
  const { plan } = search;
  const isKept = putAsBefore(search, previous);
  if (!isKept && !inOldOrder(search, previous)) search.construct(batchOrder(search.day, search.openBatches, null), 0, 1);
  plan.keep();
  return isKept;
}

/** What was planned in its old order, then what is new. False where it found no way. */
function inOldOrder(search: DaySearch, previous: PreviousPlan): boolean {
  const { day, plan, settler, inserter, costs } = search;
  const startS = previousStarts(day, previous);
  const mark = plan.mark;
  settler.begin(startS);
  for (let block = 0; block < day.count; block += 1) {
    if (plan.stands[block] === 0 && startS[block] !== NO_INSTANT_S) settler.lift(block, startS[block]);
  }
  const isSettled = settler.settle(AS_BEFORE);
  costs.refreshSince(mark);
  const isMade = isSettled && newBatches(search).every((batch) => inserter.insert(batch, JUST_IN_TIME, 1, true));
  if (!isMade) costs.undoTo(mark);
  return isMade;
}

/** Batches with something that the plan did not have, the most urgent first. */
function newBatches({ day, plan, openBatches }: DaySearch): readonly number[] {
  return batchOrder(
    day,
    openBatches.filter((batch) => (day.blocksOfBatch[batch] as Int32Array).some((block) => plan.stands[block] === 0)),
    null,
  );
}

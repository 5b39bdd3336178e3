import { NO_INSTANT_S } from './compiled-day.ts';
import type { DaySearch } from './day-search.ts';
import type { Manner } from './settler.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Where a plan was, it is kept: nothing is held back for its own sake. */
export const KEPT: Manner = { aheadS: null, isTight: false, isHeldBack: false, whimS: 0, otherOptionS: 0 };

/** What of a batch is moved: all of it, or what stands from an instant on or up to it. */
export type Moved = 'whole' | 'later' | 'earlier';

/** The blocks of a batch that are not fixed. */
export function freeBlocks({ day }: DaySearch, batch: number): number[] {
  return [...(day.blocksOfBatch[batch] as Int32Array)].filter((block) => day.fixedS[block] === NO_INSTANT_S);
}

/** Moves blocks, or those before or after an instant, by so many seconds; the rest gives way. False where it cannot. */
export function shiftBlocks(search: DaySearch, blocks: readonly number[], moved: Moved, pivotS: number, byS: number): boolean {
  const { day, plan, settler, costs } = search;
  const mark = plan.mark;
  settler.begin(day.rank);
  for (const block of blocks) {
    const startS = plan.startS[block] as number;
    if (moved === 'whole' || (moved === 'later' ? startS >= pivotS : startS <= pivotS)) settler.lift(block, startS + byS);
  }
  const isSettled = settler.settle(KEPT);
  costs.refreshSince(mark);
  return isSettled;
}

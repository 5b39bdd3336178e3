import { LEVELLED_KIND } from './crowding.ts';
import type { DaySearch, PlanCopy } from './day-search.ts';
import { freeBlocks, shiftBlocks } from './shift-blocks.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Batches are moved by whole steps of this, up to so many: by less than a stretch of level work up to some of them. */
const STEP_S = 300;
const MOST_STEPS = 12;
/** Batches are moved as a whole in this share of the schedules, else from one of their steps on or up to it. */
const WHOLE_SHARE = 0.5;
const SCARCELY = 1e-6;

/** Whether there is anybody in a day whose work can be level. */
export function hasHands({ day }: DaySearch): boolean {
  return day.problem.resources.some(({ kind }) => kind === LEVELLED_KIND);
}

/**
 * Makes the work of hands more level where nothing dearer speaks against it: moves a batch, or one end of it, a little earlier or later,
 * has the rest give way, and keeps only what costs less. Ends after so many schedules; calls back after each, with the plan if it is better.
 */
export function levelHands(search: DaySearch, schedules: number, onDone: (better: PlanCopy | null) => void): void {
  const { plan, costs, openBatches } = search;
  if (openBatches.length === 0) return;
  for (let done = 0; done < schedules; done += 1) {
    const before = costs.total;
    const mark = plan.mark;
    const isMade = moveABatch(search);
    const isBetter = isMade && costs.total < before - SCARCELY;
    if (!isBetter) costs.undoTo(mark);
    plan.keep();
    onDone(isBetter ? search.copy() : null);
  }
}

function moveABatch(search: DaySearch): boolean {
  const { plan, random, openBatches } = search;
  const blocks = freeBlocks(search, openBatches[random.below(openBatches.length)] as number);
  const pivotS = plan.startS[blocks[random.below(blocks.length)] as number] as number;
  const byS = (1 + random.below(MOST_STEPS)) * STEP_S * (random.share() < 0.5 ? 1 : -1);
  const which = random.share();
  return shiftBlocks(search, blocks, which < WHOLE_SHARE ? 'whole' : which < (1 + WHOLE_SHARE) / 2 ? 'later' : 'earlier', pivotS, byS);
}

import { NEVER_S, NO_INSTANT_S, type CompiledDay } from './compiled-day.ts';
import type { Random } from '../core/random.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** By how much an instant is blurred for another order, at most. */
const BLUR_S = 5400;

/**
 * The batches in the order in which they are put into an empty plan: what has begun comes first, for it cannot give way; then what is to
 * be served before all others; then by the latest start that is still in time. `random` blurs that order; null does not.
 */
export function batchOrder(day: CompiledDay, batches: readonly number[], random: Random | null): readonly number[] {
  const keys = new Map(
    batches.map((batch) => [batch, urgency(day, batch) + (random === null ? 0 : Math.floor((random.share() - 0.5) * 2 * BLUR_S))]),
  );
  return batches.toSorted(
    (one, other) => rankOf(day, one) - rankOf(day, other) || (keys.get(one) ?? 0) - (keys.get(other) ?? 0) || one - other,
  );
}

/** The latest start of the first of its blocks that does not stand yet. */
function urgency({ blocksOfBatch, fixedS, latestS }: CompiledDay, batch: number): number {
  let leastS = NEVER_S;
  for (const block of blocksOfBatch[batch] as Int32Array) {
    if (fixedS[block] === NO_INSTANT_S) leastS = Math.min(leastS, latestS[block] as number);
  }
  return leastS;
}

function rankOf({ problem, blocks, blocksOfBatch, fixedS }: CompiledDay, batch: number): number {
  const list = blocksOfBatch[batch] as Int32Array;
  if (list.some((block) => fixedS[block] !== NO_INSTANT_S)) return 0;
  const isFirst = problem.goals.some((goal) => goal.isFirst && list.includes(blocks.of[goal.activity] as number));
  return isFirst ? 1 : 2;
}

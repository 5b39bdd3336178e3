import type { CompiledDay } from './compiled-day.ts';
import type { PlanCopy } from './day-search.ts';
import { priceOf } from './price-day.ts';
import type { DaySolution } from './problem.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** A plan by activity, with what it costs. */
export function solutionOf(day: CompiledDay, { startS, option }: Pick<PlanCopy, 'startS' | 'option'>, schedules: number): DaySolution {
  const { of, offsetS } = day.blocks;
  const startsS = Int32Array.from(of, (block, activity) => (startS[block] as number) + (offsetS[activity] as number));
  return {
    ...priceOf(
      day.problem,
      startsS,
      option.map((chosen) => Math.max(0, chosen)),
    ),
    schedules,
  };
}

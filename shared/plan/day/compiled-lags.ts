import { startToStartS } from './edges.ts';
import type { DayProblem } from './problem.ts';
import type { RigidBlocks } from './rigid-blocks.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** However long. */
export const NO_MOST_S = 2 ** 30;
/** Nobody wants any time in particular. */
export const NO_TARGET_S = -(2 ** 30);

/** The lags between blocks, counted from the start of one block to the start of the other. */
export interface CompiledLags {
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly minS: Int32Array;
  readonly mostS: Int32Array;
  readonly targetS: Int32Array;
  readonly awayPrice: Float64Array;
  readonly spoilPrice: Float64Array;
  /** Lags by the block that they come from, and by the one that they go to. */
  readonly outOf: readonly Int32Array[];
  readonly into: readonly Int32Array[];
}

/** Lags within a block cannot change and are left out. */
export function compiledLags(problem: DayProblem, blocks: RigidBlocks): CompiledLags {
  const kept = problem.lags.filter(({ from, to }) => blocks.of[from] !== blocks.of[to]);
  const outOf: number[][] = Array.from({ length: blocks.count }, () => []);
  const into: number[][] = Array.from({ length: blocks.count }, () => []);
  for (const [index, lag] of kept.entries()) {
    outOf[blocks.of[lag.from] as number]?.push(index);
    into[blocks.of[lag.to] as number]?.push(index);
  }
  const shiftS = (from: number, to: number): number => (blocks.offsetS[from] as number) - (blocks.offsetS[to] as number);
  const shifts = kept.map((lag) => startToStartS(problem, lag) + shiftS(lag.from, lag.to));
  const shifted = (index: number, seconds: number | null, none: number): number =>
    seconds === null ? none : seconds + (shifts[index] ?? 0);
  return {
    count: kept.length,
    from: Int32Array.from(kept, ({ from }) => blocks.of[from] as number),
    to: Int32Array.from(kept, ({ to }) => blocks.of[to] as number),
    minS: Int32Array.from(kept, ({ minS }, index) => shifted(index, minS, 0)),
    mostS: Int32Array.from(kept, ({ mostS }, index) => shifted(index, mostS, NO_MOST_S)),
    targetS: Int32Array.from(kept, ({ targetS }, index) => shifted(index, targetS, NO_TARGET_S)),
    awayPrice: Float64Array.from(kept, ({ awayPrice }) => awayPrice),
    spoilPrice: Float64Array.from(kept, ({ spoilPrice }) => spoilPrice),
    outOf: outOf.map((list) => Int32Array.from(list)),
    into: into.map((list) => Int32Array.from(list)),
  };
}

/**
 * Blocks in an order in which each comes after those that it has to wait for, else as they are numbered. Where they wait for each other
 * in a circle, as they are numbered.
 */
export function waitingOrder(blocks: RigidBlocks, lags: CompiledLags): Int32Array {
  const waitsFor = new Int32Array(blocks.count);
  for (let lag = 0; lag < lags.count; lag += 1) waitsFor[lags.to[lag] as number] = (waitsFor[lags.to[lag] as number] as number) + 1;
  const order: number[] = [];
  const isDone = new Uint8Array(blocks.count);
  let first = 0;
  const visit = (block: number): void => {
    isDone[block] = 1;
    order.push(block);
    for (const lag of lags.outOf[block] ?? []) waitsFor[lags.to[lag] as number] = (waitsFor[lags.to[lag] as number] as number) - 1;
  };
  while (order.length < blocks.count) {
    while (isDone[first] === 1) first += 1;
    let next = first;
    while (next < blocks.count && (isDone[next] === 1 || (waitsFor[next] as number) > 0)) next += 1;
    visit(next < blocks.count ? next : first);
  }
  return Int32Array.from(order);
}

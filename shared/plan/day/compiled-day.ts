import { compiledHolds, NO_CHOICE, NOWHERE, type CompiledHold } from './compiled-holds.ts';
import { compiledLags, NO_TARGET_S, waitingOrder, type CompiledLags } from './compiled-lags.ts';
import { activityAt, edgeOffsetS } from './edges.ts';
import { movedPrices } from './moved-price.ts';
import { PRICES, type DayProblem, type Edge } from './problem.ts';
import { twinsOf } from './twin-holds.ts';
import { rigidBlocks, type RigidBlocks } from './rigid-blocks.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** It does not stand yet, or nobody has pinned it, or no plan had it. */
export const NO_INSTANT_S = -(2 ** 31);
/** Nothing waits for it. */
export const NEVER_S = 2 ** 30;

const MINUTE_S = 60;

/** What somebody would have a block begin at, and what a second away from it costs. */
export interface Wish {
  readonly atS: number;
  readonly priceS: number;
}

/** A goal, counted from the starts of blocks. Prices are by the second. */
export interface CompiledGoal {
  readonly block: number;
  readonly dueS: number;
  readonly latePriceS: number;
  readonly earlyPriceS: number;
  /** The block that must not begin earlier; -1 where it may be as old as it likes. */
  readonly freshBlock: number;
  readonly notBeforeS: number;
  readonly oldPriceS: number;
}

/** The day as the search works on it: blocks instead of activities, everything found by index. */
export interface CompiledDay {
  readonly problem: DayProblem;
  readonly blocks: RigidBlocks;
  readonly count: number;
  readonly lags: CompiledLags;
  readonly holds: readonly CompiledHold[];
  /** Holds that begin or end with a block, each once. */
  readonly holdsOf: readonly (readonly CompiledHold[])[];
  /** Those of them that may be on the resource of another of them. */
  readonly twinsOf: readonly (readonly CompiledHold[])[];
  /** Holds that may be on a resource. */
  readonly holdsOn: readonly (readonly CompiledHold[])[];
  readonly choicesOf: readonly Int32Array[];
  readonly blocksOfChoice: readonly Int32Array[];
  /** The options of each choice for which there is room. */
  readonly optionsOf: readonly Int32Array[];
  readonly goals: readonly CompiledGoal[];
  readonly goalsOf: readonly Int32Array[];
  readonly wishesOf: readonly (readonly Wish[])[];
  readonly releaseS: Int32Array;
  /** NO_INSTANT_S where it does not stand yet. */
  readonly fixedS: Int32Array;
  readonly pinnedS: Int32Array;
  readonly previousS: Int32Array;
  readonly batchOf: Int32Array;
  readonly blocksOfBatch: readonly Int32Array[];
  /** Place of each block in an order in which each waits only for earlier ones. */
  readonly rank: Int32Array;
  /** The latest start with which everything that waits for it is in time, rests as long as wanted; NEVER_S where nothing does. */
  readonly latestS: Int32Array;
}

/** Makes a day ready for the search. */
export function compileDay(problem: DayProblem): CompiledDay {
  const blocks = rigidBlocks(problem);
  const lags = compiledLags(problem, blocks);
  const holds = compiledHolds(problem, blocks, lags);
  const order = waitingOrder(blocks, lags);
  const goals = compiledGoals(problem, blocks);
  const facts = blockFacts(problem, blocks);
  return {
    problem,
    blocks,
    count: blocks.count,
    lags,
    holds,
    ...heldBy(problem, blocks, holds),
    goals,
    goalsOf: listsOf(
      blocks.count,
      goals.map(({ block, freshBlock }) => (freshBlock < 0 || freshBlock === block ? [block] : [block, freshBlock])),
    ),
    wishesOf: wishesOf(problem, blocks),
    ...facts,
    blocksOfBatch: listsOf(
      problem.batchCount,
      Array.from(facts.batchOf, (batch) => [batch]),
    ),
    rank: ranks(order),
    latestS: latestStarts(order, lags, goals, facts),
  };
}

/** How far an edge of an activity lies after the start of its block. */
function inBlockS(problem: DayProblem, blocks: RigidBlocks, activity: number, edge: Edge): number {
  return (blocks.offsetS[activity] as number) + edgeOffsetS(activityAt(problem, activity), edge);
}

interface BlockFacts {
  readonly releaseS: Int32Array;
  readonly fixedS: Int32Array;
  readonly pinnedS: Int32Array;
  readonly previousS: Int32Array;
  readonly batchOf: Int32Array;
}

function blockFacts(problem: DayProblem, blocks: RigidBlocks): BlockFacts {
  const noInstant = (): Int32Array => new Int32Array(blocks.count).fill(NO_INSTANT_S);
  const facts = {
    releaseS: noInstant(),
    fixedS: noInstant(),
    pinnedS: noInstant(),
    previousS: noInstant(),
    batchOf: new Int32Array(blocks.count),
  };
  for (const [index, activity] of problem.activities.entries()) {
    const block = blocks.of[index] as number;
    const offsetS = blocks.offsetS[index] as number;
    facts.releaseS[block] = Math.max(facts.releaseS[block] as number, activity.releaseS - offsetS);
    if (activity.fixedStartS !== null) facts.fixedS[block] = activity.fixedStartS - offsetS;
    if (activity.pinnedStartS !== null) facts.pinnedS[block] = activity.pinnedStartS - offsetS;
    if (activity.previousStartS !== null) facts.previousS[block] = activity.previousStartS - offsetS;
    facts.batchOf[block] = activity.batch;
  }
  return facts;
}

function wishesOf(problem: DayProblem, blocks: RigidBlocks): readonly (readonly Wish[])[] {
  const wishes: Wish[][] = Array.from({ length: blocks.count }, () => []);
  const moved = movedPrices(problem);
  for (const [index, { pinnedStartS, previousStartS, fixedStartS }] of problem.activities.entries()) {
    if (fixedStartS !== null) continue;
    const list = wishes[blocks.of[index] as number];
    const offsetS = blocks.offsetS[index] as number;
    if (pinnedStartS !== null) list?.push({ atS: pinnedStartS - offsetS, priceS: PRICES.pinMin / MINUTE_S });
    if (previousStartS !== null) list?.push({ atS: previousStartS - offsetS, priceS: (moved[index] as number) / MINUTE_S });
  }
  return wishes.map(merged);
}

/** Wishes for the same instant as one. */
function merged(wishes: readonly Wish[]): readonly Wish[] {
  const prices = new Map<number, number>();
  for (const { atS, priceS } of wishes) prices.set(atS, (prices.get(atS) ?? 0) + priceS);
  return [...prices].map(([atS, priceS]) => ({ atS, priceS }));
}

function compiledGoals(problem: DayProblem, blocks: RigidBlocks): readonly CompiledGoal[] {
  return problem.goals.map(({ activity, edge, dueS, latePrice, earlyPrice, fresh, isFirst }) => ({
    block: blocks.of[activity] as number,
    dueS: dueS - inBlockS(problem, blocks, activity, edge),
    latePriceS: (latePrice + (isFirst ? PRICES.pinMin : 0)) / MINUTE_S,
    earlyPriceS: earlyPrice / MINUTE_S,
    freshBlock: fresh === null ? -1 : (blocks.of[fresh.activity] as number),
    notBeforeS: fresh === null ? 0 : dueS - fresh.mostS - inBlockS(problem, blocks, fresh.activity, fresh.edge),
    oldPriceS: (fresh?.price ?? 0) / MINUTE_S,
  }));
}

function heldBy(
  problem: DayProblem,
  blocks: RigidBlocks,
  holds: readonly CompiledHold[],
): Pick<CompiledDay, 'holdsOf' | 'twinsOf' | 'holdsOn' | 'choicesOf' | 'blocksOfChoice' | 'optionsOf'> {
  const holdsOf: CompiledHold[][] = Array.from({ length: blocks.count }, () => []);
  const holdsOn: CompiledHold[][] = problem.resources.map(() => []);
  const blocksOfChoice: Set<number>[] = problem.choices.map(() => new Set());
  const optionsOf: Set<number>[] = problem.choices.map(({ options }) => new Set(options.keys()));
  for (const hold of holds) {
    holdsOf[hold.from]?.push(hold);
    if (hold.to !== hold.from) holdsOf[hold.to]?.push(hold);
    for (const resource of new Set(hold.resources)) if (resource !== NOWHERE) holdsOn[resource]?.push(hold);
    if (hold.choice === NO_CHOICE) continue;
    blocksOfChoice[hold.choice]?.add(hold.from).add(hold.to);
    for (const [option, resource] of hold.resources.entries()) if (resource === NOWHERE) optionsOf[hold.choice]?.delete(option);
  }
  const choicesOf: number[][] = Array.from({ length: blocks.count }, () => []);
  for (const [choice, set] of blocksOfChoice.entries()) for (const block of set) choicesOf[block]?.push(choice);
  return {
    holdsOf,
    twinsOf: twinsOf(holdsOf),
    holdsOn,
    choicesOf: choicesOf.map((list) => Int32Array.from(list)),
    blocksOfChoice: blocksOfChoice.map((set) => Int32Array.from(set)),
    optionsOf: problem.choices.map(({ fixedOption, options }, choice) => {
      const some = [...(optionsOf[choice] ?? [])];
      return Int32Array.from(fixedOption !== null ? [fixedOption] : some.length > 0 ? some : options.keys());
    }),
  };
}

/** For each of so many, the indexes of the entries that name it. */
function listsOf(count: number, entries: readonly (readonly number[])[]): readonly Int32Array[] {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (const [index, names] of entries.entries()) for (const name of names) lists[name]?.push(index);
  return lists.map((list) => Int32Array.from(list));
}

function ranks(order: Int32Array): Int32Array {
  const rank = new Int32Array(order.length);
  for (const [place, block] of order.entries()) rank[block] = place;
  return rank;
}

function latestStarts(order: Int32Array, lags: CompiledLags, goals: readonly CompiledGoal[], { fixedS, pinnedS }: BlockFacts): Int32Array {
  const latestS = new Int32Array(order.length).fill(NEVER_S);
  for (const { block, dueS } of goals) latestS[block] = Math.min(latestS[block] as number, dueS);
  for (const block of order.toReversed()) {
    for (const lag of lags.outOf[block] ?? []) {
      const nextS = latestS[lags.to[lag] as number] as number;
      if (nextS === NEVER_S) continue;
      const targetS = lags.targetS[lag] as number;
      const gapS = targetS === NO_TARGET_S ? (lags.minS[lag] as number) : targetS;
      latestS[block] = Math.min(latestS[block] as number, nextS - gapS);
    }
    if (pinnedS[block] !== NO_INSTANT_S) latestS[block] = pinnedS[block] as number;
    if (fixedS[block] !== NO_INSTANT_S) latestS[block] = fixedS[block] as number;
  }
  return latestS;
}

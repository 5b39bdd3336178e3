import { activityAt, edgeOffsetS } from './edges.ts';
import type { DayProblem, Hold, PlanResource } from './problem.ts';
import type { CompiledLags } from './compiled-lags.ts';
import type { RigidBlocks } from './rigid-blocks.ts';
import { NO_STATE } from './room.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Not a matter of choice. */
export const NO_CHOICE = -1;
/** It has not begun, or its end stands too. */
export const NOT_BEGUN_S = -(2 ** 31);
/** This option has no room for it. */
export const NOWHERE = -1;

/** What a block holds, from so long after its own or another block's start until so long after its own or another's. */
export interface CompiledHold {
  readonly from: number;
  readonly fromOffsetS: number;
  readonly to: number;
  /** With the turn-round in it. */
  readonly toOffsetS: number;
  /** How long after the start of `from` that of `to` is at least. */
  readonly leastGapS: number;
  /** Where it has begun with what stands fast and its end does not stand: the least until when; NOT_BEGUN_S for all others. */
  readonly begunUntilS: number;
  readonly choice: number;
  /** By option; one where there is no choice. */
  readonly resources: Int32Array;
  readonly amounts: Int32Array;
  readonly states: Int32Array;
}

/** The holds of a day. One that nothing could ever have room for is left out: the builder names it and refuses. */
export function compiledHolds(problem: DayProblem, blocks: RigidBlocks, lags: CompiledLags): readonly CompiledHold[] {
  return problem.holds
    .map((hold) => compiled(problem, blocks, lags, hold))
    .filter(({ resources }) => resources.some((at) => at !== NOWHERE));
}

function compiled(problem: DayProblem, blocks: RigidBlocks, lags: CompiledLags, hold: Hold): CompiledHold {
  const from = blocks.of[hold.from] as number;
  const to = blocks.of[hold.to] as number;
  const { choice, resources, amounts } = placesOf(problem, hold);
  const fits = resources.map((resource, option) => (hasRoom(problem.resources[resource], amounts[option] ?? 0) ? resource : NOWHERE));
  return {
    from,
    fromOffsetS: (blocks.offsetS[hold.from] as number) + edgeOffsetS(activityAt(problem, hold.from), hold.fromEdge),
    to,
    toOffsetS: (blocks.offsetS[hold.to] as number) + edgeOffsetS(activityAt(problem, hold.to), hold.toEdge) + hold.afterS,
    leastGapS: leastGapS(lags, from, to),
    begunUntilS: begunUntilS(problem, hold),
    choice,
    resources: Int32Array.from(fits),
    amounts: Int32Array.from(amounts),
    states: Int32Array.from(resources, (_, option) => hold.states?.[option] ?? NO_STATE),
  };
}

/** Not sooner than what ends it may begin, by its release or by a lag from what it began with. */
function begunUntilS(problem: DayProblem, hold: Hold): number {
  const from = activityAt(problem, hold.from);
  const to = activityAt(problem, hold.to);
  if (from.fixedStartS === null || to.fixedStartS !== null) return NOT_BEGUN_S;
  return to.releaseS + edgeOffsetS(to, hold.toEdge) + hold.afterS;
}

function placesOf(
  problem: DayProblem,
  { on }: Hold,
): { readonly choice: number; readonly resources: readonly number[]; readonly amounts: readonly number[] } {
  if ('resource' in on) return { choice: NO_CHOICE, resources: [on.resource], amounts: [on.amount] };
  const options = problem.choices[on.choice]?.options ?? [];
  return { choice: on.choice, resources: options.map(({ resource }) => resource), amounts: on.amounts };
}

function hasRoom(resource: PlanResource | undefined, amount: number): boolean {
  if (resource === undefined) return false;
  return amount <= resource.capacity || (resource.calendar ?? []).some(({ capacity }) => amount <= capacity);
}

function leastGapS(lags: CompiledLags, from: number, to: number): number {
  let leastS = from === to ? 0 : -(2 ** 30);
  for (const lag of lags.outOf[from] ?? []) if (lags.to[lag] === to) leastS = Math.max(leastS, lags.minS[lag] as number);
  return leastS;
}

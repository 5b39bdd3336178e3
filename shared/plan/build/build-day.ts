import { accepted, refused, type Result } from '../../result.ts';
import type { FloorState } from '../../floor/state.ts';
import { addNow } from './as-it-stands.ts';
import { bindSources } from './bind-sources.ts';
import type { BuiltDay } from './built-day.ts';
import { chainOf } from './chain.ts';
import { addCleanings } from './cleanings.ts';
import { BuildContext } from './context.ts';
import { DayDraft } from './day-draft.ts';
import type { BuildFault, DayInput } from './day-input.ts';
import { allLeaves, Estimates } from './estimates.ts';
import { Families, floorThreads } from './floor-threads.ts';
import { addGoals, serveOrders } from './goals.ts';
import { firstLoading, holdDecks } from './hold-decks.ts';
import { holdHands } from './hold-hands.ts';
import { holdMixers } from './hold-mixers.ts';
import { holdRests } from './hold-rests.ts';
import { holdVessels } from './hold-vessels.ts';
import { PlanBefore } from './plan-before.ts';
import { previousOf } from './previous.ts';
import { proposedThreads } from './proposed-threads.ts';
import { ResourceTable } from './resource-table.ts';
import type { Chain, ChainTree, Thread } from './thread.ts';

const SECOND_MS = 1000;

/**
 * The day as a problem: everything on the floor that is not finished, as it truly stands, and the batches that are
 * proposed. What is on the floor is always built; refused is only a proposed batch that this kitchen can never make, by name.
 */
export function buildDay(input: DayInput): Result<BuiltDay, readonly BuildFault[]> {
  const { state } = input;
  const context = new BuildContext(input, originOf(state, input.nowMs));
  const day = new DayDraft(context, new ResourceTable(context), new PlanBefore(state, input.pins ?? []));
  const families = new Families();
  const threads = [...floorThreads(context, families), ...proposedThreads(context, input.proposed, families)];
  const estimates = new Estimates(context, day.plan);
  const served = serveOrders(day, allLeaves(threads), estimates, firstOrders(input));
  const trees = threads.map((thread) => treeOf(day, thread, null));
  const chains = trees.flatMap(chainsOf);
  for (const chain of chains) {
    holdHands(day, chain);
    holdMixers(day, chain);
    holdDecks(day, chain);
    holdRests(day, chain);
  }
  for (const tree of trees) {
    holdVessels(day, tree);
    bakeInTurn(day, tree);
  }
  bindSources(day, chains, estimates);
  const goalOrders = addGoals(day, served, chains);
  addCleanings(day, families, addNow(day, families));
  if (context.faults.length > 0) return refused(context.faults);
  day.table.withSetups();
  const problem = context.draft.done(families.count);
  return accepted({
    problem,
    originMs: context.originMs,
    steps: day.steps,
    rests: day.rests,
    previous: day.plan.isThere ? previousOf(problem) : null,
    orders: served.allocation,
    goalOrders,
  });
}

/** Before everything that still counts, and before now: a whole second. */
function originOf(state: FloorState, nowMs: number): number {
  let earliestMs = nowMs - SECOND_MS;
  for (const workpiece of Object.values(state.workpieces)) {
    if (workpiece.finishedMs !== null) continue;
    for (const { startedMs, endedMs } of Object.values(workpiece.steps)) earliestMs = Math.min(earliestMs, startedMs ?? endedMs ?? nowMs);
    if (workpiece.parentId !== null) earliestMs = Math.min(earliestMs, workpiece.readyMs);
  }
  return Math.floor(earliestMs / SECOND_MS) * SECOND_MS;
}

function firstOrders({ state, firstOrderIds }: DayInput): ReadonlySet<string> {
  const pinned = Object.values(state.pins).flatMap((pin) => (pin.kind === 'first' ? [pin.orderId] : []));
  return new Set([...pinned, ...(firstOrderIds ?? [])]);
}

function treeOf(day: DayDraft, thread: Thread, above: Chain | null): ChainTree {
  const chain = chainOf(day, thread, above);
  return { chain, below: thread.children.map((child) => treeOf(day, child, chain)) };
}

function chainsOf({ chain, below }: ChainTree): readonly Chain[] {
  return [chain, ...below.flatMap(chainsOf)];
}

/** Loads of one cut go into the oven in the order in which they were shaped. */
function bakeInTurn(day: DayDraft, { below }: ChainTree): void {
  let before: Chain | null = null;
  for (const tree of below) {
    const { chain } = tree;
    bakeInTurn(day, tree);
    if (chain.thread.place.load === undefined) continue;
    const earlier = before === null ? null : firstLoading(before);
    const later = firstLoading(chain);
    if (earlier !== null && later !== null)
      day.context.draft.lag(earlier.start, later.start, { minS: 0, mostS: null, targetS: null, awayPrice: 0 });
    before = chain;
  }
}

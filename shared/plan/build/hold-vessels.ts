import type { Claim, Step } from '../../documents/method.ts';
import { givesBackAt, vesselsNeeded } from '../../floor/vessels.ts';
import type { DayDraft } from './day-draft.ts';
import { holdBetween, takenOf, type Option } from './options.ts';
import type { Point } from './problem-draft.ts';
import type { ChainTree, StepNodes, Thread } from './thread.ts';

/** One way through a tree of chains, from its head to one of its ends. */
interface Path {
  readonly steps: readonly Step[];
  readonly nodes: ReadonlyMap<string, StepNodes>;
  readonly end: Point | null;
  readonly pieces: number | null;
}

/**
 * Counted vessels, from the step that claims them to the one that gives them back, and their turn-round after it. What a
 * cut holds goes with its loads, by pieces; a dough that is divided gives all of its own back.
 */
export function holdVessels(day: DayDraft, tree: ChainTree): void {
  holdFromHere(day, tree);
  for (const below of tree.below) holdVessels(day, below);
}

function holdFromHere(day: DayDraft, tree: ChainTree): void {
  const { thread, nodes } = tree.chain;
  const paths = pathsOf(tree);
  for (const held of thread.workpiece?.vessels ?? []) share(day, paths, firstPoint(tree), [held.vesselId], held.count, thread, null);
  // What a step claims that the dough has already is not taken again.
  const has = new Map((thread.workpiece?.vessels ?? []).map(({ vesselId, count }) => [vesselId, count]));
  for (const own of nodes.values()) {
    if (own.rest === null && day.steps[own.start.activity]?.status === 'over') continue;
    for (const claim of own.step.claims) {
      const needed = claim.kind === 'vessel' ? lackingOf(has, thread, claim) : 0;
      if (needed === 0) continue;
      claimed(day, paths, own, claim, needed, thread);
      for (const id of claim.ids) has.set(id, (has.get(id) ?? 0) + needed);
    }
    for (const id of has.keys()) if (givesBackAt(day.context.kitchen, thread.steps, id) === own.step.id) has.delete(id);
  }
}

function lackingOf(has: ReadonlyMap<string, number>, { pieces }: Thread, claim: Claim): number {
  return Math.max(0, vesselsNeeded(claim, pieces) - Math.max(0, ...claim.ids.map((id) => has.get(id) ?? 0)));
}

function claimed(day: DayDraft, paths: readonly Path[], own: StepNodes, claim: Claim, needed: number, thread: Thread): void {
  const counts = claim.ids.map((id) => day.table.vessel(id)?.count ?? 0);
  const most = Math.max(0, ...counts);
  if (needed > most && thread.place.workpieceId === null) {
    const about = { batchKey: thread.place.batchKey, formulaId: thread.formula.id, productId: thread.product?.id ?? null };
    day.context.faults.push({ ...about, code: 'tooFewVessels', stepId: own.step.id, vesselIds: claim.ids, needed, most });
  }
  const enough = claim.ids.filter((_, index) => (counts[index] ?? 0) >= needed);
  share(day, paths, own.start, enough.length === 0 ? claim.ids : enough, needed, thread, own.step);
}

/** Gives each path its part of the vessels, whole ones, by its pieces. */
function share(
  day: DayDraft,
  paths: readonly Path[],
  from: Point | null,
  ids: readonly string[],
  count: number,
  thread: Thread,
  step: Step | null,
): void {
  const all = paths.reduce((sum, path) => sum + (path.pieces ?? 1), 0);
  let given = 0;
  let behind = 0;
  for (const path of paths) {
    behind += path.pieces ?? 1;
    const upTo = all === 0 ? count : Math.round((count * behind) / all);
    hold(day, path, from, ids, upTo - given, thread, step);
    given = upTo;
  }
}

function hold(
  day: DayDraft,
  path: Path,
  from: Point | null,
  ids: readonly string[],
  count: number,
  thread: Thread,
  step: Step | null,
): void {
  const { kitchen } = day.context;
  const [first] = ids;
  if (count === 0 || first === undefined) return;
  const until = givesBackAt(kitchen, path.steps, first);
  const to = until === null ? path.end : (path.nodes.get(until)?.end ?? path.end);
  const vessels = ids.flatMap((id) => day.table.vessel(id) ?? []);
  const options = vessels.map((vessel, place): Option => ({
    resource: vessel.index,
    amount: Math.min(count, vessel.count),
    price: place * 0.1,
    state: null,
  }));
  const afterS = Math.max(0, ...vessels.map(({ turnRoundS }) => turnRoundS));
  const taken = takenOf(day, options, step === null ? null : day.plan.step(thread, step.id));
  const nodes = step === null ? undefined : path.nodes.get(step.id);
  holdBetween(day, from, to, taken, nodes === undefined ? [] : [nodes], afterS);
}

/** What it holds already it has held since before now: from the first point of it that the problem knows. */
function firstPoint({ chain }: ChainTree): Point | null {
  const [first] = chain.nodes.values();
  return first?.start ?? null;
}

function pathsOf(tree: ChainTree): readonly Path[] {
  const { thread, nodes, end } = tree.chain;
  const here: Path = { steps: thread.steps, nodes, end, pieces: thread.pieces };
  const loads = tree.below.filter(({ chain }) => chain.thread.place.cut === thread.place.cut);
  if (loads.length === 0) return [here];
  return loads
    .flatMap((load) => pathsOf(load))
    .map((path) => ({ ...path, steps: [...here.steps, ...path.steps], nodes: new Map([...here.nodes, ...path.nodes]) }));
}

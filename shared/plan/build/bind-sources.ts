import { PRICES } from '../day/problem.ts';
import type { DayDraft } from './day-draft.ts';
import { batchesOf, byThread, drawsOf, endOfWorkMs, goodFor, type Pair } from './draws.ts';
import type { Estimates } from './estimates.ts';
import { holdKept } from './hold-rests.ts';
import type { Point, Window } from './problem-draft.ts';
import type { Chain, StepNodes } from './thread.ts';
import { secondsOf } from './windows.ts';

/** Rests longer than this bear a deviation in proportion. */
const FULL_PRICE_S = 3600;

/** Somebody who draws, in the problem. */
interface Drawer {
  readonly nodes: StepNodes;
  readonly atMs: number;
}

/**
 * Binds whatever takes of ferments and preps to what it takes of: ripe and not past it, ready and not kept too long; a pot
 * is fed again only when everybody has drawn.
 */
export function bindSources(day: DayDraft, chains: readonly Chain[], estimates: Estimates): void {
  const { pairs } = drawsOf(
    day.context,
    chains.map(({ thread }) => thread),
    estimates,
  );
  const chainOf = byThread(chains);
  const drawers = new Map<Chain, Drawer[]>(chains.filter(({ thread }) => thread.kind !== 'dough').map((chain) => [chain, []]));
  for (const pair of pairs) {
    const drawer = drawerOf(pair, chainOf(pair.taker.by.thread));
    const source = chainOf(pair.source.of);
    if (source !== undefined && drawer !== null) drawers.get(source)?.push(drawer);
  }
  for (const [chain, drawn] of drawers) {
    for (const { nodes } of drawn) bind(day, chain, nodes);
    bindPrep(day, chain, drawn, chains);
    const last = drawn.toSorted((a, b) => a.atMs - b.atMs).at(-1);
    if (last !== undefined) holdKept(day, chain, last.nodes.start.activity);
  }
  feedInTurn(day, drawers, estimates);
}

function drawerOf({ taker }: Pair, chain: Chain | undefined): Drawer | null {
  const nodes = chain?.nodes.get(taker.by.step.id);
  return nodes === undefined ? null : { nodes, atMs: taker.atMs };
}

function bind(day: DayDraft, { thread, kept, end }: Chain, nodes: StepNodes): void {
  const from = kept?.start ?? end;
  if (from === null) return;
  const isFerment = thread.kind === 'ferment';
  const window = goodFor(day.context.state, thread);
  const readyS = secondsOf(thread.serves?.readyMin ?? 0);
  const lag = day.context.draft.lag(from, nodes.start, {
    minS: Math.max(window.minS, readyS),
    mostS: window.mostS === null ? null : Math.max(window.mostS, readyS),
    // A prep is as good at the beginning of its keeping as at the end.
    targetS: isFerment ? window.targetS : null,
    awayPrice: isFerment ? PRICES.ripenessMin * (FULL_PRICE_S / Math.max(FULL_PRICE_S, window.targetS ?? 0)) : 0,
  });
  if (kept !== null) day.endRest(kept.rest, nodes.start, lag);
}

/** Last minute, and not before the step that its order rule names. */
function bindPrep(day: DayDraft, prep: Chain, drawn: readonly Drawer[], chains: readonly Chain[]): void {
  const { serves } = prep.thread;
  const first = firstAhead(day, prep);
  if (serves === null || first === null) return;
  const { withinMin, notBeforeStepId } = serves;
  const { draft } = day.context;
  if (withinMin !== undefined) for (const { nodes } of drawn) draft.lag(first, nodes.start, upTo(secondsOf(withinMin)));
  if (notBeforeStepId === undefined) return;
  const own = chains.filter(({ thread }) => thread.kind === 'dough' && batchesOf(day.context, thread).has(serves.workpieceId));
  const before = own.flatMap(({ nodes }) => nodes.get(notBeforeStepId) ?? [])[0];
  if (before !== undefined) draft.lag(before.start, first, atLeast(0));
}

/** Where a prep that nobody has begun begins; null once somebody has. */
function firstAhead(day: DayDraft, { nodes }: Chain): Point | null {
  const [first] = nodes.values();
  return first === undefined || day.context.draft.isFixed(first.start.activity) ? null : first.start;
}

/** The feeds of one pot one after another: each when what was drawn of the one before has been drawn, and that is ripe. */
function feedInTurn(day: DayDraft, drawers: ReadonlyMap<Chain, readonly Drawer[]>, estimates: Estimates): void {
  const pots = new Map<string, { readonly chain: Chain; readonly atMs: number }[]>();
  for (const [chain, drawn] of drawers) {
    const { kind, formula } = chain.thread;
    if (kind !== 'ferment' || formula.seedG === undefined) continue;
    const firstMs = Math.min(...drawn.map(({ atMs }) => atMs));
    const atMs = endOfWorkMs(chain.thread, estimates) ?? firstMs - (goodFor(day.context.state, chain.thread).targetS ?? 0) * 1000;
    pots.set(formula.id, [...(pots.get(formula.id) ?? []), { chain, atMs }]);
  }
  for (const feeds of pots.values()) {
    feeds.sort((a, b) => a.atMs - b.atMs);
    for (const [index, { chain }] of feeds.entries()) {
      const before = feeds[index - 1]?.chain;
      if (before !== undefined) feedAfter(day, before, chain, drawers.get(before) ?? []);
    }
  }
}

function feedAfter(day: DayDraft, before: Chain, chain: Chain, drawn: readonly Drawer[]): void {
  const first = firstAhead(day, chain);
  if (first === null) return;
  const { draft } = day.context;
  for (const { nodes } of drawn) draft.lag(nodes.end ?? nodes.start, first, atLeast(0));
  if (before.kept === null) return;
  const lag = draft.lag(before.kept.start, first, atLeast(goodFor(day.context.state, before.thread).minS));
  // With nobody to draw from it, the rest lasts until the pot is fed again.
  if (drawn.length === 0) day.endRest(before.kept.rest, first, lag);
}

function atLeast(minS: number): Window {
  return { minS, mostS: null, targetS: null, awayPrice: 0 };
}

function upTo(mostS: number): Window {
  return { minS: 0, mostS, targetS: null, awayPrice: 0 };
}

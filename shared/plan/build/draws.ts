import type { Step } from '../../documents/method.ts';
import { ripeningOf } from '../../floor/ripening.ts';
import type { FloorState } from '../../floor/state.ts';
import type { BuildContext } from './context.ts';
import { drawnFrom, type Source, type Taker } from './drawing.ts';
import type { Estimates } from './estimates.ts';
import { mixingTurns } from './mixing-turns.ts';
import type { Window } from './problem-draft.ts';
import { threadKey, type Thread } from './thread.ts';
import { begunRestWindow, restWindow } from './windows.ts';

/** A step that takes of what another formula makes. */
export interface By {
  readonly thread: Thread;
  readonly step: Step;
}

export type Pair = ReturnType<typeof drawnFrom<Thread, By>>['pairs'][number];

/** From when on a prep may be taken where its method says nothing: at once, and however long. */
const ANY_TIME: Window = { minS: 0, mostS: null, targetS: null, awayPrice: 0 };

/**
 * Who draws on which ferment or prep, of everything on the floor and proposed, and what nothing covers. Tells the
 * estimates by when the sources are wanted, so that what those take of others is reckoned from that.
 */
export function drawsOf(context: BuildContext, threads: readonly Thread[], estimates: Estimates): ReturnType<typeof drawnFrom<Thread, By>> {
  const sources = threads.flatMap((thread) => sourceOf(context.state, thread, estimates));
  const earlierMs = mixingTurns(context, threads, estimates);
  const takers = (): readonly Taker<By>[] =>
    threads.flatMap((thread) =>
      takersOf(context, thread, estimates).map((taker) => ({ ...taker, atMs: taker.atMs - (earlierMs.get(thread) ?? 0) })),
    );
  const first = drawnFrom(sources, takers());
  const drawOn = first.pairs.some(({ taker }) => taker.by.thread.kind !== 'dough');
  for (const { source, taker } of first.pairs) if (source.ripe === null) estimates.wanted(source.of, taker.atMs);
  return drawOn ? drawnFrom(sources, takers()) : first;
}

/** How long what a thread makes is good, from the end of its last work: its last rest, if it ends in one. */
export function goodFor(state: FloorState, { steps, lives, workpiece }: Thread): Window {
  const last = steps.at(-1);
  if (last?.kind !== 'timed') return ANY_TIME;
  const life = lives[last.id];
  if (life === undefined) return restWindow(last, null);
  return begunRestWindow(last, null, life, workpiece === null ? null : ripeningOf(state, workpiece, last, life));
}

function sourceOf(state: FloorState, thread: Thread, estimates: Estimates): readonly Source<Thread>[] {
  const { kind, formula, workpiece, grams, serves } = thread;
  if (kind === 'dough') return [];
  const seedG = workpiece?.stock?.seedG ?? formula.seedG ?? 0;
  const fromMs = endOfWorkMs(thread, estimates);
  const { minS, mostS } = goodFor(state, thread);
  const ripe = fromMs === null ? null : { fromMs: fromMs + minS * 1000, toMs: mostS === null ? null : fromMs + mostS * 1000 };
  return [{ of: thread, formulaId: formula.id, grams: grams - seedG, forBatch: serves?.workpieceId ?? null, ripe }];
}

/** When the work on a source is, or is planned to be, over; null where nobody has said. */
export function endOfWorkMs(thread: Thread, estimates: Estimates): number | null {
  const { workpiece, startMs, steps, lives } = thread;
  if (workpiece === null && startMs === null) return null;
  const last = steps.at(-1);
  if (last?.kind !== 'timed') return estimates.endMs(thread);
  return lives[last.id]?.startedMs ?? estimates.stepMs(thread, last);
}

function takersOf(context: BuildContext, thread: Thread, estimates: Estimates): readonly Taker<By>[] {
  return thread.steps.flatMap((step) => {
    if (step.additions.length === 0 || thread.lives[step.id] !== undefined) return [];
    const taken = new Set(step.additions.flatMap(({ formula }) => (formula === undefined ? [] : [formula])));
    return [...taken].map((formulaId): Taker<By> => ({
      by: { thread, step },
      formulaId,
      grams: gramsTaken(context, thread, step, formulaId),
      batches: batchesOf(context, thread),
      atMs: estimates.stepMs(thread, step),
    }));
  });
}

/** As the floor reckons it: by the weight that the formula was scaled to while it is mixed, by what is there after that. */
function gramsTaken(context: BuildContext, { formula, scaledToG, grams, pieces }: Thread, step: Step, formulaId: string): number {
  const isMixed = formula.method.some((own) => own.id === step.id);
  return context.takenG(step, formulaId, { formula, grams: isMixed ? scaledToG : grams, pieces });
}

/** The names of its batch: of itself and of everything that it came of. */
export function batchesOf({ state }: BuildContext, { place }: Thread): ReadonlySet<string> {
  const names = new Set([place.batchKey]);
  const parentOf = (id: string): string | null => state.workpieces[id]?.parentId ?? null;
  for (let id = parentOf(place.batchKey); id !== null && !names.has(id); id = parentOf(id)) names.add(id);
  return names;
}

/** A thread by the name that its chain has too. */
export function byThread<Of extends { readonly thread: Thread }>(things: readonly Of[]): (thread: Thread) => Of | undefined {
  const found = new Map(things.map((thing) => [`${threadKey(thing.thread.place)} ${thing.thread.startMs ?? ''}`, thing]));
  return (thread) => found.get(`${threadKey(thread.place)} ${thread.startMs ?? ''}`);
}

import { mixersFor } from '../../book/batch-plan.ts';
import { targetMin } from '../../documents/method.ts';
import type { BuildContext } from './context.ts';
import type { Estimates } from './estimates.ts';
import { groupedBy } from './grouped.ts';
import type { Thread } from './thread.ts';

const MINUTE_MS = 60_000;

/** A dough that is still to be planned, with when it would be in its mixer if it had it for itself. */
interface Turn {
  readonly thread: Thread;
  readonly fromMs: number;
  readonly lengthMs: number;
}

/**
 * By how much earlier (later: below nothing) doughs that are still to be planned would be mixed than each by itself, because
 * those for the same mixers take turns: reckoned back from when they are wanted, but none before now. A rough guess, good
 * enough to say how many feeds of a ferment they will draw on.
 */
export function mixingTurns(context: BuildContext, threads: readonly Thread[], estimates: Estimates): ReadonlyMap<Thread, number> {
  const shifts = new Map<Thread, number>();
  const waiting = threads.filter(({ kind, parent, place }) => kind === 'dough' && parent === null && place.workpieceId === null);
  for (const [ids, doughs] of groupedBy(waiting, (thread) => mixerIds(context, thread).join(' '))) {
    if (ids === '') continue;
    const turns = doughs.flatMap((thread) => turnOf(thread, estimates));
    for (const [thread, shiftMs] of inTurns(turns, ids.split(' ').length, context.nowMs)) shifts.set(thread, shiftMs);
  }
  return shifts;
}

function mixerIds(context: BuildContext, { formula }: Thread): readonly string[] {
  return mixersFor(formula, context.kitchen).map(({ id }) => id);
}

function turnOf(thread: Thread, estimates: Estimates): readonly Turn[] {
  const isMixing = (index: number): boolean => thread.steps[index]?.claims.some((claim) => claim.kind === 'mixer') ?? false;
  const first = thread.steps.findIndex((_, index) => isMixing(index));
  const last = thread.steps.findLastIndex((_, index) => isMixing(index));
  const step = thread.steps[first];
  if (step === undefined) return [];
  const minutes = thread.steps.slice(first, last + 1).reduce((sum, each) => sum + targetMin(each, thread.pieces), 0);
  return [{ thread, fromMs: estimates.stepMs(thread, step), lengthMs: minutes * MINUTE_MS }];
}

/** From the last on back, each on the mixer that is free the longest; where that is too early, all of them so much later. */
function inTurns(turns: readonly Turn[], mixers: number, nowMs: number): ReadonlyMap<Thread, number> {
  const freeUntilMs = Array.from({ length: mixers }, () => Number.POSITIVE_INFINITY);
  const fromMs = new Map<Turn, number>();
  for (const turn of [...turns].sort((a, b) => b.fromMs - a.fromMs)) {
    const latestMs = Math.max(...freeUntilMs);
    const startMs = Math.min(turn.fromMs, latestMs - turn.lengthMs);
    freeUntilMs[freeUntilMs.indexOf(latestMs)] = startMs;
    fromMs.set(turn, startMs);
  }
  const lateMs = Math.max(0, nowMs - Math.min(nowMs, ...fromMs.values()));
  return new Map(turns.map((turn) => [turn.thread, turn.fromMs - (fromMs.get(turn) ?? turn.fromMs) - lateMs]));
}

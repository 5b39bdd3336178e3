import type { JournalEntry } from '../../../server/journal/journal.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Counts } from './counts.ts';
import type { TapTruth } from './tap-book.ts';
import type { Violations } from './violation.ts';

/** S7: a step that is over is not ended again, one that has begun not begun again; who comes second is told who was first, and when. */
export function checkStepTaps(
  state: FloorState,
  tap: TapTruth,
  { events, outcome, commandId }: JournalEntry,
  violations: Violations,
  counts: Counts,
): void {
  for (const event of events) {
    if (event.type !== 'stepDone' && event.type !== 'stepSkipped' && event.type !== 'stepStarted') continue;
    const workpiece = state.workpieces[event.workpieceId];
    // A pot is fed and ripens, and is fed again.
    if (workpiece !== undefined && workpiece.stock !== null) continue;
    const life = workpiece?.steps[event.stepId];
    const isAgain = event.type === 'stepStarted' ? life !== undefined : life !== undefined && life.status !== 'started';
    violations.demand(
      'S7',
      !isAgain,
      () => `${event.type} ${event.stepId} by ${commandId}, when it had been ${life?.status ?? ''} already`,
    );
  }
  if (outcome.ok) return;
  const { refusal } = outcome;
  if (refusal.code !== 'stepAlreadyDone' && refusal.code !== 'stepAlreadyStarted') return;
  counts.firstTold += 1;
  const { command } = tap;
  const named = command.type === 'setPin' ? command.pin : command;
  const workpiece = 'workpieceId' in named ? state.workpieces[named.workpieceId] : undefined;
  const life = workpiece?.steps[refusal.stepId ?? ''];
  const isStarted = refusal.code === 'stepAlreadyStarted';
  const wasFirst = isStarted ? { by: life?.startedBy, atMs: life?.startedMs } : { by: life?.endedBy, atMs: life?.endedMs };
  const isTrue =
    life !== undefined &&
    'stepId' in named &&
    refusal.stepId === named.stepId &&
    (isStarted ? life.status === 'started' : life.status !== 'started');
  violations.demand('S7', isTrue, () => `${refusal.code} was said of ${refusal.stepId ?? 'nothing'}, which it is not`);
  violations.demand(
    'S7',
    refusal.deviceId === wasFirst.by && refusal.atMs === wasFirst.atMs,
    () => `${commandId} is told the wrong device or time of who was first`,
  );
}

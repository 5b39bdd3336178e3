import type { JournalEntry } from '../../../server/journal/journal.ts';
import type { FloorState, Workpiece } from '../../../shared/floor/state.ts';
import { TAP_CLOCKS_AGREE_MS } from '../../../shared/floor/tap-time.ts';
import type { Counts } from './counts.ts';
import { CLOCK_SLACK_MS, type HouseTruth } from './house-truth.ts';
import { isCertain, type TapTruth } from './tap-book.ts';
import type { Violations } from './violation.ts';

export interface TapOnDisk {
  /** Before the tap. */
  readonly state: FloorState;
  readonly tap: TapTruth;
  readonly entry: JournalEntry;
  readonly truth: HouseTruth;
  /** True time, now that it is on the disk. */
  readonly nowMs: number;
  readonly clockRightSinceMs: number;
  readonly violations: Violations;
  readonly counts: Counts;
}

/** S8, for the taps that begin and end steps: these say in their events whether their time was taken. */
export function checkTapTimes(onDisk: TapOnDisk): void {
  const { state, tap, entry, violations, counts } = onDisk;
  const { command } = tap;
  if (!entry.outcome.ok || (command.type !== 'finishStep' && command.type !== 'startStep')) return;
  const workpiece = state.workpieces[command.workpieceId];
  if (workpiece === undefined) return;
  const isUncertain = entry.events.some((event) => 'tapUncertain' in event && event.tapUncertain === true);
  if (isUncertain) counts.uncertainTaps += 1;
  else counts.certainTaps += 1;
  violations.demand(
    'S8',
    tap.arrivals.some((arrival) => isCertain(arrival.tap) !== isUncertain),
    () => `the time of ${entry.commandId} counts as ${isUncertain ? 'un' : ''}certain, and never came as that`,
  );
  const earliestMs = lastInstantMs(workpiece);
  const { receivedMs } = entry;
  for (const event of entry.events) {
    if (event.type !== 'stepDone' && event.type !== 'stepStarted') continue;
    // What is drawn from has got there by itself, at its own time.
    if (event.workpieceId !== command.workpieceId) continue;
    const { atMs } = event;
    violations.demand('S8', atMs <= receivedMs, () => `${event.stepId} by ${entry.commandId} is ${atMs - receivedMs} ms in the future`);
    violations.demand(
      'S8',
      atMs >= earliestMs,
      () => `${event.stepId} by ${entry.commandId} is ${earliestMs - atMs} ms before what came before it`,
    );
    if (isUncertain)
      violations.demand(
        'S8',
        atMs === receivedMs,
        () => `${event.stepId} by ${entry.commandId} is uncertain and does not count at its arrival`,
      );
    else checkCertain(onDisk, atMs, earliestMs);
  }
}

/** The server may take it as late as it had it on its way and in its queue, and the phone's clocks may differ by what is allowed. */
function checkCertain({ tap, entry, truth, nowMs, clockRightSinceMs, violations }: TapOnDisk, atMs: number, earliestMs: number): void {
  const slackMs = (CLOCK_SLACK_MS + 1) * truth.pace;
  const isTaken = tap.arrivals.some((arrival) => {
    if (!isCertain(arrival.tap)) return false;
    if (arrival.atMs < clockRightSinceMs) return true;
    const agoMs = arrival.tap.agoMonotonicMs ?? 0;
    const from = truth.at(arrival.atMs - agoMs) - slackMs;
    const to = truth.at(nowMs - agoMs) + slackMs;
    return atMs >= Math.min(entry.receivedMs, Math.max(earliestMs, from)) && atMs <= Math.max(earliestMs, to);
  });
  violations.demand(
    'S8',
    isTaken,
    () => `the tap ${entry.commandId} is certain, and counts at another time than its own: ${Math.round(atMs - truth.at(tap.atMs))} ms off`,
  );
}

/** The last thing that happened to a workpiece; a cut began when it was cut. */
function lastInstantMs(workpiece: Workpiece): number {
  const instants = Object.values(workpiece.steps).flatMap((life) => [life.startedMs ?? 0, life.endedMs ?? 0]);
  return Math.max(workpiece.parentId === null ? 0 : workpiece.plannedStartMs, ...instants);
}

/** S8 at the phone: what it says of a tap's time is true, or it says that it does not know. */
export function checkToldTime(
  tap: TapTruth,
  told: { readonly agoMonotonicMs: number | null; readonly agoWallMs: number },
  now: { readonly trueMs: number; readonly load: number; readonly monotonicMs: number; readonly wallMs: number },
  violations: Violations,
): void {
  const isSameLoad = now.load === tap.load;
  const clocksApartMs = Math.abs(now.monotonicMs - tap.monotonicMs - (now.wallMs - tap.wallMs));
  const shouldBeCertain = isSameLoad && clocksApartMs <= TAP_CLOCKS_AGREE_MS;
  violations.demand(
    'S8',
    isCertain(told) === shouldBeCertain,
    () => `the phone says of ${tap.commandId} that its time is ${shouldBeCertain ? 'un' : ''}certain, which it is not`,
  );
  if (!isCertain(told) || told.agoMonotonicMs === null) return;
  const offMs = Math.abs(told.agoMonotonicMs - (now.trueMs - tap.atMs));
  violations.demand(
    'S8',
    offMs <= TAP_CLOCKS_AGREE_MS + 1,
    () => `the phone says when ${tap.commandId} was, and is ${Math.round(offMs)} ms off`,
  );
}

import type { Logger } from 'pino';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { MAX_CATCH_UP_EVENTS } from '../../shared/wire/protocol.ts';
import type { Journal } from '../journal/journal.ts';
import { readSnapshot } from '../journal/snapshot-file.ts';

/** Events read from the journal at once. */
const PAGE_EVENTS = 5_000;

export interface LoadedState {
  readonly state: FloorState;
  /** Up to where the snapshot went that it began with; 0 without one. */
  readonly snapshotSequence: number;
  /** The last events, for clients that come back after a restart. */
  readonly recent: readonly RecordedEvent[];
}

/** The fold of the journal: from the snapshot where one can be believed, from the first event otherwise. */
export async function loadState(
  journal: Journal,
  kitchenId: string,
  snapshotPath: string | null,
  log: Pick<Logger, 'warn'>,
): Promise<LoadedState> {
  let state = EMPTY_STATE;
  let snapshotSequence = 0;
  if (snapshotPath !== null) {
    const snapshot = await readSnapshot(snapshotPath, journal, kitchenId);
    if (snapshot.ok) ({ state, sequence: snapshotSequence } = snapshot.value);
    else if (snapshot.fault === 'journalDisagrees')
      log.warn({ snapshotPath }, 'the snapshot does not agree with the journal; the journal counts');
  }
  for (;;) {
    const events = await journal.read(kitchenId, state.sequence, PAGE_EVENTS);
    if (events.length === 0) break;
    state = evolveAll(state, events);
  }
  const recent = await journal.read(kitchenId, Math.max(0, state.sequence - MAX_CATCH_UP_EVENTS), MAX_CATCH_UP_EVENTS);
  return { state, snapshotSequence, recent };
}

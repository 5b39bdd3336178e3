import fc from 'fast-check';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { JOURNAL_FILE, SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { join } from 'node:path';
import { Floor } from '../domain/support/floor.ts';
import { bringInCommand, OPENING_MS } from '../domain/support/harbour.ts';
import { SERVER_DEVICE } from '../domain/support/ids.ts';
import { deedArbitrary, meant, type Deed } from '../domain/support/random-day.ts';
import { houseFile } from '../domain/support/random-house.ts';

/** What devices did on a day in one of several houses, by whatever they were told to do. */
export interface History {
  readonly houseNumber: number;
  readonly deeds: readonly Deed[];
}

export const historyArbitrary: fc.Arbitrary<History> = fc.record({
  houseNumber: fc.nat(40),
  deeds: fc.array(deedArbitrary, { minLength: 40, maxLength: 220, size: 'max' }),
});

/** A floor on which it all happened, with every event that was recorded. */
export function lived({ houseNumber, deeds }: History): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(houseFile(houseNumber), OPENING_MS), { deviceId: SERVER_DEVICE });
  const lastOf = new Map<string, string>();
  for (const deed of deeds) {
    const said = meant(floor, deed, lastOf);
    if (said === null) continue;
    const { command, deviceId, tapMs, stationId } = said;
    const given = floor.give(command, { deviceId, tapMs, stationId });
    if (given.decision.ok) lastOf.set(deviceId, given.commandId);
  }
  return floor;
}

/** Keeps events in the journal of a folder, behind what it holds already, with whatever commands and devices they came by. */
export async function keep(folder: string, events: readonly RecordedEvent[]): Promise<void> {
  const journal = new SqliteJournal(join(folder, JOURNAL_FILE));
  const kitchenId = await journal.kitchenId();
  let { sequence } = await journal.head(kitchenId);
  for (let from = 0; from < events.length;) {
    const { commandId, deviceId } = events[from] ?? { commandId: '', deviceId: '' };
    const length = events.slice(from).findIndex((event) => event.commandId !== commandId);
    const own = events.slice(from, length === -1 ? undefined : from + length);
    const entry = {
      commandId,
      deviceId,
      receivedMs: OPENING_MS,
      events: own.map(({ event }) => event),
      outcome: { ok: true, sequence: sequence + own.length, undoable: false } as const,
    };
    ({ sequence } = await journal.append(kitchenId, sequence, [entry]));
    from += own.length;
  }
  await journal.close();
}

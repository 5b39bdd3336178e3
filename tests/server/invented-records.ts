import { readFileSync } from 'node:fs';
import { readBakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { assert } from '../../shared/result.ts';
import { inventedDays } from '../../server/invent/invented-days.ts';
import type { JournalEntry } from '../../server/journal/journal.ts';

const DEMO = new URL('../../fixtures/harbour.json', import.meta.url);

/** Commands of invented days in the demo bakehouse, with what became of them. */
export function inventedEntries(firstDate: string, lastDate: string, seed = 5): readonly JournalEntry[] {
  const read = readBakehouseFile(JSON.parse(readFileSync(DEMO, 'utf8')));
  assert(read.ok, 'the demo bakehouse is a bakehouse file');
  return [...inventedDays({ file: read.value, firstDate, lastDate, seed })].flatMap(({ entries }) => entries);
}

/** The same as events, as a journal would number them. */
export function inventedEvents(firstDate: string, lastDate: string, seed = 5): readonly RecordedEvent[] {
  let sequence = 0;
  return inventedEntries(firstDate, lastDate, seed).flatMap(({ commandId, deviceId, events }) =>
    events.map((event, ordinal): RecordedEvent => ({ sequence: (sequence += 1), commandId, ordinal, deviceId, event })),
  );
}

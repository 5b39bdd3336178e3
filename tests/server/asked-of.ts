import { rmSync } from 'node:fs';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { RecordsBuilder } from '../../server/records/records-builder.ts';
import { RecordsReader } from '../../server/records/records-reader.ts';
import { keep } from './random-history.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

/** Makes records of events in a folder of their own, and asks them. */
export async function askedOf<Value>(
  events: readonly RecordedEvent[],
  ask: (reader: RecordsReader) => Value | Promise<Value>,
): Promise<Value> {
  const folder = temporaryFolder();
  try {
    await keep(folder, events);
    const builder = await RecordsBuilder.open(folder);
    await builder?.catchUp();
    const reader = await RecordsReader.open(folder);
    const value = await ask(reader);
    await reader.close();
    await builder?.close();
    return value;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

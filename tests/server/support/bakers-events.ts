import { fileURLToPath } from 'node:url';
import type { RecordedEvent } from '../../../shared/floor/events.ts';
import { assert } from '../../../shared/result.ts';
import { readBakehouse } from '../../../server/main/read-bakehouse.ts';
import { BakersDays } from '../../bench/bakers-days.ts';
import { OPENING_MS } from '../../domain/support/harbour.ts';

const HARBOUR = fileURLToPath(new URL('../../../fixtures/harbour-plain.json', import.meta.url));

/** The events of so many demo days, worked through by bakers who come a little late. */
export async function bakersEvents(days: number, seed = 1, startMs = OPENING_MS): Promise<readonly RecordedEvent[]> {
  const read = await readBakehouse(HARBOUR);
  assert(read.ok, 'the demo bakehouse has no faults');
  const events: RecordedEvent[] = [];
  const keep: ConstructorParameters<typeof BakersDays>[2] = ({ commandId, deviceId, events: own }) => {
    own.forEach((event, ordinal) => events.push({ sequence: events.length + 1, commandId, ordinal, deviceId, event }));
  };
  const bakers = new BakersDays(read.value, startMs, keep, seed);
  for (let day = 0; day < days; day += 1) bakers.workDay();
  return events;
}

import { statSync } from 'node:fs';
import { join } from 'node:path';
import { assert } from '../../shared/result.ts';
import type { JournalEntry } from '../../server/journal/journal.ts';
import { JOURNAL_FILE, SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { readBakehouse } from '../../server/main/read-bakehouse.ts';
import { BakersDays } from './bakers-days.ts';
import { HARBOUR } from './places.ts';

const DAY_MS = 86_400_000;
/** Commands appended in one go: less work for the disk, and not one byte less in the file. */
const GROUP = 400;

/** What a journal that the bakers filled came to. */
export interface LongJournal {
  readonly events: number;
  readonly commands: number;
  readonly days: number;
  /** The file's size once it is closed. */
  readonly bytes: number;
}

/** Fills a folder's journal with whole demo days until it holds so many events at least, the last day ending about now. */
export async function writeLongJournal(folder: string, leastEvents: number, nowMs: number): Promise<LongJournal> {
  const read = await readBakehouse(HARBOUR);
  assert(read.ok, 'the demo bakehouse has no faults');
  // Once in memory alone, to know how many days there have to be and with that on which day to begin.
  const rehearsal = new BakersDays(read.value, nowMs - DAY_MS, () => {});
  rehearsal.workDay();
  const days = Math.ceil(leastEvents / Math.max(1, rehearsal.state.sequence));
  const path = join(folder, JOURNAL_FILE);
  const journal = new SqliteJournal(path);
  const kitchenId = await journal.kitchenId();
  const waiting: JournalEntry[] = [];
  const bakers = new BakersDays(read.value, nowMs - (days + 1) * DAY_MS, (entry) => waiting.push(entry));
  let commands = 0;
  let worked = 0;
  do {
    bakers.workDay();
    worked += 1;
    assert(worked <= 4 * days + 10, 'the days make events');
    let { sequence } = await journal.head(kitchenId);
    for (let from = 0; from < waiting.length; from += GROUP) {
      ({ sequence } = await journal.append(kitchenId, sequence, waiting.slice(from, from + GROUP)));
    }
    commands += waiting.length;
    waiting.length = 0;
  } while (bakers.state.sequence < leastEvents);
  await journal.close();
  return { events: bakers.state.sequence, commands, days: worked, bytes: statSync(path).size };
}

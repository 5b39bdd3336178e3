import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { accepted, refused, type Result } from '../../shared/result.ts';
import { lockFolder } from '../journal/folder-lock.ts';
import { MAX_GROUP_COMMANDS } from '../journal/group-check.ts';
import type { JournalHead } from '../journal/journal.ts';
import { SNAPSHOT_FILE, writeSnapshot } from '../journal/snapshot-file.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import { Chance } from './chance.ts';
import { inventedDays, type InventedDay, type InventOptions } from './invented-days.ts';

/** So that the kitchen's id is another than what the days are made of, and still the seed's. */
const KITCHEN_SEED = 0x1d;

/** What was kept. */
export interface KeptHistory {
  readonly head: JournalHead;
  readonly days: number;
  readonly openDays: number;
}

/**
 * Makes a history and keeps it in a data folder that has no journal yet, day by day, with a snapshot of its end so that a server starts on
 * it at once. The same options, the same head. Refused, with nothing changed, where the folder has a journal. Throws OpenError where it
 * cannot be had, JournalError where it takes nothing.
 */
export async function keepHistory(
  folder: string,
  options: InventOptions,
  onDay: (day: InventedDay) => void = () => undefined,
): Promise<Result<KeptHistory, string>> {
  const path = join(folder, JOURNAL_FILE);
  if (existsSync(path)) return refused(`${folder} has a journal already: a history is invented only in a folder without one.`);
  const lock = lockFolder(folder);
  try {
    const chance = new Chance(options.seed + KITCHEN_SEED);
    const journal = new SqliteJournal(path, { randomBytes: (length) => chance.bytes(length) });
    try {
      return accepted(await keepDays(journal, join(folder, SNAPSHOT_FILE), options, onDay));
    } finally {
      await journal.close();
    }
  } finally {
    lock.release();
  }
}

async function keepDays(
  journal: SqliteJournal,
  snapshotPath: string,
  options: InventOptions,
  onDay: (day: InventedDay) => void,
): Promise<KeptHistory> {
  let head = await journal.head(await journal.kitchenId());
  let [days, openDays, state] = [0, 0, EMPTY_STATE];
  for (const day of inventedDays(options)) {
    for (let from = 0; from < day.entries.length; from += MAX_GROUP_COMMANDS)
      head = await journal.append(head.kitchenId, head.sequence, day.entries.slice(from, from + MAX_GROUP_COMMANDS));
    ({ state } = day);
    days += 1;
    if (day.isOpen) openDays += 1;
    onDay(day);
  }
  const { kitchenId, sequence, hash } = head;
  if (sequence > 0) await writeSnapshot(snapshotPath, { kitchenId, sequence, hash, state });
  return { head, days, openDays };
}

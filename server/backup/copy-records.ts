import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import { openDatabaseReadOnly } from '../journal/open-database.ts';
import { RECORDS_DATABASE, RECORDS_FILE } from '../records/records-schema.ts';
import { copyDatabase } from './copy-database.ts';

/** More pages than a database can have: a step of all of them reads one state of it, however busily it is written. */
const ALL_PAGES = 0x7fff_ffff;

const checkpointSchema = z.tuple([z.string(), z.number().int(), z.string()]);

/**
 * Copies the records of a data folder into a backup, for whoever opens it with a tool of their own. They follow from the journal: where there
 * are none, or what there is cannot be copied or is not of this journal, the backup does without. `older` are folders of backups before it,
 * whose copies go: records are as large as their journal, and one copy is enough for whoever looks.
 */
export async function copyRecords(dataFolder: string, into: string, older: readonly string[]): Promise<void> {
  const [from, to] = [join(dataFolder, RECORDS_FILE), join(into, RECORDS_FILE)];
  if (!existsSync(from)) return;
  try {
    for (const folder of older) throwAway(join(folder, RECORDS_FILE));
    await copyDatabase(from, to, RECORDS_DATABASE, ALL_PAGES);
    if (!(await areOfJournal(to, dataFolder))) throwAway(to);
  } catch {
    // Whatever it was: a full stick, a file that is damaged, records that are being made anew. The journal's copy is what counts.
    throwAway(to);
  }
}

/** Whether records can be read and are of the journal in a data folder, which may have gone on since the backup's own copy was made. */
async function areOfJournal(path: string, dataFolder: string): Promise<boolean> {
  const database = openDatabaseReadOnly(path, RECORDS_DATABASE);
  const journal = new SqliteJournal(join(dataFolder, JOURNAL_FILE), { readOnly: true });
  try {
    if (database.pragma('quick_check', { simple: true }) !== 'ok') return false;
    const found = checkpointSchema.safeParse(database.prepare('SELECT kitchen, sequence, hash FROM checkpoint').raw().get());
    if (!found.success) return false;
    const [kitchenId, sequence, hash] = found.data;
    return kitchenId === (await journal.knownKitchenId()) && hash === (await journal.hashAt(kitchenId, sequence));
  } finally {
    database.close();
    await journal.close();
  }
}

function throwAway(path: string): void {
  for (const file of [path, `${path}-wal`, `${path}-shm`, `${path}-journal`]) rmSync(file, { force: true });
}

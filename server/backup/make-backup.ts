import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DEVICES_DATABASE, DEVICES_FILE } from '../devices/devices-schema.ts';
import { flush } from '../journal/flush.ts';
import { JOURNAL_DATABASE } from '../journal/journal-schema.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import { loadState } from '../main/load-state.ts';
import { copyDatabase } from './copy-database.ts';
import { copyRecords } from './copy-records.ts';
import { BACKUP_FILE, backupName, backupsIn, toBeThinned, UNFINISHED, type Backup, type BackupFacts } from './backup-folder.ts';

/** What a copy is not: why it cannot be used. */
export class BackupError extends Error {
  override readonly name = 'BackupError';
}

/**
 * Copies journal and devices of a data folder into a new folder of `into`, while a server may be writing (SQLite's online backup), looks at
 * the copy (every hash, and all events folded), and only then gives it its name. Where there are records the newest backup has a copy of
 * them. Older ones are thinned. Throws BackupError where the copy
 * is not right, and whatever the disk says; nothing half made is left behind under a backup's name.
 */
export async function makeBackup(dataFolder: string, into: string, nowMs: number): Promise<Backup> {
  mkdirSync(into, { recursive: true, mode: 0o700 });
  for (const left of readdirSync(into).filter((name) => name.endsWith(UNFINISHED)))
    rmSync(join(into, left), { recursive: true, force: true });
  const folder = join(into, backupName(nowMs));
  const unfinished = `${folder}${UNFINISHED}`;
  mkdirSync(unfinished, { mode: 0o700 });
  try {
    await copyDatabase(join(dataFolder, JOURNAL_FILE), join(unfinished, JOURNAL_FILE), JOURNAL_DATABASE);
    if (existsSync(join(dataFolder, DEVICES_FILE)))
      await copyDatabase(join(dataFolder, DEVICES_FILE), join(unfinished, DEVICES_FILE), DEVICES_DATABASE);
    const found = await checkedCopy(unfinished);
    // After all that counts, so that a stick that is full costs only the records.
    const older = backupsIn(into).map((backup) => backup.folder);
    await copyRecords(dataFolder, unfinished, older);
    const facts: BackupFacts = { format: 1, ...found, madeMs: nowMs };
    writeFileSync(join(unfinished, BACKUP_FILE), `${JSON.stringify(facts)}\n`);
    for (const name of readdirSync(unfinished)) await flush(join(unfinished, name));
    await flush(unfinished);
    renameSync(unfinished, folder);
    await flush(into);
    for (const old of toBeThinned(backupsIn(into), nowMs)) rmSync(old.folder, { recursive: true, force: true });
    return { ...facts, folder };
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    throw error;
  }
}

/**
 * Reads a copy as a server would: its hashes from the first event to the last, and everything folded. Returns whose it is and how far it
 * goes. Throws BackupError where something of it is not what was kept.
 */
export async function checkedCopy(folder: string): Promise<Pick<BackupFacts, 'kitchenId' | 'sequence' | 'hash'>> {
  const journal = new SqliteJournal(join(folder, JOURNAL_FILE), { readOnly: true });
  try {
    const kitchenId = await journal.knownKitchenId();
    if (kitchenId === null) throw new BackupError('The journal is empty: there is nothing to keep yet.');
    const { sequence, hash } = await journal.head(kitchenId);
    const broken = await journal.verifyChain(kitchenId, 1, sequence);
    if (broken !== null) throw new BackupError(`The copy is broken at event ${broken} of ${sequence}.`);
    const { state } = await loadState(journal, kitchenId, null, { warn: () => {} });
    if (state.sequence !== sequence) throw new BackupError(`The copy folds to event ${state.sequence} of ${sequence}.`);
    return { kitchenId, sequence, hash };
  } finally {
    await journal.close();
  }
}

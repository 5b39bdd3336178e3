import { copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { refused, accepted, type Result } from '../../shared/result.ts';
import { DEVICES_FILE } from '../devices/devices-schema.ts';
import { flush } from '../journal/flush.ts';
import { lockFolder } from '../journal/folder-lock.ts';
import { JournalError } from '../journal/journal.ts';
import { OpenError } from '../journal/open-error.ts';
import { SNAPSHOT_FILE } from '../journal/snapshot-file.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import { backupName, backupsIn, factsIn, type Backup } from './backup-folder.ts';
import { checkedCopy } from './make-backup.ts';

/** The files of a house, with what SQLite keeps beside them. */
const FILES = [JOURNAL_FILE, DEVICES_FILE].flatMap((name) => [name, `${name}-wal`, `${name}-shm`]);

/** Where the files of a backup wait until all of them are here. */
const ARRIVING = 'restore.unfinished';

/** What was put back, and where what was there is kept. */
export interface Restored {
  readonly backup: Backup;
  /** Null where nothing was there. */
  readonly asideFolder: string | null;
}

/** The backup that a path names: itself, or the newest in it; null where there is none. */
export function backupAt(path: string): Backup | null {
  const facts = factsIn(path);
  return facts === null ? (backupsIn(path)[0] ?? null) : { ...facts, folder: path };
}

/**
 * Puts a backup into a data folder on which no server runs. What was there is moved aside and kept. Refused, with a sentence that says what
 * would be lost, where the folder has a newer journal or another kitchen's, unless `overNewer`. Throws OpenError where a server
 * runs there, BackupError or JournalError where the backup itself is not right.
 */
export async function restore(backup: Backup, dataFolder: string, nowMs: number, overNewer: boolean): Promise<Result<Restored, string>> {
  const found = await checkedCopy(backup.folder);
  if (found.sequence !== backup.sequence || found.hash !== backup.hash)
    return refused(`${backup.folder} is not what it says of itself: it ends at event ${found.sequence}, not ${backup.sequence}.`);
  const lock = lockFolder(dataFolder);
  try {
    const fault = overNewer ? null : await wouldLose(backup, dataFolder);
    if (fault !== null) return refused(fault);
    // Everything is on this disk before what is there is touched: a disk that fills up costs nothing.
    const names = readdirSync(backup.folder).filter((file) => FILES.includes(file));
    const arriving = join(dataFolder, ARRIVING);
    rmSync(arriving, { recursive: true, force: true });
    mkdirSync(arriving, { mode: 0o700 });
    for (const name of names) {
      copyFileSync(join(backup.folder, name), join(arriving, name));
      await flush(join(arriving, name));
    }
    const asideFolder = setAside(dataFolder, nowMs);
    for (const name of names) renameSync(join(arriving, name), join(dataFolder, name));
    rmSync(arriving, { recursive: true });
    await flush(dataFolder);
    return accepted({ backup, asideFolder });
  } finally {
    lock.release();
  }
}

/** What putting it back would lose, in a sentence; null for nothing. A journal that cannot be read any more is no reason. */
async function wouldLose(backup: Backup, dataFolder: string): Promise<string | null> {
  const path = join(dataFolder, JOURNAL_FILE);
  if (!existsSync(path)) return null;
  let journal: SqliteJournal | null = null;
  try {
    journal = new SqliteJournal(path, { readOnly: true });
    const kitchenId = await journal.knownKitchenId();
    if (kitchenId === null) return null;
    const { sequence } = await journal.head(kitchenId);
    const anyway = 'Say --over-newer to put the backup back all the same; what is there is kept aside.';
    if (kitchenId !== backup.kitchenId) return `${dataFolder} is another kitchen's, with ${sequence} events. ${anyway}`;
    if (sequence <= backup.sequence) return null;
    return `${dataFolder} goes on to event ${sequence}, the backup ends at ${backup.sequence}: ${sequence - backup.sequence} events would be lost. ${anyway}`;
  } catch (error) {
    if (error instanceof OpenError || error instanceof JournalError) return null;
    throw error;
  } finally {
    await journal?.close();
  }
}

function setAside(dataFolder: string, nowMs: number): string | null {
  const there = [...FILES, SNAPSHOT_FILE].filter((name) => existsSync(join(dataFolder, name)));
  if (there.length === 0) return null;
  const asideFolder = join(dataFolder, `before-restore-${backupName(nowMs)}`);
  mkdirSync(asideFolder, { mode: 0o700 });
  for (const name of there) renameSync(join(dataFolder, name), join(asideFolder, name));
  return asideFolder;
}

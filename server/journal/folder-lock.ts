import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { OpenError } from './open-error.ts';
import { sqliteCode } from './sqlite-faults.ts';

/** The file on which the lock is held; it stays empty. */
export const LOCK_FILE = 'lock.db';
/** Which process holds it, for the message only. */
export const LOCK_OWNER_FILE = 'lock.pid';

/** Nobody else's data folder until released, or until the process is gone. */
export interface FolderLock {
  release(): void;
}

/**
 * Takes a data folder for this process, making it where there is none. The lock is the operating system's, held through an
 * exclusive transaction of SQLite's, so that it goes with the process even where that is killed. Throws OpenError:
 * `folderInUse` or `folderNotWritable`. Not for folders on a network file system that does not keep locks.
 */
export function lockFolder(folder: string, pid: number = process.pid): FolderLock {
  makeFolder(folder);
  const ownerFile = join(folder, LOCK_OWNER_FILE);
  const database = heldDatabase(folder, ownerFile);
  try {
    writeFileSync(ownerFile, `${pid}\n`);
  } catch (error) {
    database.close();
    throw notWritable(folder, error);
  }
  const release = (): void => {
    if (!database.open) return;
    // The lock file itself stays: to remove it would leave one who has it open already with a lock on nothing.
    rmSync(ownerFile, { force: true });
    database.close();
    process.off('exit', release);
  };
  // Holds on to the database too, which otherwise would be closed with the garbage where the caller lets go of the lock.
  process.on('exit', release);
  return { release };
}

function makeFolder(folder: string): void {
  try {
    // Readable by its owner only: it holds who worked when.
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    throw notWritable(folder, error);
  }
}

function heldDatabase(folder: string, ownerFile: string): Database.Database {
  let database: Database.Database | undefined;
  try {
    database = new Database(join(folder, LOCK_FILE), { timeout: 0 });
    database.exec('BEGIN EXCLUSIVE');
    return database;
  } catch (error) {
    database?.close();
    if (sqliteCode(error)?.startsWith('SQLITE_BUSY') === true) {
      throw new OpenError('folderInUse', `The data folder ${folder} is in use by another server${owner(ownerFile)}.`, { cause: error });
    }
    throw notWritable(folder, error);
  }
}

function owner(ownerFile: string): string {
  try {
    const pid = readFileSync(ownerFile, 'utf8').trim();
    return /^\d+$/.test(pid) ? ` (process ${pid})` : '';
  } catch {
    // The holder has not written it yet; that the folder is taken is certain all the same.
    return '';
  }
}

function notWritable(folder: string, cause: unknown): OpenError {
  return new OpenError('folderNotWritable', `The data folder ${folder} cannot be written.`, { cause });
}

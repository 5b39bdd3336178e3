import Database from 'better-sqlite3';
import { JournalError } from './journal.ts';

/** SQLite's result code with its extension, such as `SQLITE_IOERR_WRITE`; null for an error that is not SQLite's. */
export function sqliteCode(error: unknown): string | null {
  return error instanceof Database.SqliteError ? error.code : null;
}

/**
 * Whether SQLite says that the disk is full. The shared-memory file beside a write-ahead log cannot grow for the same reason
 * and says it in another way (https://www.sqlite.org/rescode.html#ioerr_shmsize).
 */
export function isDiskFull(error: unknown): boolean {
  const code = sqliteCode(error);
  return code === 'SQLITE_FULL' || code === 'SQLITE_IOERR_SHMSIZE';
}

/** A fault of SQLite's as the journal names it; every other error is a bug and stays as it is. */
export function journalFault(error: unknown): unknown {
  const code = sqliteCode(error);
  if (code === null) return error;
  if (isDiskFull(error)) return new JournalError('diskFull', 'The disk is full.', { cause: error });
  return new JournalError('journalFailed', `The journal's database failed (${code}).`, { cause: error });
}

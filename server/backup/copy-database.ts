import Database from 'better-sqlite3';
import { openDatabaseReadOnly, type DatabaseKind } from '../journal/open-database.ts';

/** Pages that SQLite copies before others get a turn: the floor's own writes are never held up. */
const PAGES_AT_ONCE = 200;

/** Copies a database of ours that may be being written (SQLite's online backup) into one file without a log beside it. */
export async function copyDatabase(from: string, to: string, kind: DatabaseKind, pagesAtOnce = PAGES_AT_ONCE): Promise<void> {
  const database = openDatabaseReadOnly(from, kind);
  try {
    await database.backup(to, { progress: () => pagesAtOnce });
  } finally {
    database.close();
  }
  // One file, without a log beside it: a stick may be read where nothing can be written.
  const copy = new Database(to);
  try {
    copy.pragma('journal_mode = DELETE');
  } finally {
    copy.close();
  }
}

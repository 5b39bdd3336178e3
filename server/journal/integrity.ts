import { basename, dirname } from 'node:path';
import type Database from 'better-sqlite3';
import type { DatabaseKind } from './open-database.ts';
import { openDatabaseReadOnly } from './open-database.ts';
import { sqliteCode } from './sqlite-faults.ts';
import { OpenError } from './open-error.ts';

/** What SQLite says of a file in which it finds nothing wrong. */
const FINE = 'ok';

/** In SQLite's words: damage that it cannot read past is thrown, all other is told. */
function whatIsWrong(database: Database.Database): string {
  try {
    return String(database.pragma('quick_check(1)', { simple: true }));
  } catch (error) {
    const code = sqliteCode(error);
    if (code === null) throw error;
    return code;
  }
}

/**
 * Looks a file over before it is used (`PRAGMA quick_check`: every page and record, not the order of indexes). Throws OpenError
 * `databaseDamaged` with the first thing that is wrong; nothing is changed.
 */
export function checkIntegrity(path: string, kind: DatabaseKind): void {
  const database = openDatabaseReadOnly(path, kind, 'orEmpty');
  try {
    const found = whatIsWrong(database);
    if (found !== FINE)
      throw new OpenError('databaseDamaged', `${basename(path)} in ${dirname(path)} is damaged (${found}). It is left as it is.`);
  } finally {
    database.close();
  }
}

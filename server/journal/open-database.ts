import { existsSync, statSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import Database from 'better-sqlite3';
import { assert } from '../../shared/result.ts';
import { OpenError } from './open-error.ts';
import { isDiskFull, sqliteCode } from './sqlite-faults.ts';

/** How long a statement waits for a lock, in ms. Small: the process waits with it, and no other server may be in the folder. */
export const BUSY_TIMEOUT_MS = 200;

/** A database has at least one page, and the smallest pages have 512 bytes (https://www.sqlite.org/fileformat2.html section 1.2). */
const LEAST_FILE_BYTES = 512;

/** A kind of database of ours. */
export interface DatabaseKind {
  /** SQLite's application_id: which program's file it is, 32 bits. */
  readonly applicationId: number;
  /** Kept as user_version. */
  readonly schemaVersion: number;
  /** The statements that make the tables, run once in one transaction. */
  readonly schema: string;
  /** By older schema: the statements that make the next one of it. What has no line here is refused. */
  readonly lifts?: Readonly<Record<number, string>>;
}

/**
 * Opens a database of ours, making it where there is none: write-ahead log, every commit flushed (`synchronous=FULL`),
 * foreign keys held. Throws OpenError; a file that is refused is not changed by a byte.
 */
export function openDatabase(path: string, kind: DatabaseKind): Database.Database {
  // Looked at read-only first: a file that turns out to be someone else's must not even have its log folded in.
  if (existsSync(path)) openDatabaseReadOnly(path, kind, 'orEmpty').close();
  return opened(path, {}, (database) => {
    if (isEmpty(database)) makeTables(database, kind);
    else lift(database, kind);
    setPragmas(database);
  });
}

/**
 * Opens a database of ours for reading only, beside a server that may be writing to it. With `orEmpty` one without any table
 * will do too. Throws OpenError.
 */
export function openDatabaseReadOnly(path: string, kind: DatabaseKind, least: 'ours' | 'orEmpty' = 'ours'): Database.Database {
  if (!existsSync(path)) throw new OpenError('databaseMissing', `There is no ${path}.`);
  return opened(path, { readonly: true }, (database) => {
    if (least !== 'orEmpty' || !isEmpty(database)) checkOurs(database, path, kind);
  });
}

/** One of SQLite's settings that are numbers. */
export function numberPragma(database: Database.Database, name: string): number {
  const value: unknown = database.pragma(name, { simple: true });
  assert(typeof value === 'number', `PRAGMA ${name} is no number: ${String(value)}`);
  return value;
}

function isEmpty(database: Database.Database): boolean {
  const tables: unknown = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get();
  return tables === 0 && numberPragma(database, 'application_id') === 0 && numberPragma(database, 'user_version') === 0;
}

function checkOurs(database: Database.Database, path: string, kind: DatabaseKind): void {
  if (numberPragma(database, 'application_id') !== kind.applicationId) {
    throw new OpenError('otherProgram', `${path} is a database of another program.`);
  }
  const version = numberPragma(database, 'user_version');
  if (version > kind.schemaVersion) {
    throw new OpenError(
      'newerVersion',
      `${path} was written by a newer version of this program (its schema is ${version}, this program knows ${kind.schemaVersion}).`,
    );
  }
  if (version < kind.schemaVersion && kind.lifts?.[version] === undefined) {
    throw new OpenError('olderVersion', `${path} has schema ${version}, which this program (schema ${kind.schemaVersion}) cannot lift.`);
  }
}

function makeTables(database: Database.Database, kind: DatabaseKind): void {
  // Before the write-ahead log is switched on, so that whose file it is stands in the file itself and not in its log.
  database.transaction(() => {
    database.exec(kind.schema);
    database.pragma(`application_id = ${kind.applicationId}`);
    database.pragma(`user_version = ${kind.schemaVersion}`);
  })();
}

/** Brings tables of an older version up to this one, all in one transaction. */
function lift(database: Database.Database, kind: DatabaseKind): void {
  database.transaction(() => {
    for (let version = numberPragma(database, 'user_version'); version < kind.schemaVersion; version += 1) {
      const statements = kind.lifts?.[version];
      assert(statements !== undefined, `schema ${version} can be lifted`);
      database.exec(statements);
      database.pragma(`user_version = ${version + 1}`);
    }
  })();
}

function setPragmas(database: Database.Database): void {
  database.pragma('journal_mode = WAL');
  // This build of SQLite opens a file with a write-ahead log at NORMAL, which may lose the last commits when the power goes.
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  assert(database.pragma('journal_mode', { simple: true }) === 'wal', 'the write-ahead log is on');
  assert(numberPragma(database, 'synchronous') === 2, 'every commit is flushed');
}

/** Runs the first statements on a database just opened; where they throw it is closed, and the fault named. */
export function preparedOrClosed<Value>(database: Database.Database, prepare: () => Value): Value {
  try {
    return prepare();
  } catch (error) {
    database.close();
    throw openFault(database.name, error);
  }
}

function opened(path: string, options: Database.Options, prepare: (database: Database.Database) => void): Database.Database {
  checkPlace(path);
  const database = newDatabase(path, options);
  preparedOrClosed(database, () => prepare(database));
  return database;
}

function checkPlace(path: string): void {
  const folder = dirname(path);
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true) {
    throw new OpenError('folderNotWritable', `There is no folder ${folder}.`);
  }
  const file = statSync(path, { throwIfNoEntry: false });
  // SQLite takes a file of one byte for an empty one, and would write over it.
  const isTooShort = file !== undefined && file.size > 0 && file.size < LEAST_FILE_BYTES;
  if (file?.isFile() === false || isTooShort) throw new OpenError('notADatabase', `${path} is not a database.`);
}

function newDatabase(path: string, options: Database.Options): Database.Database {
  try {
    return new Database(path, { timeout: BUSY_TIMEOUT_MS, ...options });
  } catch (error) {
    throw openFault(path, error);
  }
}

function openFault(path: string, error: unknown): unknown {
  const code = sqliteCode(error);
  if (code === null) return error;
  if (code === 'SQLITE_NOTADB') return new OpenError('notADatabase', `${path} is not a database.`, { cause: error });
  if (code.startsWith('SQLITE_CANTOPEN') || code.startsWith('SQLITE_READONLY')) {
    return new OpenError('folderNotWritable', `${basename(path)} in ${dirname(path)} cannot be opened or written.`, { cause: error });
  }
  if (isDiskFull(error)) return new OpenError('diskFull', `The disk that ${dirname(path)} is on is full.`, { cause: error });
  return new OpenError('databaseFailed', `${path} cannot be opened (${code}).`, { cause: error });
}

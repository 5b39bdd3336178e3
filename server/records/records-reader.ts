import { join } from 'node:path';
import type Database from 'better-sqlite3';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { assert } from '../../shared/result.ts';
import { openDatabaseReadOnly } from '../journal/open-database.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import { RECORDS_DATABASE, RECORDS_FILE } from './records-schema.ts';

type Value = string | number | null;
/** A row as it comes from SQLite. */
export type Row = Readonly<Record<string, unknown>>;

/** Reads the records of a data folder, and the journal's events behind them. */
export class RecordsReader {
  readonly #database: Database.Database;
  readonly #journal: SqliteJournal;
  readonly #kitchenId: string;
  readonly #statements = new Map<string, Database.Statement>();

  private constructor(database: Database.Database, journal: SqliteJournal, kitchenId: string) {
    this.#database = database;
    this.#journal = journal;
    this.#kitchenId = kitchenId;
  }

  /** Opens records that a builder has begun. Throws OpenError. */
  static async open(dataFolder: string): Promise<RecordsReader> {
    const database = openDatabaseReadOnly(join(dataFolder, RECORDS_FILE), RECORDS_DATABASE);
    database.pragma('cache_size = -32000');
    const journal = new SqliteJournal(join(dataFolder, JOURNAL_FILE), { readOnly: true });
    return new RecordsReader(database, journal, await journal.kitchenId());
  }

  /** The rows of a query of ours; what somebody said goes in as values alone. */
  rows(sql: string, ...values: readonly Value[]): readonly Row[] {
    return this.#statement(sql).all(...values) as readonly Row[];
  }

  /** The rows of a query one by one, for what is too long to hold. */
  each(sql: string, ...values: readonly Value[]): IterableIterator<Row> {
    // A statement that is being walked through is busy: one of its own for each walk.
    return this.#database.prepare(sql).iterate(...values) as IterableIterator<Row>;
  }

  /** The same, each row as a list of its values. */
  rawEach(sql: string, ...values: readonly Value[]): IterableIterator<Value[]> {
    return this.#database
      .prepare(sql)
      .raw()
      .iterate(...values) as IterableIterator<Value[]>;
  }

  /** The first row; undefined where there is none. */
  row(sql: string, ...values: readonly Value[]): Row | undefined {
    return this.#statement(sql).get(...values) as Row | undefined;
  }

  /** Events of the journal by their sequence numbers, in their order. Numbers come sorted. */
  async events(sequences: readonly number[]): Promise<readonly RecordedEvent[]> {
    const events: RecordedEvent[] = [];
    for (let from = 0; from < sequences.length;) {
      const first = sequences[from];
      assert(first !== undefined, 'a sequence number');
      // What follows closely is read in one go: a few events too many cost less than a query more.
      let to = from;
      while (
        to + 1 < sequences.length &&
        (sequences[to + 1] ?? 0) - (sequences[to] ?? 0) <= CLOSE &&
        (sequences[to + 1] ?? 0) - first < SPAN
      )
        to += 1;
      const last = sequences[to] ?? first;
      const wanted = new Set(sequences.slice(from, to + 1));
      const read = await this.#journal.read(this.#kitchenId, first - 1, last - first + 1);
      events.push(...read.filter(({ sequence }) => wanted.has(sequence)));
      from = to + 1;
    }
    return events;
  }

  async close(): Promise<void> {
    this.#database.close();
    await this.#journal.close();
  }

  #statement(sql: string): Database.Statement {
    const known = this.#statements.get(sql);
    if (known !== undefined) return known;
    const prepared = this.#database.prepare(sql);
    this.#statements.set(sql, prepared);
    return prepared;
  }
}

/** Events between two wanted ones that are read along with them. */
const CLOSE = 6;
/** Events read in one go. */
const SPAN = 400;

/** A column that is text. */
export function text(row: Row, column: string): string {
  const value = row[column];
  // What is wrong is put into words only where something is: this is asked of every cell.
  if (typeof value !== 'string') throw new TypeError(`${column} is text, not ${String(value)}`);
  return value;
}

/** A column that is text, or nothing. */
export function textOrNull(row: Row, column: string): string | null {
  return row[column] === null ? null : text(row, column);
}

/** A column that is a number. */
export function number(row: Row, column: string): number {
  const value = row[column];
  if (typeof value !== 'number') throw new TypeError(`${column} is a number, not ${String(value)}`);
  return value;
}

/** A column that is a number, or nothing. */
export function numberOrNull(row: Row, column: string): number | null {
  return row[column] === null ? null : number(row, column);
}

/** A column of words between spaces. */
export function words(row: Row, column: string): string[] {
  return text(row, column)
    .split(' ')
    .filter((word) => word !== '');
}

/** A column that is an array of numbers, written as JSON; none where there is no row or nothing in it. */
export function numbersIn(row: Row | undefined, column: string): readonly number[] {
  if (row === undefined || row[column] === null) return [];
  const parsed: unknown = JSON.parse(text(row, column));
  assert(Array.isArray(parsed) && parsed.every((value) => typeof value === 'number'), `${column} is an array of numbers`);
  return parsed;
}

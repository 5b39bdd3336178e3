import type Database from 'better-sqlite3';
import { FACT_TABLES } from './records-schema.ts';

type Value = string | number | null;

/** The columns of each table that rows are written to, in the order in which values are given. */
const COLUMNS = {
  edges: ['sequence', 'item', 'kind', 'source', 'target', 'grams', 'at_ms'],
  lots: ['sequence', 'item', 'workpiece', 'ingredient', 'lot', 'line', 'grams', 'at_ms', 'replaced_by'],
  readings: ['sequence', 'workpiece', 'place', 'celsius', 'at_ms'],
  losses: ['sequence', 'workpiece', 'what', 'grams', 'pieces', 'at_ms'],
  more_time: ['sequence', 'workpiece', 'step', 'minutes', 'at_ms'],
  holds: ['sequence', 'workpiece', 'step', 'at_ms', 'until_ms', 'released_ms', 'released_sequence'],
  corrections: ['sequence', 'workpiece', 'step', 'what', 'was', 'became', 'at_ms', 'device'],
  reasons: ['sequence', 'workpiece', 'step', 'what', 'reason', 'at_ms'],
  uses: ['sequence', 'item', 'workpiece', 'step', 'kind', 'resource', 'at_ms'],
  oven_loads: ['sequence', 'workpiece', 'step', 'slots', 'pieces', 'from_ms', 'to_ms', 'out_sequence'],
  samples: ['sequence', 'kind', 'subject', 'formula', 'step', 'workpiece', 'load_g', 'value', 'at_ms'],
  calls: ['sequence', 'workpiece', 'step', 'level', 'due_ms', 'raised_ms', 'heard_ms', 'ended_ms', 'became', 'sounded_count'],
  plan_moves: ['sequence', 'item', 'workpiece', 'step', 'from_ms', 'to_ms', 'because', 'because_id', 'at_ms'],
  documents: ['sequence', 'kind', 'id', 'version', 'name'],
  day_ends: ['sequence', 'service_date', 'what'],
  orders: ['id', 'service_date', 'product', 'pieces', 'ready_ms', 'is_withdrawn', 'label', 'sequence'],
  brought: ['workpiece', 'step'],
  workpiece_events: ['workpiece', 'sequence'],
  house_events: ['sequence', 'type'],
} as const;

/** A table that a row is put into, over the one with the same key. */
export type RecordTable = keyof typeof COLUMNS;

/** Every statement that writes records, prepared once. */
export class RecordStatements {
  readonly #database: Database.Database;
  readonly #inserts = new Map<string, Database.Statement>();
  readonly #prepared = new Map<string, Database.Statement>();

  constructor(database: Database.Database) {
    this.#database = database;
    for (const [table, columns] of Object.entries(COLUMNS)) {
      const marks = columns.map(() => '?').join(', ');
      this.#inserts.set(table, database.prepare(`INSERT OR REPLACE INTO ${table} (${columns.join(', ')}) VALUES (${marks})`));
    }
  }

  /** Writes a row, its values in the order of the table's columns. */
  put(table: RecordTable, ...values: readonly Value[]): void {
    this.#inserts.get(table)?.run(...values);
  }

  /** Runs a statement of ours. The text is part of the program, never made of what somebody said. */
  run(sql: string, ...values: readonly Value[]): { changes: number; lastInsertRowid: number | bigint } {
    return this.#statement(sql).run(...values);
  }

  /** The first column of the first row; undefined where there is none. */
  value(sql: string, ...values: readonly Value[]): unknown {
    return this.#statement(sql)
      .pluck()
      .get(...values);
  }

  /** The columns of the first row; undefined where there is none. */
  row(sql: string, ...values: readonly Value[]): readonly unknown[] | undefined {
    return this.#statement(sql)
      .raw()
      .get(...values) as readonly unknown[] | undefined;
  }

  /** Takes out what the events of a command had said: events `first` to `last`. */
  takeOut(first: number, last: number): void {
    for (const table of FACT_TABLES) this.run(`DELETE FROM ${table} WHERE sequence BETWEEN ? AND ?`, first, last);
    this.run('UPDATE lots SET replaced_by = NULL WHERE replaced_by BETWEEN ? AND ?', first, last);
    this.run('UPDATE oven_loads SET to_ms = NULL, out_sequence = NULL WHERE out_sequence BETWEEN ? AND ?', first, last);
    this.run('UPDATE holds SET released_ms = NULL, released_sequence = NULL WHERE released_sequence BETWEEN ? AND ?', first, last);
  }

  /** Takes out every fact that was written of events after one. */
  takeOutAfter(sequence: number): void {
    this.takeOut(sequence + 1, Number.MAX_SAFE_INTEGER);
    this.run('DELETE FROM calls WHERE sequence > ?', sequence);
  }

  #statement(sql: string): Database.Statement {
    const known = this.#prepared.get(sql);
    if (known !== undefined) return known;
    const prepared = this.#database.prepare(sql);
    this.#prepared.set(sql, prepared);
    return prepared;
  }
}

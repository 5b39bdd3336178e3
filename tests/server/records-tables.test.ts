import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXPORT_FORMATS } from '../../shared/records/export-asked.ts';
import { RECORD_TABLES, tableNamed, type TableColumn } from '../../shared/records/tables.ts';
import { assert } from '../../shared/result.ts';
import { exportQuery, Pour } from '../../server/records/pour.ts';
import { lineWriter } from '../../server/records/record-lines.ts';
import { RecordsBuilder } from '../../server/records/records-builder.ts';
import { RecordsReader } from '../../server/records/records-reader.ts';
import { RECORDS_DATABASE, RECORDS_FILE } from '../../server/records/records-schema.ts';
import { readCsv } from '../domain/support/read-csv.ts';
import { historyArbitrary, keep, lived } from './random-history.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

/** The same histories each time: what others show becomes a test of its own. */
const SEED = 20_260_307;

const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/;

function emptyRecords(): Database.Database {
  const database = new Database(':memory:');
  database.exec(RECORDS_DATABASE.schema);
  return database;
}

function isOfType(value: unknown, { type, mayBeEmpty }: TableColumn): boolean {
  if (value === null) return mayBeEmpty;
  switch (type) {
    case 'text':
      return typeof value === 'string';
    case 'integer':
      return Number.isInteger(value);
    case 'number':
      return typeof value === 'number';
    case 'yesNo':
      return value === 0 || value === 1;
    case 'date':
      return typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value);
    case 'instant':
      return typeof value === 'string' && INSTANT.test(value);
  }
}

/** A cell of a file as the value that it was: what was made harmless is read back. */
function cellValue(cell: string, { type }: TableColumn): unknown {
  if (cell === '') return type === 'text' ? '' : null;
  if (type === 'text') return cell.replace(/^'(?=[=+\-@\t\r\n＝＋－＠])/u, '');
  return type === 'date' || type === 'instant' ? cell : Number(cell);
}

async function withHistory(
  use: (folder: string, database: Database.Database, reader: RecordsReader) => void,
  numRuns: number,
): Promise<void> {
  await fc.assert(
    fc.asyncProperty(historyArbitrary, async (history) => {
      const folder = temporaryFolder();
      try {
        await keep(folder, lived(history).recorded);
        const builder = await RecordsBuilder.open(folder);
        await builder?.catchUp();
        await builder?.close();
        const reader = await RecordsReader.open(folder);
        const database = new Database(join(folder, RECORDS_FILE), { readonly: true });
        try {
          use(folder, database, reader);
        } finally {
          database.close();
          await reader.close();
        }
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    }),
    { numRuns, endOnFailure: true, seed: SEED },
  );
}

describe('RX1 the tables for others are what their description says', () => {
  it('every described table is a view with those columns in that order, and there is no other view', () => {
    const database = emptyRecords();
    const views = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'view' ORDER BY rowid").pluck().all();
    expect(views).toEqual(RECORD_TABLES.map(({ name }) => name));
    for (const { name, columns } of RECORD_TABLES) {
      const real = database.prepare('SELECT name FROM pragma_table_info(?) ORDER BY cid').pluck().all(name);
      expect(real, name).toEqual(columns.map((column) => column.name));
    }
    database.close();
  });

  it('units and instants stand in the columns’ names, and a period is one of a date or an instant', () => {
    const endings = { g: '_g', '°C': '_c', min: '_min' } as const;
    for (const { name, columns, periodBy, says } of RECORD_TABLES) {
      expect(says, name).toMatch(/^[A-Z].*\.$/);
      expect(new Set(columns.map((column) => column.name)).size).toBe(columns.length);
      for (const { name: column, type, unit } of columns) {
        const unitOfName = /_(?:g|c|min)$/.exec(column)?.[0] ?? null;
        expect(unitOfName, `${name}.${column}`).toBe(unit === null ? null : endings[unit]);
        expect(column.endsWith('_at'), `${name}.${column}`).toBe(type === 'instant');
        expect(column.endsWith('_date'), `${name}.${column}`).toBe(type === 'date');
        expect(column.startsWith('is_'), `${name}.${column}`).toBe(type === 'yesNo');
      }
      if (periodBy !== null) expect(['date', 'instant']).toContain(columns.find((column) => column.name === periodBy)?.type);
    }
  });

  it('DEVELOPERS.md has a row for every table, and none for what is none', () => {
    const text = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
    const section = text.split('### Tables of the records\n')[1]?.split('\n## ')[0]?.split('\n### ')[0] ?? '';
    expect(
      [...section.matchAll(/^\| `([a-z_]+)` \| (.*?) \| (.*) \|$/gm)].map(([, name, says, columns]) => ({ name, says, columns })),
    ).toEqual(
      RECORD_TABLES.map(({ name, says, columns }) => ({
        name,
        says,
        columns: columns.map((column) => `\`${column.name}\``).join(', '),
      })),
    );
  });

  it('whatever happened on a day, every value is of its column’s type, and empty only where it may be', async () => {
    await withHistory((_folder, database) => {
      for (const { name, columns } of RECORD_TABLES) {
        for (const row of database.prepare(`SELECT * FROM ${name}`).raw().iterate() as IterableIterator<unknown[]>) {
          const wrong = columns.filter((column, index) => !isOfType(row[index], column)).map((column) => column.name);
          expect(wrong, `${name}: ${JSON.stringify(row)}`).toEqual([]);
        }
      }
    }, 4);
  });

  it('nobody writes through them', () => {
    const database = emptyRecords();
    expect(() => database.prepare("DELETE FROM batches WHERE tag = 'C1'")).toThrow(/cannot modify batches because it is a view/);
    database.close();
  });
});

describe('RX2 a table written out is the view, row for row', () => {
  it('in both formats, read back by the grammar of RFC 4180 and by JSON', async () => {
    await withHistory((_folder, database, reader) => {
      for (const { name, columns } of RECORD_TABLES) {
        const rows = database.prepare(`SELECT * FROM ${name}`).raw().all() as unknown[][];
        const [asCsv = '', asJson = ''] = EXPORT_FORMATS.map((format) =>
          wholeOf(new Pour(reader, { table: name, format }, 'Europe/London')),
        );
        const [head, ...read] = readCsv(asCsv);
        expect(head).toEqual(columns.map((column) => column.name));
        // A cell that is empty says nothing of whether it was none or a text of no length.
        const told = rows.map((row) => row.map((value, index) => (value === null && columns[index]?.type === 'text' ? '' : value)));
        expect(sorted(read.map((row) => row.map((cell, index) => cellValue(cell, columns[index] ?? unknownColumn()))))).toEqual(
          sorted(told),
        );
        const objects = asJson.split('\n').slice(0, -1);
        expect(sorted(objects.map((line) => Object.values(JSON.parse(line) as Readonly<Record<string, unknown>>)))).toEqual(sorted(rows));
        for (const line of objects.slice(0, 1)) expect(Object.keys(JSON.parse(line) as object)).toEqual(head);
      }
    }, 3);
  });

  it('of a period only its days, by service date, or by the date of the instant in the house’s zone', () => {
    const query = (table: string, from?: string, to?: string): unknown =>
      exportQuery(
        { table, format: 'csv', ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) },
        '*',
        'Europe/Berlin',
      );
    expect(query('temperatures', '2026-03-28', '2026-03-29')).toMatchObject({
      sql: expect.stringMatching(/ WHERE w\.service_date >= \? AND w\.service_date <= \?$/) as string,
      values: ['2026-03-28', '2026-03-29'],
    });
    // Summer time begins on 29 March 2026: that day has 23 hours.
    expect(query('learned_samples', '2026-03-29', '2026-03-29')).toMatchObject({
      sql: expect.stringMatching(/ WHERE f\.at_ms >= \? AND f\.at_ms < \?$/) as string,
      values: [Date.UTC(2026, 2, 28, 23), Date.UTC(2026, 2, 29, 22)],
    });
    expect(query('documents_adopted', '2026-03-29', '2026-03-29')).toMatchObject({ values: [] });
  });

  it('a period is looked up and never searched for in a whole table, so that no chunk takes longer than others', () => {
    const database = emptyRecords();
    for (const table of RECORD_TABLES.filter(({ name, periodBy }) => periodBy !== null && name !== 'days')) {
      for (const format of EXPORT_FORMATS) {
        const asked = { table: table.name, format, from: '2026-03-07', to: '2026-03-08' };
        const { sql, values } = exportQuery(asked, lineWriter(table, format).selected, 'UTC');
        const plan = database.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...values) as { detail: string }[];
        expect(
          plan.filter(({ detail }) => detail.startsWith('SCAN')),
          `${table.name}: ${sql}`,
        ).toEqual([]);
      }
    }
    database.close();
  });

  it('cells that begin like a formula are harmless in comma-separated values and as they were in JSON', () => {
    const table = tableNamed('documents_adopted');
    assert(table !== undefined, 'there is that table');
    const spoilt = '=HYPERLINK("x")';
    expect(lineWriter(table, 'csv').line([7, 'formula', '-country', 2, spoilt])).toBe(`7,formula,'-country,2,"'=HYPERLINK(""x"")"\r\n`);
    const database = emptyRecords();
    database.prepare('INSERT INTO documents VALUES (7, ?, ?, 2, ?)').run('formula', '-country', spoilt);
    const { sql } = exportQuery({ table: table.name, format: 'jsonl' }, lineWriter(table, 'jsonl').selected, 'UTC');
    expect(JSON.parse(String(database.prepare(sql).pluck().get()))).toMatchObject({ document_id: '-country', name: spoilt });
    database.close();
  });
});

function wholeOf(pour: Pour): string {
  let text = '';
  for (;;) {
    const { bytes, isLast } = pour.next();
    text += Buffer.from(bytes).toString('utf8');
    if (isLast) return text;
  }
}

function sorted(rows: readonly (readonly unknown[])[]): readonly string[] {
  return rows.map((row) => JSON.stringify(row)).sort();
}

function unknownColumn(): never {
  throw new Error('a row has a cell for each column');
}

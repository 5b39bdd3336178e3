import { join } from 'node:path';
import { askLots } from '../../server/records/ask-lots.ts';
import { askTrace } from '../../server/records/ask-trace.ts';
import { RecordStatements } from '../../server/records/record-statements.ts';
import { RecordsReader } from '../../server/records/records-reader.ts';
import { RECORDS_DATABASE, RECORDS_FILE } from '../../server/records/records-schema.ts';
import { openDatabase } from '../../server/journal/open-database.ts';
import { JOURNAL_FILE, SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { idFromBytes } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';
import { inTemporaryFolder } from './places.ts';
import { lineOf, type Line } from './report.ts';

const DAY_MS = 86_400_000;
const DAYS = 3 * 365;
const FIRST_DAY_MS = Date.UTC(2023, 2, 7);
const BATCHES = 13;
/** Events between two rows: of some three million, most say nothing of what went into what. */
const APART = 20;
const AIM = '≤ 200 ms';

/**
 * Traces over three years of records, about a hundred thousand workpieces: one pot kept all the time and fed every day, doughs that take of
 * it, cuts, loads, fillings, old dough. Each question is asked of a reader that has just opened, then again.
 */
export async function trace(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const workpieces = await fill(folder);
    const lines: Line[] = [];
    const day = dateOf(DAYS - 1);
    const asked: readonly (readonly [string, (reader: RecordsReader) => unknown])[] = [
      ['flour of the pot three years ago, in every product since', (reader) => askTrace(reader, { lot: 'POT-0' })],
      ['flour of the doughs, last month', (reader) => askTrace(reader, { lot: `FLOUR-${Math.floor((DAYS - 30) / 7)}` })],
      ['a product of yesterday, every lot in it', (reader) => askTrace(reader, { product: 'loaf-3', date: day })],
      ['lots that begin with F', (reader) => askLots(reader, { text: 'f' })],
      ['lots of the pot’s flour', (reader) => askLots(reader, { ingredient: 'rye' })],
    ];
    for (const [name, ask] of asked) {
      const [first, again] = [[] as number[], [] as number[]];
      for (let round = 0; round < rounds; round += 1) {
        const reader = await RecordsReader.open(folder);
        for (const times of [first, again]) {
          const fromMs = performance.now();
          assert(ask(reader) !== null, `${name} is answered`);
          times.push(performance.now() - fromMs);
        }
        await reader.close();
      }
      lines.push(lineOf(`${name}, of ${workpieces} workpieces, just opened`, 'ms', AIM, first), lineOf(`${name}, again`, 'ms', AIM, again));
    }
    return lines;
  });
}

function dateOf(day: number): string {
  return new Date(FIRST_DAY_MS + day * DAY_MS).toISOString().slice(0, 10);
}

/** Writes three years of rows. Returns how many workpieces there are. */
async function fill(folder: string): Promise<number> {
  const journal = new SqliteJournal(join(folder, JOURNAL_FILE));
  await journal.kitchenId();
  await journal.close();
  const database = openDatabase(join(folder, RECORDS_FILE), RECORDS_DATABASE);
  database.pragma('synchronous = OFF');
  const years = new Years(new RecordStatements(database));
  database.transaction(() => {
    for (let day = 0; day < DAYS; day += 1) years.day(day);
  })();
  database.close();
  return years.workpieces;
}

class Years {
  readonly #rows: RecordStatements;
  #sequence = 1;
  #pot: number | null = null;
  workpieces = 0;

  constructor(rows: RecordStatements) {
    this.#rows = rows;
  }

  day(day: number): void {
    const atMs = FIRST_DAY_MS + day * DAY_MS;
    const piece = (kind: string, formula: string, product: string | null, ending: string | null): number =>
      this.#piece({ kind, formula, product, ending, atMs, date: dateOf(day) });
    this.#pot ??= piece('ferment', 'levain', null, null);
    const pot = this.#pot;
    this.#lot(pot, 'rye', `POT-${Math.floor(day / 7)}`, atMs);
    this.#edge('feed', pot, pot, atMs);
    const filling = piece('prep', 'filling', null, 'finished');
    this.#lot(filling, 'cheese', `CHEESE-${Math.floor(day / 3)}`, atMs);
    let old: number | null = null;
    for (let batch = 0; batch < BATCHES; batch += 1) {
      const dough = piece('batch', `dough-${batch % 5}`, null, 'divided');
      for (const [ingredient, lot, days] of [
        ['wheat', 'FLOUR', 7],
        ['salt', 'SALT', 90],
        ['malt', 'MALT', 30],
      ] as const)
        this.#lot(dough, ingredient, `${lot}-${Math.floor(day / days)}`, atMs);
      this.#edge('draw', pot, dough, atMs);
      if (old !== null && batch === 6) this.#edge('putBack', old, dough, atMs);
      old = dough;
      for (const half of [0, 1]) {
        const product = `loaf-${(batch * 2 + half) % 10}`;
        const cut = piece('cut', `dough-${batch % 5}`, product, 'divided');
        this.#edge('divide', dough, cut, atMs);
        if (batch < 2) this.#edge('draw', filling, cut, atMs);
        for (const load of [0, 1])
          this.#edge(
            'load',
            cut,
            piece('load', `dough-${batch % 5}`, product, load === 0 && day % 9 === 0 ? 'discarded' : 'finished'),
            atMs,
          );
      }
    }
    for (let order = 0; order < 12; order += 1)
      this.#rows.put('orders', `${day}-${order}`, dateOf(day), `loaf-${order % 10}`, 20, atMs, 0, `Shop ${order}`, this.#next());
  }

  #next(): number {
    this.#sequence += APART;
    return this.#sequence;
  }

  #lot(workpiece: number, ingredient: string, lot: string, atMs: number): void {
    this.#rows.put('lots', this.#next(), 0, workpiece, ingredient, lot, `0-${ingredient.length}`, 1000, atMs, null);
  }

  #edge(kind: string, source: number, target: number, atMs: number): void {
    this.#rows.put('edges', this.#next(), 0, kind, source, target, 1000, atMs);
  }

  #piece(given: { kind: string; formula: string; product: string | null; ending: string | null; atMs: number; date: string }): number {
    const { kind, formula, product, ending, atMs, date } = given;
    const number = this.#next() * 128;
    this.workpieces += 1;
    const bytes = new Uint8Array(16);
    new DataView(bytes.buffer).setFloat64(8, number);
    this.#rows.run(
      `INSERT INTO workpieces (number, id, kind, tag, service_date, formula, formula_version, product, product_version, parent, root,
         planned_start_ms, started_ms, ended_ms, ending, grams, scaled_to_g, scrap_g, pieces, planned_pieces, allergens)
       VALUES (?, ?, ?, ?, ?, ?, 1, ?, 1, NULL, ?, ?, ?, ?, ?, 1000, 1000, 0, 20, 20, 'wheat')`,
      number,
      idFromBytes(bytes),
      kind,
      `${kind.slice(0, 1).toUpperCase()}${this.workpieces % 100}`,
      date,
      formula,
      product,
      number,
      atMs,
      atMs,
      atMs,
      ending,
    );
    return number;
  }
}

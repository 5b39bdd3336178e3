import { join } from 'node:path';
import Database from 'better-sqlite3';
import { pino } from 'pino';
import { EXPORT_FORMATS, type ExportFormat } from '../../shared/records/export-asked.ts';
import { assert } from '../../shared/result.ts';
import { RecordsBuilder } from '../../server/records/records-builder.ts';
import { RECORDS_FILE } from '../../server/records/records-schema.ts';
import { Records } from '../../server/records/records.ts';
import { startRecordsWorker } from '../../server/records/start-records-thread.ts';
import { writeLongJournal } from './long-journal.ts';
import { inTemporaryFolder } from './places.ts';
import { interleaved, lineOf, lineWithFloor, type Line } from './report.ts';

const STEPS = 1_000_000;
const STEPS_OF_A_BATCH = 20;
/** Workpieces that follow from no journal are numbered from here. */
const FIRST_NUMBER = 1_000_000_000;
const AIM = '≥ 100 000 rows/s';

/**
 * A million steps of fifty thousand batches written out by the records' own thread and taken chunk by chunk, as a download does; the floor
 * is the same rows of the table, read by a bare iteration and written as JSON text. Beside them: how long a question waits meanwhile.
 */
export function recordsExport(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    await writeLongJournal(folder, 1, Date.now());
    const builder = await RecordsBuilder.open(folder);
    await builder?.catchUp();
    await builder?.close();
    fill(join(folder, RECORDS_FILE));
    // The records' thread keeps no process from ending.
    const awake = setInterval(() => {}, 1000);
    const records = new Records({ dataFolder: folder, start: startRecordsWorker, log: pino({ level: 'silent' }) });
    try {
      const lines: Line[] = [];
      const waitsMs: number[] = [];
      for (const format of EXPORT_FORMATS) {
        const measured = await interleaved(
          rounds,
          () => rowsPerSecond(records, format, waitsMs),
          async () => bareRowsPerSecond(join(folder, RECORDS_FILE)),
        );
        lines.push(lineWithFloor(`a million steps written out as ${format}, 24 columns`, 'rows/s', AIM, measured));
      }
      waitsMs.sort((a, b) => a - b);
      lines.push(lineOf('a question to the records meanwhile, slowest', 'ms', '≤ 100 ms', [waitsMs.at(-1) ?? 0]));
      return lines;
    } finally {
      await records.stop();
      clearInterval(awake);
    }
  });
}

async function rowsPerSecond(records: Records, format: ExportFormat, waitsMs: number[]): Promise<number> {
  const startMs = performance.now();
  const poured = await records.pour({ table: 'batch_steps', format }, 'UTC');
  assert(poured !== null && poured.stream !== null, 'the table is written out');
  let isOver = false;
  const asking = (async (): Promise<void> => {
    for (;;) {
      if (isOver) return;
      const askedMs = performance.now();
      await records.ask('batches', { from: '2020-01-01', to: '2020-01-01' });
      waitsMs.push(performance.now() - askedMs);
      await new Promise((resolve) => void setTimeout(resolve, 100));
    }
  })();
  let rows = format === 'csv' ? -1 : 0;
  for await (const chunk of poured.stream) rows += linesIn(chunk as Uint8Array);
  const tookMs = performance.now() - startMs;
  isOver = true;
  await asking;
  assert(rows >= STEPS, `${rows} rows were written`);
  return (rows / tookMs) * 1000;
}

function linesIn(chunk: Uint8Array): number {
  let count = 0;
  for (let at = chunk.indexOf(10); at !== -1; at = chunk.indexOf(10, at + 1)) count += 1;
  return count;
}

function bareRowsPerSecond(path: string): number {
  const database = new Database(path, { readonly: true });
  const startMs = performance.now();
  let rows = 0;
  let characters = 0;
  for (const row of database.prepare('SELECT * FROM steps').iterate()) {
    characters += JSON.stringify(row).length;
    rows += 1;
  }
  const tookMs = performance.now() - startMs;
  database.close();
  assert(characters > rows, 'rows were written');
  return (rows / tookMs) * 1000;
}

/** Batches of ten years, twenty steps each, of no journal: who measures how fast they are written out asks nothing else. */
function fill(path: string): void {
  const database = new Database(path);
  const batches = STEPS / STEPS_OF_A_BATCH;
  database.transaction(() => {
    database
      .prepare(
        `WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < ?)
         INSERT INTO workpieces SELECT ? + i, printf('ABCDEFGHIJKLM%09d', i), 'batch', printf('C%d', i % 90), date('2020-01-01', printf('+%d days', i / 14)),
           'country-dough', 1, 'country-loaf', 1, NULL, ? + i, 1577836800000 + i * 6171428, 1577836800000 + i * 6171428,
           1577836800000 + i * 6171428 + 36000000, 'finished', 24310.5, 24000, 120, 48, 48, 'gluten' FROM n`,
      )
      .run(batches, FIRST_NUMBER, FIRST_NUMBER);
    database
      .prepare(
        `WITH RECURSIVE n (i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i + 1 < ?)
         INSERT INTO steps SELECT w.number, 0, printf('step-%02d', i), i, 'FOLD', 'rest', 'done', w.started_ms + i * 1800123, w.started_ms + (i + 1) * 1800123,
           w.started_ms + i * 1800000, w.started_ms + (i + 1) * 1800000, 25, 30, 45.5, 1.04, 0, 'bench', '', 'AAAAAAAAAAAAAAAAAAAAAQ',
           'AAAAAAAAAAAAAAAAAAAAAQ', 48, 0, 'rack-one' FROM workpieces w, n WHERE w.number >= ?`,
      )
      .run(STEPS_OF_A_BATCH, FIRST_NUMBER);
  })();
  database.close();
}

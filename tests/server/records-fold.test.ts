import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { RecordsBuilder, throwAwayRecords } from '../../server/records/records-builder.ts';
import { RECORDS_FILE } from '../../server/records/records-schema.ts';
import { historyArbitrary, keep, lived } from './random-history.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

/** The same histories each time: what others show becomes a test of its own. */
const SEED = 20_260_307;

/** Every row of every table, as text, but what says how far a builder has come. */
function rowsOf(folder: string): Readonly<Record<string, readonly string[]>> {
  const database = new Database(join(folder, RECORDS_FILE), { readonly: true });
  const tables = database
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'checkpoint' ORDER BY name")
    .pluck()
    .all();
  const rows = tables.map((table) => {
    const all = database.prepare(`SELECT * FROM ${String(table)}`).all();
    return [String(table), all.map((row) => JSON.stringify(row)).sort()] as const;
  });
  database.close();
  return Object.fromEntries(rows);
}

async function built(folder: string): Promise<void> {
  const builder = await RecordsBuilder.open(folder);
  await builder?.catchUp();
  await builder?.close();
}

async function inFolder<Value>(use: (folder: string) => Promise<Value>): Promise<Value> {
  const folder = temporaryFolder();
  try {
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A builder that is gone in the middle, as when the power goes: the rows of its last page are there, its checkpoint is an older one. */
async function brokenOff(folder: string, scratch: string): Promise<void> {
  const builder = await RecordsBuilder.open(folder);
  await builder?.catchUp();
  mkdirSync(scratch, { recursive: true });
  // The files as they are while it is at work: in good order it would leave a checkpoint.
  for (const suffix of ['', '-wal']) copyFileSync(join(folder, `${RECORDS_FILE}${suffix}`), join(scratch, `records${suffix}`));
  await builder?.close();
  throwAwayRecords(folder);
  for (const suffix of ['', '-wal']) copyFileSync(join(scratch, `records${suffix}`), join(folder, `${RECORDS_FILE}${suffix}`));
}

describe('RC1 records are what a fresh fold of the journal says, however they came to be', () => {
  it('built at once, in pieces, or gone on with after a builder broke off: the same rows', async () => {
    await fc.assert(
      fc.asyncProperty(historyArbitrary, fc.array(fc.nat(1000), { minLength: 1, maxLength: 3 }), async (history, cuts) => {
        const { recorded } = lived(history);
        await inFolder(async (folder) => {
          await keep(folder, recorded);
          await built(folder);
          const atOnce = rowsOf(folder);
          await inFolder(async (inPieces) => {
            let done = 0;
            const ends = [...cuts.map((cut) => commandEnd(recorded, cut)), recorded.length].sort((a, b) => a - b);
            for (const [index, end] of ends.entries()) {
              await keep(inPieces, recorded.slice(done, end));
              done = end;
              if (end === 0) continue;
              await (index % 2 === 0 ? brokenOff(inPieces, join(inPieces, 'aside')) : built(inPieces));
            }
            await built(inPieces);
            expect(rowsOf(inPieces)).toEqual(atOnce);
          });
        });
      }),
      { numRuns: 12, endOnFailure: true, seed: SEED },
    );
  });

  it('workpieces, steps and calls are as the floor has them', async () => {
    await fc.assert(
      fc.asyncProperty(historyArbitrary, async (history) => {
        const { recorded } = lived(history);
        const state = evolveAll(EMPTY_STATE, recorded);
        const madeOfOthers = new Set(recorded.flatMap(({ event }) => (event.type === 'workpiecesJoined' ? [event.workpieceId] : [])));
        await inFolder(async (folder) => {
          await keep(folder, recorded);
          await built(folder);
          const database = new Database(join(folder, RECORDS_FILE), { readonly: true });
          for (const workpiece of Object.values(state.workpieces)) {
            const row = database.prepare('SELECT * FROM workpieces WHERE id = ?').get(workpiece.id) as Record<string, unknown>;
            expect(row).toMatchObject({
              tag: workpiece.tag,
              pieces: workpiece.pieces,
              grams: workpiece.grams,
              ended_ms: workpiece.finishedMs,
              ending: workpiece.ending,
            });
            const steps = database
              .prepare('SELECT * FROM steps WHERE workpiece = ? AND round = (SELECT max(round) FROM steps WHERE workpiece = ?)')
              .all(row['number'], row['number']) as Record<string, unknown>[];
            // What was done before it was a load is told of what it was a part of.
            const brought = broughtBy(recorded, workpiece.id);
            const lives = Object.entries(workpiece.steps)
              .filter(([step]) => !brought.has(step))
              .map(([step, life]) => [step, life.status, life.startedMs, life.endedMs, life.moreMin]);
            // A pot that was just fed has no step of its new way yet.
            if (lives.length > 0 || workpiece.stock === null)
              expect(
                steps.map((step) => [step['step'], step['status'], step['started_ms'], step['ended_ms'], step['more_min']]).sort(byStep),
              ).toEqual(lives.sort(byStep));
            const open = database.prepare(
              'SELECT step, level, heard_ms, sounded_count FROM calls WHERE workpiece = ? AND ended_ms IS NULL',
            );
            const { call } = workpiece;
            const expected =
              call === null ? [] : [{ step: call.stepId, level: call.level, heard_ms: call.heardMs, sounded_count: call.soundedCount }];
            expect(open.all(row['number'])).toEqual(expected);
            const readings = database.prepare('SELECT place, celsius, at_ms FROM readings WHERE workpiece = ? ORDER BY sequence').raw();
            // What it is made of brought its own readings along.
            const own = workpiece.readings.map(({ where, celsius, atMs }) => [where, celsius, atMs]);
            if (workpiece.kind === 'batch' && !madeOfOthers.has(workpiece.id))
              expect(readings.all(row['number']).slice(-own.length || undefined)).toEqual(own);
          }
          expect(database.prepare('SELECT count(*) FROM workpieces').pluck().get()).toBeGreaterThanOrEqual(
            Object.keys(state.workpieces).length,
          );
          database.close();
        });
      }),
      { numRuns: 12, endOnFailure: true, seed: SEED },
    );
  });
});

/** Steps that were over when a workpiece became a load, and were not opened again since: folded up to there, and looked at. */
function broughtBy(events: readonly RecordedEvent[], id: string): ReadonlySet<string> {
  const made = events.findIndex(({ event }) => event.type === 'loadsMade' && event.children.some((child) => child.workpieceId === id));
  if (made === -1) return new Set();
  const then = evolveAll(EMPTY_STATE, events.slice(0, made + 1)).workpieces[id];
  const over = Object.entries(then?.steps ?? {}).flatMap(([step, { endedMs }]) => (endedMs === null ? [] : [step]));
  const reopened = events
    .slice(made)
    .flatMap(({ event }) => (event.type === 'stepsReopened' && event.workpieceId === id ? event.stepIds : []));
  return new Set(over.filter((step) => !reopened.includes(step)));
}

function byStep(a: readonly unknown[], b: readonly unknown[]): number {
  return String(a[0]).localeCompare(String(b[0]));
}

/** The end of a command at or after a share of all events: a journal keeps commands whole. */
function commandEnd(events: readonly RecordedEvent[], perMille: number): number {
  let end = Math.floor((events.length * perMille) / 1000);
  while (end > 0 && end < events.length && events[end]?.commandId === events[end - 1]?.commandId) end += 1;
  return end;
}

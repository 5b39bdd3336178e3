import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { batchAnswerSchema, batchesAnswerSchema, namesAnswerSchema } from '../../shared/records/answers.ts';
import { lotsAnswerSchema, traceAnswerSchema } from '../../shared/records/trace-answer.ts';
import { RECORDS_FILE } from '../../server/records/records-schema.ts';
import { main as rebuild } from '../../server/cli/rebuild.ts';
import { startRecordsHere } from './support/records-here.ts';
import { folderForTest } from './support/temporary-folder.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

async function asked(
  house: TestHouse,
  path: string,
): Promise<{ status: number; body: { progress: { sequence: number; of: number }; answer: unknown } }> {
  const answer = await house.house.app.inject(`/api/records/${path}`);
  return { status: answer.statusCode, body: answer.json() };
}

describe('RC2 the records answer at once, with what has just happened in them', () => {
  it('a batch that was tapped on a moment ago, its names, and the list that it stands in', async () => {
    const house = await openTestHouse({ startRecordsThread: startRecordsHere });
    const { id } = house.workpiece('C1');
    const outcome = await house.house.floor.submit({
      commandId: 'AAAAAAAAAAAAAAAAAAAAAQ',
      deviceId: house.house.floor.kitchenId,
      stationId: 'bench',
      tap: null,
      command: { type: 'startStep', workpieceId: id, stepId: 'weigh' },
    });
    expect(outcome.ok).toBe(true);
    const { status, body } = await asked(house, `batch?id=${id}`);
    expect(status).toBe(200);
    expect(body.progress.sequence).toBe(house.house.floor.state.sequence);
    const batch = batchAnswerSchema.parse(body.answer);
    expect(batch.pieces[0]).toMatchObject({ tag: 'C1', kind: 'batch' });
    expect(batch.steps).toMatchObject([{ step: 'weigh', status: 'started', station: 'bench', startedBy: house.house.floor.kitchenId }]);
    const list = batchesAnswerSchema.parse((await asked(house, 'batches?tag=c1')).body.answer);
    expect(list.pieces.map(({ tag }) => tag)).toEqual(['C1']);
    const names = namesAnswerSchema.parse((await asked(house, 'names')).body.answer);
    expect(names.formulas.length).toBeGreaterThan(2);
    expect(names.zone).toBe(house.house.floor.state.house?.document.zone);
  });

  it('a lot that was weighed a moment ago: among those to choose from, and traced both ways', async () => {
    const house = await openTestHouse({ startRecordsThread: startRecordsHere });
    const { id } = house.workpiece('C1');
    const outcome = await house.house.floor.submit({
      commandId: 'AAAAAAAAAAAAAAAAAAAAAg',
      deviceId: house.house.floor.kitchenId,
      stationId: 'bench',
      tap: null,
      command: { type: 'weighIngredient', workpieceId: id, lineId: '0-0', grams: 100, lotNumbers: ['W-26 1'] },
    });
    expect(outcome.ok).toBe(true);
    const { lots } = lotsAnswerSchema.parse((await asked(house, 'lots?text=w')).body.answer);
    expect(lots.map(({ lot, times }) => [lot, times])).toEqual([['W-26 1', 1]]);
    const onward = traceAnswerSchema.parse((await asked(house, 'trace?lot=W-26%201')).body.answer);
    expect(onward.nodes.map(({ piece }) => piece.tag)).toEqual(['C1']);
    const back = traceAnswerSchema.parse((await asked(house, `trace?id=${id}`)).body.answer);
    expect(back.lots.map(({ lot, tag }) => [lot, tag])).toEqual([['W-26 1', 'C1']]);
    for (const wrong of ['trace', 'trace?lot=A&id=B', 'trace?product=loaf', 'trace?lot='])
      expect((await asked(house, wrong)).status).toBe(400);
    expect((await asked(house, 'trace?lot=NEVER')).status).toBe(404);
  });

  it('a question that is not right, not known or about nothing is told so', async () => {
    const house = await openTestHouse({ startRecordsThread: startRecordsHere });
    expect(await asked(house, 'batch?id=nonsense')).toMatchObject({ status: 400, body: { faults: [{ path: 'id' }] } });
    expect(await asked(house, 'batch?id=AAAAAAAAAAAAAAAAAAAAAQ')).toMatchObject({ status: 404 });
    expect(await asked(house, 'constructor')).toMatchObject({ status: 404 });
    expect(await asked(house, 'batches?from=yesterday')).toMatchObject({ status: 400, body: { faults: [{ path: 'from' }] } });
  });

  it('a server that keeps none says so', async () => {
    const house = await openTestHouse();
    expect(await asked(house, 'batches')).toMatchObject({ status: 503 });
  });
});

describe('RC3 records can be thrown away', () => {
  it('a file that is none, one of another version, or none at all: they are made anew', async () => {
    const first = await openTestHouse({ startRecordsThread: startRecordsHere });
    const before = (await asked(first, 'batches')).body.answer;
    await first.close();
    const path = join(first.folder, RECORDS_FILE);
    expect(existsSync(path)).toBe(true);
    for (const spoil of [
      () => rmSync(path),
      () => writeFileSync(path, 'this is no database, and it is longer than five hundred and twelve bytes. '.repeat(20)),
    ]) {
      spoil();
      const again = await openTestHouse({ folder: first.folder, startRecordsThread: startRecordsHere });
      expect((await asked(again, 'batches')).body.answer).toEqual(before);
      await again.close();
    }
    const lines: string[] = [];
    expect(
      await rebuild(
        ['--data', first.folder],
        (line) => void lines.push(line),
        () => 0,
      ),
    ).toBe(0);
    expect(lines.join()).toMatch(/^Records of \d+ events were made in 0\.0 s\.$/);
    const rebuilt = await openTestHouse({ folder: first.folder, startRecordsThread: startRecordsHere });
    expect((await asked(rebuilt, 'batches')).body.answer).toEqual(before);
    // While a server runs, its records are not to be touched.
    expect(await rebuild(['--data', first.folder], (line) => void lines.push(line))).toBe(1);
  });

  it('without a folder or a journal it says what is missing', async () => {
    const lines: string[] = [];
    const say = (line: string): void => void lines.push(line);
    expect(await rebuild([], say)).toBe(2);
    expect(await rebuild(['--data', folderForTest()], say)).toBe(1);
    expect(lines.join('\n')).toContain('Usage: rebuild --data DIR');
    expect(lines.join('\n')).toContain('There is no journal in');
  });
});

describe('RC7 a page of the records that could not be kept is taken in again', () => {
  it('somebody else has the file meanwhile: the question fails, the next one is answered as if nothing had been', async () => {
    const house = await openTestHouse({ startRecordsThread: startRecordsHere });
    await asked(house, 'batches');
    const other = new Database(join(house.folder, RECORDS_FILE));
    other.exec('BEGIN IMMEDIATE');
    const { id } = house.workpiece('C1');
    const outcome = await house.house.floor.submit({
      commandId: 'AAAAAAAAAAAAAAAAAAAAAQ',
      deviceId: house.house.floor.kitchenId,
      stationId: 'bench',
      tap: null,
      command: { type: 'startStep', workpieceId: id, stepId: 'weigh' },
    });
    expect(outcome.ok).toBe(true);
    expect(await asked(house, 'batches')).toMatchObject({ status: 500 });
    other.exec('ROLLBACK');
    other.close();
    const { status, body } = await asked(house, `batch?id=${id}`);
    expect(status).toBe(200);
    const batch = batchAnswerSchema.parse(body.answer);
    expect(batch.steps).toMatchObject([{ step: 'weigh', status: 'started' }]);
    // The event itself is there as well, not only what followed from it.
    expect(batch.events).toContainEqual(expect.objectContaining({ commandId: 'AAAAAAAAAAAAAAAAAAAAAQ' }));
    expect(body.progress.sequence).toBe(body.progress.of);
  });
});

import { get } from 'node:http';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { pino } from 'pino';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { assert } from '../../shared/result.ts';
import type { ToRecords } from '../../server/records/records-messages.ts';
import { RECORDS_FILE } from '../../server/records/records-schema.ts';
import { POURS_AT_ONCE, Records, RecordsBroken } from '../../server/records/records.ts';
import type { RecordsEars, StartRecordsThread } from '../../server/records/start-records-thread.ts';
import { readCsv } from '../domain/support/read-csv.ts';
import { startRecordsHere } from './support/records-here.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

/** More than fits into a handful of chunks. */
const MANY_STEPS = 9_000;

/** A folder of a house whose records have a batch of many steps more than its journal says. */
async function folderOfMany(): Promise<string> {
  const house = await openTestHouse({ startRecordsThread: startRecordsHere });
  await house.house.app.inject('/api/records/batches');
  await house.close();
  const database = new Database(join(house.folder, RECORDS_FILE));
  database
    .prepare(
      `WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ?)
       INSERT INTO steps SELECT (SELECT min(number) FROM workpieces), 0, printf('step-%05d', i), i, 'FOLD', 'rest', 'done', i, i + 60000, NULL, NULL,
         NULL, NULL, NULL, NULL, 0, 'bench', '', NULL, NULL, NULL, 0, NULL FROM n`,
    )
    .run(MANY_STEPS);
  database.close();
  return house.folder;
}

/** Records of a folder, with what their thread was told. */
function recordsOf(dataFolder: string): { records: Records; told: ToRecords['type'][]; poured: () => number } {
  const told: ToRecords['type'][] = [];
  let poured = 0;
  const start: StartRecordsThread = (folder, ears) => {
    const port = startRecordsHere(folder, {
      ...ears,
      hear: (message) => {
        if (message.type === 'poured') poured += 1;
        ears.hear(message);
      },
    });
    return {
      ...port,
      say: (message) => {
        told.push(message.type);
        port.say(message);
      },
    };
  };
  const records = new Records({ dataFolder, start, log: pino({ level: 'silent' }) });
  onTestFinished(() => records.stop());
  return { records, told, poured: () => poured };
}

/** Records whose thread is the test's own hand. */
function recordsByHand(): { records: Records; told: ToRecords[]; ears: () => RecordsEars } {
  const told: ToRecords[] = [];
  let heard: RecordsEars | null = null;
  const start: StartRecordsThread = (_folder, ears) => {
    heard = ears;
    return { say: (message) => void told.push(message), stop: async () => {} };
  };
  const records = new Records({ dataFolder: '', start, log: pino({ level: 'silent' }) });
  return {
    records,
    told,
    ears: () => {
      assert(heard !== null, 'the thread was started');
      return heard;
    },
  };
}

async function streamOf(records: Records): Promise<NonNullable<Awaited<ReturnType<Records['pour']>>>['stream'] & object> {
  const poured = await records.pour({ table: 'batch_steps', format: 'csv' }, 'UTC');
  assert(poured !== null && poured.stream !== null, 'the table is written out');
  return poured.stream;
}

async function allOf(stream: AsyncIterable<unknown>): Promise<string> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of stream) chunks.push(chunk as Uint8Array);
  return Buffer.concat(chunks).toString('utf8');
}

function turns(count: number): Promise<void> {
  return new Promise((resolve) => void setTimeout(resolve, count));
}

async function exported(house: TestHouse, query: string): Promise<Awaited<ReturnType<TestHouse['house']['app']['inject']>>> {
  return await house.house.app.inject(`/api/records-export?${query}`);
}

describe('RX3 a table is downloaded as it is taken', () => {
  it('with its name, its type and every row that there is, also of what happened a moment ago', async () => {
    const house = await openTestHouse({ startRecordsThread: startRecordsHere });
    const { serviceDate } = house.workpiece('C1');
    const answer = await exported(house, `table=batches&from=${serviceDate}&to=${serviceDate}`);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers).toMatchObject({
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': `attachment; filename="ovenward-batches-${serviceDate}-to-${serviceDate}.csv"`,
      'cache-control': 'no-store',
    });
    const [head, ...rows] = readCsv(answer.body);
    expect(head?.slice(0, 3)).toEqual(['batch_id', 'tag', 'service_date']);
    expect(rows.map((row) => row[1] ?? '').sort()).toEqual(
      Object.values(house.house.floor.state.workpieces)
        .map(({ tag }) => tag)
        .sort(),
    );
    expect((await exported(house, 'table=batches&from=2020-01-01&to=2020-12-31')).body.split('\r\n')).toHaveLength(2);
    const lines = await exported(house, 'table=documents_adopted&format=jsonl');
    expect(lines.headers['content-type']).toBe('application/jsonl; charset=utf-8');
    expect(
      lines.body
        .split('\n')
        .slice(0, -1)
        .map((line) => (JSON.parse(line) as { kind: string }).kind),
    ).toContain('formula');
    const headOnly = await house.house.app.inject({ method: 'HEAD', url: '/api/records-export?table=batches' });
    expect(headOnly).toMatchObject({ statusCode: 200, body: '' });
  });

  it('what is not right is told field by field', async () => {
    const house = await openTestHouse({ startRecordsThread: startRecordsHere });
    const faults = async (query: string): Promise<unknown> => {
      const answer = await exported(house, query);
      return [answer.statusCode, answer.json<{ faults: { path: string }[] }>().faults.map(({ path }) => path)];
    };
    expect(await faults('table=constructor')).toEqual([400, ['table']]);
    expect(await faults('')).toEqual([400, ['table']]);
    expect(await faults('table=days&format=xml')).toEqual([400, ['format']]);
    expect(await faults('table=days&from=yesterday')).toEqual([400, ['from']]);
    expect(await faults('table=days&from=2026-03-08&to=2026-03-07')).toEqual([400, ['to']]);
    expect((await exported(await openTestHouse(), 'table=days')).statusCode).toBe(503);
  });

  it('chunk by chunk: no more are written than are taken, and questions are answered between them', async () => {
    const { records, told, poured } = recordsOf(await folderOfMany());
    const stream = await streamOf(records);
    stream.read(0);
    // Nobody takes any: the stream is full after two.
    await vi.waitFor(() => expect(poured()).toBe(2));
    await turns(30);
    expect(poured()).toBe(2);
    expect((await records.ask('names', {})).answer).not.toBeNull();
    const rows = readCsv(await allOf(stream));
    expect(rows.length).toBeGreaterThan(MANY_STEPS);
    expect(new Set(rows.map((row) => row.join('\n'))).size).toBe(rows.length);
    expect(poured()).toBeGreaterThan(4);
    expect(told.filter((type) => type === 'more')).toHaveLength(poured());
    expect(told).not.toContain('enough');
  });

  it('who goes away has had enough: nothing more is written, and the place is free', async () => {
    const { records, told, poured } = recordsOf(await folderOfMany());
    const streams = await Promise.all(Array.from({ length: POURS_AT_ONCE }, () => streamOf(records)));
    expect(records.pour({ table: 'days', format: 'csv' }, 'UTC')).toBeNull();
    const [first] = streams;
    first?.read(0);
    await turns(20);
    first?.destroy();
    await turns(20);
    const before = poured();
    expect(told.filter((type) => type === 'enough')).toHaveLength(1);
    await turns(20);
    expect(poured()).toBe(before);
    expect(await allOf(await streamOf(records))).toContain('step-09000');
  });

  it('over the network as well', async () => {
    const folder = await folderOfMany();
    const told: ToRecords['type'][] = [];
    const house = await openTestHouse({
      folder,
      isListening: true,
      startRecordsThread: (...given) => {
        const port = startRecordsHere(...given);
        return {
          ...port,
          say: (message) => {
            told.push(message.type);
            port.say(message);
          },
        };
      },
    });
    const address = house.house.app.server.address();
    assert(address !== null && typeof address === 'object', 'the house listens');
    const url = `http://127.0.0.1:${address.port}/api/records-export?table=batch_steps`;
    await new Promise<void>((resolve) => {
      const request = get(url, (response) => {
        response.once('data', () => {
          request.destroy();
          resolve();
        });
      });
      request.on('error', () => {});
    });
    await vi.waitFor(() => expect(told.filter((type) => type === 'enough' || type === 'close')).toEqual(['enough']));
    const whole = await fetch(url);
    expect(readCsv(await whole.text()).length).toBeGreaterThan(MANY_STEPS);
  });

  it('one too many is told to come again, and so is who comes before the records are made', async () => {
    const { records, told, ears } = recordsByHand();
    const house = await openTestHouse({
      startRecordsThread: (_folder, given) => ({ say: (message) => answerBehind(message, given), stop: async () => {} }),
    });
    const behind = await exported(house, 'table=days');
    expect(behind.statusCode).toBe(503);
    expect(behind.headers['retry-after']).toBe('10');
    expect(behind.headers['content-disposition']).toBeUndefined();
    expect(behind.json<{ detail: string }>().detail).toBe('The records are being made: 3 of 90000 events are in them.');
    // Its place is free again at once: one more than may be at a time is asked after the other.
    for (let time = 0; time < POURS_AT_ONCE; time += 1) expect((await exported(house, 'table=days')).statusCode).toBe(503);

    const pouring = records.pour({ table: 'days', format: 'csv' }, 'UTC');
    const [pour] = told.filter((message) => message.type === 'pour');
    assert(pour !== undefined && pouring !== null, 'a table was asked for');
    ears().hear({ type: 'pouring', pourId: pour.pourId, isReady: true, progress: { sequence: 5, of: 5 } });
    const { stream } = await pouring;
    assert(stream !== null, 'it is written out');
    const read = allOf(stream);
    ears().died(new Error('the disk is gone'));
    await expect(read).rejects.toThrow('the disk is gone');
    const second = records.pour({ table: 'days', format: 'csv' }, 'UTC');
    const last = told.findLast((message) => message.type === 'pour');
    assert(last !== undefined && second !== null, 'a table was asked for again');
    ears().hear({ type: 'spilt', pourId: last.pourId, message: 'no such table', stack: '' });
    await expect(second).rejects.toThrow(RecordsBroken);
  });

  it('a fifth at once is answered 429', async () => {
    const house = await openTestHouse({ startRecordsThread: () => ({ say: () => {}, stop: async () => {} }) });
    const waiting = Array.from({ length: POURS_AT_ONCE }, () => exported(house, 'table=days'));
    await turns(20);
    const answer = await exported(house, 'table=days');
    expect(answer.statusCode).toBe(429);
    expect(answer.json()).toMatchObject({ type: 'urn:ovenward:problem:tooManyRequests' });
    await house.close();
    for (const each of await Promise.allSettled(waiting)) expect(each.status === 'rejected' || each.value.statusCode !== 200).toBe(true);
  });
});

function answerBehind(message: ToRecords, ears: RecordsEars): void {
  if (message.type !== 'pour') return;
  setImmediate(() => ears.hear({ type: 'pouring', pourId: message.pourId, isReady: false, progress: { sequence: 3, of: 90_000 } }));
}

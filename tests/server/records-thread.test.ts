import { pino } from 'pino';
import { expect, it } from 'vitest';
import type { RecordsEars, StartRecordsThread } from '../../server/records/start-records-thread.ts';
import { Records, RecordsBroken } from '../../server/records/records.ts';

it('RC4 a thread of the records that ended is started again by the next question, not by each tap', async () => {
  const started: RecordsEars[] = [];
  const start: StartRecordsThread = (_folder, ears) => {
    started.push(ears);
    return { say: () => {}, stop: async () => {} };
  };
  const records = new Records({ dataFolder: 'none', start, log: pino({ level: 'silent' }) });
  const first = records.ask('names', {});
  started[0]?.died(new Error('it ended'));
  await expect(first).rejects.toThrow(RecordsBroken);
  records.news();
  records.news();
  expect(started.length).toBe(1);
  const second = records.ask('names', {});
  expect(started.length).toBe(2);
  started[1]?.hear({ type: 'answer', askId: 2, answer: { it: 'is there' }, progress: { sequence: 1, of: 1 } });
  expect(await second).toEqual({ answer: { it: 'is there' }, progress: { sequence: 1, of: 1 } });
  records.news();
  expect(started.length).toBe(2);
  await records.stop();
});

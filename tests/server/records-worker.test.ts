import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { answeredSchema, batchesAnswerSchema } from '../../shared/records/answers.ts';
import { readCsv } from '../domain/support/read-csv.ts';
import { ensureServerBuilt, ServerProcess } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';

const HARBOUR = fileURLToPath(new URL('../../fixtures/harbour-plain.json', import.meta.url));

beforeAll(ensureServerBuilt, 120_000);
// A busy machine may take seconds to start a process; nothing here measures how long.
vi.setConfig({ testTimeout: 60_000 });

describe('the records of a server that runs', () => {
  it('RC4 RX3 are kept and written out by a thread of their own, which closes its files in good order', async () => {
    const data = join(folderForTest(), 'data');
    const server = await ServerProcess.started(['--data', data, '--port', '0', '--bakehouse', HARBOUR]);
    const { sequence, workpieces } = await server.state();
    const answer = await server.get('/api/records/batches');
    expect(answer.status).toBe(200);
    const answered = answeredSchema.parse(answer.body);
    expect(answered.progress.sequence).toBeGreaterThanOrEqual(sequence);
    expect(batchesAnswerSchema.parse(answered.answer).pieces.length).toBe(Object.keys(workpieces).length);
    const file = await server.download('/api/records-export?table=batches');
    expect(file.status).toBe(200);
    expect(readCsv(file.text)).toHaveLength(Object.keys(workpieces).length + 1);
    expect(await server.end('SIGTERM')).toMatchObject({ code: 0, signal: null, stderr: '' });
  });
});

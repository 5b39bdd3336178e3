import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { backupStatusSchema } from '../../shared/wire/backup-status.ts';
import { main as restore } from '../../server/cli/restore.ts';
import { ensureServerBuilt, ServerProcess } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';

beforeAll(ensureServerBuilt, 120_000);
// A busy machine may take seconds to start a process; nothing here measures how long.
vi.setConfig({ testTimeout: 60_000 });

describe('BK5 a kitchen whose disk lost a page goes on from its last backup', () => {
  it('asked for one, stopped, damaged, told the way back, put back, and open again', async () => {
    const folder = folderForTest();
    const stick = join(folderForTest(), 'stick');
    const options = ['--data', folder, '--backups', stick, '--port', '0'];
    const server = await ServerProcess.started(options);
    const answer = await server.post('/api/backups', {});
    expect(answer.status).toBe(200);
    const status = backupStatusSchema.parse(answer.body);
    expect(status).toMatchObject({ folder: stick, fault: null, isLate: false, kept: 1 });
    const before = await server.state();
    // In good order, so that the page that is lost is not in the log as well: then nothing would be lost.
    await server.end('SIGTERM');

    const path = join(folder, 'journal.db');
    const bytes = readFileSync(path);
    bytes.fill(0xff, 4096, 8192);
    writeFileSync(path, bytes);
    const refusal = await ServerProcess.run(options);
    expect(refusal).toMatchObject({ code: 1, stdout: '' });
    const [backup = ''] = readdirSync(stick);
    expect(refusal.stderr).toContain(`npm run restore -- --from ${join(stick, backup)} --data ${folder}\n`);
    expect(refusal.stderr).toContain(`event ${status.last?.sequence}`);
    expect(readFileSync(path)).toEqual(bytes);

    expect(await restore(['--from', stick, '--data', folder], () => {})).toBe(0);
    const again = await ServerProcess.started(options);
    const after = await again.state();
    expect(after.sequence).toBeGreaterThanOrEqual(status.last?.sequence ?? Infinity);
    expect(Object.keys(after.workpieces)).toEqual(Object.keys(before.workpieces));
    expect(after.kitchen).toEqual(before.kitchen);
    expect((await again.end('SIGTERM')).code).toBe(0);
  });
});

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { ensureServerBuilt, ServerProcess } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';

const HARBOUR = fileURLToPath(new URL('../../fixtures/harbour-plain.json', import.meta.url));

beforeAll(ensureServerBuilt, 120_000);
// A busy machine may take seconds to start a process; nothing here measures how long.
vi.setConfig({ testTimeout: 60_000 });

describe('the server as a process', () => {
  it('P1 says what it brought in, where wall and phone are, and where its data are; Ctrl-C ends it with 0', async () => {
    const folder = join(folderForTest(), 'new', 'data');
    const server = await ServerProcess.started(['--data', folder, '--port', '0']);
    expect(server.port).toBeGreaterThan(0);
    expect(server.stdout).toBe(
      [
        'Brought in: Harbour bakehouse, 10 batches.',
        `Wall   http://localhost:${server.port}/wall`,
        `Phone  http://localhost:${server.port}/phone`,
        `Data   ${folder}`,
        '',
      ].join('\n'),
    );
    const phone = server.connect('phone');
    expect((await phone.first('welcome')).addresses).toEqual([`http://localhost:${server.port}`]);
    expect((await server.get('/health')).body).toMatchObject({ journalWritable: true, clients: 1 });
    const before = await server.state();
    expect(await server.end('SIGINT')).toMatchObject({ code: 0, signal: null });
    expect(await phone.closed()).toMatchObject({ code: 4410 });
    // A second start brings nothing in anew, and has everything.
    const again = await ServerProcess.started(['--data', folder, '--port', '0']);
    expect(again.stdout).not.toContain('Brought in');
    expect(await again.state()).toEqual(before);
    expect(await again.end('SIGTERM')).toMatchObject({ code: 0, signal: null });
  });

  it('P2 P3 keeps its data in the user’s data folder unless told otherwise (XDG Base Directory Specification), and says at what pace it runs', async () => {
    const xdg = folderForTest();
    const server = await ServerProcess.started(['--port', '0', '--pace', '120', '--bakehouse', HARBOUR], {
      ...process.env,
      XDG_DATA_HOME: xdg,
    });
    expect(server.stdout).toContain(`Data   ${join(xdg, 'ovenward')}\n`);
    expect(existsSync(join(xdg, 'ovenward', 'journal.db'))).toBe(true);
    expect(server.stdout).toMatch(/^Pace {3}×120: .*Never bake by it\.$/m);
    expect((await server.state()).clock?.pace).toBe(120);
    expect((await server.connect('phone').first('welcome')).clock.pace).toBe(120);
  });
});

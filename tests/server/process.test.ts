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
    const server = await ServerProcess.started(['--data', folder, '--port', '0', '--here']);
    expect(server.port).toBeGreaterThan(0);
    expect(server.stdout.replace(/^(Code {3})[0-9A-Z]{5}-[0-9A-Z]{5}/m, '$1XXXXX-XXXXX')).toBe(
      [
        'Brought in: Harbour bakehouse, 10 batches.',
        `Wall   http://localhost:${server.port}/wall`,
        `Phone  http://localhost:${server.port}/phone`,
        'Code   XXXXX-XXXXX   whoever types it on a phone’s page manages this kitchen and lets others in',
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

  it('AC10 is open to the local network unless told otherwise, to nobody who was not let in; the code of its console lets in the first', async () => {
    const folder = join(folderForTest(), 'data');
    const server = await ServerProcess.started(['--data', folder, '--port', '0']);
    // Another address of this machine (RFC 1122 section 3.2.1.3: all of 127/8): a server that listens on 127.0.0.1 only does not hear it.
    const elsewhere = `http://127.0.0.2:${server.port}`;
    expect((await fetch(`${elsewhere}/phone`)).status).toBe(200);
    const code = /^Code {3}(\S+)/m.exec(server.stdout)?.[1];
    const joined = await fetch(`${elsewhere}/api/join`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code }),
    });
    expect(await joined.json()).toMatchObject({ role: 'manage' });
    const cookie = joined.headers.get('set-cookie')?.split(';')[0] ?? '';
    expect((await fetch(`${elsewhere}/api/devices`, { headers: { cookie } })).status).toBe(200);
    expect((await fetch(`${elsewhere}/api/devices`)).status).toBe(403);
    await server.end('SIGTERM');
    // What a restart prints has no code any more, and with --claim a new one.
    const again = await ServerProcess.started(['--data', folder, '--port', '0', '--here']);
    expect(again.stdout).not.toContain('Code');
    await expect(fetch(`http://127.0.0.2:${again.port}/phone`)).rejects.toThrow('fetch failed');
    expect((await fetch(`http://127.0.0.1:${again.port}/api/devices`, { headers: { cookie } })).status).toBe(200);
    await again.end('SIGTERM');
    expect((await ServerProcess.started(['--data', folder, '--port', '0', '--here', '--claim'])).stdout).toMatch(/^Code {3}\S+/m);
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

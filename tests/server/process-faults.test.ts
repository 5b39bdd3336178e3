import { once } from 'node:events';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { readBakehouse } from '../../server/main/read-bakehouse.ts';
import { bytesOf, ensureServerBuilt, runHere, ServerProcess, type Ended } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';
import { openTestHouse } from './support/test-house.ts';

/** Larger than the smallest database, so that it could be one by its size. */
const NOTES = 'Two cups of flour, one of water. '.repeat(40);
const HARBOUR = fileURLToPath(new URL('../../fixtures/harbour-plain.json', import.meta.url));

beforeAll(ensureServerBuilt, 120_000);
// A busy machine may take seconds to start a process; nothing here measures how long.
vi.setConfig({ testTimeout: 60_000 });

/** What a start that must fail said: one line, on stderr, exit code 1. */
function oneLineOf({ code, stdout, stderr }: Ended): string {
  expect(stdout).toBe('');
  expect(code).toBe(1);
  expect(stderr.endsWith('\n')).toBe(true);
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  return stderr.trimEnd();
}

/** A data folder as a server leaves it that ended in good order. */
async function usedFolder(): Promise<string> {
  const house = await openTestHouse();
  await house.close();
  return house.folder;
}

/** Nothing that was there has changed by a byte; what came is empty. */
function expectUntouched(folder: string, before: ReadonlyMap<string, string>): void {
  const after = bytesOf(folder);
  for (const [name, bytes] of before) expect(after.get(name), name).toBe(bytes);
  for (const [name, bytes] of after) if (!before.has(name)) expect(bytes, name).toMatch(/^0 /);
}

describe('a start that cannot be', () => {
  it('P7 says that the port is taken, and has not touched the folder', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    onTestFinished(() => void other.close());
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const fresh = join(folderForTest(), 'data');
    const used = await usedFolder();
    const before = bytesOf(used);
    const line = `Port ${port} is taken by another program; choose another with --port.`;
    expect(oneLineOf(await runHere(['--data', fresh, '--port', String(port)]))).toBe(line);
    expect(existsSync(fresh)).toBe(false);
    // Another pace would be an event.
    expect(oneLineOf(await ServerProcess.run(['--data', used, '--port', String(port), '--pace', '9']))).toBe(line);
    expect(bytesOf(used)).toEqual(before);
  });

  it('P8 says that the folder cannot be written', async () => {
    // A folder below a file: nobody can make that, whoever they are.
    const file = join(folderForTest(), 'a-file');
    writeFileSync(file, 'flour');
    const folder = join(file, 'data');
    expect(oneLineOf(await runHere(['--data', folder, '--port', '0']))).toBe(`The data folder ${folder} cannot be written.`);
    expect(readFileSync(file, 'utf8')).toBe('flour');
  });

  it('P9 says that the folder is in use by another server, which goes on', async () => {
    const folder = folderForTest();
    const first = await ServerProcess.started(['--data', folder, '--port', '0']);
    // The demo's first batch is due at once; when its call is on disk, the server has nothing to write for minutes.
    await first.hasRaisedACall();
    // The records are made by their own thread, soon after; asked, they are level.
    await first.get('/api/records/batches');
    const before = bytesOf(folder);
    expect(oneLineOf(await ServerProcess.run(['--data', folder, '--port', '0', '--pace', '9']))).toBe(
      `The data folder ${folder} is in use by another server (process ${first.pid}).`,
    );
    expectUntouched(folder, before);
    expect((await first.get('/health')).status).toBe(200);
  });

  it('P10 says that a file is from a newer version, and leaves everything as it was', async () => {
    const folder = await usedFolder();
    const database = new Database(join(folder, 'journal.db'));
    database.pragma('user_version = 999');
    database.close();
    const before = bytesOf(folder);
    expect(oneLineOf(await runHere(['--data', folder, '--port', '0', '--pace', '9']))).toBe(
      `${join(folder, 'journal.db')} was written by a newer version of this program (its schema is 999, this program knows 1).`,
    );
    expectUntouched(folder, before);
  });

  it('P11 says that a file is no database, and leaves everything as it was', async () => {
    const folder = await usedFolder();
    writeFileSync(join(folder, 'journal.db'), NOTES);
    const before = bytesOf(folder);
    expect(oneLineOf(await runHere(['--data', folder, '--port', '0', '--pace', '9']))).toBe(
      `${join(folder, 'journal.db')} is not a database.`,
    );
    expectUntouched(folder, before);
  });

  it('P11 leaves the journal of a server that was killed as it was where it is another file that is no database', async () => {
    const house = await openTestHouse();
    const folder = folderForTest();
    cpSync(house.folder, folder, { recursive: true });
    rmSync(join(folder, 'devices.db-wal'), { force: true });
    writeFileSync(join(folder, 'devices.db'), NOTES);
    const before = bytesOf(folder);
    expect(before.get('journal.db-wal')).not.toMatch(/^0 /);
    await expect(openTestHouse({ folder })).rejects.toMatchObject({
      name: 'OpenError',
      code: 'notADatabase',
      message: `${join(folder, 'devices.db')} is not a database.`,
    });
    expectUntouched(folder, before);
  });

  it('P11 says that a database is another program’s', async () => {
    const folder = folderForTest();
    const database = new Database(join(folder, 'journal.db'));
    database.exec('CREATE TABLE recipes (name TEXT)');
    database.close();
    const before = bytesOf(folder);
    const message = `${join(folder, 'journal.db')} is a database of another program.`;
    await expect(openTestHouse({ folder })).rejects.toMatchObject({ name: 'OpenError', code: 'otherProgram', message });
    expectUntouched(folder, before);
  });

  it('P12 lists every fault of a bakehouse file with its path, a line each, and has not touched the folder', async () => {
    const folder = join(folderForTest(), 'data');
    const path = join(folderForTest(), 'faulty.json');
    const file = JSON.parse(readFileSync(HARBOUR, 'utf8')) as {
      house: { zone: unknown; altitudeM: unknown };
      kitchen: { mixers: { mostG: unknown }[] };
      day: { batches: { cuts: { pieces: unknown }[] }[] };
    };
    file.house.altitudeM = 'high';
    Object.assign(file.kitchen.mixers[1] ?? {}, { mostG: -1 });
    Object.assign(file.day.batches[2]?.cuts[1] ?? {}, { pieces: 2.5 });
    writeFileSync(path, JSON.stringify(file));
    const ended = await ServerProcess.run(['--data', folder, '--port', '0', '--bakehouse', path]);
    expect(ended).toMatchObject({ code: 1, stdout: '' });
    const [first, ...faults] = ended.stderr.trimEnd().split('\n');
    expect(first).toBe(`${path} is not a bakehouse file as it should be:`);
    expect(faults.map((fault) => fault.split(': ')[0] ?? '').sort()).toEqual([
      '  day.batches[2].cuts[1].pieces',
      '  house.altitudeM',
      '  kitchen.mixers[1].mostG',
    ]);
    for (const fault of faults) expect(fault).toMatch(/^ {2}\S+: \S.*/);
    expect(existsSync(folder)).toBe(false);
  });

  it.each([
    ['no file', null, '(the whole file)', /^it cannot be read: /],
    ['a folder', 'folder', '(the whole file)', /^it cannot be read: /],
    ['no JSON', '{"format": 1,', '(the whole file)', /^it is not JSON: /],
    ['another format', '{"format": 2}', 'format', /./],
  ] as const)('P12 says what is wrong with a bakehouse file that is %s', async (_what, content, where, message) => {
    const path = join(folderForTest(), 'bakehouse.json');
    if (content === 'folder') mkdirSync(path);
    else if (content !== null) writeFileSync(path, content);
    const read = await readBakehouse(path);
    expect(read.ok).toBe(false);
    const faults = read.ok ? [] : read.fault;
    expect(faults[0]?.path).toBe(where);
    expect(faults[0]?.message).toMatch(message);
  });

  it('P12 says that a zone is none', async () => {
    const path = join(folderForTest(), 'bakehouse.json');
    const file = JSON.parse(readFileSync(HARBOUR, 'utf8')) as { house: { zone: string } };
    file.house.zone = 'Harbour/Quay';
    writeFileSync(path, JSON.stringify(file));
    expect(await readBakehouse(path)).toEqual({
      ok: false,
      fault: [{ path: 'house.zone', message: '"Harbour/Quay" is no time zone; write one such as "Europe/Lisbon"' }],
    });
  });

  it('P13 says what is wrong with an option, in one line that tells where to read on', async () => {
    const folder = join(folderForTest(), 'data');
    const ended = await runHere(['--data', folder, '--port', '0', '--colour', 'red']);
    expect(oneLineOf(ended)).toBe('There is no option --colour. The options: npm start -- --help');
    expect(existsSync(folder)).toBe(false);
    const help = await runHere(['--help']);
    expect(help).toMatchObject({ code: 0, stderr: '' });
    for (const option of ['--bakehouse', '--data', '--port', '--here', '--name', '--claim', '--pace'])
      expect(help.stdout).toContain(`  ${option}`);
  });
});

import { existsSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isAlive, readHolder, selfAsHolder, tryLock, unlock, withLock } from '../../server/cli/lock.mjs';
import { launcherModule, runNode } from './run-node.ts';
import { scratchFolder } from './scratch-folder.ts';

/** Above the largest process id of Linux (2^22, proc(5)) and of macOS (99 998): nobody has it. */
const NOBODY = 5_000_000;

describe('the lock of the launcher', () => {
  test('is taken where nobody holds it and given back', () => {
    const file = join(scratchFolder(), 'deep/launch.lock');
    const self = selfAsHolder();
    expect(tryLock(file, self)).toBe(true);
    expect(readHolder(file)).toEqual(self);
    unlock(file, self);
    expect(existsSync(file)).toBe(false);
  });

  test('is refused while its holder runs', () => {
    const file = join(scratchFolder(), 'launch.lock');
    const self = selfAsHolder();
    const other = { pid: process.ppid, started: '' };
    expect(tryLock(file, other)).toBe(true);
    expect(tryLock(file, self)).toBe(false);
    expect(readHolder(file)).toEqual(other);
  });

  test('of a dead holder is taken over', () => {
    const file = join(scratchFolder(), 'launch.lock');
    writeFileSync(file, JSON.stringify({ pid: NOBODY, started: '1' }));
    expect(tryLock(file, selfAsHolder())).toBe(true);
    expect(readHolder(file)?.pid).toBe(process.pid);
  });

  test('of a dead holder whose number another process was given is taken over, where the system tells start times', () => {
    const file = join(scratchFolder(), 'launch.lock');
    const systemTells = existsSync('/proc/self/stat');
    const reused = { pid: process.pid, started: 'not when this process was started' };
    writeFileSync(file, JSON.stringify(reused));
    expect(isAlive(reused)).toBe(!systemTells);
    expect(tryLock(file, selfAsHolder())).toBe(systemTells);
  });

  test('with nothing readable in it is taken over', () => {
    const file = join(scratchFolder(), 'launch.lock');
    writeFileSync(file, '{"pid": ');
    expect(tryLock(file, selfAsHolder())).toBe(true);
  });

  test('is not given back by somebody else', () => {
    const file = join(scratchFolder(), 'launch.lock');
    const self = selfAsHolder();
    tryLock(file, self);
    unlock(file, { pid: NOBODY, started: '1' });
    expect(readHolder(file)).toEqual(self);
  });

  test('is not taken over while another takes it over, until that one is long gone', () => {
    const file = join(scratchFolder(), 'launch.lock');
    writeFileSync(file, JSON.stringify({ pid: NOBODY, started: '1' }));
    writeFileSync(`${file}.guard`, JSON.stringify({ pid: NOBODY, started: '2' }));
    expect(tryLock(file, selfAsHolder())).toBe(false);
    utimesSync(`${file}.guard`, new Date(0), new Date(0));
    tryLock(file, selfAsHolder());
    expect(tryLock(file, selfAsHolder())).toBe(true);
  });

  test('is given back when the work throws', async () => {
    const file = join(scratchFolder(), 'launch.lock');
    const work = withLock(file, { onWait: () => {} }, () => Promise.reject(new Error('the tool failed')));
    await expect(work).rejects.toThrow('the tool failed');
    expect(existsSync(file)).toBe(false);
  });

  test('lets one process at a time through, whatever the start left behind', async () => {
    const folder = scratchFolder();
    const file = join(folder, 'launch.lock');
    const counter = join(folder, 'counter');
    writeFileSync(file, JSON.stringify({ pid: NOBODY, started: '1' }));
    writeFileSync(counter, '0');
    const rounds = 5;
    // Between reading and writing each gives way to the others: without the lock, counts would be lost.
    const program = `
      import { readFileSync, writeFileSync } from 'node:fs';
      import { setImmediate } from 'node:timers/promises';
      import { withLock } from ${JSON.stringify(launcherModule('lock.mjs'))};
      for (let round = 0; round < ${rounds}; round += 1) {
        await withLock(${JSON.stringify(file)}, { onWait: () => {} }, async () => {
          const count = Number(readFileSync(${JSON.stringify(counter)}, 'utf8'));
          await setImmediate();
          writeFileSync(${JSON.stringify(counter)}, String(count + 1));
        });
      }`;
    const processes = await Promise.all([1, 2, 3, 4].map(() => runNode(['--input-type=module', '-e', program])));
    expect(processes.map(({ exitCode, stderr }) => ({ exitCode, stderr }))).toEqual(processes.map(() => ({ exitCode: 0, stderr: '' })));
    expect(readFileSync(counter, 'utf8')).toBe(String(processes.length * rounds));
  });
});

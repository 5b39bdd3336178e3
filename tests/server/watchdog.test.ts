import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { keepWatchdog } from '../../server/main/watchdog.ts';
import { eventLoopTurns, Machine } from './support/machine.ts';
import { ensureServerBuilt, ServerProcess } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';

const UNIT = new URL('../../server/systemd/ovenward.service', import.meta.url);

beforeAll(ensureServerBuilt, 120_000);
vi.setConfig({ testTimeout: 60_000 });

describe('the watchdog', () => {
  it('SD1 says that the house is up, then that it is well three times within its time, and nothing while it is not', async () => {
    const machine = new Machine();
    const told: string[] = [];
    let answer: (() => Promise<unknown>) | null = () => Promise.resolve();
    let free: () => void = () => {};
    const stuck = new Promise<void>((resolve) => (free = resolve));
    const end = keepWatchdog({
      watchdogUsec: '30000000',
      notify: (state) => told.push(state),
      timers: machine,
      probe: () => answer?.() ?? stuck,
    });
    expect(told).toEqual(['READY=1', 'WATCHDOG=1']);
    await eventLoopTurns();
    await machine.pass(30_000);
    expect(told.slice(2)).toEqual(['WATCHDOG=1', 'WATCHDOG=1', 'WATCHDOG=1']);
    // One that fails is one that answers.
    answer = () => Promise.reject(new Error('the disk is full'));
    await machine.pass(10_000);
    answer = null;
    await machine.pass(10_000);
    expect(told).toHaveLength(7);
    await machine.pass(60_000);
    expect(told).toHaveLength(7);
    answer = () => Promise.resolve();
    free();
    await eventLoopTurns();
    await machine.pass(10_000);
    expect(told).toHaveLength(8);
    end();
    await machine.pass(60_000);
    expect(told.slice(8)).toEqual(['STOPPING=1']);
  });

  it('SD1 is not kept where nobody watches', () => {
    const machine = new Machine();
    const told: string[] = [];
    keepWatchdog({ watchdogUsec: undefined, notify: (state) => told.push(state), timers: machine, probe: () => Promise.resolve() });
    expect([told, machine.timerCount]).toEqual([['READY=1'], 0]);
  });

  it('SD1 is told by systemd’s own program, for the server’s process', async () => {
    const folder = folderForTest();
    const heard = join(folder, 'heard');
    // Stands in for systemd-notify(1), whose manager is not there in a test.
    writeFileSync(join(folder, 'systemd-notify'), `#!/bin/sh\necho "$@" >> '${heard}'\n`);
    chmodSync(join(folder, 'systemd-notify'), 0o755);
    const server = await ServerProcess.started(['--data', join(folder, 'data'), '--port', '0', '--here'], {
      ...process.env,
      PATH: `${folder}:${process.env['PATH'] ?? ''}`,
      NOTIFY_SOCKET: join(folder, 'socket'),
      WATCHDOG_USEC: '600000',
    });
    const count = (state: string): number =>
      existsSync(heard) ? readFileSync(heard, 'utf8').split(`--pid=${server.pid ?? 0} ${state}\n`).length - 1 : 0;
    while (count('READY=1') < 1 || count('WATCHDOG=1') < 3) await new Promise((resolve) => setTimeout(resolve, 20));
    await server.end('SIGTERM');
    while (count('STOPPING=1') < 1) await new Promise((resolve) => setTimeout(resolve, 20));
  });
});

describe('the unit for systemd', () => {
  it('SD2 starts the server again whatever ended it, watches it, and lets it see nothing that is not its own', () => {
    const lines = readFileSync(UNIT, 'utf8')
      .split('\n')
      .filter((line) => /^[A-Z]\w*=/.test(line));
    // systemd.service(5) and systemd.exec(5).
    for (const wanted of [
      'Type=notify',
      'NotifyAccess=all',
      'WatchdogSec=30',
      'Restart=always',
      'NoNewPrivileges=yes',
      'ProtectSystem=strict',
      'ProtectHome=yes',
      'CapabilityBoundingSet=',
      'User=ovenward',
      'UMask=0077',
    ])
      expect(lines).toContain(wanted);
    const [, program = '', ...args] =
      /^ExecStart=\/usr\/bin\/node (\S+) (.*)$/.exec(lines.find((line) => line.startsWith('ExecStart=')) ?? '') ?? [];
    expect(existsSync(new URL(`../../${program}`, import.meta.url))).toBe(true);
    expect(args).toEqual(['serve --data /var/lib/ovenward']);
  });
});

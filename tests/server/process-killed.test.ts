import { cpSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { freshId } from './support/live-client.ts';
import { Machine } from './support/machine.ts';
import { ensureServerBuilt, ServerProcess, type HttpAnswer } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';
import { openTestHouse } from './support/test-house.ts';

const MINUTE_MS = 60_000;

beforeAll(ensureServerBuilt, 120_000);
// A busy machine may take seconds to start a process; nothing here measures how long.
vi.setConfig({ testTimeout: 60_000 });

describe('a server that is killed', () => {
  it('P4 has every acknowledged tap when it starts again, and the state that follows from its events', async () => {
    const folder = folderForTest();
    const server = await ServerProcess.started(['--data', folder, '--port', '0']);
    const workpieceId = Object.keys((await server.state()).workpieces)[0] ?? '';
    const kept = new Map<string, HttpAnswer>();
    const commandOf = (commandId: string) => ({
      commandId,
      command: { type: 'readTemperature', workpieceId, where: 'dough', celsius: 24 },
    });
    let isKilled = false;
    // Taps go on coming from four phones while it is killed.
    const phones = Array.from({ length: 4 }, async () => {
      while (!isKilled) {
        const commandId = freshId();
        const answer = await server.post('/api/commands', commandOf(commandId)).catch(() => null);
        if (answer === null) return;
        kept.set(commandId, answer);
        if (kept.size === 25) {
          isKilled = true;
          await server.end('SIGKILL');
        }
      }
    });
    await Promise.all(phones);
    expect(await server.ended()).toMatchObject({ code: null, signal: 'SIGKILL' });
    expect(kept.size).toBeGreaterThanOrEqual(25);
    const again = await ServerProcess.started(['--data', folder, '--port', '0']);
    const state = await again.state();
    const { events } = (await again.get('/api/events?after=0')).body as { events: RecordedEvent[] };
    expect(JSON.parse(JSON.stringify(evolveAll(EMPTY_STATE, events)))).toEqual(state);
    for (const [commandId, answer] of kept) {
      expect(answer).toMatchObject({ status: 200, body: { ok: true } });
      expect(events.filter((event) => event.commandId === commandId)).toHaveLength(1);
      expect(await again.post('/api/commands', commandOf(commandId))).toEqual(answer);
    }
    expect((await again.state()).sequence).toBe(state.sequence);
  });

  it('P5 has the very same state afterwards, from its journal alone and from its snapshot', async () => {
    const before = await openTestHouse({ machine: new Machine(Date.now()) });
    const folder = folderForTest();
    cpSync(before.folder, folder, { recursive: true });
    const state: unknown = JSON.parse(JSON.stringify(before.house.floor.state));
    expect(existsSync(join(folder, 'snapshot.json'))).toBe(false);
    const fromJournal = await ServerProcess.started(['--data', folder, '--port', '0']);
    expect(await fromJournal.state()).toEqual(state);
    expect(await fromJournal.end('SIGINT')).toMatchObject({ code: 0 });
    expect(existsSync(join(folder, 'snapshot.json'))).toBe(true);
    const fromSnapshot = await ServerProcess.started(['--data', folder, '--port', '0']);
    expect(await fromSnapshot.state()).toEqual(state);
  });

  it('P6 sounds what fell due while it was away at once and in one group, as soon as a wall can', async () => {
    // Twenty-five minutes ago: the day was brought in, and then the power went.
    const before = await openTestHouse({ machine: new Machine(Date.now() - 25 * MINUTE_MS) });
    const tags = ['C1', 'R1', 'M1'];
    const dueWhileAway = tags.map((tag) => before.workpiece(tag).id);
    const called = (await before.events()).filter(({ event }) => event.type === 'callRaised').length;
    expect(called).toBe(1);
    const folder = folderForTest();
    cpSync(before.folder, folder, { recursive: true });
    const server = await ServerProcess.started(['--data', folder, '--port', '0']);
    const wall = server.connect('wall');
    const order = await wall.first('sound');
    expect(order.calls.map((call) => call.workpieceId).sort()).toEqual([...dueWhileAway].sort());
    expect(order.burst).toBe('late');
    wall.say({ type: 'sounded', soundId: order.soundId, burst: order.burst, calls: order.calls });
    await wall.until(() => wall.of('events').some(({ events }) => events.some(({ event }) => event.type === 'callSounded')));
    const { workpieces } = await server.state();
    for (const id of dueWhileAway) expect(workpieces[id]?.call).toMatchObject({ soundedCount: 1 });
  });
});

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { LightMyRequestResponse } from 'fastify';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { freshId, LiveClient, tokenOf } from './support/live-client.ts';
import { eventLoopTurns, MORNING_MS } from './support/machine.ts';
import { openTestHouse } from './support/test-house.ts';
import { folderForTest } from './support/temporary-folder.ts';

/** A problem document as RFC 9457 section 3.1 has it: a JSON object with these members, told by its media type (section 3). */
function problemOf(answer: LightMyRequestResponse): Record<string, unknown> {
  expect(answer.headers['content-type']).toMatch(/^application\/problem\+json(;|$)/);
  const problem = answer.json<Record<string, unknown>>();
  expect(problem['status']).toBe(answer.statusCode);
  expect(problem['type']).toMatch(/^urn:ovenward:problem:[a-zA-Z]+$/);
  expect(problem['title']).toEqual(expect.stringMatching(/./));
  expect(problem['detail']).toEqual(expect.stringMatching(/./));
  return problem;
}

/** A value as it comes through JSON. */
function asJson(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

/** The folder's database held by somebody else, so that nothing can be written to it. */
function holdJournal(folder: string): { letGo: () => void } {
  const database = new Database(join(folder, 'journal.db'));
  database.exec('BEGIN IMMEDIATE');
  const letGo = (): void => {
    if (database.open) database.close();
  };
  onTestFinished(letGo);
  return { letGo };
}

describe('GET /health', () => {
  it('H1 says that the journal can be written, up to where it goes, and how many are connected', async () => {
    const { house, machine } = await openTestHouse();
    await LiveClient.live(house.app);
    await machine.pass(3_000);
    const answer = await house.app.inject('/health');
    expect(answer.statusCode).toBe(200);
    expect(answer.json()).toEqual({ journalWritable: true, sequence: house.floor.state.sequence, clients: 1, houseMs: MORNING_MS + 3_000 });
  });

  it('H1 is 503 from a tap that could not be kept until one can again', async () => {
    const { house, folder, workpiece } = await openTestHouse();
    const held = holdJournal(folder);
    const command = { commandId: freshId(), command: { type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' } };
    const { sequence } = house.floor.state;
    const notKept = await house.app.inject({ method: 'POST', url: '/api/commands', payload: command });
    expect(notKept.statusCode).toBe(503);
    expect(problemOf(notKept)).toMatchObject({
      type: 'urn:ovenward:problem:notKept',
      refusal: { code: 'notKept', cause: 'journalFailed' },
    });
    const health = await house.app.inject('/health');
    expect(health.statusCode).toBe(503);
    expect(problemOf(health)).toMatchObject({ type: 'urn:ovenward:problem:unavailable', journalWritable: false, sequence });
    held.letGo();
    const again = await house.app.inject({ method: 'POST', url: '/api/commands', payload: command });
    expect(again.json()).toMatchObject({ ok: true, undoable: true });
    expect((await house.app.inject('/health')).statusCode).toBe(200);
  });

  it('H1 is 503 too while a call cannot be kept; the call stays due and is raised once it can', async () => {
    const { house, folder, machine, workpiece } = await openTestHouse();
    await machine.pass(5 * 60_000 - 500);
    const held = holdJournal(folder);
    await machine.pass(1_000);
    expect(workpiece('R1').call).toBeNull();
    expect((await house.app.inject('/health')).statusCode).toBe(503);
    held.letGo();
    await machine.pass(2_500);
    expect(workpiece('R1').call).toMatchObject({ stepId: 'weigh', level: 'call', dueMs: MORNING_MS + 5 * 60_000 });
    expect((await house.app.inject('/health')).statusCode).toBe(200);
  });
});

describe('GET /api/state and /api/events', () => {
  it('H2 answers with the state of now and its sequence number', async () => {
    const { house } = await openTestHouse();
    const answer = await house.app.inject('/api/state');
    expect(answer.statusCode).toBe(200);
    const { sequence } = house.floor.state;
    expect(answer.json()).toEqual({
      sequence,
      kitchenId: house.floor.kitchenId,
      houseMs: MORNING_MS,
      state: asJson(house.floor.state),
    });
  });

  it('H3 answers page by page with every event, from which the state follows', async () => {
    const { house } = await openTestHouse();
    const events: RecordedEvent[] = [];
    let after = 0;
    for (;;) {
      const answer = await house.app.inject(`/api/events?after=${after}&limit=10`);
      const page = answer.json<{ events: RecordedEvent[]; next: number }>();
      if (page.events.length === 0) {
        expect(page.next).toBe(after);
        break;
      }
      expect(page.events.length).toBeLessThanOrEqual(10);
      expect(page.events[0]?.sequence).toBe(after + 1);
      events.push(...page.events);
      after = page.next;
    }
    expect(events).toHaveLength(house.floor.state.sequence);
    expect(evolveAll(EMPTY_STATE, events)).toEqual(asJson(house.floor.state));
  });

  it.each([
    ['', 'after'],
    ['?after=-1', 'after'],
    ['?after=soon', 'after'],
    ['?after=0&limit=0', 'limit'],
    ['?after=0&limit=1001', 'limit'],
    ['?after=0&until=9', 'until'],
  ])('H3 refuses a query that is not right, with the field: %s', async (query, field) => {
    const { house } = await openTestHouse({ isEmpty: true });
    const answer = await house.app.inject(`/api/events${query}`);
    expect(answer.statusCode).toBe(400);
    const { faults } = problemOf(answer) as { faults: { path: string; message: string }[] };
    expect(faults).toHaveLength(1);
    expect(`${faults[0]?.path} ${faults[0]?.message}`).toContain(field);
  });
});

describe('POST /api/commands', () => {
  it('H4 keeps a command and answers with its outcome; the same id gets the same answer', async () => {
    const { house, workpiece, events } = await openTestHouse();
    const wall = await LiveClient.live(house.app, { page: 'wall' });
    const payload = { commandId: freshId(), command: { type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' } };
    const first = await house.app.inject({ method: 'POST', url: '/api/commands', payload });
    const second = await house.app.inject({ method: 'POST', url: '/api/commands', payload });
    expect(first.statusCode).toBe(200);
    const kept = (await events()).filter((event) => event.commandId === payload.commandId);
    expect(first.json()).toEqual({ ok: true, sequence: kept[0]?.sequence, undoable: true });
    expect(second.json()).toEqual(first.json());
    expect(kept).toHaveLength(1);
    expect((await wall.first('events')).events).toEqual(kept);
  });

  it('H16 gives everything that was kept as one file, from which the state follows, with the head of the hash chain', async () => {
    const { house, workpiece } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    phone.say({ type: 'introduce', name: 'Bench phone', stationId: 'bench' });
    await phone.give({ type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' });
    const answer = await house.app.inject('/api/export');
    expect(answer.headers).toMatchObject({
      'content-type': 'application/jsonl; charset=utf-8',
      'content-disposition': 'attachment; filename="ovenward-everything.jsonl"',
      'cache-control': 'no-store',
    });
    expect(answer.body.endsWith('\n')).toBe(true);
    const lines = answer.body
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines[0]).toMatchObject({ line: 'ovenward', kitchenId: house.floor.kitchenId, events: house.floor.state.sequence });
    expect(lines.filter(({ line }) => line === 'device')).toMatchObject([{ name: 'Bench phone', stationId: 'bench' }]);
    expect(answer.body).not.toContain(tokenOf(phone.deviceId));
    const events = lines.filter(({ line }) => line === 'event').map(({ line: _line, ...event }) => event as unknown as RecordedEvent);
    expect(JSON.parse(JSON.stringify(evolveAll(EMPTY_STATE, events)))).toEqual(JSON.parse(JSON.stringify(house.floor.state)));
    expect(lines.at(-1)).toMatchObject({
      line: 'head',
      sequence: house.floor.state.sequence,
      hash: expect.stringMatching(/^[0-9a-f]{64}$/) as string,
    });
  });

  it('H4 books scripts on one device, and a phone’s page on the phone', async () => {
    const { house, workpiece, events } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    const post = async (stepId: string, type: string, headers: Record<string, string> = {}): Promise<void> => {
      const payload = { commandId: freshId(), command: { type, workpieceId: workpiece('C1').id, stepId } };
      expect((await house.app.inject({ method: 'POST', url: '/api/commands', payload, headers })).statusCode).toBe(200);
    };
    await post('weigh', 'startStep');
    await post('weigh', 'finishStep');
    await post('fill-bowl', 'startStep', { cookie: `ovenward-phone=${tokenOf(phone.deviceId)}` });
    const devices = (await events())
      .filter(({ event }) => event.type === 'stepStarted' || event.type === 'stepDone')
      .map(({ deviceId }) => deviceId);
    expect(devices[1]).toBe(devices[0]);
    expect(devices[2]).toBe(phone.deviceId);
    expect(devices[0]).not.toBe(phone.deviceId);
    const fresh = await LiveClient.live(house.app);
    expect((await fresh.first('welcome')).devices).toContainEqual({ id: devices[0], name: 'script 1', stationId: null });
  });

  it('H5 answers 409 with the refusal where the floor refuses', async () => {
    const { house, workpiece } = await openTestHouse();
    const payload = { commandId: freshId(), command: { type: 'finishStep', workpieceId: workpiece('C1').id, stepId: 'divide' } };
    const answer = await house.app.inject({ method: 'POST', url: '/api/commands', payload });
    expect(answer.statusCode).toBe(409);
    expect(problemOf(answer)).toMatchObject({
      type: 'urn:ovenward:problem:refused',
      refusal: { code: 'stepNotReached', tag: 'C1', stepId: 'divide', currentStepId: 'weigh' },
    });
  });

  it('H6 answers 400 with every fault and its field', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    const payload = {
      commandId: 'seven',
      command: { type: 'giveMoreTime', workpieceId: freshId(), stepId: 'Weigh', minutes: 0 },
      deviceId: freshId(),
    };
    const answer = await house.app.inject({ method: 'POST', url: '/api/commands', payload });
    expect(answer.statusCode).toBe(400);
    const { faults } = problemOf(answer) as { faults: { path: string; message: string }[] };
    expect(faults.map(({ path }) => path).sort()).toEqual(['(the whole file)', 'command.minutes', 'command.stepId', 'commandId']);
    expect(house.floor.state.sequence).toBe(1);
  });

  it.each(['bringInDay', 'raiseCall', 'noteSounded', 'anchorClock', 'noteClockJump'])(
    'H6 knows no %s: that is the house’s own word',
    async (type) => {
      const { house } = await openTestHouse({ isEmpty: true });
      const answer = await house.app.inject({
        method: 'POST',
        url: '/api/commands',
        payload: { commandId: freshId(), command: { type, byMs: 1 } },
      });
      expect(answer.statusCode).toBe(400);
      expect(problemOf(answer)).toMatchObject({ faults: [{ path: 'command.type' }] });
    },
  );

  it('H6 answers 400 to what is not JSON and to nothing at all', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    for (const payload of ['{"commandId":', '']) {
      const answer = await house.app.inject({
        method: 'POST',
        url: '/api/commands',
        payload,
        headers: { 'content-type': 'application/json' },
      });
      expect(answer.statusCode).toBe(400);
      expect(problemOf(answer)['type']).toBe('urn:ovenward:problem:badInput');
    }
  });

  it('H7 answers 413 to a body that is too large', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    const answer = await house.app.inject({ method: 'POST', url: '/api/commands', payload: { commandId: 'x'.repeat(256 * 1024) } });
    expect(answer.statusCode).toBe(413);
    expect(problemOf(answer)['type']).toBe('urn:ovenward:problem:tooLarge');
  });

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', 'application/xml'])(
    'H8 answers 415 to %s, so that a form on a page of another site can command nothing',
    async (contentType) => {
      const { house, workpiece } = await openTestHouse();
      const payload = JSON.stringify({
        commandId: freshId(),
        command: { type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' },
      });
      const { sequence } = house.floor.state;
      const answer = await house.app.inject({ method: 'POST', url: '/api/commands', payload, headers: { 'content-type': contentType } });
      expect(answer.statusCode).toBe(415);
      expect(problemOf(answer)['type']).toBe('urn:ovenward:problem:wrongMediaType');
      expect(house.floor.state.sequence).toBe(sequence);
    },
  );

  it('H9 answers 503 where the journal could not keep it, and the same command counts once when it can', async () => {
    const { house, folder, workpiece, events } = await openTestHouse();
    const payload = { commandId: freshId(), command: { type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' } };
    const held = holdJournal(folder);
    const before = house.floor.state;
    expect((await house.app.inject({ method: 'POST', url: '/api/commands', payload })).statusCode).toBe(503);
    expect(house.floor.state).toBe(before);
    held.letGo();
    expect((await house.app.inject({ method: 'POST', url: '/api/commands', payload })).statusCode).toBe(200);
    await eventLoopTurns();
    expect((await events()).filter(({ commandId }) => commandId === payload.commandId)).toHaveLength(1);
  });
});

describe('everything else', () => {
  it('H10 is 404, as a problem too', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    for (const [method, url] of [
      ['GET', '/recipes'],
      ['POST', '/health'],
      ['DELETE', '/api/events?after=0'],
      ['GET', '/wall'],
    ] as const) {
      const answer = await house.app.inject({ method, url });
      expect(answer.statusCode).toBe(404);
      expect(problemOf(answer)).toMatchObject({
        type: 'urn:ovenward:problem:notFound',
        detail: `There is no ${method} ${url.split('?')[0]}`,
      });
    }
  });

  it('H11 the pages come with a policy that lets in nothing but our own, and their files may be kept for ever', async () => {
    const pagesFolder = folderForTest();
    mkdirSync(join(pagesFolder, 'assets'));
    for (const [file, text] of [
      ['index.html', 'the entrance'],
      ['wall/index.html', 'the wall'],
      ['phone/index.html', 'the phone'],
      ['kitchen/index.html', 'the kitchen'],
      ['assets/wall-1f2e.js', 'export {};'],
    ] as const) {
      mkdirSync(join(pagesFolder, file, '..'), { recursive: true });
      writeFileSync(join(pagesFolder, file), text);
    }
    const { house } = await openTestHouse({ isEmpty: true, pagesFolder });
    for (const [url, text] of [
      ['/', 'the entrance'],
      ['/wall', 'the wall'],
      ['/phone', 'the phone'],
      ['/kitchen', 'the kitchen'],
    ] as const) {
      const answer = await house.app.inject(url);
      expect([answer.statusCode, answer.body]).toEqual([200, text]);
      expect(answer.headers['content-type']).toMatch(/^text\/html/);
      expect(answer.headers['cache-control']).toBe('no-cache');
      expect(answer.headers['x-content-type-options']).toBe('nosniff');
      expect(answer.headers['content-security-policy']).toMatch(/^default-src 'self';/);
      expect(answer.headers['content-security-policy']).not.toMatch(/unsafe|https?:/);
    }
    const asset = await house.app.inject('/assets/wall-1f2e.js');
    expect([asset.statusCode, asset.body]).toEqual([200, 'export {};']);
    expect(asset.headers['cache-control']).toContain('immutable');
    expect((await house.app.inject('/assets/..%2Findex.html')).statusCode).not.toBe(200);
    expect((await house.app.inject('/assets/none.js')).statusCode).toBe(404);
  });
});

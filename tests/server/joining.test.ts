import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { pino } from 'pino';
import { describe, expect, it } from 'vitest';
import { accessStatusSchema, deviceListSchema } from '../../shared/wire/access.ts';
import { joiningStatusSchema, type AccessRole, type Joining } from '../../shared/wire/joining.ts';
import { assert } from '../../shared/result.ts';
import { HEARTBEAT_MS } from '../../shared/wire/protocol.ts';
import { consoleCode, plainCode, sixDigits } from '../../server/access/codes.ts';
import { MAX_ADMITTED, NEW_TICKET_MS, OPEN_MS } from '../../server/access/joining.ts';
import { looksWhereTheServerIs } from '../../server/access/roles.ts';
import { MAX_WRONG_OVERALL, MAX_WRONG_PER_ADDRESS, networkOf, WRONG_WINDOW_MS } from '../../server/access/wrong-codes.ts';
import { Devices } from '../../server/devices/devices.ts';
import type { House } from '../../server/main/house.ts';
import { freshId, LiveClient, tokenOf } from './support/live-client.ts';
import { openTestHouse, type TestHouseOptions } from './support/test-house.ts';
import { folderForTest } from './support/temporary-folder.ts';

interface Answer {
  readonly status: number;
  readonly body: Record<string, unknown>;
  readonly headers: Record<string, unknown>;
}

/** A house that lets in nobody but walls on its own machine, as users have it, and whoever was let in. */
async function closedHouse(options: TestHouseOptions = {}) {
  const test = await openTestHouse({ roleOfGuest: looksWhereTheServerIs, ...options });
  const { house } = test;
  const ask = async (
    method: 'GET' | 'POST' | 'PUT' | 'DELETE',
    url: string,
    { cookie, from = '192.0.2.7', payload }: { cookie?: string; from?: string; payload?: object } = {},
  ): Promise<Answer> => {
    const answer = await house.app.inject({
      method,
      url,
      remoteAddress: from,
      ...(cookie === undefined ? {} : { headers: { cookie } }),
      ...(payload === undefined ? {} : { payload }),
    });
    return { status: answer.statusCode, body: answer.body === '' ? {} : answer.json(), headers: answer.headers };
  };
  const joinWith = async (payload: object, from?: string, cookie?: string): Promise<Answer> =>
    ask('POST', '/api/join', { payload, ...(from === undefined ? {} : { from }), ...(cookie === undefined ? {} : { cookie }) });
  /** Claims the kitchen; the cookie of the phone that manages it. */
  const claim = async (): Promise<string> => {
    const code = house.access.consoleCode;
    assert(code !== null, 'nobody has claimed the kitchen yet');
    const joined = await joinWith({ code });
    expect(joined.status).toBe(200);
    return `ovenward-phone=${tokenOf(String(joined.body['deviceId']))}`;
  };
  const open = (role: AccessRole): Joining => {
    house.access.openJoining(role);
    return shownBy(house);
  };
  return { ...test, ask, joinWith, claim, open };
}

function shownBy(house: House): Joining {
  const { joining } = house.access.joining;
  assert(joining !== null, 'joining is open');
  return joining;
}

function wrongOnes(count: number, but: string): readonly string[] {
  return Array.from({ length: count + 1 }, (_, index) => String(index).padStart(6, '0'))
    .filter((code) => code !== but)
    .slice(0, count);
}

describe('the first phone', () => {
  it('AC1 claims the kitchen with the code of the console, once; then there is none', async () => {
    const { house, joinWith, ask, events } = await closedHouse();
    const code = house.access.consoleCode ?? '';
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{5}-[0-9A-HJKMNP-TV-Z]{5}$/);
    expect(accessStatusSchema.parse((await ask('GET', '/api/access')).body)).toEqual({
      role: null,
      isClaimed: false,
      isJoiningOpen: false,
    });
    const joined = await joinWith({ code, name: 'Office phone' });
    expect(joined).toMatchObject({ status: 200, body: { name: 'Office phone', role: 'manage' } });
    // RFC 6265bis: no script reads it, no other site sends it; 400 days at most.
    const cookie = String(joined.headers['set-cookie']);
    expect(cookie).toBe(`ovenward-phone=${tokenOf(String(joined.body['deviceId']))}; Max-Age=34560000; Path=/; HttpOnly; SameSite=Strict`);
    expect(joined.headers['cache-control']).toBe('no-store');
    expect(house.access.consoleCode).toBeNull();
    expect(await joinWith({ code })).toMatchObject({ status: 409, body: { type: 'urn:ovenward:problem:joiningClosed' } });
    expect((await ask('GET', '/api/access', { cookie })).body).toEqual({ role: 'manage', isClaimed: true, isJoiningOpen: false });
    // Every event says which device.
    await ask('POST', '/api/commands', { cookie, payload: { commandId: freshId(), command: { type: 'askSoundTest' } } });
    expect((await events()).at(-1)?.deviceId).toBe(joined.body['deviceId']);
  });

  it('AC1 types it as people do', async () => {
    const { house, joinWith } = await closedHouse();
    const typed = (house.access.consoleCode ?? '').toLowerCase().replace('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l');
    expect((await joinWith({ code: ` ${typed} ` })).status).toBe(200);
    expect(plainCode('o1 il-5')).toBe('01115');
  });

  it('AC1 needs no code any more after a restart, and gets a new one where somebody starts it for that', async () => {
    const first = await closedHouse();
    const cookie = await first.claim();
    await first.close();
    const second = await closedHouse({ folder: first.folder });
    expect(second.house.access.consoleCode).toBeNull();
    expect((await second.ask('GET', '/api/devices', { cookie })).status).toBe(200);
    await second.close();
    const third = await closedHouse({ folder: first.folder, isClaimedAnew: true });
    expect(third.house.access.consoleCode).not.toBeNull();
    expect((await third.joinWith({ code: third.house.access.consoleCode ?? '' })).body).toMatchObject({ role: 'manage' });
  });
});

describe('joining', () => {
  it('AC2 is closed until somebody who manages opens it; then walls alone show six digits and a picture', async () => {
    const { house, ask, claim } = await closedHouse({ isListening: true });
    const cookie = await claim();
    const wall = await LiveClient.live(house.app, { page: 'wall' });
    const phone = await LiveClient.live(house.app, { deviceId: cookie.slice('ovenward-phone='.length, 'ovenward-phone='.length + 22) });
    expect(await wall.first('joining')).toEqual({ type: 'joining', status: { joining: null, lockedUntilMs: null } });
    const answer = await ask('POST', '/api/joining', { cookie, payload: { role: 'act' } });
    const { joining } = joiningStatusSchema.parse(answer.body);
    expect(joining?.code).toMatch(/^\d{6}$/);
    await wall.until(() => wall.of('joining').length === 2);
    expect(wall.of('joining')[1]?.status).toEqual({ joining, lockedUntilMs: null });
    expect(phone.of('joining')).toEqual([]);
    expect((await ask('DELETE', '/api/joining', { cookie })).status).toBe(204);
    await wall.until(() => wall.of('joining').length === 3);
    expect(wall.of('joining')[2]?.status.joining).toBeNull();
    expect((await ask('POST', '/api/joining', { cookie, payload: { role: 'baker' } })).status).toBe(400);
  });

  it('AC2 lets in whoever has scanned the picture and types the digits, as what it was opened for', async () => {
    const { house, joinWith, ask, open } = await closedHouse();
    const { code, ticket } = open('act');
    const joined = await joinWith({ code: `${code.slice(0, 3)} ${code.slice(3)}`, ticket });
    expect(joined).toMatchObject({ status: 200, body: { role: 'act' } });
    const cookie = String(joined.headers['set-cookie']).split(';')[0] ?? '';
    expect((await ask('GET', '/api/state', { cookie })).status).toBe(200);
    expect((await ask('GET', '/api/devices', { cookie })).status).toBe(403);
    const phone = await LiveClient.live(house.app, { deviceId: String(joined.body['deviceId']) });
    expect((await phone.give({ type: 'askSoundTest' })).ok).toBe(true);
  });

  it('AC2 shows the picture only on walls that somebody vouched for: a screen that was let in by digits would let itself in as more', async () => {
    const { house, ask, claim, open, joinWith } = await closedHouse({ isListening: true });
    const manager = await claim();
    const { code, ticket } = open('manage');
    const byDigits = await joinWith({ code, as: 'wall' });
    const lurker = await LiveClient.live(house.app, { page: 'wall', deviceId: String(byDigits.body['deviceId']) });
    expect((await lurker.first('joining')).status.joining).toMatchObject({ code, ticket: null });
    const own = await LiveClient.live(house.app, { page: 'wall' });
    expect((await own.first('joining')).status.joining).toMatchObject({ code, ticket });
    // Somebody who manages the kitchen says that it is one of the house's.
    await ask('PUT', `/api/devices/${String(byDigits.body['deviceId'])}/role`, { cookie: manager, payload: { role: 'look' } });
    expect((await lurker.closed()).code).toBe(4409);
    const vouched = await LiveClient.live(house.app, { page: 'wall', deviceId: String(byDigits.body['deviceId']) });
    expect((await vouched.first('joining')).status.joining).toMatchObject({ code, ticket });
  });

  it('AC2 is closed after many: a flood of newcomers would push the house’s own devices out', async () => {
    const { house, joinWith, open } = await closedHouse();
    const { code } = open('look');
    for (let n = 0; n < MAX_ADMITTED; n += 1) expect((await joinWith({ code })).status).toBe(200);
    expect(house.access.joining.joining).toBeNull();
    expect((await joinWith({ code })).status).not.toBe(200);
  });

  it('AC2 uses up neither picture nor code where the disk keeps nothing', async () => {
    const { house, folder, joinWith } = await closedHouse();
    const held = new Database(join(folder, 'devices.db'));
    held.exec('BEGIN IMMEDIATE');
    const code = house.access.consoleCode ?? '';
    expect((await joinWith({ code })).status).toBe(500);
    held.exec('ROLLBACK');
    held.close();
    expect((await joinWith({ code })).status).toBe(200);
  });

  it('AC2 lets a screen in to look, and no more, by the digits alone', async () => {
    const { joinWith, open } = await closedHouse();
    expect((await joinWith({ code: open('manage').code, as: 'wall' })).body).toMatchObject({ role: 'look', name: 'wall 1' });
  });

  it('AC3 takes a picture once: who has photographed it comes too late', async () => {
    const { house, joinWith, open } = await closedHouse();
    const { code, ticket } = open('act');
    expect((await joinWith({ code, ticket })).status).toBe(200);
    expect(await joinWith({ code, ticket })).toMatchObject({ status: 403, body: { type: 'urn:ovenward:problem:wrongCode' } });
    expect(shownBy(house).ticket).not.toBe(ticket);
    expect(shownBy(house).code).toBe(code);
  });

  it('AC3 takes it for two minutes, and draws a new one every minute', async () => {
    const { house, machine, joinWith, open } = await closedHouse();
    const { code, ticket } = open('act');
    await machine.pass(NEW_TICKET_MS);
    const second = shownBy(house).ticket;
    expect(second).not.toBe(ticket);
    expect((await joinWith({ code, ticket })).status).toBe(200);
    await machine.pass(NEW_TICKET_MS);
    await machine.pass(NEW_TICKET_MS);
    expect((await joinWith({ code, ticket: second })).status).toBe(403);
  });

  it('AC3 closes by itself after ten minutes, and with it the code and the picture are void', async () => {
    const { house, machine, joinWith, open } = await closedHouse();
    const { code } = open('act');
    while (house.clock.monotonicMs() < OPEN_MS - NEW_TICKET_MS) await machine.pass(NEW_TICKET_MS);
    const last = shownBy(house).ticket;
    await machine.pass(NEW_TICKET_MS);
    await machine.pass(NEW_TICKET_MS);
    expect(house.access.joining.joining).toBeNull();
    // The kitchen is not claimed: what is not the console's code is a guess at it.
    expect((await joinWith({ code, ticket: last })).status).toBe(403);
  });
});

describe('a wrong code', () => {
  it('AC4 locks its address out after the fifth, with the right one too, and says for how long', async () => {
    const { machine, joinWith, open } = await closedHouse();
    const { code, ticket } = open('act');
    for (const wrong of wrongOnes(MAX_WRONG_PER_ADDRESS, code)) expect((await joinWith({ code: wrong, ticket })).status).toBe(403);
    const locked = await joinWith({ code, ticket });
    expect(locked).toMatchObject({ status: 429, body: { type: 'urn:ovenward:problem:tooManyTries', retryS: 600 } });
    expect(locked.headers['retry-after']).toBe('600');
    expect((await joinWith({ code, ticket }, '192.0.2.8')).status).toBe(200);
    machine.passUnnoticed(WRONG_WINDOW_MS);
    expect((await joinWith({ code })).status).not.toBe(429);
  });

  it('AC4 holds for the whole ten minutes that it says, however the wrong ones were spread', async () => {
    const { machine, joinWith, open } = await closedHouse();
    const { code, ticket } = open('act');
    for (const wrong of wrongOnes(MAX_WRONG_PER_ADDRESS, code)) {
      machine.passUnnoticed(100_000);
      await joinWith({ code: wrong });
    }
    machine.passUnnoticed(WRONG_WINDOW_MS - 1000);
    expect((await joinWith({ code, ticket })).status).toBe(429);
    machine.passUnnoticed(1000);
    expect((await joinWith({ code })).status).not.toBe(429);
  });

  it('AC4 from thirty addresses locks everybody out, and walls say so until it is over', async () => {
    const { house, machine, joinWith, open } = await closedHouse({ isListening: true });
    const wall = await LiveClient.live(house.app, { page: 'wall' });
    const { code, ticket } = open('act');
    for (const [index, wrong] of wrongOnes(MAX_WRONG_OVERALL, code).entries()) await joinWith({ code: wrong }, `198.51.100.${index}`);
    expect((await joinWith({ code, ticket }, '203.0.113.1')).status).toBe(429);
    const lockedUntilMs = Math.round(house.clock.realMs() + WRONG_WINDOW_MS);
    await wall.until(() => wall.of('joining').at(-1)?.status.lockedUntilMs === lockedUntilMs);
    expect(wall.of('joining').at(-1)?.status.joining).toBeNull();
    for (let passedMs = 0; passedMs < WRONG_WINDOW_MS; passedMs += HEARTBEAT_MS) {
      await machine.pass(HEARTBEAT_MS);
      const pongs = wall.of('pong').length;
      wall.say({ type: 'ping', t1: 1 });
      await wall.until(() => wall.of('pong').length > pongs);
    }
    await wall.until(() => wall.of('joining').at(-1)?.status.lockedUntilMs === null);
    expect((await joinWith({ code: '000000' }, '203.0.113.1')).status).not.toBe(429);
  });

  it('AC4 for the console counts as any other: fifty bits are not guessed thirty at a time', async () => {
    const { joinWith } = await closedHouse();
    for (let n = 0; n < MAX_WRONG_PER_ADDRESS; n += 1) expect((await joinWith({ code: `AAAAA-AAAA${n}` })).status).toBe(403);
    expect((await joinWith({ code: 'AAAAA-AAAAA' })).status).toBe(429);
  });

  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    // RFC 3849 and RFC 4291 section 2.2: the same address written in two ways.
    ['2001:db8:0:1:8:800:200c:417a', '2001:db8:0:1'],
    ['2001:DB8:0000:1::417A', '2001:db8:0:1'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    ['::1', '0:0:0:0'],
  ])('AC4 counts %s as %s', (address, network) => {
    expect(networkOf(address)).toBe(network);
  });
});

describe('the devices that were let in', () => {
  it('AC5 are listed with what they may do and when they were last there', async () => {
    const { house, ask, claim, open, joinWith } = await closedHouse();
    const cookie = await claim();
    const { code, ticket } = open('act');
    const joined = await joinWith({ code, ticket, name: 'Bench phone' });
    await LiveClient.live(house.app, { deviceId: String(joined.body['deviceId']) });
    const { devices } = deviceListSchema.parse((await ask('GET', '/api/devices', { cookie })).body);
    expect(devices.map(({ name, role, isConnected, isThis }) => ({ name, role, isConnected, isThis }))).toEqual([
      { name: 'phone 1', role: 'manage', isConnected: false, isThis: true },
      { name: 'Bench phone', role: 'act', isConnected: true, isThis: false },
    ]);
  });

  it('AC5 are shut out at once: open sockets close, and the cookie is worth nothing to whoever has copied it', async () => {
    const { house, ask, claim, open, joinWith } = await closedHouse();
    const manager = await claim();
    const { code, ticket } = open('act');
    const joined = await joinWith({ code, ticket, name: 'Lost phone' });
    const deviceId = String(joined.body['deviceId']);
    const stolen = String(joined.headers['set-cookie']).split(';')[0] ?? '';
    const phone = await LiveClient.live(house.app, { deviceId });
    expect((await ask('DELETE', `/api/devices/${deviceId}`, { cookie: manager })).status).toBe(204);
    expect((await phone.closed()).code).toBe(4403);
    expect((await ask('GET', '/api/state', { cookie: stolen })).status).toBe(403);
    const again = await LiveClient.connect(house.app, { deviceId });
    expect((await again.closed()).code).toBe(4403);
    const { devices } = deviceListSchema.parse((await ask('GET', '/api/devices', { cookie: manager })).body);
    expect(devices.find(({ id }) => id === deviceId)).toMatchObject({ role: null, name: 'phone 2' });
    expect((await ask('DELETE', `/api/devices/${freshId()}`, { cookie: manager })).status).toBe(404);
    expect((await ask('DELETE', '/api/devices/nobody', { cookie: manager })).status).toBe(404);
  });

  it('AC5 get another role at once: open sockets close and come back with it', async () => {
    const { house, ask, claim, open, joinWith } = await closedHouse();
    const manager = await claim();
    const { code, ticket } = open('act');
    const deviceId = String((await joinWith({ code, ticket })).body['deviceId']);
    const phone = await LiveClient.live(house.app, { deviceId });
    expect((await ask('PUT', `/api/devices/${deviceId}/role`, { cookie: manager, payload: { role: 'look' } })).status).toBe(204);
    expect((await phone.closed()).code).toBe(4409);
    const back = await LiveClient.live(house.app, { deviceId });
    expect(await back.give({ type: 'askSoundTest' })).toEqual({ ok: false, refusal: { code: 'forbidden' } });
  });

  it('AC5 keep one that manages: the last one is neither lowered nor shut out', async () => {
    const { ask, claim } = await closedHouse();
    const cookie = await claim();
    const deviceId = cookie.slice('ovenward-phone='.length, 'ovenward-phone='.length + 22);
    for (const [method, url] of [
      ['PUT', `/api/devices/${deviceId}/role`],
      ['DELETE', `/api/devices/${deviceId}`],
    ] as const) {
      const answer = await ask(method, url, { cookie, ...(method === 'PUT' ? { payload: { role: 'act' } } : {}) });
      expect(answer).toMatchObject({ status: 409, body: { why: 'lastManager' } });
    }
    expect((await ask('GET', '/api/devices', { cookie })).status).toBe(200);
  });

  it('AC5 joining once more makes the token before void, and lowers nobody: the one that manages goes on managing', async () => {
    const { house, ask, claim, open, joinWith } = await closedHouse();
    const manager = await claim();
    const { code, ticket } = open('act');
    const again = await joinWith({ code, ticket }, '192.0.2.7', manager);
    expect(again.body).toMatchObject({ role: 'manage' });
    expect(house.access.isClaimed).toBe(true);
    const more = open('act');
    const joined = await joinWith({ code: more.code, ticket: more.ticket });
    expect(joined.body).toMatchObject({ role: 'act' });
    expect((await ask('GET', '/api/access', { cookie: String(again.headers['set-cookie']).split(';')[0] ?? '' })).body).toMatchObject({
      role: 'manage',
    });
  });

  it('AC6 lose their names from the file, not only from the list', async () => {
    const { folder, ask, claim, open, joinWith } = await closedHouse();
    const cookie = await claim();
    const { code, ticket } = open('act');
    const deviceId = String((await joinWith({ code, ticket, name: 'Grandmother Quill' })).body['deviceId']);
    expect(['devices.db', 'devices.db-wal'].some((file) => readFileSync(join(folder, file)).includes('Grandmother Quill'))).toBe(true);
    expect((await ask('DELETE', `/api/devices/${deviceId}/name`, { cookie })).status).toBe(204);
    for (const file of ['devices.db', 'devices.db-wal'])
      expect(readFileSync(join(folder, file)).includes('Grandmother Quill'), file).toBe(false);
    expect((await ask('DELETE', `/api/devices/${freshId()}/name`, { cookie })).status).toBe(404);
  });
});

describe('the log', () => {
  it('AC12 says who was let in, who guessed and what was changed, by whom, and no code, ticket or token', async () => {
    const lines: string[] = [];
    const log = pino({ level: 'info' }, { write: (line: string) => void lines.push(line) });
    const { ask, claim, open, joinWith } = await closedHouse({ log });
    const cookie = await claim();
    const { code, ticket } = open('act');
    const joined = await joinWith({ code, ticket, name: 'Bench phone' });
    await joinWith({ code: code === '000000' ? '000001' : '000000' }, '192.0.2.66');
    const deviceId = String(joined.body['deviceId']);
    await ask('PUT', `/api/devices/${deviceId}/role`, { cookie, payload: { role: 'look' } });
    await ask('DELETE', `/api/devices/${deviceId}`, { cookie });
    await ask('GET', '/api/devices', { cookie: `ovenward-phone=${tokenOf(deviceId)}` });
    const all = lines.join('');
    const said = lines.map((line) => (JSON.parse(line) as { msg: string }).msg);
    for (const each of [
      'a device was let in',
      'somebody typed a wrong code',
      'a device is to get another role',
      'a device is to be shut out',
      'somebody may not use this route',
    ])
      expect(said).toContain(each);
    expect(all).toContain('"address":"192.0.2.66"');
    for (const secret of [code, ticket, tokenOf(deviceId), 'Bench phone']) expect(all).not.toContain(secret);
  });
});

describe('tokens', () => {
  it('AC7 are 256 random bits, and only their SHA-256 is kept', () => {
    const folder = folderForTest();
    const path = join(folder, 'devices.db');
    const devices = new Devices(path);
    const device = devices.create('phone', 1000);
    const token = devices.letIn(device.id, 'act');
    const other = devices.letIn(devices.create('phone', 1000).id, 'act');
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(other).not.toBe(token);
    expect(devices.findByToken(token)).toMatchObject({ id: device.id, role: 'act' });
    for (const none of ['', token.slice(1), `${token}A`, device.id, other.toLowerCase()]) expect(devices.findByToken(none)).toBeNull();
    devices.close();
    expect(readFileSync(path).includes(token)).toBe(false);
    const database = new Database(path, { readonly: true });
    const hash: unknown = database.prepare('SELECT token_hash FROM devices WHERE number = 1').pluck().get();
    database.close();
    expect(hash).toEqual(createHash('sha256').update(`plain:${token}`).digest());
  });

  it('AC7 of an older file there are none: it is lifted, and whoever is in it has to be let in once', () => {
    const path = join(folderForTest(), 'devices.db');
    const older = new Database(path);
    older.pragma('application_id = 0x4f767744');
    // The tables of schema 1, as they were.
    older.exec(`CREATE TABLE devices (
      id            BLOB    NOT NULL PRIMARY KEY CHECK (length(id) = 16),
      kind          TEXT    NOT NULL CHECK (kind IN ('wall', 'phone', 'script')),
      number        INTEGER NOT NULL CHECK (number > 0),
      name          TEXT,
      station       TEXT,
      first_seen_ms INTEGER NOT NULL,
      last_seen_ms  INTEGER NOT NULL,
      UNIQUE (kind, number)
    ) STRICT, WITHOUT ROWID;
    INSERT INTO devices VALUES (x'00000000000000000000000000000001', 'phone', 1, 'Bench', NULL, 5, 6);`);
    older.pragma('user_version = 1');
    older.close();
    const devices = new Devices(path);
    expect(devices.all()).toMatchObject([{ name: 'Bench', role: null, lastSeenMs: 6 }]);
    expect(devices.managers()).toBe(0);
    devices.close();
  });

  it('AC7 and whoever manages is not forgotten for having been away longest', () => {
    const devices = new Devices(join(folderForTest(), 'devices.db'), { maxDevices: 3 });
    const manager = devices.create('phone', 1);
    devices.letIn(manager.id, 'manage');
    for (let n = 2; n < 9; n += 1) devices.create('wall', n);
    expect(devices.find(manager.id)).not.toBeNull();
    expect(devices.all()).toHaveLength(3);
    devices.close();
  });
});

describe('codes', () => {
  it('AC8 take every digit and every character alike often', () => {
    const digits = new Map<string, number>();
    const bytes = (length: number): Uint8Array => Uint8Array.from({ length }, () => (byte = (byte + 1) % 256));
    let byte = 0;
    for (let n = 0; n < 2500; n += 1) for (const digit of sixDigits(bytes)) digits.set(digit, (digits.get(digit) ?? 0) + 1);
    // Bytes that go round come to every digit 25 times in 250 of 256.
    expect([...digits.keys()].sort().join('')).toBe('0123456789');
    for (const count of digits.values()) expect(Math.abs(count - 1500)).toBeLessThan(30);
    const characters = new Set<string>();
    for (let n = 0; n < 100; n += 1) for (const character of consoleCode(bytes).replace('-', '')) characters.add(character);
    // Crockford's Base32: no I, L, O, U.
    expect([...characters].sort().join('')).toBe('0123456789ABCDEFGHJKMNPQRSTVWXYZ');
  });
});

describe('the wall on the server’s own machine', () => {
  it('AC9 needs no phone; a phone there does, and so does a wall elsewhere or behind a program that passes others on', async () => {
    const { house, ask } = await closedHouse({ isListening: true });
    const wall = await LiveClient.live(house.app, { page: 'wall' });
    expect(wall.of('welcome')).toHaveLength(1);
    const phone = await LiveClient.connect(house.app, { page: 'phone' });
    expect((await phone.closed()).code).toBe(4403);
    for (const from of ['127.0.0.1', '::1', '::ffff:127.0.0.1']) expect((await ask('GET', '/api/state', { from })).status, from).toBe(200);
    for (const from of ['192.0.2.7', '2001:db8::1', '128.0.0.1']) expect((await ask('GET', '/api/state', { from })).status, from).toBe(403);
    for (const header of ['x-forwarded-for', 'forwarded']) {
      const passedOn = await house.app.inject({ url: '/api/state', headers: { [header]: 'for=192.0.2.7' } });
      expect(passedOn.statusCode, header).toBe(403);
    }
    expect(
      (await ask('POST', '/api/commands', { from: '127.0.0.1', payload: { commandId: freshId(), command: { type: 'askSoundTest' } } }))
        .status,
    ).toBe(403);
  });
});

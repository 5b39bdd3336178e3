import { describe, expect, it } from 'vitest';
import type { FloorEvent } from '../../shared/floor/events.ts';
import type { ReadBakehouse } from '../../server/main/read-bakehouse.ts';
import type { DownMessage } from '../../shared/wire/down.ts';
import { LiveClient } from './support/live-client.ts';
import { MORNING_MS, type Machine } from './support/machine.ts';
import { harbour, openTestHouse, type TestHouse } from './support/test-house.ts';

/** Who sounds, as a client was last told. */
function soundingId(client: LiveClient): string | null {
  return client.of('soundStatus').at(-1)?.soundingDeviceId ?? null;
}

describe('the device that sounds', () => {
  it('W18 is the first wall that can, before any phone, and the next one when it leaves or falls silent', async () => {
    const { house } = await openTestHouse({ isEmpty: true, isListening: true });
    const watcher = await LiveClient.live(house.app, { sound: 'none' });
    const isTold = async (deviceId: string | null): Promise<void> => watcher.until(() => soundingId(watcher) === deviceId);
    const phone = await LiveClient.live(house.app, { sound: 'on' });
    await isTold(phone.deviceId);
    const wall = await LiveClient.live(house.app, { page: 'wall', sound: 'waiting' });
    await wall.until(() => soundingId(wall) === phone.deviceId);
    wall.say({ type: 'soundChanged', sound: 'on' });
    await isTold(wall.deviceId);
    const secondWall = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    await secondWall.until(() => soundingId(secondWall) === wall.deviceId);
    expect(soundingId(watcher)).toBe(wall.deviceId);
    await wall.leave(house.hub);
    await isTold(secondWall.deviceId);
    secondWall.say({ type: 'soundChanged', sound: 'none' });
    await isTold(phone.deviceId);
    await phone.leave(house.hub);
    await isTold(null);
  });

  it('W19 is ordered to sound, says that it has, and that becomes an event', async () => {
    const { house, workpiece, events, wall, phone } = await houseThatCalls();
    const order = await wall.first('sound');
    const call = { workpieceId: workpiece('C1').id, stepId: 'weigh', level: 'call' };
    expect(order).toMatchObject({ burst: 'call', calls: [call] });
    expect(phone.of('sound')).toEqual([]);
    expect(await soundedEvents(events)).toEqual([]);
    wall.say({ type: 'sounded', soundId: order.soundId, burst: order.burst, calls: order.calls });
    wall.say({ type: 'sounded', soundId: order.soundId, burst: order.burst, calls: order.calls });
    await wall.until(() => wall.of('events').some(({ events: told }) => told.some(({ event }) => event.type === 'callSounded')));
    await wall.quiet();
    expect(await soundedEvents(events)).toMatchObject([
      { deviceId: wall.deviceId, event: { type: 'callSounded', burst: 'call', calls: [call], atMs: MORNING_MS } },
    ]);
    expect(house.floor.state.workpieces[call.workpieceId]?.call).toMatchObject({ soundedCount: 1, lastSoundedMs: MORNING_MS });
  });

  it('W19 is believed only about what it was ordered, and nobody else is', async () => {
    const { events, wall, phone, workpiece } = await houseThatCalls();
    const order = await wall.first('sound');
    const said = { type: 'sounded', burst: order.burst, calls: order.calls } as const;
    phone.say({ ...said, soundId: order.soundId });
    wall.say({ ...said, soundId: workpiece('C1').id });
    // What was said before the ping has been heard when it is answered.
    for (const client of [phone, wall]) {
      client.say({ type: 'ping', t1: 1 });
      await client.first('pong');
    }
    await wall.quiet();
    expect(await soundedEvents(events)).toEqual([]);
  });

  it('W20 that does not say so is doubted: another one is asked, and it again when it says that it can', async () => {
    const { machine, wall, phone, events } = await houseThatCalls();
    const first = await wall.first('sound');
    expect(wall.of('soundStatus').at(-1)).toEqual({ type: 'soundStatus', soundingDeviceId: wall.deviceId, page: 'wall' });
    await machine.pass(3_900);
    expect([wall.of('sound').length, phone.of('sound').length]).toEqual([1, 0]);
    await machine.pass(200);
    const second = await phone.first('sound');
    expect(second.calls).toEqual(first.calls);
    await wall.until(() => soundingId(wall) === phone.deviceId);
    expect(wall.of('soundStatus').at(-1)?.page).toBe('phone');
    expect(wall.of('sound')).toHaveLength(1);
    wall.say({ type: 'soundChanged', sound: 'on' });
    await phone.until(() => soundingId(phone) === wall.deviceId);
    expect(await soundedEvents(events)).toEqual([]);
    phone.say({ type: 'sounded', soundId: second.soundId, burst: second.burst, calls: second.calls });
    await phone.until(() => phone.of('events').some(({ events: told }) => told.some(({ event }) => event.type === 'callSounded')));
    expect((await soundedEvents(events)).map(({ deviceId }) => deviceId)).toEqual([phone.deviceId]);
  });

  it('W20 or has left while it was asked, is not waited for', async () => {
    const { house, machine, wall, phone } = await houseThatCalls();
    const first = await wall.first('sound');
    await wall.leave(house.hub);
    await machine.pass(4_200);
    expect((await phone.first('sound')).calls).toEqual(first.calls);
  });

  it('W20 alone is asked again, however often it has not said so', async () => {
    const { house, machine, wall, phone } = await houseThatCalls();
    await phone.leave(house.hub);
    await wall.first('sound');
    await machine.pass(4_100);
    await wall.until(() => wall.of('sound').length === 2);
    await machine.pass(4_100);
    await wall.until(() => wall.of('sound').length === 3);
  });

  it('W21 what came due while no device could sound sounds at once, in one group, when one comes', async () => {
    const { house, machine, workpiece, due, events } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    await machine.pass(24 * 60_000);
    const raised = (await events()).map(({ event }) => event).filter((event) => event.type === 'callRaised');
    expect(new Set(raised.map((event) => event.workpieceId))).toEqual(new Set(['C1', 'R1', 'M1'].map((tag) => workpiece(tag).id)));
    expect(due('M1').dueMs).toBe(MORNING_MS + 20 * 60_000);
    const wall = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    const order = await wall.first('sound');
    expect(new Set(order.calls.map((call) => call.workpieceId))).toEqual(new Set(raised.map((event) => event.workpieceId)));
    // C1 and R1 are past their tolerance of a quarter of an hour by now: the strongest gives the rhythm.
    expect(order.burst).toBe('late');
    expect(phone.of('sound')).toEqual([]);
  });
});

describe('S15 who sounds', () => {
  it('a wall before a station’s screen before a phone, and a wall that comes back at once', async () => {
    const { house } = await openTestHouse({ isEmpty: true, isListening: true });
    const phone = await LiveClient.live(house.app, { sound: 'on' });
    const isTold = async (deviceId: string | null): Promise<void> => phone.until(() => soundingId(phone) === deviceId);
    await isTold(phone.deviceId);
    const station = await LiveClient.live(house.app, { page: 'station', sound: 'on' });
    await isTold(station.deviceId);
    const wall = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    await isTold(wall.deviceId);
    await wall.leave(house.hub);
    await isTold(station.deviceId);
    // Nobody looks at it any more, and its browser may put it to sleep.
    station.say({ type: 'soundChanged', sound: 'waiting' });
    await isTold(phone.deviceId);
    const again = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    await isTold(again.deviceId);
  });

  it('whoever was asked is believed when another has taken over meanwhile, and nobody is asked beside it', async () => {
    const { house, machine, events } = await openTestHouse({ isListening: true });
    const phone = await LiveClient.live(house.app, { sound: 'on' });
    const order = await phone.first('sound');
    const wall = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    await machine.pass(3_000);
    expect(wall.of('sound')).toEqual([]);
    phone.say({ type: 'sounded', soundId: order.soundId, burst: order.burst, calls: order.calls });
    await phone.until(() => phone.of('events').some(({ events: told }) => told.some(({ event }) => event.type === 'callSounded')));
    expect((await soundedEvents(events)).map(({ deviceId }) => deviceId)).toEqual([phone.deviceId]);
  });
});

describe('S12 S13 the house’s hours', () => {
  it('an order says how loud the hour is, and in quiet hours a call waits for their end', async () => {
    const { house, machine, due } = await openTestHouse();
    const at = (sinceMin: number): string => new Date(MORNING_MS + sinceMin * 60_000).toISOString().slice(11, 16);
    const phone = await LiveClient.live(house.app);
    const { document, version } = house.floor.state.house ?? { document: undefined, version: 0 };
    if (document === undefined) throw new Error('the demo day brings a house');
    const sound = {
      volumes: [
        { from: at(-60), volumePct: 30 },
        { from: at(3), volumePct: 65 },
      ],
      quiet: { from: at(-60), to: at(4) },
      testAt: '12:00',
    };
    expect((await phone.give({ type: 'adoptHouse', fromVersion: version, house: { ...document, zone: 'UTC', sound } })).ok).toBe(true);
    expect(due('C1').dueMs).toBe(MORNING_MS);
    const wall = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    await passWith(machine, 4 * 60_000 - 1_000, [wall]);
    await wall.quiet();
    expect(wall.of('sound')).toEqual([]);
    await machine.pass(1_000);
    expect(await wall.first('sound')).toMatchObject({ burst: 'call', volumePct: 65, isTest: false });
  });
});

describe('S14 the daily test', () => {
  it('is asked for as soon as a device can sound, sounds when no call does, and is answered by a phone', async () => {
    const { house, machine, events, workpiece } = await openTestHouse({ isListening: true });
    const phone = await LiveClient.live(house.app);
    await passWith(machine, 60_000, [phone]);
    expect(await testEvents(events)).toEqual([]);
    const wall = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    const call = await wall.first('sound');
    expect(call).toMatchObject({ isTest: false, calls: [{ workpieceId: workpiece('C1').id }] });
    sounded(wall, call);
    await wall.until(() => toldOf(wall, 'callSounded'));
    await machine.pass(3_100);
    await wall.until(() => wall.of('sound').length === 2);
    const order = wall.of('sound')[1];
    expect(order).toMatchObject({ burst: 'call', isTest: true, volumePct: 100, calls: [] });
    expect(await phone.give({ type: 'answerSoundTest', heard: true })).toEqual({ ok: false, refusal: { code: 'noSoundTest' } });
    if (order !== undefined) sounded(wall, order);
    await wall.until(() => toldOf(wall, 'soundTestSounded'));
    expect(await phone.give({ type: 'answerSoundTest', heard: true })).toMatchObject({ ok: true, undoable: false });
    expect(await testEvents(events)).toMatchObject([
      { type: 'soundTestAsked', why: 'daily' },
      { type: 'soundTestSounded', byDeviceId: wall.deviceId },
      { type: 'soundTestAnswered', heard: true },
    ]);
    expect(house.floor.state.soundHeardMs).toBe(house.floor.state.soundTest?.soundedMs);
  });

  it('comes at its time of the house’s zone, once', async () => {
    const { house, machine, events } = await openTestHouse({ isEmpty: true });
    const wall = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    const outcome = await house.bringIn(emptyHarbour());
    expect(outcome.ok).toBe(true);
    await answerTest(wall);
    const asked = async (): Promise<readonly number[]> =>
      (await testEvents(events)).flatMap((event) => (event.type === 'soundTestAsked' ? [event.atMs] : []));
    expect(await asked()).toHaveLength(1);
    const zone = house.floor.state.house?.document.zone ?? '';
    const clock = (atMs: number): string =>
      new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hour12: false, timeZone: zone }).format(atMs);
    machine.passUnnoticed(Date.UTC(2026, 2, 7, 4, 59, 50) - MORNING_MS);
    const early = await LiveClient.live(house.app, { page: 'wall', sound: 'on' });
    await early.quiet();
    expect(await asked()).toHaveLength(1);
    await machine.pass(9_990);
    expect(await asked()).toHaveLength(1);
    await machine.pass(20);
    await early.until(() => toldOf(early, 'soundTestAsked'));
    const times = await asked();
    expect(times).toHaveLength(2);
    expect(clock(times[1] ?? 0)).toBe('05:00');
  });

  it('is not asked for again by a server that comes back', async () => {
    const first = await openTestHouse();
    const wall = await LiveClient.live(first.house.app, { page: 'wall', sound: 'on' });
    await wall.until(() => toldOf(wall, 'soundTestAsked'));
    await first.close();
    const second = await openTestHouse({ folder: first.folder, machine: first.machine });
    const back = await LiveClient.live(second.house.app, { page: 'wall', sound: 'on' });
    await first.machine.pass(10_000);
    await back.quiet();
    expect((await testEvents(second.events)).filter(({ type }) => type === 'soundTestAsked')).toHaveLength(1);
  });

  it('by hand, from a phone; a second time only once the first has sounded', async () => {
    const { house } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    expect(await phone.give({ type: 'askSoundTest' })).toMatchObject({ ok: true });
    expect(await phone.give({ type: 'askSoundTest' })).toEqual({ ok: false, refusal: { code: 'soundTestWaits', atMs: MORNING_MS } });
  });
});

/** The demo house without a batch: nothing calls but the house itself. */
function emptyHarbour(): ReadBakehouse {
  const { file, digest } = harbour();
  return { file: { ...file, day: { ...file.day, batches: [] } }, digest };
}

/** Lets time pass in which these pages say that they are still there, as pages do. */
async function passWith(machine: Machine, ms: number, clients: readonly LiveClient[]): Promise<void> {
  const STEP_MS = 5_000;
  for (let leftMs = ms; leftMs > 0; leftMs -= STEP_MS) {
    for (const client of clients) client.say({ type: 'ping', t1: 1 });
    await Promise.all(clients.map((client) => client.quiet()));
    await machine.pass(Math.min(leftMs, STEP_MS));
  }
}

/** The wall is asked for a test, and says that it has sounded. */
async function answerTest(wall: LiveClient): Promise<void> {
  sounded(wall, await wall.first('sound'));
  await wall.until(() => toldOf(wall, 'soundTestSounded'));
}

function sounded(client: LiveClient, { soundId, burst, calls }: Extract<DownMessage, { type: 'sound' }>): void {
  client.say({ type: 'sounded', soundId, burst, calls });
}

function toldOf(client: LiveClient, type: FloorEvent['type']): boolean {
  return client.of('events').some(({ events }) => events.some(({ event }) => event.type === type));
}

async function testEvents(events: TestHouse['events']): Promise<readonly FloorEvent[]> {
  return (await events()).map(({ event }) => event).filter(({ type }) => type.startsWith('soundTest'));
}

/** C1 wants to be weighed at the very opening; a wall and a phone can sound. */
async function houseThatCalls(): Promise<TestHouse & { wall: LiveClient; phone: LiveClient }> {
  const test = await openTestHouse({ isListening: true });
  const wall = await LiveClient.live(test.house.app, { page: 'wall', sound: 'on' });
  const phone = await LiveClient.live(test.house.app, { sound: 'on' });
  await wall.first('sound');
  return { ...test, wall, phone };
}

async function soundedEvents(events: TestHouse['events']): ReturnType<TestHouse['events']> {
  return (await events()).filter(({ event }) => event.type === 'callSounded');
}

import { describe, expect, it } from 'vitest';
import { LiveClient } from './support/live-client.ts';
import { MORNING_MS } from './support/machine.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

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

  it('W20 that does not say so is asked again, and another one is where it has left', async () => {
    const { house, machine, wall, phone, events } = await houseThatCalls();
    const first = await wall.first('sound');
    await machine.pass(3_900);
    expect(wall.of('sound')).toHaveLength(1);
    await machine.pass(200);
    await wall.until(() => wall.of('sound').length === 2);
    await wall.leave(house.hub);
    expect(phone.of('sound')).toEqual([]);
    await machine.pass(4_200);
    const third = await phone.first('sound');
    expect(third.calls).toEqual(first.calls);
    expect(await soundedEvents(events)).toEqual([]);
    phone.say({ type: 'sounded', soundId: third.soundId, burst: third.burst, calls: third.calls });
    await phone.until(() => phone.of('events').some(({ events: told }) => told.some(({ event }) => event.type === 'callSounded')));
    expect((await soundedEvents(events)).map(({ deviceId }) => deviceId)).toEqual([phone.deviceId]);
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

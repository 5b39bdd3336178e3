import { describe, expect, it } from 'vitest';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { forScreens } from '../../shared/floor/for-screens.ts';
import { CLOSE, MAX_CATCH_UP_EVENTS, PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import { freshId, hello, LiveClient } from './support/live-client.ts';
import { MORNING_MS } from './support/machine.ts';
import { openTestHouse } from './support/test-house.ts';

describe('a page that comes', () => {
  it('W1 is welcomed with the house, its device and the clock, gets what screens need of the state, and is live', async () => {
    const { house } = await openTestHouse();
    const client = await LiveClient.live(house.app);
    await client.first('soundStatus');
    expect(client.messages.map(({ type }) => type)).toEqual(['welcome', 'snapshot', 'live', 'soundStatus']);
    const { sequence } = house.floor.state;
    expect(client.of('welcome')[0]).toEqual({
      type: 'welcome',
      protocol: PROTOCOL_VERSION,
      kitchenId: house.floor.kitchenId,
      device: { id: client.deviceId, name: 'phone 1', stationId: null },
      clock: { houseMs: MORNING_MS, realMs: MORNING_MS, pace: 1 },
      devices: [{ id: client.deviceId, name: 'phone 1', stationId: null }],
      addresses: ['http://localhost:8420'],
    });
    expect(client.of('snapshot')[0]).toEqual({
      type: 'snapshot',
      sequence,
      state: JSON.parse(JSON.stringify(forScreens(house.floor.state))) as unknown,
    });
    expect(client.of('live')[0]).toEqual({ type: 'live', sequence });
    expect(client.of('soundStatus')[0]).toEqual({ type: 'soundStatus', soundingDeviceId: null, page: null });
  });

  it('W2 that holds part of this journal gets only the events it misses, and comes to the same state by them', async () => {
    const { house, workpiece } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    const before = house.floor.state;
    for (const stepId of ['weigh', 'fill-bowl']) {
      await phone.give({ type: 'startStep', workpieceId: workpiece('C1').id, stepId });
      await phone.give({ type: 'finishStep', workpieceId: workpiece('C1').id, stepId });
    }
    const later = await LiveClient.live(house.app, { kitchenId: house.floor.kitchenId, lastSequence: before.sequence });
    expect(later.messages.map(({ type }) => type).slice(0, 3)).toEqual(['welcome', 'events', 'live']);
    const events = later.of('events')[0]?.events ?? [];
    expect(events[0]?.sequence).toBe(before.sequence + 1);
    expect(evolveAll(before, events)).toEqual(house.floor.state);
    const upToDate = await LiveClient.live(house.app, { kitchenId: house.floor.kitchenId, lastSequence: house.floor.state.sequence });
    expect(upToDate.messages.map(({ type }) => type).slice(0, 2)).toEqual(['welcome', 'live']);
  });

  it('W2 after a restart of the server too', async () => {
    const first = await openTestHouse();
    const phone = await LiveClient.live(first.house.app);
    const { sequence } = first.house.floor.state;
    await phone.give({ type: 'startStep', workpieceId: first.workpiece('C1').id, stepId: 'weigh' });
    await first.close();
    const second = await openTestHouse({ folder: first.folder, machine: first.machine });
    const again = await LiveClient.live(second.house.app, { kitchenId: second.house.floor.kitchenId, lastSequence: sequence });
    expect(again.of('snapshot')).toEqual([]);
    expect(again.of('events')[0]?.events.map(({ event }) => event.type)).toEqual(['stepStarted']);
  });

  it('W3 gets a snapshot where its events are of another kitchen, ahead of the journal, or too far back', async () => {
    const { house } = await openTestHouse();
    const { sequence } = house.floor.state;
    const { kitchenId } = house.floor;
    const ofAnother = await LiveClient.live(house.app, { kitchenId: freshId(), lastSequence: sequence });
    const ahead = await LiveClient.live(house.app, { kitchenId, lastSequence: sequence + 1 });
    expect(ofAnother.of('snapshot')[0]?.sequence).toBe(sequence);
    expect(ahead.of('snapshot')[0]?.sequence).toBe(sequence);
    const phone = await LiveClient.live(house.app);
    const workpieceId = Object.keys(house.floor.state.workpieces)[0] ?? '';
    const readings = Array.from({ length: MAX_CATCH_UP_EVENTS + 1 }, () =>
      phone.give({ type: 'readTemperature', workpieceId, where: 'dough', celsius: 24 }),
    );
    await Promise.all(readings);
    const justBack = await LiveClient.live(house.app, { kitchenId, lastSequence: sequence + 1 });
    const tooFarBack = await LiveClient.live(house.app, { kitchenId, lastSequence: sequence });
    expect(justBack.of('events')[0]?.events).toHaveLength(MAX_CATCH_UP_EVENTS);
    expect(tooFarBack.of('events')).toEqual([]);
    expect(tooFarBack.of('snapshot')[0]?.sequence).toBe(house.floor.state.sequence);
  });

  it('W4 speaking another version of the protocol is sent away with 4426', async () => {
    const { house } = await openTestHouse();
    const client = await LiveClient.connect(house.app);
    client.say(hello({ protocol: PROTOCOL_VERSION + 1 }));
    expect(await client.closed()).toEqual({ code: CLOSE.otherVersion, reason: `this server speaks version ${PROTOCOL_VERSION}` });
    expect(CLOSE.otherVersion).toBe(4426);
    expect(client.messages).toEqual([]);
  });
});

describe('a message that this protocol does not know', () => {
  const PING = JSON.stringify({ type: 'ping', t1: 1 });

  it.each([
    ['a message before hello', PING, 'hello comes first, not ping'],
    ['what is not JSON', '{"type":', 'the message is not JSON'],
    ['another type', '{"type":"rollDough"}', 'type "rollDough" is not known here'],
    ['no type', '{}', 'type missing is not known here'],
    ['no object', '7', 'the message: Invalid input: expected object, received number'],
    ['a field too many', JSON.stringify({ ...hello(), deviceId: freshId() }), 'the message: Unrecognized key: "deviceId"'],
  ])('W5 is refused by name and closes the socket with 4400: %s', async (_what, text, reason) => {
    const { house } = await openTestHouse({ isEmpty: true });
    const client = await LiveClient.connect(house.app);
    client.sayText(text);
    expect(await client.closed()).toEqual({ code: CLOSE.badMessage, reason });
    expect(CLOSE.badMessage).toBe(4400);
  });

  it('W5 is refused too once the page is live, hello included', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    const twice = await LiveClient.live(house.app);
    twice.say(hello());
    expect(await twice.closed()).toEqual({ code: CLOSE.badMessage, reason: 'hello was said already' });
    const unknownCommand = await LiveClient.live(house.app);
    unknownCommand.sayText(
      JSON.stringify({ type: 'command', commandId: freshId(), tap: { agoMonotonicMs: 0, agoWallMs: 0 }, command: { type: 'burnBread' } }),
    );
    expect(await unknownCommand.closed()).toEqual({ code: CLOSE.badMessage, reason: 'command.type "burnBread" is not known here' });
  });

  it('W5 a house command is none that a client may send', async () => {
    const { house } = await openTestHouse();
    const client = await LiveClient.live(house.app);
    const before = house.floor.state.sequence;
    client.sayText(
      JSON.stringify({
        type: 'command',
        commandId: freshId(),
        tap: { agoMonotonicMs: 0, agoWallMs: 0 },
        command: { type: 'noteClockJump', byMs: 3_600_000 },
      }),
    );
    expect((await client.closed()).code).toBe(CLOSE.badMessage);
    expect(house.floor.state.sequence).toBe(before);
  });

  it('W5 bytes are no message', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    const client = await LiveClient.live(house.app);
    client.sayBytes(Buffer.from(PING));
    expect(await client.closed()).toEqual({ code: CLOSE.badMessage, reason: 'messages are text' });
  });

  it.each(['x', 'é', '🥖'])('W5 a long reason is cut so that it fits a close frame, whatever the client wrote: %s', async (character) => {
    const { house } = await openTestHouse({ isEmpty: true });
    const client = await LiveClient.connect(house.app);
    client.sayText(JSON.stringify({ ...hello(), [character.repeat(500)]: 1 }));
    const { code, reason } = await client.closed();
    expect(code).toBe(CLOSE.badMessage);
    // A close frame's reason takes 123 bytes (RFC 6455 section 5.5: control frames carry at most 125, two of them the code).
    expect(Buffer.byteLength(reason)).toBeLessThanOrEqual(123);
    expect(Buffer.byteLength(reason)).toBeGreaterThan(123 - 4);
    expect(reason).toMatch(new RegExp(`^the message: Unrecognized key: "(${character})+$`, 'u'));
  });
});

describe('a live page', () => {
  it('W6 gets its pings answered with its own time, the server’s and the house clock', async () => {
    const { house, machine } = await openTestHouse({ pace: 60 });
    const client = await LiveClient.live(house.app);
    await machine.pass(2_000);
    client.say({ type: 'ping', t1: 123.5 });
    expect(await client.first('pong')).toEqual({
      type: 'pong',
      t1: 123.5,
      t2: MORNING_MS + 2_000,
      t3: MORNING_MS + 2_000,
      clock: { houseMs: MORNING_MS, realMs: MORNING_MS, pace: 60 },
    });
  });

  it('W7 introduces itself: its name and place stand in the book of devices and everybody is told', async () => {
    const { house, workpiece, folder, machine, close, events } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    const wall = await LiveClient.live(house.app, { page: 'wall' });
    phone.say({ type: 'introduce', name: 'Bench phone', stationId: 'bench' });
    const bench = { id: phone.deviceId, name: 'Bench phone', stationId: 'bench' };
    expect((await phone.first('devices')).devices).toContainEqual(bench);
    expect((await wall.first('devices')).devices).toContainEqual(bench);
    await phone.give({ type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' });
    expect((await events()).at(-1)).toMatchObject({ deviceId: phone.deviceId, event: { type: 'stepStarted', stationId: 'bench' } });
    await close();
    const again = await openTestHouse({ folder, machine });
    const back = await LiveClient.live(again.house.app, { deviceId: phone.deviceId });
    expect(back.of('welcome')[0]?.device).toEqual(bench);
  });

  it('W7 a place said with hello counts for that page’s taps', async () => {
    const { house, workpiece, events } = await openTestHouse();
    const phone = await LiveClient.live(house.app, { stationId: 'oven' });
    expect(phone.of('welcome')[0]?.device.stationId).toBe('oven');
    await phone.give({ type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' });
    expect((await events()).at(-1)).toMatchObject({ event: { type: 'stepStarted', stationId: 'oven' } });
  });

  it('W8 is told when the server goes down in good order', async () => {
    const { house, close } = await openTestHouse({ isEmpty: true });
    const client = await LiveClient.live(house.app);
    await close();
    expect(await client.closed()).toEqual({ code: CLOSE.goingDown, reason: 'the server is going down' });
    expect(CLOSE.goingDown).toBe(4410);
  });
});

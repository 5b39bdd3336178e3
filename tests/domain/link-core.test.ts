import { describe, expect, test } from 'vitest';
import { MAX_KEPT_TAPS } from '../../display/link/kept-tap.ts';
import { CLOSE, SILENCE_MS } from '../../shared/wire/protocol.ts';
import { connectedPhone, House, Phone, World } from './support/link-world.ts';
import { OTHER_PHONE, idOf } from './support/ids.ts';

const MINUTE_MS = 60_000;

describe('a page and its server', () => {
  test('says hello with nothing in hand, takes the snapshot and is live', () => {
    const { house, phone } = connectedPhone();
    expect(house.line.heard[0]).toMatchObject({ type: 'hello', page: 'phone', kitchenId: null, lastSequence: 0 });
    expect(phone.client.view.connection).toEqual({ phase: 'live' });
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('shows nothing before the house time is known', () => {
    const world = new World();
    const house = new House(world);
    house.isMute = true;
    const phone = new Phone(world, house);
    world.pass(10);
    house.say({
      type: 'welcome',
      protocol: 1,
      kitchenId: house.kitchenId,
      device: { id: idOf(1), name: 'Phone', stationId: null },
      clock: house.anchor,
      devices: [],
      addresses: [],
    });
    house.say({ type: 'snapshot', sequence: house.floor.state.sequence, state: house.floor.state });
    house.say({ type: 'live', sequence: house.floor.state.sequence });
    expect(phone.client.view).toMatchObject({ state: null, connection: { phase: 'catchingUp' } });
    const ping = house.line.heard.find((message) => message.type === 'ping');
    house.say({ type: 'pong', t1: ping?.t1 ?? -1, t2: world.realMs, t3: world.realMs, clock: house.anchor });
    expect(phone.client.view.connection).toEqual({ phase: 'live' });
    expect(phone.client.view.state).not.toBeNull();
  });

  test('folds events as they come, and passes over those told twice', () => {
    const { house, phone } = connectedPhone();
    house.tapElsewhere((floor) => floor.finish('C1', 'weigh', { deviceId: OTHER_PHONE }));
    const once = phone.client.view.state;
    expect(phone.statusOf('C1', 'weigh')).toBe('done');
    house.say({ type: 'events', events: house.floor.recorded.slice(-3) });
    expect(phone.client.view.connection).toEqual({ phase: 'live' });
    expect(phone.client.view.state).toEqual(once);
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('asks for what is missing by connecting again with the sequence it holds', () => {
    const { world, house, phone } = connectedPhone();
    const held = phone.client.view.sequence;
    house.isMute = true;
    house.tapElsewhere((floor) => floor.finish('C1', 'weigh', { deviceId: OTHER_PHONE }));
    house.isMute = false;
    house.tapElsewhere((floor) => floor.finish('C1', 'fill-bowl', { deviceId: OTHER_PHONE }));
    expect(house.lines).toHaveLength(1);
    world.pass(1_000);
    expect(house.lines).toHaveLength(2);
    expect(house.line.heard[0]).toMatchObject({ type: 'hello', kitchenId: house.kitchenId, lastSequence: held });
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('forgets what it holds of another kitchen, taps too, and says so', () => {
    const { world, house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    phone.finish('C1', 'weigh');
    house.kitchenId = idOf(7_001);
    house.isAway = false;
    world.pass(10_000);
    expect(house.line.heard.filter((message) => message.type === 'command')).toEqual([]);
    expect(phone.client.view.kept).toEqual([]);
    expect(phone.client.view.lastAnswer?.outcome).toMatchObject({ ok: false, refusal: { code: 'workpieceUnknown' } });
    expect(phone.stored.size).toBe(0);
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('closes on a message it does not know, by its name, and loads the page again', () => {
    const { house, phone } = connectedPhone();
    house.line.handlers.received(JSON.stringify({ type: 'riddle' }));
    expect(house.line.isOpen).toBe(false);
    expect(phone.loads).toBe(1);
    expect(phone.client.view.connection).toEqual({ phase: 'refused', why: 'otherVersion' });
  });

  test.each([
    ['otherVersion', CLOSE.otherVersion, 1],
    ['forbidden', CLOSE.forbidden, 0],
    ['full', CLOSE.full, 0],
  ] as const)('is refused as %s', (why, code, loads) => {
    const { house, phone } = connectedPhone();
    house.drop(house.line, code);
    expect(phone.client.view.connection).toEqual({ phase: 'refused', why });
    expect(phone.loads).toBe(loads);
  });

  test('tries a full house again slowly, and comes in when there is room', () => {
    const { world, house, phone } = connectedPhone();
    house.refuseWith = CLOSE.full;
    house.drop(house.line, CLOSE.full);
    world.pass(10_000);
    expect(house.lines).toHaveLength(1);
    house.refuseWith = null;
    world.pass(30_000);
    expect(phone.client.view.connection).toEqual({ phase: 'live' });
  });

  test('takes a silent line for gone, tells since when, and connects again', () => {
    const { world, house, phone } = connectedPhone();
    const lastHeardMs = house.nowMs;
    house.isMute = true;
    house.isAway = true;
    world.pass(SILENCE_MS + 1);
    const { connection } = phone.client.view;
    expect(connection.phase).toBe('lost');
    expect(connection.phase === 'lost' && Math.abs(connection.lastContactMs - lastHeardMs)).toBeLessThanOrEqual(10);
    house.isMute = false;
    house.isAway = false;
    world.pass(6_000);
    expect(phone.client.view.connection).toEqual({ phase: 'live' });
  });

  test('tries again at most every five seconds, at least every quarter', () => {
    const { world, house } = connectedPhone();
    house.isAway = true;
    house.drop();
    world.pass(60_000);
    expect(house.lines.length).toBeGreaterThan(12);
    expect(house.lines.length).toBeLessThan(40);
  });
});

describe('a tap', () => {
  test('shows at once and is answered', () => {
    const { house, phone } = connectedPhone();
    house.isMute = true;
    const commandId = phone.finish('C1', 'weigh');
    expect(phone.statusOf('C1', 'weigh')).toBe('done');
    expect(phone.client.view.kept).toMatchObject([{ commandId, isSent: true }]);
    expect(phone.client.view.sequence).toBe(house.floor.state.sequence);
    house.isMute = false;
  });

  test.each([false, true])('is settled whether its events or its outcome come first (events first: %s)', (tellsEventsFirst) => {
    const { house, phone } = connectedPhone();
    house.tellsEventsFirst = tellsEventsFirst;
    const seen: (string | null)[] = [];
    phone.client.subscribe(() => seen.push(phone.statusOf('C1', 'weigh')));
    const commandId = phone.finish('C1', 'weigh');
    // Never a blink in between.
    expect(new Set(seen)).toEqual(new Set(['done']));
    expect(phone.client.view.kept).toEqual([]);
    expect(phone.stored.size).toBe(0);
    expect(phone.client.view.undoable?.commandId).toBe(commandId);
    expect(phone.client.view.lastAnswer?.outcome).toMatchObject({ ok: true });
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('is kept while the server is away, and counts once when it is back', () => {
    const { world, house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    const first = phone.finish('C1', 'weigh');
    world.pass(30_000);
    const second = phone.finish('C1', 'fill-bowl');
    expect(phone.statusOf('C1', 'fill-bowl')).toBe('done');
    expect(phone.client.view.kept.map((tap) => tap.isSent)).toEqual([false, false]);
    world.pass(60_000);
    house.isAway = false;
    world.pass(10_000);
    expect(house.applied).toEqual([first, second]);
    expect(phone.client.view.kept).toEqual([]);
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('keeps the time of the thumb, not that of its arrival', () => {
    const { world, house, phone } = connectedPhone();
    world.pass(5 * MINUTE_MS);
    house.isAway = true;
    house.drop();
    const tappedMs = house.nowMs;
    phone.finish('C1', 'weigh');
    world.pass(3 * MINUTE_MS);
    house.isAway = false;
    world.pass(10_000);
    const endedMs = house.floor.piece('C1').steps['weigh']?.endedMs ?? 0;
    expect(Math.abs(endedMs - tappedMs)).toBeLessThanOrEqual(10);
  });

  test('whose answer was lost is sent again and gets the same answer', () => {
    const { world, house, phone } = connectedPhone();
    const line = house.line;
    const say = line.handlers.received;
    // The server takes it, but nothing of that reaches the phone.
    Object.assign(line, { handlers: { ...line.handlers, received: () => undefined } });
    const commandId = phone.finish('C1', 'weigh');
    expect(house.applied).toEqual([commandId]);
    expect(phone.client.view.kept).toHaveLength(1);
    Object.assign(line, { handlers: { ...line.handlers, received: say } });
    house.drop();
    world.pass(5_000);
    expect(house.applied).toEqual([commandId]);
    expect(phone.client.view.kept).toEqual([]);
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('that never reached the server is sent again', () => {
    const { world, house, phone } = connectedPhone();
    house.isMute = true;
    const commandId = phone.finish('C1', 'weigh');
    house.drop();
    expect(phone.client.view.kept).toMatchObject([{ commandId, isSent: false }]);
    house.isMute = false;
    world.pass(5_000);
    expect(house.applied).toEqual([commandId]);
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('waits behind one that the server could not write down', () => {
    const { world, house, phone } = connectedPhone();
    house.cannotKeep = true;
    const first = phone.finish('C1', 'weigh');
    house.cannotKeep = false;
    const second = phone.finish('C1', 'fill-bowl');
    expect(house.applied).toEqual([]);
    world.pass(10_000);
    expect(house.applied).toEqual([first, second]);
  });

  test('outlives a load of the page, and is then uncertain: arrival counts', () => {
    const { world, house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    const commandId = phone.finish('C1', 'weigh');
    world.pass(2 * MINUTE_MS);
    phone.reload();
    world.pass(1_000);
    house.isAway = false;
    const backMs = house.nowMs;
    world.pass(10_000);
    expect(house.applied).toEqual([commandId]);
    expect(house.floor.recorded.find((recorded) => recorded.commandId === commandId)?.event).toMatchObject({
      type: 'stepDone',
      tapUncertain: true,
    });
    expect(house.floor.piece('C1').steps['weigh']?.endedMs).toBeGreaterThanOrEqual(backMs);
  });

  test('is uncertain when the wall clock was set meanwhile', () => {
    const { world, house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    const commandId = phone.finish('C1', 'weigh');
    phone.wallErrorMs = -45 * MINUTE_MS;
    world.pass(1_000);
    house.isAway = false;
    world.pass(10_000);
    expect(house.floor.recorded.find((recorded) => recorded.commandId === commandId)?.event).toMatchObject({ tapUncertain: true });
  });

  test('that comes second is told by whom and when, and undone on the page', () => {
    const { house, phone } = connectedPhone();
    house.isMute = true;
    const commandId = phone.finish('C1', 'weigh');
    house.tapElsewhere((floor) => floor.finish('C1', 'weigh', { deviceId: OTHER_PHONE, stationId: 'bench' }));
    house.isMute = false;
    house.publish(house.floor.recorded.length - 1);
    house.say({
      type: 'outcome',
      commandId,
      outcome: {
        ok: false,
        refusal: {
          code: 'stepAlreadyDone',
          tag: 'C1',
          stepId: 'weigh',
          atMs: house.nowMs,
          deviceId: OTHER_PHONE,
          stationId: 'bench',
          skipped: false,
        },
      },
    });
    expect(phone.client.view.lastAnswer?.outcome).toMatchObject({ ok: false, refusal: { code: 'stepAlreadyDone', stationId: 'bench' } });
    expect(phone.client.view.kept).toEqual([]);
    expect(phone.client.view.undoable).toBeNull();
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('stays kept where the server could not write it down, and is sent again', () => {
    const { world, house, phone } = connectedPhone();
    house.cannotKeep = true;
    const commandId = phone.finish('C1', 'weigh');
    expect(phone.client.view.lastAnswer?.outcome).toMatchObject({ ok: false, refusal: { code: 'notKept' } });
    expect(phone.client.view.kept).toMatchObject([{ commandId, isSent: false }]);
    expect(phone.statusOf('C1', 'weigh')).toBe('done');
    expect(phone.stored.has(commandId)).toBe(true);
    world.pass(20_000);
    const tries = house.line.heard.filter((message) => message.type === 'command').length;
    expect(tries).toBeGreaterThan(2);
    expect(tries).toBeLessThan(10);
    house.cannotKeep = false;
    world.pass(MINUTE_MS);
    expect(house.applied).toEqual([commandId]);
    expect(phone.client.view.lastAnswer?.outcome).toMatchObject({ ok: true });
  });

  test('is refused visibly when as many are kept as may be, and changes nothing', () => {
    const { house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    const c1 = Object.values(phone.client.view.state?.workpieces ?? {}).find((workpiece) => workpiece.tag === 'C1');
    for (let count = 0; count < MAX_KEPT_TAPS; count += 1)
      phone.client.send({ type: 'giveMoreTime', workpieceId: c1?.id ?? '', stepId: 'weigh', minutes: 1 });
    expect(phone.client.view.refusedHere).toBeNull();
    phone.finish('C1', 'weigh');
    expect(phone.client.view.refusedHere).toMatchObject({ type: 'finishStep' });
    expect(phone.client.view.kept).toHaveLength(MAX_KEPT_TAPS);
    expect(phone.stored.size).toBe(MAX_KEPT_TAPS);
    expect(phone.statusOf('C1', 'weigh')).toBeNull();
  });

  test('can be undone until the next', () => {
    const { house, phone } = connectedPhone();
    const before = house.floor.piece('C1');
    phone.finish('C1', 'weigh');
    const { undoable } = phone.client.view;
    phone.client.send({ type: 'undoCommand', commandId: undoable?.commandId ?? '' });
    expect(phone.client.view.undoable).toBeNull();
    expect(house.floor.piece('C1')).toEqual(before);
    expect(phone.client.view.state).toEqual(house.floor.state);
  });

  test('is no longer offered for undo once another of this page is under way', () => {
    const { house, phone } = connectedPhone();
    house.isMute = true;
    const first = phone.finish('C1', 'weigh');
    const second = phone.finish('C1', 'fill-bowl');
    house.say({ type: 'outcome', commandId: first, outcome: { ok: true, sequence: 999, undoable: true } });
    expect(phone.client.view.undoable).toBeNull();
    house.say({ type: 'outcome', commandId: second, outcome: { ok: true, sequence: 1_000, undoable: true } });
    expect(phone.client.view.undoable?.commandId).toBe(second);
  });

  test('a refusal is not pushed away by what goes well after it', () => {
    const { world, house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    phone.finish('C1', 'weigh');
    phone.finish('R1', 'weigh');
    house.tapElsewhere((floor) => floor.finish('C1', 'weigh', { deviceId: OTHER_PHONE }));
    house.isAway = false;
    world.pass(10_000);
    expect(phone.client.view.lastAnswer?.outcome).toMatchObject({ ok: false, refusal: { code: 'stepAlreadyDone', tag: 'C1' } });
    expect(phone.statusOf('R1', 'weigh')).toBe('done');
  });
});

describe('what else a page says', () => {
  test('its name is told when the server is back', () => {
    const { world, house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    phone.client.introduce('Bench phone', 'bench');
    house.isAway = false;
    world.pass(10_000);
    expect(house.line.heard[0]).toMatchObject({ type: 'hello', stationId: 'bench' });
    expect(house.line.heard).toContainEqual({ type: 'introduce', name: 'Bench phone', stationId: 'bench' });
  });

  test('what is to sound reaches the listeners, and that it did the server', () => {
    const { house, phone } = connectedPhone();
    const heard: unknown[] = [];
    phone.client.onSound((request) => {
      heard.push(request);
      phone.client.sounded(request);
    });
    const calls = [{ workpieceId: house.floor.id('C1'), stepId: 'weigh', level: 'call' as const }];
    const request = { soundId: idOf(5), burst: 'call' as const, volumePct: 40, isTest: false, calls };
    house.say({ type: 'sound', ...request });
    expect(heard).toEqual([request]);
    expect(house.line.heard.at(-1)).toEqual({ type: 'sounded', soundId: idOf(5), burst: 'call', calls });
  });

  test('sound status and devices are shown', () => {
    const { house, phone } = connectedPhone();
    const me = phone.client.view.device;
    house.say({ type: 'soundStatus', soundingDeviceId: OTHER_PHONE, page: 'phone' });
    house.say({ type: 'devices', devices: [{ id: me?.id ?? '', name: 'Bench phone', stationId: 'bench' }] });
    expect(phone.client.view).toMatchObject({ soundingDeviceId: OTHER_PHONE, device: { name: 'Bench phone', stationId: 'bench' } });
  });

  test('news of the planner’s are counted, those that were missed while the line was down too', () => {
    const { house, phone } = connectedPhone();
    const { planNews } = phone.client.view;
    house.say({ type: 'planNews' });
    house.say({ type: 'planNews' });
    expect(phone.client.view.planNews).toBe(planNews + 2);
    house.say({ type: 'live', sequence: phone.client.view.sequence });
    expect(phone.client.view.planNews).toBe(planNews + 3);
  });
});

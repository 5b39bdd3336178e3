import { describe, expect, it } from 'vitest';
import { openDues, roleAt } from '../../shared/floor/due.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { anchorForStart, HouseClock, houseMs } from '../../server/clock/house-clock.ts';
import { JUMP_MS, RealTime } from '../../server/clock/real-time.ts';
import { LiveClient } from './support/live-client.ts';
import { eventLoopTurns, Machine, MORNING_MS } from './support/machine.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

const HOUR_MS = 3_600_000;
const MINUTE_MS = 60_000;

describe('real time', () => {
  it('C1 goes on with the monotonic clock, whatever somebody does to the wall clock', () => {
    const machine = new Machine();
    const real = new RealTime(machine);
    machine.passUnnoticed(5_000);
    machine.setWallClock(-HOUR_MS);
    expect(real.nowMs()).toBe(MORNING_MS + 5_000);
    machine.passUnnoticed(5_000);
    expect(real.nowMs()).toBe(MORNING_MS + 10_000);
  });

  it.each([HOUR_MS, -HOUR_MS, JUMP_MS + 1, -JUMP_MS - 1])('C1 notices a wall clock set by %d ms, and follows only when told to', (byMs) => {
    const machine = new Machine();
    const real = new RealTime(machine);
    machine.setWallClock(byMs);
    expect(real.look()).toEqual({ kind: 'jumped', byMs });
    expect(real.nowMs()).toBe(MORNING_MS);
    real.follow(byMs);
    expect(real.nowMs()).toBe(MORNING_MS + byMs);
    expect(real.look()).toEqual({ kind: 'none' });
  });

  it.each([JUMP_MS, -JUMP_MS, 1])('C2 lets a wall clock stray by %d ms', (byMs) => {
    const machine = new Machine();
    const real = new RealTime(machine);
    machine.setWallClock(byMs);
    expect(real.look()).toEqual({ kind: 'none' });
    expect(real.nowMs()).toBe(MORNING_MS);
  });

  it('C3 catches up the time for which the machine slept, once', () => {
    const machine = new Machine();
    const real = new RealTime(machine);
    machine.passUnnoticed(1_000);
    machine.sleep(HOUR_MS);
    machine.passUnnoticed(1_000);
    expect(real.look()).toEqual({ kind: 'slept', byMs: HOUR_MS });
    expect(real.nowMs()).toBe(MORNING_MS + 2_000 + HOUR_MS);
    expect(real.look()).toEqual({ kind: 'none' });
  });

  it('C3 tells sleep from a clock that was set meanwhile', () => {
    const machine = new Machine();
    const real = new RealTime(machine);
    machine.sleep(HOUR_MS);
    machine.setWallClock(-10 * MINUTE_MS);
    expect(real.look()).toEqual({ kind: 'slept', byMs: HOUR_MS });
    expect(real.look()).toEqual({ kind: 'jumped', byMs: -10 * MINUTE_MS });
    expect(real.nowMs()).toBe(MORNING_MS + HOUR_MS);
  });
});

describe('the house’s clock', () => {
  it('C4 runs at its pace from its anchor, in whole milliseconds', () => {
    const machine = new Machine();
    const clock = new HouseClock(new RealTime(machine), { houseMs: 1_000_000, realMs: MORNING_MS - 500, pace: 60 });
    expect(clock.nowMs()).toBe(1_000_000 + 30_000);
    machine.passUnnoticed(0.26);
    expect(clock.nowMs()).toBe(1_030_016);
    expect(clock.realMs()).toBe(MORNING_MS);
    expect(clock.realUntilMs(clock.nowMs() + 60_000)).toBe(1_000);
    expect(clock.realUntilMs(0)).toBe(0);
    expect(clock.pace).toBe(60);
  });

  it('C4 starts a house that never had a pace at real time', () => {
    expect(anchorForStart(null, 10, MORNING_MS + 0.4)).toEqual({ houseMs: MORNING_MS, realMs: MORNING_MS, pace: 10 });
  });

  it('C5 keeps its anchor while the pace is the same, so that time went on meanwhile', () => {
    const kept = { houseMs: MORNING_MS, realMs: MORNING_MS, pace: 10 };
    expect(anchorForStart(kept, 10, MORNING_MS + HOUR_MS)).toBe(kept);
    expect(houseMs(kept, MORNING_MS + HOUR_MS)).toBe(MORNING_MS + 10 * HOUR_MS);
  });

  it('C5 goes on from where it is with another pace', () => {
    const kept = { houseMs: MORNING_MS, realMs: MORNING_MS, pace: 10 };
    const anchor = anchorForStart(kept, 1, MORNING_MS + HOUR_MS);
    expect(anchor).toEqual({ houseMs: MORNING_MS + 10 * HOUR_MS, realMs: MORNING_MS + HOUR_MS, pace: 1 });
  });
});

describe('a house that is closed and opened', () => {
  it('C5 has let the time go by at its pace, and calls what fell due meanwhile', async () => {
    const first = await openTestHouse({ pace: 60 });
    await first.close();
    first.machine.passUnnoticed(25_000);
    const second = await openTestHouse({ folder: first.folder, machine: first.machine, pace: 60 });
    expect(second.house.clock.nowMs()).toBe(MORNING_MS + 25 * MINUTE_MS);
    expect(second.workpiece('M1').call).toMatchObject({
      level: 'call',
      dueMs: MORNING_MS + 20 * MINUTE_MS,
      raisedMs: MORNING_MS + 25 * MINUTE_MS,
    });
    const anchored = (await second.events()).filter(({ event }) => event.type === 'clockAnchored');
    expect(anchored).toHaveLength(1);
  });

  it('C5 notes another pace as an event, and loses no time by it', async () => {
    const first = await openTestHouse({ pace: 60 });
    await first.close();
    first.machine.passUnnoticed(10_000);
    const second = await openTestHouse({ folder: first.folder, machine: first.machine, pace: 1 });
    expect(second.house.clock.nowMs()).toBe(MORNING_MS + 10 * MINUTE_MS);
    expect((await second.events()).filter(({ event }) => event.type === 'clockAnchored').at(-1)?.event).toEqual({
      type: 'clockAnchored',
      houseMs: MORNING_MS + 10 * MINUTE_MS,
      realMs: MORNING_MS + 10_000,
      pace: 1,
    });
    await second.machine.pass(1_000);
    expect(second.house.clock.nowMs()).toBe(MORNING_MS + 10 * MINUTE_MS + 1_000);
  });
});

/** How long everything on the floor still has, and how it stands: what a clock that is set must not change. */
function standings({ house }: TestHouse): unknown {
  const { state } = house.floor;
  const nowMs = house.clock.nowMs();
  const left = (atMs: number | null): number | null => (atMs === null ? null : atMs - nowMs);
  return openDues(state).map((due) => [
    due.workpiece.tag,
    due.action.id,
    roleAt(due, nowMs),
    left(due.dueMs),
    left(due.lateMs),
    left(due.lostMs),
    due.workpiece.call?.level ?? null,
    left(due.workpiece.call?.raisedMs ?? null),
    left(due.workpiece.heldUntilMs),
  ]);
}

/** A morning with something of everything: one calls, one is late, one is held, one rests, the others are still planned. */
async function busyHouse(pace = 1): Promise<TestHouse> {
  const test = await openTestHouse({ pace });
  const give = async (command: Parameters<LiveClient['give']>[0]): Promise<void> => {
    const phone = await LiveClient.live(test.house.app);
    expect(await phone.give(command)).toMatchObject({ ok: true });
  };
  await give({ type: 'startStep', workpieceId: test.workpiece('C1').id, stepId: 'weigh' });
  await give({ type: 'finishStep', workpieceId: test.workpiece('C1').id, stepId: 'weigh' });
  await give({ type: 'finishStep', workpieceId: test.workpiece('C1').id, stepId: 'fill-bowl' });
  await give({ type: 'finishStep', workpieceId: test.workpiece('C1').id, stepId: 'first-speed' });
  await test.machine.pass((21 * MINUTE_MS) / pace);
  await give({ type: 'holdWorkpiece', workpieceId: test.workpiece('M1').id, stepId: 'weigh', minutes: 10 });
  await eventLoopTurns();
  const roles = openDues(test.house.floor.state).map((due) => [due.workpiece.tag, roleAt(due, test.house.clock.nowMs())]);
  expect(Object.fromEntries(roles)).toMatchObject({ C1: 'call', R1: 'late', M1: 'running', C2: 'running' });
  return test;
}

function withoutClockEvents(state: FloorState): number {
  return Object.values(state.workpieces).filter((workpiece) => workpiece.call !== null).length;
}

describe('a server whose clock is set while doughs run', () => {
  it.each([
    ['an hour forward', HOUR_MS, 1],
    ['an hour back', -HOUR_MS, 1],
    ['three days back', -72 * HOUR_MS, 1],
    ['ten seconds forward', 10_000, 1],
    ['an hour forward, at pace 60', HOUR_MS, 60],
    ['an hour back, at pace 60', -HOUR_MS, 60],
  ])('C6 notes the jump as an event, and neither raises nor swallows a call: %s', async (_what, byMs, pace) => {
    const test = await busyHouse(pace);
    const { house, machine } = test;
    const before = standings(test);
    const calls = withoutClockEvents(house.floor.state);
    const count = house.floor.state.sequence;
    const houseBeforeMs = house.clock.nowMs();
    const realBeforeMs = house.clock.realMs();
    machine.setWallClock(byMs);
    expect(house.clock.nowMs()).toBe(houseBeforeMs);
    await house.lookAtClock();
    await eventLoopTurns();
    const news = (await test.events()).filter(({ sequence }) => sequence > count);
    expect(news.map(({ event }) => event)).toEqual([{ type: 'clockJumped', byMs: byMs * pace, atMs: houseBeforeMs }]);
    expect(house.clock.nowMs()).toBe(houseBeforeMs + byMs * pace);
    expect(house.clock.realMs()).toBe(realBeforeMs + byMs);
    expect(standings(test)).toEqual(before);
    expect(withoutClockEvents(house.floor.state)).toBe(calls);
    await house.lookAtClock();
    expect(house.floor.state.sequence).toBe(count + 1);
    // What was due in so many minutes is called in so many minutes.
    expect(test.workpiece('C2').call).toBeNull();
    const untilC2Ms = (test.due('C2').dueMs - house.clock.nowMs()) / pace;
    await machine.pass(untilC2Ms - 1_000);
    expect(test.workpiece('C2').call).toBeNull();
    await machine.pass(1_000);
    expect(test.workpiece('C2').call).toMatchObject({ stepId: 'weigh', level: 'call' });
  });

  it('C6 looks by itself every few seconds and tells the pages', async () => {
    const test = await busyHouse();
    const client = await LiveClient.live(test.house.app);
    test.machine.setWallClock(HOUR_MS);
    await test.machine.pass(5_000);
    const pong = await client.first('pong');
    expect(pong.t2).toBe(test.house.clock.realMs());
    expect(pong.t2).toBe(MORNING_MS + 21 * MINUTE_MS + 5_000 + HOUR_MS);
    expect((await test.events()).at(-1)?.event.type).toBe('clockJumped');
  });

  it('C6 after a restart has the doughs where they were', async () => {
    const first = await busyHouse();
    first.machine.setWallClock(-HOUR_MS);
    await first.house.lookAtClock();
    const before = standings(first);
    await first.close();
    const second = await openTestHouse({ folder: first.folder, machine: first.machine });
    expect(standings(second)).toEqual(before);
  });

  it.each([
    ['a year', -365 * 24 * HOUR_MS],
    ['an hour', -HOUR_MS],
  ])('C8 that went back by %s while the server was away leaves the doughs the time they had left, once', async (_name, byMs) => {
    const first = await busyHouse();
    const left = (test: TestHouse): readonly number[] => ['C1', 'R1', 'M1'].map((tag) => test.due(tag).dueMs - test.house.clock.nowMs());
    const before = left(first);
    await first.close();
    const second = await openTestHouse({ folder: first.folder, machine: new Machine(first.machine.wallMs() + byMs) });
    const jumps = async (test: TestHouse): Promise<number> =>
      (await test.events()).filter(({ event }) => event.type === 'clockJumped').length;
    expect(await jumps(second)).toBe(1);
    // What was done last was done a moment before the server went.
    for (const [index, ms] of left(second).entries()) expect(Math.abs(ms - (before[index] ?? 0))).toBeLessThanOrEqual(21 * MINUTE_MS);
    expect(second.due('C1').dueMs).toBeLessThan(first.machine.wallMs() + byMs + 24 * HOUR_MS);
    const nowMs = second.house.clock.nowMs();
    await second.close();
    const third = await openTestHouse({ folder: first.folder, machine: second.machine });
    expect(await jumps(third)).toBe(1);
    expect(third.house.clock.nowMs()).toBe(nowMs);
  });

  it('C2 makes nothing of a clock that strays less than the limit', async () => {
    const { house, machine } = await busyHouse();
    const { sequence } = house.floor.state;
    const nowMs = house.clock.nowMs();
    machine.setWallClock(JUMP_MS);
    await house.lookAtClock();
    await eventLoopTurns();
    expect(house.floor.state.sequence).toBe(sequence);
    expect(house.clock.nowMs()).toBe(nowMs);
  });

  it('C7 that cannot be noted leaves the house’s clock where it was, until it can', async () => {
    const test = await openTestHouse();
    const { house, machine } = test;
    const { default: Database } = await import('better-sqlite3');
    const held = new Database(`${test.folder}/journal.db`);
    held.exec('BEGIN IMMEDIATE');
    machine.setWallClock(HOUR_MS);
    const nowMs = house.clock.nowMs();
    await house.lookAtClock();
    expect(house.clock.nowMs()).toBe(nowMs);
    held.close();
    await house.lookAtClock();
    expect(house.clock.nowMs()).toBe(nowMs + HOUR_MS);
  });
});

describe('a machine that slept', () => {
  it('C3 is caught up: what fell due meanwhile is called, at its own instant', async () => {
    const test = await openTestHouse();
    const { house, machine } = test;
    machine.sleep(21 * MINUTE_MS);
    expect(test.workpiece('M1').call).toBeNull();
    await machine.pass(5_000);
    expect(house.clock.nowMs()).toBe(MORNING_MS + 21 * MINUTE_MS + 5_000);
    expect(test.workpiece('M1').call).toMatchObject({ level: 'call', dueMs: MORNING_MS + 20 * MINUTE_MS });
    expect(test.workpiece('R1').call).toMatchObject({ level: 'late' });
    expect((await test.events()).some(({ event }) => event.type === 'clockJumped')).toBe(false);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openDues, roleAt } from '../../shared/floor/due.ts';
import { nextSound } from '../../shared/floor/sounding.ts';
import { Floor } from './support/floor.ts';
import { OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const HOUR_MS = 3_600_000;

/** A floor with a bit of everything under way: mixing, resting, baking, held, heard, sounded, planned. */
function busyFloor(): Floor {
  const floor = Floor.harbour();
  floor.bringTo('R1', 'bake').bringTo('M1', 'divide').finish('M1', 'divide');
  floor.bringTo('C1', 'score').bringTo('C2', 'first-speed').wait(2);
  floor.raiseCalls();
  floor.ok({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'score' });
  floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('O1'), stepId: 'weigh', minutes: 30 });
  const sound = nextSound(floor.state, floor.nowMs);
  floor.ok({ type: 'noteSounded', burst: sound?.burst ?? 'call', calls: [...(sound?.calls ?? [])] }, { deviceId: SERVER_DEVICE });
  floor.ok({ type: 'readTemperature', workpieceId: floor.id('C1'), where: 'dough', celsius: 26 });
  return floor;
}

function jump(floor: Floor, byMs: number): void {
  floor.nowMs += byMs;
  floor.ok({ type: 'noteClockJump', byMs }, { deviceId: SERVER_DEVICE });
}

describe('D15 a clock jump neither fires nor swallows a call', () => {
  test.each([HOUR_MS, -HOUR_MS, 1, -1, 26 * HOUR_MS])('by %d ms: everything has just as long left as before', (byMs) => {
    const floor = busyFloor();
    const before = openDues(floor.state).map((due) => [
      due.workpiece.tag,
      due.dueMs - floor.nowMs,
      due.lateMs - floor.nowMs,
      due.earliestMs - floor.nowMs,
      due.lostMs === null ? null : due.lostMs - floor.nowMs,
      roleAt(due, floor.nowMs),
    ]);
    const soundBefore = nextSound(floor.state, floor.nowMs);
    jump(floor, byMs);
    const after = openDues(floor.state).map((due) => [
      due.workpiece.tag,
      due.dueMs - floor.nowMs,
      due.lateMs - floor.nowMs,
      due.earliestMs - floor.nowMs,
      due.lostMs === null ? null : due.lostMs - floor.nowMs,
      roleAt(due, floor.nowMs),
    ]);
    expect(after).toEqual(before);
    expect(nextSound(floor.state, floor.nowMs)).toEqual(soundBefore === null ? null : { ...soundBefore, atMs: soundBefore.atMs + byMs });
  });

  test('what is raised, heard and read moves along; what is off the floor stays where it was', () => {
    const floor = busyFloor();
    const [c1, m1] = [floor.piece('C1'), floor.piece('M1')];
    const { lastSoundedMs } = floor.state;
    jump(floor, HOUR_MS);
    expect(Object.entries(floor.state.lastSoundedMs)).toEqual(
      Object.entries(lastSoundedMs).map(([burst, atMs]) => [burst, atMs + HOUR_MS]),
    );
    expect(floor.piece('C1').call).toMatchObject({
      raisedMs: (c1.call?.raisedMs ?? 0) + HOUR_MS,
      heardMs: (c1.call?.heardMs ?? 0) + HOUR_MS,
      dueMs: (c1.call?.dueMs ?? 0) + HOUR_MS,
    });
    expect(floor.piece('C1').readings[0]?.atMs).toBe((c1.readings[0]?.atMs ?? 0) + HOUR_MS);
    expect(floor.piece('M1')).toEqual(m1);
  });

  test('an undo after the jump puts things back in the new time', () => {
    const floor = Floor.harbour().bringTo('C1', 'fold-1');
    const untouched = new Floor(floor.state, floor.nowMs);
    jump(untouched, HOUR_MS);
    const commandId = floor.finish('C1', 'fold-1');
    jump(floor, HOUR_MS);
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece('C1')).toEqual(untouched.piece('C1'));
  });

  test('there and back again is as if nothing had been', () => {
    fc.assert(
      fc.property(fc.integer({ min: -48 * HOUR_MS, max: 48 * HOUR_MS }), (byMs) => {
        const floor = busyFloor();
        const before = floor.state;
        jump(floor, byMs);
        jump(floor, -byMs);
        expect({ ...floor.state, sequence: 0 }).toEqual({ ...before, sequence: 0 });
      }),
      { seed: 3, numRuns: 5 },
    );
  });

  test('the clock’s anchor is a fact: house time from real time at a pace', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'anchorClock', houseMs: OPENING_MS, realMs: 1_000, pace: 60 }, { deviceId: SERVER_DEVICE });
    expect(floor.state.clock).toEqual({ houseMs: OPENING_MS, realMs: 1_000, pace: 60 });
  });
});

describe('D15 a blocked resource keeps its time too', () => {
  test('what is being cleaned is free as long after the jump as it would have been', () => {
    const floor = Floor.harbour();
    const untilMs = floor.nowMs + HOUR_MS / 2;
    floor.record({ type: 'resourceBlocked', resource: { kind: 'mixer', id: 'spiral' }, why: 'cleaning', untilMs, atMs: floor.nowMs });
    jump(floor, HOUR_MS);
    expect(floor.state.blocked).toMatchObject([{ untilMs: untilMs + HOUR_MS }]);
  });
});

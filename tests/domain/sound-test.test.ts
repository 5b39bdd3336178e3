import { describe, expect, test } from 'vitest';
import { houseHours } from '../../server/floor/house-hours.ts';
import { soundSettingsSchema } from '../../shared/documents/house.ts';
import type { SoundHours } from '../../shared/floor/sound-hours.ts';
import {
  ANSWER_WITHIN_MS,
  dailyTestMs,
  soundTrust,
  testWantsAnswer,
  waitingTestMs,
  workpieceBeingLost,
} from '../../shared/floor/sound-test.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { harbourFile, OPENING_MS } from './support/harbour.ts';
import { OTHER_PHONE, PHONE, SERVER_DEVICE } from './support/ids.ts';

const SECOND_MS = 1000;
const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** The wall of these tests: any id will do. */
const WALL = OTHER_PHONE;

function ask(floor: Floor): void {
  floor.ok({ type: 'askSoundTest' });
}

function sounds(floor: Floor): void {
  floor.ok({ type: 'noteSoundTestSounded' }, { deviceId: WALL });
}

function answers(floor: Floor, heard: boolean): void {
  floor.ok({ type: 'answerSoundTest', heard });
}

/** Asked, sounded, and answered, all now. */
function tested(floor: Floor, heard = true): void {
  ask(floor);
  sounds(floor);
  answers(floor, heard);
}

/** C1 is being lost, and called so. */
function losing(floor: Floor): void {
  floor.bringTo('C1', 'fold-1').wait(31);
  floor.raiseCalls();
}

describe('S14 a test of the loudspeakers', () => {
  test('is asked for by a hand', () => {
    const floor = given()
      .when(() => ({ type: 'askSoundTest' }))
      .thenEvents([{ type: 'soundTestAsked', why: 'hand', atMs: OPENING_MS }]);
    expect(floor.state.soundTest).toEqual({
      why: 'hand',
      askedMs: OPENING_MS,
      soundedMs: null,
      byDeviceId: null,
      answeredMs: null,
      heard: null,
    });
  });

  test('is asked for by the time of day', () => {
    given()
      .when(() => ({ type: 'askDailySoundTest' }), { deviceId: SERVER_DEVICE })
      .thenEvents([{ type: 'soundTestAsked', why: 'daily', atMs: OPENING_MS }]);
  });

  test('is not asked for again before it has sounded, and is once it has', () => {
    const floor = given(ask)
      .when(() => ({ type: 'askSoundTest' }))
      .thenRefusal({ code: 'soundTestWaits', atMs: OPENING_MS });
    sounds(floor);
    ask(floor.wait(1));
    expect(floor.state.soundTest).toMatchObject({ askedMs: OPENING_MS + MINUTE_MS, soundedMs: null });
  });

  test.each(['askSoundTest', 'askDailySoundTest'] as const)('%s waits while a dough is being lost', (type) => {
    given(losing)
      .when(() => ({ type }))
      .thenRefusal({ code: 'beingLost', tag: 'C1' });
  });

  test('a dough that was lost and dealt with stands in the way of nothing', () => {
    const floor = given(losing).floor;
    expect(workpieceBeingLost(floor.state)?.tag).toBe('C1');
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'over' });
    expect(workpieceBeingLost(floor.state)?.tag ?? null).toBeNull();
  });

  test('has sounded when the device says so', () => {
    const floor = given(ask)
      .when(() => ({ type: 'noteSoundTestSounded' }), { deviceId: WALL })
      .thenEvents([{ type: 'soundTestSounded', byDeviceId: WALL, atMs: OPENING_MS }]);
    expect(floor.state.soundTest).toMatchObject({ soundedMs: OPENING_MS, byDeviceId: WALL });
  });

  test('that nobody asked for, or that has sounded, has not sounded again', () => {
    given()
      .when(() => ({ type: 'noteSoundTestSounded' }))
      .thenRefusal({ code: 'noSoundTest' });
    given((floor) => {
      ask(floor);
      sounds(floor);
    })
      .when(() => ({ type: 'noteSoundTestSounded' }))
      .thenRefusal({ code: 'noSoundTest' });
  });

  test('is answered once; what was heard is the burst, when it sounded', () => {
    const situation = given((floor) => {
      ask(floor);
      sounds(floor);
      floor.wait(3);
    });
    const atMs = OPENING_MS + 2 * MINUTE_MS;
    const floor = situation
      .when(() => ({ type: 'answerSoundTest', heard: true }), { tapMs: atMs })
      .thenEvents([{ type: 'soundTestAnswered', heard: true, atMs }]);
    expect(floor.state).toMatchObject({ soundHeardMs: OPENING_MS, soundTest: { answeredMs: atMs, heard: true } });
    situation.when(() => ({ type: 'answerSoundTest', heard: false })).thenRefusal({ code: 'soundTestAnswered', heard: true, atMs });
  });

  test('is not answered before it has sounded, by a phone whose clock says so', () => {
    given((floor) => {
      ask(floor);
      floor.wait(5);
      sounds(floor);
    })
      .when(() => ({ type: 'answerSoundTest', heard: false }), { tapMs: OPENING_MS + 4 * MINUTE_MS })
      .thenEvents([{ type: 'soundTestAnswered', heard: false, atMs: OPENING_MS + 5 * MINUTE_MS }]);
  });

  test('is not answered by what a phone that was away said of the one before', () => {
    const situation = given((floor) => {
      ask(floor);
      sounds(floor);
      floor.wait(24 * 60);
      ask(floor);
      sounds(floor);
    });
    situation
      .when(() => ({ type: 'answerSoundTest', heard: true }), { tapMs: OPENING_MS + 5 * MINUTE_MS })
      .thenRefusal({ code: 'noSoundTest' });
    situation.when(() => ({ type: 'answerSoundTest', heard: true }), { tapUncertain: true }).thenRefusal({ code: 'noSoundTest' });
    expect(situation.floor.state.soundHeardMs).toBeNull();
  });

  test('no answer without a test that has sounded', () => {
    given()
      .when(() => ({ type: 'answerSoundTest', heard: true }))
      .thenRefusal({ code: 'noSoundTest' });
    given(ask)
      .when(() => ({ type: 'answerSoundTest', heard: true }))
      .thenRefusal({ code: 'noSoundTest' });
  });

  test('nothing of it can be undone, and undo of the step before stays what it was', () => {
    const floor = Floor.harbour();
    const commandId = floor.finish('C1', 'weigh');
    tested(floor);
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.state.soundTest?.heard).toBe(true);
  });

  test('moves along when the clock is set', () => {
    const floor = Floor.harbour();
    tested(floor);
    floor.ok({ type: 'noteClockJump', byMs: HOUR_MS }, { deviceId: SERVER_DEVICE });
    const movedMs = OPENING_MS + HOUR_MS;
    expect(floor.state).toMatchObject({
      soundHeardMs: movedMs,
      soundTest: { askedMs: movedMs, soundedMs: movedMs, answeredMs: movedMs },
    });
  });
});

describe('S14 when the daily test is due', () => {
  const hoursOf = (sound: object = {}): SoundHours =>
    houseHours({ ...harbourFile().house, zone: 'UTC', sound: soundSettingsSchema.parse(sound) });
  const five = Date.UTC(2026, 2, 7, 5);
  const due = (floor: Floor, sound?: object): number | null => dailyTestMs(floor.state, hoursOf(sound), floor.nowMs);

  test('at once where none was ever asked for, then at five, then at five the next day', () => {
    const floor = Floor.harbour();
    expect(due(floor)).toBe(OPENING_MS);
    tested(floor);
    expect(due(floor)).toBe(five);
    floor.until(five);
    expect(due(floor)).toBe(five);
    tested(floor);
    expect(due(floor)).toBe(five + 24 * HOUR_MS);
  });

  test('as soon as may be where the last five o’clock has passed without one', () => {
    const floor = Floor.harbour();
    tested(floor);
    floor.until(five + 90 * MINUTE_MS);
    expect(due(floor)).toBe(floor.nowMs);
  });

  test('not while one is under way, nor while a dough is being lost, nor without a house', () => {
    const asked = Floor.harbour();
    ask(asked);
    expect(due(asked)).toBeNull();
    const losingFloor = Floor.harbour();
    losing(losingFloor);
    expect(due(losingFloor)).toBeNull();
    expect(due(new Floor())).toBeNull();
  });

  test('not in quiet hours, but at their end', () => {
    expect(due(Floor.harbour(), { quiet: { from: '22:00', to: '06:00' } })).toBe(Date.UTC(2026, 2, 7, 6));
  });

  test('a test that somebody made by hand after five is the day’s', () => {
    const floor = Floor.harbour();
    floor.until(five + SECOND_MS);
    tested(floor);
    expect(due(floor)).toBe(five + 24 * HOUR_MS);
  });
});

describe('S14 when a test that was asked for sounds', () => {
  const NIGHT = { quiet: { from: '22:00', to: '06:00' } };
  const hours = houseHours({ ...harbourFile().house, zone: 'UTC', sound: soundSettingsSchema.parse(NIGHT) });
  const tenInTheEvening = Date.UTC(2026, 2, 7, 22);
  const six = Date.UTC(2026, 2, 8, 6);
  const sounding = (floor: Floor): number | null => waitingTestMs(floor.state, hours, floor.nowMs);

  test('at once, but for one that quiet hours caught waiting: at their end', () => {
    const floor = Floor.harbour();
    expect(sounding(floor)).toBeNull();
    floor.until(tenInTheEvening - MINUTE_MS);
    ask(floor);
    expect(sounding(floor)).toBe(floor.nowMs);
    floor.until(tenInTheEvening);
    expect(sounding(floor)).toBe(six);
    floor.until(six);
    expect(sounding(floor)).toBe(six);
    sounds(floor);
    expect(sounding(floor)).toBeNull();
  });

  test('in quiet hours where a hand asked for it in them, not where the time of day did', () => {
    const byHand = Floor.harbour();
    byHand.until(tenInTheEvening + HOUR_MS);
    ask(byHand);
    expect(sounding(byHand)).toBe(byHand.nowMs);
    const daily = Floor.harbour();
    daily.until(tenInTheEvening + HOUR_MS);
    daily.ok({ type: 'askDailySoundTest' }, { deviceId: SERVER_DEVICE });
    expect(sounding(daily)).toBe(six);
  });

  test('never while a dough is being lost', () => {
    const floor = Floor.harbour();
    ask(floor);
    losing(floor);
    expect(sounding(floor)).toBeNull();
  });
});

describe('S19 how sure the house is that a call would be heard', () => {
  test('never tested, heard, heard a day ago', () => {
    const floor = Floor.harbour();
    expect(soundTrust(floor.state, floor.nowMs)).toEqual({ kind: 'never' });
    tested(floor);
    expect(soundTrust(floor.state, floor.nowMs + 24 * HOUR_MS)).toEqual({ kind: 'ok', heardMs: OPENING_MS });
    expect(soundTrust(floor.state, floor.nowMs + 24 * HOUR_MS + 1)).toEqual({ kind: 'old', heardMs: OPENING_MS });
  });

  test('not heard, until a later one is', () => {
    const floor = Floor.harbour();
    tested(floor);
    tested(floor.wait(10), false);
    const notHeard = { kind: 'notHeard', soundedMs: OPENING_MS + 10 * MINUTE_MS };
    expect(soundTrust(floor.state, floor.nowMs)).toEqual(notHeard);
    tested(floor.wait(5));
    expect(soundTrust(floor.state, floor.nowMs)).toEqual({ kind: 'ok', heardMs: OPENING_MS + 15 * MINUTE_MS });
  });

  test('a test that was not heard stays so while the next one is only asked for', () => {
    const floor = Floor.harbour();
    tested(floor, false);
    ask(floor.wait(5));
    expect(soundTrust(floor.state, floor.nowMs).kind).toBe('notHeard');
  });

  test('yesterday’s holds for half an hour more while today’s is being asked about', () => {
    const floor = Floor.harbour();
    tested(floor);
    floor.wait(24 * 60 + 1);
    expect(soundTrust(floor.state, floor.nowMs).kind).toBe('old');
    ask(floor);
    expect(soundTrust(floor.state, floor.nowMs).kind).toBe('ok');
    sounds(floor);
    expect(soundTrust(floor.state, floor.nowMs).kind).toBe('ok');
    floor.wait(30);
    expect(soundTrust(floor.state, floor.nowMs).kind).toBe('old');
  });

  test('phones ask for an hour after it has sounded, until somebody has answered', () => {
    const floor = Floor.harbour();
    const asks = (afterMs: number): boolean => testWantsAnswer(floor.state.soundTest, floor.nowMs + afterMs);
    ask(floor);
    expect(asks(0)).toBe(false);
    sounds(floor);
    expect([asks(0), asks(ANSWER_WITHIN_MS - 1), asks(ANSWER_WITHIN_MS)]).toEqual([true, true, false]);
    floor.ok({ type: 'answerSoundTest', heard: false }, { deviceId: PHONE });
    expect(asks(0)).toBe(false);
  });
});

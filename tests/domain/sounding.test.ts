import { describe, expect, test } from 'vitest';
import { nextRoleChangeMs } from '../../shared/floor/calls.ts';
import { CALL_REPEATS_MS, GROUP_MS, LATE_REPEAT_MS, LOST_REPEAT_MS, nextSound } from '../../shared/floor/sounding.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const SECOND_MS = 1000;
const MINUTE_MS = 60_000;
/** More bursts than any of these listenings may hear. */
const MANY_BURSTS = 100;

/**
 * Lets time pass as the server does it: wakes at every change of a role and at every sound, raises, sounds and notes
 * it. Returns the bursts as `burst@seconds tags`, counted from the beginning of the listening.
 */
function listen(floor: Floor, minutes: number): string[] {
  const fromMs = floor.nowMs;
  const endMs = fromMs + minutes * MINUTE_MS;
  const heard: string[] = [];
  for (;;) {
    assert(heard.length < MANY_BURSTS, `it does not stop sounding: ${heard.slice(-3).join(', ')}`);
    floor.raiseCalls();
    const sound = nextSound(floor.state, floor.nowMs);
    if (sound !== null && sound.atMs <= floor.nowMs) {
      floor.ok({ type: 'noteSounded', burst: sound.burst, calls: [...sound.calls] }, { deviceId: SERVER_DEVICE });
      heard.push(
        `${sound.burst}@${(floor.nowMs - fromMs) / SECOND_MS} ${sound.calls.map((call) => floor.state.workpieces[call.workpieceId]?.tag).join(' ')}`,
      );
      continue;
    }
    const next = [nextRoleChangeMs(floor.state, floor.nowMs), sound?.atMs ?? null].filter((atMs) => atMs !== null && atMs <= endMs);
    if (next.length === 0) {
      floor.until(endMs);
      return heard;
    }
    floor.until(Math.min(...next.map(Number)));
  }
}

function hear(floor: Floor, tag: string): void {
  floor.ok({ type: 'hearCall', workpieceId: floor.id(tag), stepId: floor.due(tag).action.id });
}

/** C1 alone, its first fold due now: late in 10 minutes, lost in 30. */
function foldDue(): Floor {
  return Floor.harbour().only('C1').bringTo('C1', 'fold-1');
}

describe('D10 what sounds, and when', () => {
  test('the intervals are those of the sound design', () => {
    expect({ call: CALL_REPEATS_MS, late: LATE_REPEAT_MS, group: GROUP_MS }).toEqual({
      call: [60_000, 120_000],
      late: 60_000,
      group: 90_000,
    });
    expect(LOST_REPEAT_MS).toBeGreaterThanOrEqual(10_000);
    expect(LOST_REPEAT_MS).toBeLessThanOrEqual(15_000);
  });

  test('a call sounds when due, after 60 s and after 120 s, then is silent until it is late', () => {
    expect(listen(foldDue(), 9.9)).toEqual(['call@0 C1', 'call@60 C1', 'call@120 C1']);
  });

  test('late sounds every 60 s until it is lost', () => {
    const floor = foldDue();
    floor.wait(10);
    expect(listen(floor, 4)).toEqual(['late@0 C1', 'late@60 C1', 'late@120 C1', 'late@180 C1', 'late@240 C1']);
  });

  test('being lost sounds every 12 s until it is heard', () => {
    const floor = foldDue();
    floor.wait(30);
    expect(listen(floor, 0.5)).toEqual(['lost@0 C1', 'lost@12 C1', 'lost@24 C1']);
    hear(floor, 'C1');
    expect(listen(floor, 60)).toEqual([]);
  });

  test('a call that was heard is silent until it is late', () => {
    const floor = foldDue();
    expect(listen(floor, 0)).toEqual(['call@0 C1']);
    hear(floor, 'C1');
    expect(listen(floor, 10)).toEqual(['late@600 C1']);
  });

  test('late and heard: once more after half of what was left before it is lost', () => {
    const floor = foldDue();
    floor.wait(10);
    listen(floor, 0);
    floor.wait(4);
    hear(floor, 'C1');
    expect(listen(floor, 15.9)).toEqual(['late@480 C1']);
    expect(listen(floor, 0.2)).toEqual(['lost@6 C1']);
  });

  test('late and heard, where waiting never spoils it: silent from then on', () => {
    const floor = Floor.harbour().only('C1').wait(15);
    expect(floor.raiseCalls()).toEqual(['C1 weigh late']);
    hear(floor, 'C1');
    expect(nextSound(floor.state, floor.nowMs)).toBeNull();
  });

  test('a step due at once makes no sound until it is late: whoever tapped stands there', () => {
    const floor = Floor.harbour().only('C1');
    floor.finish('C1', 'weigh');
    expect(listen(floor, 11)).toEqual(['late@600 C1', 'late@660 C1']);
  });

  test('a step that was put off sounds when its time has come', () => {
    const floor = Floor.harbour().only('C1');
    floor.finish('C1', 'weigh');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'fill-bowl', minutes: 5 });
    expect(listen(floor, 5)).toEqual(['call@300 C1']);
  });

  test('a held call is silent, save when it is being lost', () => {
    const floor = foldDue();
    listen(floor, 0);
    floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 120 });
    expect(listen(floor, 30.2)).toEqual(['lost@1800 C1', 'lost@1812 C1']);
  });

  test('calls due within 90 s of one another make one sound', () => {
    const floor = Floor.harbour().only('C1', 'R1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 4 });
    expect(floor.due('R1').dueMs - floor.due('C1').dueMs).toBe(60 * SECOND_MS);
    expect(listen(floor, 7)).toEqual(['call@240 C1', 'call@300 C1 R1', 'call@360 C1 R1', 'call@420 R1']);
  });

  test('one that comes between two repeats waits for the next of them', () => {
    const floor = Floor.harbour().only('C1', 'M1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('M1'), stepId: 'weigh', minutes: 49 });
    floor.bringTo('C1', 'turn-out').wait(0.5).bringTo('C1', 'fold-1');
    expect(floor.due('M1').dueMs - floor.due('C1').dueMs).toBe(30 * SECOND_MS);
    expect(listen(floor, 4)).toEqual(['call@0 C1', 'call@60 C1 M1', 'call@120 C1 M1', 'call@180 M1']);
  });

  test('a call does not wait for another one where it would be late by then', () => {
    const floor = Floor.harbour().only('O1', 'C1');
    floor.bringTo('O1', 'bake-off');
    floor.raiseCalls();
    hear(floor, 'C1');
    // Another call's burst 20 s before; its repeat would come 10 s after the flatbread is late.
    floor.until(floor.due('O1').dueMs - 20 * SECOND_MS);
    floor.ok(
      { type: 'noteSounded', burst: 'call', calls: [{ workpieceId: floor.id('C1'), stepId: 'weigh', level: 'call' }] },
      { deviceId: SERVER_DEVICE },
    );
    expect(listen(floor, 0.4)).toEqual(['call@20 O1']);
  });

  test('one that waits for a repeat takes part in whatever sounds before it', () => {
    const floor = Floor.harbour().only('O1', 'C1', 'M1').bringTo('O1', 'load-bake-off').bringTo('C1', 'turn-out');
    // C1 is due first, M1 20 s and O1 30 s after it; O1 bears half a minute and cannot wait for C1's repeat.
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('M1'), stepId: 'weigh', minutes: 340 });
    const firstMs = floor.due('M1').dueMs - 20 * SECOND_MS;
    floor.until(firstMs - 30 * MINUTE_MS).finish('C1');
    floor.until(firstMs + 30 * SECOND_MS - 5.5 * MINUTE_MS).finish('O1');
    floor.until(firstMs);
    expect(listen(floor, 1)).toEqual(['call@0 C1', 'call@30 M1 O1', 'late@60 C1 O1']);
  });

  test('after a restart what fell due meanwhile sounds at once, in one burst of the strongest rhythm', () => {
    const floor = Floor.harbour().only('C1', 'R1', 'M1').wait(20);
    expect(floor.raiseCalls()).toEqual(['C1 weigh late', 'R1 weigh late', 'M1 weigh call']);
    const sound = nextSound(floor.state, floor.nowMs);
    expect(sound).toMatchObject({ atMs: floor.nowMs, burst: 'late' });
    expect(sound?.calls.map((call) => call.level)).toEqual(['late', 'late', 'call']);
  });

  test('the next sound is the same after a restart: it follows from the state alone', () => {
    const floor = foldDue();
    listen(floor, 0.5);
    const restarted = JSON.parse(JSON.stringify(floor.state)) as Floor['state'];
    expect(nextSound(restarted, floor.nowMs)).toEqual(nextSound(floor.state, floor.nowMs));
    expect(nextSound(restarted, floor.nowMs)?.atMs).toBe(OPENING_MS + 69 * MINUTE_MS);
  });

  test('a repeat that was missed while the server was away sounds once, not twice', () => {
    const floor = foldDue();
    listen(floor, 0);
    floor.wait(5);
    expect(listen(floor, 0)).toEqual(['call@0 C1']);
  });

  test('a burst that sounded for a call answered meanwhile changes nothing of the dough', () => {
    const floor = foldDue();
    floor.raiseCalls();
    const calls = nextSound(floor.state, floor.nowMs)?.calls ?? [];
    floor.finish('C1', 'fold-1');
    const before = floor.piece('C1');
    floor.ok({ type: 'noteSounded', burst: 'call', calls: [...calls] }, { deviceId: SERVER_DEVICE });
    expect(floor.piece('C1')).toEqual(before);
    expect(floor.state.lastSoundedMs).toEqual({ call: floor.nowMs });
  });

  test('nothing sounds where nothing calls', () => {
    expect(nextSound(Floor.harbour().state, OPENING_MS)).toBeNull();
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nextRoleChangeMs } from '../../shared/floor/calls.ts';
import { CALL_REPEATS_MS, GROUP_MS, LATE_REPEAT_MS, LOST_REPEAT_MS, nextSound } from '../../shared/floor/sounding.ts';
import { ALWAYS_LOUD, type SoundHours } from '../../shared/floor/sound-hours.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { days, liveDay } from './support/live-day.ts';

const SECOND_MS = 1000;
const MINUTE_MS = 60_000;
/** More bursts than any of these listenings may hear. */
const MANY_BURSTS = 100;

/**
 * Lets time pass as the server does it: wakes at every change of a role and at every sound, raises, sounds and notes
 * it. Returns the bursts as `burst@seconds tags`, counted from the beginning of the listening.
 */
function listen(floor: Floor, minutes: number, hours: SoundHours = ALWAYS_LOUD): string[] {
  const fromMs = floor.nowMs;
  const endMs = fromMs + minutes * MINUTE_MS;
  const heard: string[] = [];
  for (;;) {
    assert(heard.length < MANY_BURSTS, `it does not stop sounding: ${heard.slice(-3).join(', ')}`);
    floor.raiseCalls();
    const sound = nextSound(floor.state, floor.nowMs, hours);
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

  test('of two calls that are due within 90 s and dealt with in time only the first makes a sound', () => {
    const floor = Floor.harbour().only('C1', 'R1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 4 });
    floor.until(floor.due('C1').dueMs);
    expect(listen(floor, 0.5)).toEqual(['call@0 C1']);
    floor.finish('C1');
    // R1 is due half a minute from now, and somebody is there 54 s later.
    expect(listen(floor, 1.4)).toEqual([]);
    floor.finish('R1');
    expect(listen(floor, 5)).toEqual([]);
  });

  test('one that becomes late soon after another late one’s burst waits for its repeat', () => {
    const floor = Floor.harbour().only('C1', 'M1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('M1'), stepId: 'weigh', minutes: 49 });
    floor.bringTo('C1', 'turn-out').wait(0.5).bringTo('C1', 'fold-1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 5 });
    expect(floor.due('M1').lateMs - floor.due('C1').lateMs).toBe(30 * SECOND_MS);
    expect(listen(floor, 16.5).filter((burst) => burst.startsWith('late'))).toEqual(['late@900 C1', 'late@960 C1 M1']);
  });

  test('but not one that has no time for it', () => {
    const floor = Floor.harbour().only('O1', 'C1').bringTo('O1', 'bake-off');
    floor.raiseCalls();
    hear(floor, 'C1');
    // Late in 10 s and lost a minute after; the repeat of the burst now would come 10 s before that.
    floor.until(floor.due('O1').lateMs - 10 * SECOND_MS);
    floor.ok(
      { type: 'noteSounded', burst: 'late', calls: [{ workpieceId: floor.id('C1'), stepId: 'weigh', level: 'late' }] },
      { deviceId: SERVER_DEVICE },
    );
    expect(listen(floor, 0.3)).toEqual(['call@5 O1', 'late@10 O1']);
  });

  test('one that comes between two repeats waits for the next of them', () => {
    const floor = Floor.harbour().only('C1', 'M1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('M1'), stepId: 'weigh', minutes: 49 });
    floor.bringTo('C1', 'turn-out').wait(0.5).bringTo('C1', 'fold-1');
    expect(floor.due('M1').dueMs - floor.due('C1').dueMs).toBe(30 * SECOND_MS);
    expect(listen(floor, 4)).toEqual(['call@0 C1', 'call@60 C1 M1', 'call@120 C1 M1', 'call@180 M1']);
  });

  test('a call that is soon late waits for half of the way to that, not for a minute', () => {
    const floor = Floor.harbour().only('O1', 'C1');
    floor.bringTo('O1', 'bake-off');
    floor.raiseCalls();
    hear(floor, 'C1');
    // Another call's burst 20 s before; a minute after it was due the flatbread would have been late for 30 s.
    floor.until(floor.due('O1').dueMs - 20 * SECOND_MS);
    floor.ok(
      { type: 'noteSounded', burst: 'call', calls: [{ workpieceId: floor.id('C1'), stepId: 'weigh', level: 'call' }] },
      { deviceId: SERVER_DEVICE },
    );
    expect(listen(floor, 0.7)).toEqual(['call@35 O1']);
  });

  test('one that waits takes part in whatever sounds before it, and so does one that is soon to be repeated', () => {
    const floor = Floor.harbour().only('O1', 'C1', 'M1').bringTo('O1', 'load-bake-off').bringTo('C1', 'turn-out');
    // C1 is due first, M1 20 s and O1 30 s after it; O1 bears half a minute and can wait for half of it.
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('M1'), stepId: 'weigh', minutes: 340 });
    const firstMs = floor.due('M1').dueMs - 20 * SECOND_MS;
    floor.until(firstMs - 30 * MINUTE_MS).finish('C1');
    floor.until(firstMs + 30 * SECOND_MS - 5.5 * MINUTE_MS).finish('O1');
    floor.until(firstMs);
    expect(listen(floor, 1)).toEqual(['call@0 C1', 'call@45 C1 M1 O1', 'late@60 O1']);
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

/** Quiet till an instant, whatever the day. */
function quietTill(endMs: number): SoundHours {
  return { ...ALWAYS_LOUD, quietEndMs: (atMs) => (atMs < endMs ? endMs : null) };
}

/** The state as if nothing were out that is only a call. */
function withoutMereCalls(state: FloorState): FloorState {
  const workpieces = Object.entries(state.workpieces).map(([id, workpiece]) => [
    id,
    workpiece.call?.level === 'call' ? { ...workpiece, call: null } : workpiece,
  ]);
  return { ...state, workpieces: Object.fromEntries(workpieces) as FloorState['workpieces'] };
}

describe('S13 quiet hours', () => {
  test('a call makes no sound in them, and one at their end, from which its repeats are counted', () => {
    const floor = foldDue();
    expect(listen(floor, 8, quietTill(floor.nowMs + 4 * MINUTE_MS))).toEqual(['call@240 C1', 'call@300 C1', 'call@360 C1']);
  });

  test('what waits for their end makes one sound then', () => {
    const floor = Floor.harbour().only('C1', 'R1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 4 });
    expect(listen(floor, 10.5, quietTill(floor.nowMs + 10 * MINUTE_MS))).toEqual(['call@600 C1 R1']);
  });

  test('what becomes late in them sounds at once, and what is lost too', () => {
    const floor = foldDue();
    expect(listen(floor, 30.1, quietTill(floor.nowMs + 600 * MINUTE_MS)).filter((_burst, index) => index === 0 || index === 20)).toEqual([
      'late@600 C1',
      'lost@1800 C1',
    ]);
  });

  test('a repeat that falls into them waits for their end', () => {
    const floor = foldDue();
    expect(listen(floor, 0.5)).toEqual(['call@0 C1']);
    expect(listen(floor, 6, quietTill(floor.nowMs + 3 * MINUTE_MS))).toEqual(['call@180 C1', 'call@240 C1']);
  });

  test('one that no device could sound before they began waits for their end', () => {
    const floor = foldDue();
    floor.raiseCalls();
    floor.wait(2);
    const quiet: SoundHours = { ...quietTill(floor.nowMs + 5 * MINUTE_MS) };
    expect(nextSound(floor.state, floor.nowMs, quiet)?.atMs).toBe(floor.nowMs + 5 * MINUTE_MS);
  });

  test('a late one does not take along a call that waits', () => {
    const floor = Floor.harbour().only('C1', 'R1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('R1'), stepId: 'weigh', minutes: 10 });
    const heard = listen(floor, 16, quietTill(floor.nowMs + 600 * MINUTE_MS));
    expect(heard.length).toBeGreaterThan(0);
    expect(heard.every((burst) => burst.startsWith('late') && burst.endsWith(' C1'))).toBe(true);
  });

  test('whatever happens on a day, they put off nothing that is late or being lost, and no burst of it', () => {
    const farMs = 1000 * 60 * MINUTE_MS;
    fc.assert(
      fc.property(days, (day) => {
        liveDay(day, (floor) => {
          const quiet = nextSound(floor.state, floor.nowMs, quietTill(floor.nowMs + farMs));
          const pressing = nextSound(withoutMereCalls(floor.state), floor.nowMs);
          const told = quiet !== null && quiet.atMs < floor.nowMs + farMs ? quiet : null;
          expect(told).toEqual(pressing);
        });
      }),
      { seed: 20_260_307, numRuns: 20 },
    );
  });
});

describe('S12 the volume', () => {
  test('is that of the hour at which it sounds', () => {
    const floor = foldDue();
    floor.raiseCalls();
    const hours: SoundHours = { ...ALWAYS_LOUD, volumePct: (atMs) => (atMs < floor.nowMs + MINUTE_MS ? 30 : 80) };
    expect(nextSound(floor.state, floor.nowMs, hours)?.volumePct).toBe(30);
    expect(nextSound(floor.state, floor.nowMs + MINUTE_MS, hours)?.volumePct).toBe(80);
  });
});

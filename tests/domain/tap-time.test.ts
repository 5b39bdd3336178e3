import { describe, expect, test } from 'vitest';
import { TAP_CLOCKS_AGREE_MS, tapInstant } from '../../shared/floor/tap-time.ts';
import { Floor } from './support/floor.ts';
import { OPENING_MS } from './support/harbour.ts';

const MINUTE_MS = 60_000;

describe('D4 the tap’s time counts where the phone can tell it', () => {
  test('so long ago as both its clocks say', () => {
    expect(tapInstant({ agoMonotonicMs: 90_000, agoWallMs: 90_700 }, OPENING_MS, 1)).toEqual({
      tapMs: OPENING_MS - 90_000,
      uncertain: false,
    });
  });

  test('a wall clock an hour wrong does no harm: only how long ago is asked of it', () => {
    // The phone's clock is 3 600 s fast at the tap and at the sending: the difference is the same.
    expect(tapInstant({ agoMonotonicMs: 4_000, agoWallMs: 4_000 }, OPENING_MS, 1)).toEqual({ tapMs: OPENING_MS - 4_000, uncertain: false });
  });

  test('clocks that disagree by more than 2 s make it uncertain, and arrival counts', () => {
    expect(TAP_CLOCKS_AGREE_MS).toBe(2000);
    expect(tapInstant({ agoMonotonicMs: 1_000, agoWallMs: 3_000 }, OPENING_MS, 1)).toEqual({ tapMs: OPENING_MS - 1_000, uncertain: false });
    expect(tapInstant({ agoMonotonicMs: 1_000, agoWallMs: 3_001 }, OPENING_MS, 1)).toEqual({ tapMs: OPENING_MS, uncertain: true });
    expect(tapInstant({ agoMonotonicMs: 3_001, agoWallMs: 1_000 }, OPENING_MS, 1)).toEqual({ tapMs: OPENING_MS, uncertain: true });
  });

  test('after a reload the monotonic clock knows nothing: uncertain', () => {
    expect(tapInstant({ agoMonotonicMs: null, agoWallMs: 500 }, OPENING_MS, 1)).toEqual({ tapMs: OPENING_MS, uncertain: true });
  });

  test('real time is turned into house time at the house’s pace', () => {
    expect(tapInstant({ agoMonotonicMs: 1_500, agoWallMs: 1_500 }, OPENING_MS, 60)).toEqual({
      tapMs: OPENING_MS - 90_000,
      uncertain: false,
    });
  });

  test('an offline tap is kept with its own time', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed').wait(30);
    floor.finish('C1', 'first-speed', { tapMs: OPENING_MS + 4 * MINUTE_MS });
    expect(floor.piece('C1').steps['first-speed']?.endedMs).toBe(OPENING_MS + 4 * MINUTE_MS);
    expect(floor.due('C1')).toMatchObject({ step: { id: 'stand' }, dueMs: OPENING_MS + 24 * MINUTE_MS });
  });

  test('never before what came before it', () => {
    const floor = Floor.harbour().wait(1);
    floor.finish('C1', 'weigh');
    floor.wait(1).finish('C1', 'fill-bowl', { tapMs: OPENING_MS - 5 * MINUTE_MS });
    expect(floor.piece('C1').steps['fill-bowl']?.endedMs).toBe(OPENING_MS + MINUTE_MS);
  });

  test('never before a cut was made', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    floor.finish('M1', 'divide');
    const dividedMs = floor.nowMs;
    floor.wait(1).finish('M1a', 'round', { tapMs: dividedMs - 5 * MINUTE_MS });
    expect(floor.piece('M1a').steps['round']?.endedMs).toBe(dividedMs);
  });

  test('never in the future', () => {
    const floor = Floor.harbour();
    floor.finish('C1', 'weigh', { tapMs: OPENING_MS + MINUTE_MS });
    expect(floor.piece('C1').steps['weigh']?.endedMs).toBe(OPENING_MS);
  });

  test('an uncertain tap is marked so in every fact that its time went into', () => {
    const floor = Floor.harbour().bringTo('C1', 'fold-1');
    const before = floor.recorded.length;
    floor.finish('C1', 'fold-1', { tapUncertain: true });
    expect(floor.recorded.slice(before).map(({ event }) => event)).toMatchObject([
      { type: 'stepDone', tapUncertain: true },
      { type: 'stepDone', tapUncertain: true },
      { type: 'stepStarted', tapUncertain: true },
    ]);
  });
});

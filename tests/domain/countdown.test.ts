import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countdownTo, nextChangeMs } from '../../shared/floor/countdown.ts';
import { OPENING_MS } from './support/harbour.ts';

const SECOND_MS = 1000;
const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;

/** The countdown so long before its due instant (after it, where negative), as one text. */
function shown(leftMs: number): string {
  const countdown = countdownTo(OPENING_MS, OPENING_MS - leftMs);
  switch (countdown.kind) {
    case 'text':
      return countdown.text;
    case 'minutes':
      return `${countdown.minutes} min`;
    case 'hours':
      return `${countdown.hours} h`;
    case 'clock':
      return countdown.atMs === OPENING_MS ? 'clock' : 'wrong instant';
  }
}

describe('D18 a countdown reads 0:00 exactly when due', () => {
  test.each([
    [1, '0:01'],
    [0, '0:00'],
    [-1, '0:00'],
    [-999, '0:00'],
    [-1000, '+0:01'],
    [-1999, '+0:01'],
    [-2000, '+0:02'],
    [-61 * SECOND_MS, '+1:01'],
    [-3 * HOUR_MS, '+180:00'],
    [SECOND_MS, '0:01'],
    [SECOND_MS + 1, '0:02'],
    [59 * SECOND_MS, '0:59'],
    [MINUTE_MS, '1:00'],
    [10 * MINUTE_MS, '10:00'],
  ])('%d ms before it: %s', (leftMs, text) => {
    expect(shown(leftMs)).toBe(text);
  });

  test.each([
    [10 * MINUTE_MS + 1, '11 min'],
    [11 * MINUTE_MS, '11 min'],
    [11 * MINUTE_MS + 1, '12 min'],
    [3 * HOUR_MS - MINUTE_MS, '179 min'],
    [3 * HOUR_MS + SECOND_MS, 'clock'],
    [12 * HOUR_MS, 'clock'],
  ])('further out, %d ms before it: %s', (leftMs, text) => {
    expect(shown(leftMs)).toBe(text);
  });

  test('its text does not change before the instant at which it says it will', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20 * MINUTE_MS, max: 9 * MINUTE_MS }), (leftMs) => {
        const nowMs = OPENING_MS - leftMs;
        const changeMs = nextChangeMs(OPENING_MS, nowMs);
        expect(changeMs).toBeGreaterThan(nowMs);
        expect(changeMs - nowMs).toBeLessThanOrEqual(SECOND_MS);
        // Before it is due a second is over when the next has begun, past due when it is full.
        if (leftMs > 0) expect(shown(OPENING_MS - changeMs + 1)).toBe(shown(leftMs));
        else expect(shown(OPENING_MS - changeMs + 1)).toBe(shown(leftMs));
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  test('so far out that a clock time could be taken for today’s, it reads in hours', () => {
    const hourMs = 3_600_000;
    expect(countdownTo(18 * hourMs, 0)).toEqual({ kind: 'clock', atMs: 18 * hourMs });
    expect(countdownTo(18 * hourMs + 1, 0)).toEqual({ kind: 'hours', hours: 19 });
    expect(countdownTo(24 * hourMs, 0)).toEqual({ kind: 'hours', hours: 24 });
  });
});

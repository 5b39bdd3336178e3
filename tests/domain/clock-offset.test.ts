import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  FILTER_STAGES,
  NO_OFFSET,
  offsetMs,
  roundTripMs,
  SLEW_SHARE,
  STEP_MS,
  withSample,
  type PingSample,
} from '../../shared/wire/clock-offset.ts';

/** A ping of a client whose clock is `offset` behind the server's, with the given ways there and back. */
function ping(offset: number, thereMs: number, backMs: number, t1 = 10_000, serverMs = 2): PingSample {
  const t2 = t1 + offset + thereMs;
  const t3 = t2 + serverMs;
  return { t1, t2, t3, t4: t3 - offset + backMs };
}

describe('D22 the clock’s offset', () => {
  // RFC 5905, section 8: theta = T(B) - T(A) = 1/2 * [(T2-T1) + (T3-T4)], delta = T(ABA) = (T4-T1) - (T3-T2).
  test('RFC 5905 section 8, worked by hand', () => {
    // (5060 − 1000 + 5070 − 1150) / 2 = (4060 + 3920) / 2 = 3990; (1150 − 1000) − (5070 − 5060) = 140.
    const sample = { t1: 1000, t2: 5060, t3: 5070, t4: 1150 };
    expect([offsetMs(sample), roundTripMs(sample)]).toEqual([3990, 140]);
    // A server behind its client: (−3 600 000 + 20 − 3 600 000 − 20) / 2.
    const behind = { t1: 7_200_000, t2: 3_600_020, t3: 3_600_021, t4: 7_200_041 };
    expect([offsetMs(behind), roundTripMs(behind)]).toEqual([-3_600_000, 40]);
  });

  test('equal ways there and back give the offset exactly; unequal ones err by half of the difference', () => {
    expect(offsetMs(ping(3_600_000, 30, 30))).toBe(3_600_000);
    expect(offsetMs(ping(3_600_000, 70, 30))).toBe(3_600_020);
    expect(roundTripMs(ping(3_600_000, 70, 30))).toBe(100);
  });

  test('the error is never more than half of the round trip', () => {
    const way = fc.integer({ min: 0, max: 5_000 });
    fc.assert(
      fc.property(fc.integer({ min: -4_000_000, max: 4_000_000 }), way, way, way, (offset, thereMs, backMs, serverMs) => {
        const sample = ping(offset, thereMs, backMs, 10_000_000, serverMs);
        expect(Math.abs(offsetMs(sample) - offset)).toBeLessThanOrEqual(roundTripMs(sample) / 2);
      }),
      { seed: 13, numRuns: 200 },
    );
  });

  // RFC 5905, section 10: the clock filter keeps eight stages and selects the sample with the least delay.
  test('of the last eight samples the one with the least round trip is believed', () => {
    expect(FILTER_STAGES).toBe(8);
    const good = ping(100, 5, 5);
    const slow = [ping(100, 90, 10), ping(100, 10, 200), ping(100, 400, 0)];
    const estimate = [good, ...slow].reduce(withSample, NO_OFFSET);
    expect(estimate.offsetMs).toBe(100);
    const flooded = Array.from({ length: 8 }, () => ping(100, 20, 10)).reduce(withSample, estimate);
    expect(flooded.samples).toHaveLength(8);
    expect(flooded.samples).not.toContain(good);
  });

  test('the first sample is taken as it is, a small change slewed, one beyond 250 ms stepped', () => {
    expect([STEP_MS, SLEW_SHARE]).toEqual([250, 0.25]);
    const first = withSample(NO_OFFSET, ping(1000, 20, 20));
    expect(first.offsetMs).toBe(1000);
    expect(withSample(first, ping(1200, 10, 10)).offsetMs).toBe(1050);
    expect(withSample(first, ping(1250, 10, 10)).offsetMs).toBe(1062.5);
    expect(withSample(first, ping(1251, 10, 10)).offsetMs).toBe(1251);
    expect(withSample(first, ping(-9000, 10, 10)).offsetMs).toBe(-9000);
  });

  test('eight good pings bring a client within 100 ms of a server from which it was 240 ms away', () => {
    const estimate = Array.from({ length: 8 }, () => ping(1240, 1, 1)).reduce(withSample, withSample(NO_OFFSET, ping(1000, 20, 20)));
    expect(Math.abs((estimate.offsetMs ?? 0) - 1240)).toBeLessThan(100);
  });
});

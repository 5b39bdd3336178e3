import { median, quantileSorted } from 'd3-array';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantileOf, shrunkMedians, spreadOf, theilSen, trendOf } from '../../server/records/robust.ts';

const DAY_MS = 86_400_000;
const values = fc.array(fc.integer({ min: -4_000, max: 4_000 }), { minLength: 1, maxLength: 60 }).map((all) => all.map((one) => one / 16));

/** By simulation-free counting: so likely is it that the median of a continuous distribution lies between these order statistics. */
function covered(n: number, k: number): number {
  const choose = (of: number, some: number): number => {
    let ways = 1;
    for (let each = 0; each < some; each += 1) ways = (ways * (of - each)) / (each + 1);
    return ways;
  };
  let tail = 0;
  for (let below = 0; below <= k; below += 1) tail += choose(n, below) / 2 ** n;
  return 1 - 2 * tail;
}

describe('LS1 robust figures', () => {
  it('median and quantiles are those of another library', () => {
    fc.assert(
      fc.property(values, fc.double({ min: 0, max: 1, noNaN: true }), (all, share) => {
        const sorted = [...all].sort((a, b) => a - b);
        const spread = spreadOf(all);
        expect(spread?.median).toBeCloseTo(median(all) ?? Number.NaN, 9);
        for (const [found, at] of [
          [spread?.tenth, 0.1],
          [spread?.quarter, 0.25],
          [spread?.threeQuarters, 0.75],
          [spread?.nineTenths, 0.9],
          [quantileOf(all, share), share],
        ] as const)
          expect(found).toBeCloseTo(quantileSorted(sorted, at) ?? Number.NaN, 9);
      }),
    );
    expect(spreadOf([])).toBeNull();
    expect(quantileOf([], 0.5)).toBeNaN();
  });

  it('the interval of a median is the narrowest pair of values that holds it with 95 %', () => {
    for (let n = 1; n <= 120; n += 1) {
      const spread = spreadOf(Array.from({ length: n }, (_, index) => index));
      const k = spread?.medianLow ?? -1;
      expect(spread?.medianHigh).toBe(n - 1 - k);
      if (n >= 6) expect(covered(n, k)).toBeGreaterThanOrEqual(0.95);
      if (k + 1 < n / 2 && n >= 6) expect(covered(n, k + 1)).toBeLessThan(0.95);
    }
    // As textbooks have it (from memory): the 2nd and 9th of ten, the 6th and 15th of twenty.
    expect(spreadOf([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])).toMatchObject({ medianLow: 2, medianHigh: 9 });
    expect(spreadOf(Array.from({ length: 20 }, (_, index) => index + 1))).toMatchObject({ medianLow: 6, medianHigh: 15 });
  });

  it('Theil–Sen is the median over all pairs, and its interval lies among them', () => {
    const point = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: -300, max: 300 }));
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 30 }), (points) => {
        const slopes: number[] = [];
        for (const [x, y] of points) for (const [u, v] of points) if (u > x) slopes.push((v - y) / (u - x));
        const found = theilSen(points);
        if (slopes.length === 0) {
          expect(found).toBeNull();
          return;
        }
        expect(found?.slope).toBeCloseTo(median(slopes) ?? Number.NaN, 9);
        expect(found?.low).toBeLessThanOrEqual(found?.slope ?? 0);
        expect(found?.high).toBeGreaterThanOrEqual(found?.slope ?? 0);
        expect(slopes).toEqual(expect.arrayContaining([found?.low, found?.high]));
      }),
    );
  });

  it('the interval of a trend holds what noise was put on, nineteen times of twenty', () => {
    let held = 0;
    let state = 12_345;
    const random = (): number => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return state / 2 ** 32;
    };
    for (let round = 0; round < 400; round += 1) {
      const points = Array.from({ length: 24 }, (_, x) => [x, 0.7 * x + (random() + random() + random()) * 4] as const);
      const found = theilSen(points);
      if (found !== null && found.low <= 0.7 && found.high >= 0.7) held += 1;
    }
    expect(held).toBeGreaterThan(370);
    expect(held).toBeLessThan(396);
  });

  it('a trend is told per 30 days, past a wild value, and not of a few days', () => {
    const rising = Array.from({ length: 40 }, (_, day) => ({ atMs: day * DAY_MS, value: 10 + day * 0.1 }));
    const wild = rising.with(7, { atMs: 7 * DAY_MS, value: 400 });
    expect(trendOf(wild)?.perMonth).toBeCloseTo(3, 1);
    expect(trendOf(rising.slice(0, 9))).toBeNull();
    expect(trendOf(rising.slice(0, 5))).toBeNull();
    const many = Array.from({ length: 1000 }, (_, index) => ({ atMs: index * 0.09 * DAY_MS, value: 5 - index * 0.09 * 0.2 }));
    expect(trendOf(many)?.perMonth).toBeCloseTo(-6, 6);
  });

  it('few values are drawn towards what is known of all, many hardly; where groups do not differ, all the way', () => {
    const many = Array.from({ length: 60 }, (_, index) => 20 + (index % 5));
    const others = Array.from({ length: 60 }, (_, index) => 10 + (index % 5));
    const few = [29, 31];
    const [a = 0, b = 0, c = 0] = shrunkMedians([many, others, few]);
    expect(a).toBeGreaterThan(21.8);
    expect(a).toBeLessThanOrEqual(22);
    expect(b).toBeGreaterThanOrEqual(12);
    expect(b).toBeLessThan(12.3);
    expect(c).toBeLessThan(30);
    expect(30 - c).toBeGreaterThan(22 - a);
    const same = shrunkMedians([
      [8, 10, 12, 9, 11],
      [9, 11, 10, 8, 12],
    ]);
    expect(same).toEqual([10, 10]);
    // One group alone stands where it is; one value among none that vary goes by n/(n + 5).
    expect(shrunkMedians([[4, 5, 6]])).toEqual([5]);
    expect(shrunkMedians([[4], [10]])[0]).toBeCloseTo(7 - 3 / 6, 9);
  });

  it('is the normal–normal estimate, reckoned once more by hand', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 3, maxLength: 12 }), { minLength: 2, maxLength: 6 }),
        (groups) => {
          const all = median(groups.flat()) ?? 0;
          const mad = (group: readonly number[]): number => {
            const middle = median(group) ?? 0;
            return median(group.map((value) => Math.abs(value - middle))) ?? 0;
          };
          const freedom = groups.reduce((sum, group) => sum + group.length - 1, 0);
          const within = groups.reduce((sum, group) => sum + (group.length - 1) * (1.4826 * mad(group)) ** 2, 0) / freedom;
          if (within === 0) return;
          const noise = groups.map((group) => ((Math.PI / 2) * within) / group.length);
          const about = groups.map((group) => (median(group) ?? 0) - all);
          const between = Math.max(
            0,
            about.reduce((sum, one) => sum + one * one, 0) / (groups.length - 1) - noise.reduce((sum, one) => sum + one, 0) / groups.length,
          );
          const expected = about.map((one, index) => all + (one * between) / (between + (noise[index] ?? 0)));
          shrunkMedians(groups).forEach((found, index) => expect(found).toBeCloseTo(expected[index] ?? Number.NaN, 9));
        },
      ),
    );
  });
});

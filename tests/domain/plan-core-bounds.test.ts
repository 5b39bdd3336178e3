import { describe, expect, it } from 'vitest';
import { lowerBound } from '../../shared/plan/core/lower-bounds.ts';
import { precedenceGraph } from '../../shared/plan/core/precedence-graph.ts';
import { refutedBound } from '../../shared/plan/core/refuted-bound.ts';
import { assert } from '../../shared/result.ts';
import { FT06, jobShop } from './support/job-shop.ts';
import { leastMakespan } from './support/least-makespan.ts';
import { randomInstance, type Shape } from './support/random-instance.ts';

const TINY: Shape = { activities: 5, resources: 2, longest: 4, capacity: 4 };
/** Longer than any of the tiny instances can take. */
const LONGEST = 40;

describe('what no makespan can be below', () => {
  it.each([false, true])('A10 is never above the least makespan, and often it (calendars: %s)', (hasCalendars) => {
    let [met, metByRefuting] = [0, 0];
    for (let seed = 0; seed < 20; seed += 1) {
      const instance = randomInstance(seed, { ...TINY, hasCalendars });
      const graph = precedenceGraph(instance);
      assert(graph !== null, 'no circle');
      const least = leastMakespan(instance, LONGEST) ?? Infinity;
      const [quick, refuted] = [lowerBound(instance, graph), refutedBound(instance, 0, LONGEST)];
      expect(quick, `seed ${seed}`).toBeLessThanOrEqual(least);
      expect(refuted, `seed ${seed}`).toBeLessThanOrEqual(least);
      if (quick === least) met += 1;
      if (refuted === least) metByRefuting += 1;
    }
    expect(met).toBeGreaterThan(0);
    expect(metByRefuting).toBeGreaterThan(14);
  });

  it('A10 is at least the longest job and the busiest machine of ft06, and not above 55', () => {
    const instance = jobShop(FT06);
    const graph = precedenceGraph(instance);
    assert(graph !== null, 'no circle');
    const busiest = Math.max(
      ...instance.demands.map((needs) => needs.reduce((sum, need, activity) => sum + need * (instance.durations[activity] ?? 0), 0)),
    );
    const bound = lowerBound(instance, graph);
    const longestJob = Math.max(...jobTimes(FT06));
    expect(bound).toBeGreaterThanOrEqual(Math.max(busiest, longestJob));
    expect(refutedBound(instance, bound, 99)).toBeLessThanOrEqual(55);
    expect(refutedBound(instance, bound, 99)).toBeGreaterThanOrEqual(bound);
  });
});

function jobTimes(text: string): readonly number[] {
  return text
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/u).map(Number))
    .map((numbers) => numbers.reduce((sum, number, index) => sum + (index % 2 === 1 ? number : 0), 0));
}

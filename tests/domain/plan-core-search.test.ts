import { describe, expect, it } from 'vitest';
import type { Instance } from '../../shared/plan/core/instance.ts';
import { solvePrecedence } from '../../shared/plan/core/precedence-search.ts';
import { leastMakespan } from './support/least-makespan.ts';
import { randomInstance, type Shape } from './support/random-instance.ts';
import { scheduleFaults } from './support/schedule-faults.ts';

const TINY: Shape = { activities: 5, resources: 2, longest: 4, capacity: 4 };
const LARGE: Shape = { activities: 40, resources: 4, longest: 10, capacity: 20 };
/** Longer than any of the tiny instances can take. */
const LONGEST = 40;
const BUDGET = { schedules: 60, seed: 1 };

const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, seed) => seed);

describe('the search over orders', () => {
  it('A1 finds the least makespan of every tiny instance, and claims proof only where that is it', () => {
    let proved = 0;
    for (const seed of seeds(40)) {
      const instance = randomInstance(seed, TINY);
      const { makespan, starts, isProvedOptimal, isProvedInfeasible } = solvePrecedence(instance, BUDGET);
      expect(makespan, `seed ${seed}`).toBe(leastMakespan(instance, LONGEST));
      expect(scheduleFaults(instance, starts ?? []), `seed ${seed}`).toEqual([]);
      expect(isProvedInfeasible).toBe(false);
      if (isProvedOptimal) proved += 1;
    }
    expect(proved).toBeGreaterThan(10);
  });

  it('A2 keeps to calendars, and finds the least makespan with them too', () => {
    for (const seed of seeds(40)) {
      const instance = randomInstance(seed, { ...TINY, hasCalendars: true });
      const { makespan, starts } = solvePrecedence(instance, BUDGET);
      expect(scheduleFaults(instance, starts ?? []), `seed ${seed}`).toEqual([]);
      expect(makespan, `seed ${seed}`).toBe(leastMakespan(instance, LONGEST));
    }
  });

  it('A3 more of a resource never makes the best longer', () => {
    for (const seed of seeds(40)) {
      const instance = randomInstance(seed, TINY);
      const roomier = { ...instance, capacities: instance.capacities.map((capacity, resource) => capacity + ((seed + resource) % 2)) };
      const [own, more] = [solvePrecedence(instance, BUDGET).makespan, solvePrecedence(roomier, BUDGET).makespan];
      // Both are least (by enumeration), so this holds of the planner and not by luck.
      expect([own, more]).toEqual([leastMakespan(instance, LONGEST), leastMakespan(roomier, LONGEST)]);
      expect(more ?? Infinity).toBeLessThanOrEqual(own ?? 0);
    }
  });

  it('A4 every schedule of a larger instance is one, its makespan is when its last activity starts', () => {
    for (const seed of seeds(12)) {
      const instance = randomInstance(seed, { ...LARGE, hasCalendars: seed % 2 === 1 });
      const { makespan, starts } = solvePrecedence(instance, { schedules: 400, seed });
      expect(scheduleFaults(instance, starts ?? []), `seed ${seed}`).toEqual([]);
      expect(starts?.at(-1)).toBe(makespan);
      const ends = instance.durations.map((duration, activity) => duration + (starts?.[activity] ?? 0));
      expect(Math.max(...ends)).toBe(makespan);
    }
  });

  it('A5 never makes more schedules than it may, and spends them all where nothing is proved', () => {
    const instance = randomInstance(3, LARGE);
    for (const schedules of [1, 2, 3, 4, 5, 11, 50, 99, 1_000]) {
      const outcome = solvePrecedence(instance, { schedules, seed: 5 });
      expect(outcome.isProvedOptimal).toBe(false);
      expect(outcome.schedules).toBe(schedules);
      expect(scheduleFaults(instance, outcome.starts ?? [])).toEqual([]);
    }
    for (const seed of seeds(12)) {
      const calendars = randomInstance(seed, { ...LARGE, hasCalendars: true });
      expect(solvePrecedence(calendars, { schedules: 77, seed }).schedules).toBeLessThanOrEqual(77);
    }
  });

  it('A6 the same seed and budget give the same schedule; more schedules help', () => {
    const instance = randomInstance(3, LARGE);
    const solved = (schedules: number, seed: number) => solvePrecedence(instance, { schedules, seed });
    expect(solved(600, 8)).toEqual(solved(600, 8));
    expect(solved(600, 8).starts).not.toEqual(solved(600, 9).starts);
    expect(solved(3_000, 8).makespan ?? Infinity).toBeLessThan(solved(1, 8).makespan ?? 0);
  });

  it('A7 what cannot be is proved so, before any schedule is made', () => {
    const fine = randomInstance(1, { ...TINY, hasCalendars: true });
    const least = (fine.demands[1] ?? []).findIndex((need, activity) => need > 0 && (fine.durations[activity] ?? 0) > 0);
    const impossible: Instance[] = [
      { ...fine, arcs: [...fine.arcs, { from: 6, to: 0, lag: 0 }] },
      { ...fine, capacities: Int32Array.of(0, 0), calendars: [null, null] },
      { ...fine, calendars: [null, [{ from: 0, capacity: 0 }]] },
      // Open, but not for as long as it takes.
      {
        ...fine,
        durations: fine.durations.map((duration, activity) => (activity === least ? 9 : duration)),
        calendars: [null, openUntil(8)],
      },
    ];
    expect(least).toBeGreaterThan(0);
    for (const instance of impossible) {
      expect(solvePrecedence(instance, BUDGET)).toMatchObject({ starts: null, makespan: null, schedules: 0, isProvedInfeasible: true });
    }
  });

  it('A8 what does not fit before a resource is gone for good is not found, and not called impossible unless proved', () => {
    const instance: Instance = {
      durations: Int32Array.of(0, 3, 3, 0),
      demands: [Int32Array.of(0, 1, 1, 0)],
      capacities: Int32Array.of(1),
      arcs: [1, 2].flatMap((activity) => [
        { from: 0, to: activity, lag: 0 },
        { from: activity, to: 3, lag: 3 },
      ]),
      calendars: [openUntil(5)],
    };
    expect(solvePrecedence(instance, BUDGET)).toEqual({
      starts: null,
      makespan: null,
      schedules: BUDGET.schedules,
      isProvedInfeasible: false,
      isProvedOptimal: false,
    });
    expect(solvePrecedence({ ...instance, calendars: [openUntil(6)] }, BUDGET)).toMatchObject({ makespan: 6, isProvedOptimal: true });
  });

  it('A9 large demands and capacities make no difference to what is found', () => {
    for (const seed of seeds(20)) {
      const instance = randomInstance(seed, { ...LARGE, resources: 3 });
      // A thousand times the amounts: more bits than one word of the profile has.
      const wide: Instance = {
        ...instance,
        demands: instance.demands.map((needs) => needs.map((need) => need * 1_000)),
        capacities: instance.capacities.map((capacity) => capacity * 1_000),
      };
      // The first sample, and that moved latest and earliest.
      const budget = { schedules: 3, seed };
      expect(solvePrecedence(wide, budget)).toEqual(solvePrecedence(instance, budget));
    }
  });

  it('A9 what is too long or too much to be planned is refused, not tried', () => {
    const fine = randomInstance(1, TINY);
    expect(() => solvePrecedence({ ...fine, durations: fine.durations.map((duration) => duration * 10_000_000) }, BUDGET)).toThrow(
      RangeError,
    );
    expect(() => solvePrecedence({ ...fine, capacities: Int32Array.of(2 ** 31 - 1, 1) }, BUDGET)).toThrow(RangeError);
  });
});

function openUntil(instant: number): readonly { readonly from: number; readonly capacity: number }[] {
  return [{ from: instant, capacity: 0 }];
}

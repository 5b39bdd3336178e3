import { describe, expect, it } from 'vitest';
import type { Arc, Instance } from '../../shared/plan/core/instance.ts';
import { solveWithLags } from '../../shared/plan/core/lag-search.ts';
import { leastWithLags, surelyBy } from './support/all-schedules.ts';
import { randomLags, type LagShape } from './support/random-lags.ts';
import { scheduleFaults } from './support/schedule-faults.ts';

const TINY: LagShape = { activities: 4, resources: 2, longest: 3, capacity: 3, maximums: 3, slack: 3 };
const LARGE: LagShape = { activities: 18, resources: 3, longest: 8, capacity: 6, maximums: 4, slack: 12 };
const BUDGET = { schedules: 400, seed: 1 };

const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index + 1);

/** Activities that take so long and need so much of one resource, bound to the first and the last and as told. */
function small(durations: readonly number[], needs: readonly number[], capacity: number, lags: readonly Arc[]): Instance {
  const last = durations.length + 1;
  return {
    durations: Int32Array.of(0, ...durations, 0),
    demands: [Int32Array.of(0, ...needs, 0)],
    capacities: Int32Array.of(capacity),
    arcs: [
      ...durations.flatMap((duration, index) => [
        { from: 0, to: index + 1, lag: 0 },
        { from: index + 1, to: last, lag: duration },
      ]),
      ...lags,
    ],
  };
}

/** The second starts from `least` to `most` after the first. */
const within = (first: number, second: number, least: number, most: number): readonly Arc[] => [
  { from: first, to: second, lag: least },
  { from: second, to: first, lag: -most },
];

describe('planning with minimum and maximum lags', () => {
  it.each([false, true])('A15 what is found keeps every lag and never asks for more than there is (calendars: %s)', (hasCalendars) => {
    let found = 0;
    for (const seed of seeds(7)) {
      const instance = randomLags(seed, { ...LARGE, hasCalendars });
      const { starts, makespan } = solveWithLags(instance, { schedules: 160, seed });
      if (starts === null) continue;
      found += 1;
      expect(scheduleFaults(instance, starts), `seed ${seed}`).toEqual([]);
      expect(makespan).toBe(starts.at(-1));
      for (const [activity, duration] of instance.durations.entries())
        expect((starts[activity] ?? 0) + duration).toBeLessThanOrEqual(makespan ?? 0);
    }
    expect(found).toBeGreaterThan(3);
  });

  it.each([false, true])(
    'A16 tiny instances: as trying all starts finds, and proved, with and without a schedule (calendars: %s)',
    (hasCalendars) => {
      let [feasible, infeasible] = [0, 0];
      for (const seed of seeds(60)) {
        const instance = randomLags(seed, { ...TINY, hasCalendars });
        const least = leastWithLags(instance, surelyBy(instance));
        const outcome = solveWithLags(instance, { schedules: 400, seed });
        expect(outcome, `seed ${seed}`).toMatchObject({
          makespan: least,
          isProvedInfeasible: least === null,
          isProvedOptimal: least !== null,
        });
        if (least === null) infeasible += 1;
        else feasible += 1;
      }
      expect(feasible).toBeGreaterThan(20);
      expect(infeasible).toBeGreaterThan(5);
    },
  );

  it.each<[string, Instance]>([
    [
      'a cycle of lags',
      small([2, 2], [0, 0], 1, [
        { from: 1, to: 2, lag: 4 },
        { from: 2, to: 1, lag: -3 },
      ]),
    ],
    ['one that needs more than there is', small([2], [2], 1, [])],
    ['two that have to overlap and cannot', small([4, 4], [1, 1], 1, within(1, 2, -3, 3))],
    [
      'three that have to overlap and do not fit',
      small([4, 4, 4], [1, 1, 1], 2, [...within(1, 2, -3, 3), ...within(2, 3, -3, 3), ...within(1, 3, -3, 3)]),
    ],
    [
      'more work than there is time between two',
      small([1, 5, 5, 1], [0, 1, 1, 0], 1, [
        ...within(1, 4, 0, 9),
        { from: 1, to: 2, lag: 0 },
        { from: 1, to: 3, lag: 0 },
        { from: 2, to: 4, lag: 5 },
        { from: 3, to: 4, lag: 5 },
      ]),
    ],
  ])('A17 proves that there is no schedule, before any is made: %s', (_, instance) => {
    expect(solveWithLags(instance, BUDGET)).toEqual({
      starts: null,
      makespan: null,
      schedules: 0,
      isProvedInfeasible: true,
      isProvedOptimal: false,
    });
  });

  it('A17 four that have to overlap, of which any three fit, are proved not to by the tree, and never taken for a schedule', () => {
    const pairs = [1, 2, 3, 4].flatMap((one) => [1, 2, 3, 4].filter((other) => other > one).map((other) => within(one, other, -3, 3)));
    const crowd = (capacity: number): Instance => small([4, 4, 4, 4], [1, 1, 1, 1], capacity, pairs.flat());
    expect(solveWithLags(crowd(3), BUDGET)).toMatchObject({ starts: null, isProvedInfeasible: true });
    expect(solveWithLags(crowd(4), BUDGET)).toMatchObject({ makespan: 4, isProvedOptimal: true });
  });

  it('A18 never makes more attempts than it may, and spends them all where nothing is proved', () => {
    let [open, openToTheEnd] = [0, 0];
    for (const seed of seeds(4)) {
      const instance = randomLags(seed, LARGE);
      for (const schedules of [0, 1, 2, 60, 101, 102, 103, 150, 260]) {
        const outcome = solveWithLags(instance, { schedules, seed });
        const isProved = outcome.isProvedInfeasible || outcome.isProvedOptimal;
        expect(outcome.schedules).toBeLessThanOrEqual(schedules);
        if (isProved) continue;
        open += 1;
        if (schedules === 260) openToTheEnd += 1;
        expect(outcome.schedules).toBe(schedules);
      }
    }
    expect(open).toBeGreaterThan(3);
    // A tree that was cut off proves nothing.
    expect(openToTheEnd).toBeGreaterThan(0);
  });

  it('A18 stops as soon as nothing earlier can be', () => {
    const free = small([2, 3], [1, 1], 2, within(1, 2, 1, 4));
    expect(solveWithLags(free, BUDGET)).toMatchObject({ makespan: 4, schedules: 1, isProvedOptimal: true });
  });

  it('A19 the same seed and budget give the same outcome; a larger budget begins as a smaller one does', () => {
    for (const seed of seeds(2)) {
      const instance = randomLags(seed, LARGE);
      const solved = (schedules: number) => solveWithLags(instance, { schedules, seed });
      expect(solved(300)).toEqual(solved(300));
      expect(solved(300).makespan ?? Infinity).toBeLessThanOrEqual(solved(30).makespan ?? Infinity);
    }
  });

  it('A22 waits until a resource is there again, or is done before it is gone', () => {
    const instance = {
      ...small([3, 3], [1, 1], 1, []),
      calendars: [
        [
          { from: 4, capacity: 0 },
          { from: 6, capacity: 1 },
        ],
      ],
    };
    expect(solveWithLags(instance, BUDGET)).toMatchObject({ makespan: 9, isProvedOptimal: true });
    const bound = { ...instance, arcs: [...instance.arcs, ...within(1, 2, 0, 5)] };
    expect(solveWithLags(bound, BUDGET)).toMatchObject({ makespan: 9, isProvedOptimal: true });
    // When the second can start, at 6, the first would have to start at 2 at the earliest, and not end in time: both wait.
    const tight = { ...instance, arcs: [...instance.arcs, ...within(1, 2, 0, 4)] };
    expect(solveWithLags(tight, BUDGET)).toMatchObject({ makespan: 12, isProvedOptimal: true });
  });

  it('A22 what cannot be done before a resource is gone for good is proved impossible', () => {
    const until = (from: number) => ({ ...small([3, 3], [1, 1], 1, []), calendars: [[{ from, capacity: 0 }]] });
    expect(solveWithLags(until(5), BUDGET)).toMatchObject({ starts: null, isProvedInfeasible: true });
    expect(solveWithLags(until(6), BUDGET)).toMatchObject({ makespan: 6, isProvedOptimal: true });
  });
});

import { describe, expect, it } from 'vitest';
import type { Arc } from '../../shared/plan/core/instance.ts';
import { LagGeneration } from '../../shared/plan/core/lag-generation.ts';
import { lagProblemOf } from '../../shared/plan/core/lag-problem.ts';
import { LagPropagation } from '../../shared/plan/core/lag-propagation.ts';
import { LagTree } from '../../shared/plan/core/lag-tree.ts';
import { orderTriples } from '../../shared/plan/core/ordering-propagation.ts';
import {
  closeLags,
  CONTRADICTION,
  copyOf,
  HELD,
  MOST_LENGTH,
  NO_PATH,
  TIGHTENED,
  tighten,
} from '../../shared/plan/core/temporal-closure.ts';
import { assert } from '../../shared/result.ts';
import { Random } from '../simulation/support/random.ts';
import { allSchedules, leastWithLags, surelyBy } from './support/all-schedules.ts';
import { randomLags, type LagShape } from './support/random-lags.ts';
import { scheduleFaults } from './support/schedule-faults.ts';

/** One resource of which two often fit together, and three seldom. */
const TINY: LagShape = { activities: 4, resources: 1, longest: 4, capacity: 5, maximums: 3, slack: 4 };
const TIGHT: LagShape = { activities: 5, resources: 2, longest: 3, capacity: 4, maximums: 4, slack: 2 };

/** Longest paths from one activity by relaxing every arc `size` times (Bellman and Ford); null where a cycle is longer than 0. */
function longestFrom(size: number, arcs: readonly Arc[], origin: number): readonly number[] | null {
  const lengths = Array.from({ length: size }, (_, activity) => (activity === origin ? 0 : -Infinity));
  const relax = (): boolean => {
    let hasGrown = false;
    for (const { from, to, lag } of arcs) {
      const length = (lengths[from] ?? 0) + lag;
      if (length > (lengths[to] ?? 0)) [lengths[to], hasGrown] = [length, true];
    }
    return hasGrown;
  };
  for (let round = 0; round < size; round += 1) if (!relax()) return lengths;
  return null;
}

function expectedLengths(size: number, arcs: readonly Arc[]): readonly number[] | null {
  const rows = Array.from({ length: size }, (_, origin) => longestFrom(size, arcs, origin));
  return rows.includes(null) ? null : rows.flatMap((row) => (row ?? []).map((length) => (length === -Infinity ? NO_PATH : length)));
}

describe('the closure of lags', () => {
  it('A20 holds all longest paths, at first and after each further lag, and refuses exactly what makes a cycle longer than 0', () => {
    const seen = { [HELD]: 0, [TIGHTENED]: 0, [CONTRADICTION]: 0 };
    for (let seed = 0; seed < 25; seed += 1) {
      const random = new Random(seed, 'closure');
      const size = 6;
      const draw = (): Arc => ({ from: random.whole(0, size - 1), to: random.whole(0, size - 1), lag: random.whole(-9, 4) });
      let arcs: readonly Arc[] = Array.from({ length: 5 }, draw);
      const closure = closeLags(size, arcs);
      const expected = expectedLengths(size, arcs);
      expect(closure === null).toBe(expected === null);
      if (closure === null) continue;
      for (let added = 0; added < 12; added += 1) {
        const arc = draw();
        const next = expectedLengths(size, [...arcs, arc]);
        const before = [...closure.lengths];
        closure.touched.fill(0);
        const done = tighten(closure, arc.from, arc.to, arc.lag);
        seen[done] += 1;
        if (next !== null) arcs = [...arcs, arc];
        expect(done === CONTRADICTION, `seed ${seed}`).toBe(next === null);
        expect([...closure.lengths]).toEqual(next ?? before);
        expect(done === TIGHTENED).toBe(next !== null && next.some((length, entry) => length !== before[entry]));
        const grown = [...closure.lengths.keys()].filter((entry) => closure.lengths[entry] !== before[entry]);
        const ends = new Set(grown.flatMap((entry) => [Math.floor(entry / size), entry % size]));
        const touched = [...closure.touched.keys()].filter((activity) => closure.touched[activity] === 1);
        expect(new Set(touched)).toEqual(ends);
      }
    }
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(20);
  });

  it('A20 refuses lags that are too long to add up', () => {
    expect(closeLags(2, [{ from: 0, to: 1, lag: MOST_LENGTH }])).not.toBeNull();
    expect(() => closeLags(2, [{ from: 0, to: 1, lag: MOST_LENGTH + 1 }])).toThrow(RangeError);
  });
});

describe('what the resources imply', () => {
  it.each([false, true])('A21 cuts off no schedule, and narrows what the lags alone allow (calendars: %s)', (hasCalendars) => {
    const cutOff: string[] = [];
    let [checked, narrowed] = [0, 0];
    for (let seed = 0; seed < 30; seed += 1) {
      const instance = randomLags(seed, { ...TINY, hasCalendars });
      const least = leastWithLags(instance, surelyBy(instance));
      const problem = lagProblemOf(instance);
      const closure = closeLags(problem.size, problem.arcs);
      if (least === null || closure === null) continue;
      tighten(closure, problem.last, 0, -(least + 1));
      const loose = copyOf(closure);
      expect(new LagPropagation(problem).propagate(closure), `seed ${seed}`).toBe(true);
      if (closure.lengths.some((length, entry) => length > (loose.lengths[entry] ?? 0))) narrowed += 1;
      for (const starts of allSchedules(instance, least + 1)) {
        checked += 1;
        const isKept = starts.every((from, one) =>
          starts.every((to, other) => to - from >= (closure.lengths[one * problem.size + other] ?? 0)),
        );
        if (!isKept) cutOff.push(`seed ${seed}: ${starts.join()}`);
      }
    }
    expect(cutOff).toEqual([]);
    expect(checked).toBeGreaterThan(100);
    expect(narrowed).toBeGreaterThan(5);
  });
});

describe('what certainly runs', () => {
  // Two that need 1 each are fixed from 4 to 7, and any two of the three fit together; the third takes 2 and needs 2 of 3.
  it.each([
    ['the latest start', [0, 5], [0, 2]],
    ['the earliest start', [3, 11], [7, 11]],
    ['nothing that is far enough', [0, 9], [0, 9]],
  ])('A21 pushes %s of a third just past two that leave too little', (_, [from = 0, to = 0], expected) => {
    const fixed = (activity: number): readonly Arc[] => [
      { from: 0, to: activity, lag: 4 },
      { from: activity, to: 0, lag: -4 },
    ];
    const problem = lagProblemOf({
      durations: Int32Array.of(0, 3, 3, 2, 0),
      demands: [Int32Array.of(0, 1, 1, 2, 0)],
      capacities: Int32Array.of(3),
      arcs: [...fixed(1), ...fixed(2), { from: 0, to: 3, lag: from }, { from: 3, to: 0, lag: -to }],
    });
    const closure = closeLags(problem.size, problem.arcs);
    assert(closure !== null, 'no cycle');
    tighten(closure, problem.last, 0, -20);
    expect(new LagPropagation(problem).propagate(closure)).toBe(true);
    expect([closure.lengths[3], -(closure.lengths[3 * problem.size] ?? 0)]).toEqual(expected);
  });
});

describe('three that do not fit together', () => {
  it.each([
    // The first two have to overlap, and so have the last two: the third cannot begin before the first has ended.
    [[within(1, 2, 0, 3), within(2, 3, 0, 3), within(1, 3, 0, 9)], TIGHTENED, 4],
    // Only the first two have to.
    [[within(1, 2, 0, 3), within(1, 3, 0, 9)], HELD, 0],
  ])('A21 are ordered where two of the pairs have to overlap, and only there', (lags, done, least) => {
    const problem = lagProblemOf({
      durations: Int32Array.of(0, 4, 4, 1, 0),
      demands: [Int32Array.of(0, 1, 1, 1, 0)],
      capacities: Int32Array.of(2),
      arcs: lags.flat(),
    });
    const closure = closeLags(problem.size, problem.arcs);
    assert(closure !== null, 'no cycle');
    tighten(closure, problem.last, 0, -20);
    expect(orderTriples(closure, problem)).toBe(done);
    expect(closure.lengths[problem.size + 3]).toBe(least);
    expect(new LagPropagation(problem).propagate(closure)).toBe(true);
    expect(closure.lengths[problem.size + 3]).toBe(least);
  });
});

/** The second starts from `least` to `most` after the first. */
function within(first: number, second: number, least: number, most: number): readonly Arc[] {
  return [
    { from: first, to: second, lag: least },
    { from: second, to: first, lag: -most },
  ];
}

describe('a tree', () => {
  it('A16 that is searched to its end has found the least makespan, or that there is no schedule', () => {
    let [nodes, decided] = [0, 0];
    for (let seed = 0; seed < 100; seed += 1) {
      const instance = randomLags(seed, TIGHT);
      const problem = lagProblemOf(instance);
      const root = closeLags(problem.size, problem.arcs);
      if (root === null) continue;
      tighten(root, problem.last, 0, -problem.horizon);
      const propagation = new LagPropagation(problem);
      if (!propagation.propagate(root)) continue;
      const limits = { nodes: 2_000, latestEnd: problem.horizon };
      let best: number | null = null;
      const isDone = new LagTree(problem, propagation).search(
        root,
        limits,
        () => 0,
        (starts) => {
          expect(scheduleFaults(instance, starts)).toEqual([]);
          best = starts[problem.last] ?? 0;
          limits.latestEnd = best - 1;
        },
      );
      expect(isDone).toBe(true);
      expect(best, `seed ${seed}`).toBe(leastWithLags(instance, surelyBy(instance)));
      nodes += 2_000 - limits.nodes;
      if (limits.nodes < 1_996) decided += 1;
    }
    expect(nodes).toBeGreaterThan(100);
    expect(decided).toBeGreaterThan(5);
  });
});

describe('putting one after the other', () => {
  it('A24 takes out again what a maximum lag shows to be too early', () => {
    // The first may start at once, but what has to follow it within 2 finds the resource taken until 5.
    const instance = {
      durations: Int32Array.of(0, 1, 3, 5, 0),
      demands: [Int32Array.of(0, 0, 1, 1, 0)],
      capacities: Int32Array.of(1),
      arcs: [
        { from: 1, to: 2, lag: 1 },
        { from: 2, to: 1, lag: -2 },
      ],
    };
    const problem = lagProblemOf(instance);
    const closure = closeLags(problem.size, problem.arcs);
    assert(closure !== null, 'no cycle');
    tighten(closure, problem.last, 0, -problem.horizon);
    const starts = new Int32Array(problem.size);
    // The long one first, then the first of the two that are bound.
    expect(new LagGeneration(problem).attempt(closure, Float64Array.of(0, 2, 3, 1, 4), starts)).toBe(true);
    expect([...starts]).toEqual([0, 3, 5, 0, 8]);
    expect(scheduleFaults(instance, starts)).toEqual([]);
  });
});

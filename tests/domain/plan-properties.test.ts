import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Activity, DayProblem, DaySolution } from '../../shared/plan/day/problem.ts';
import { repairDay } from '../../shared/plan/day/repair-day.ts';
import { replanDay } from '../../shared/plan/day/replan-day.ts';
import { solveDay } from '../../shared/plan/day/solve-day.ts';
import { Random } from '../simulation/support/random.ts';
import { anyDay, atNow, following } from '../support/plan-any-day.ts';
import { costFaults, costOf } from '../support/plan-cost.ts';
import { disturbDays } from '../support/plan-disturbances.ts';
import { faultsOf } from '../support/plan-validator.ts';

/** Fixed, so that a run that was green is green again; another seed is other days, and any may be tried. */
const SEED = 20_260_307;
const DAYS = { seed: SEED, numRuns: 15 };
const SCHEDULES = 30;
const CLOSE = 1e-6;

const days = fc.tuple(fc.integer({ min: 1, max: 1_000_000 }), fc.integer({ min: 1, max: 8 }));

/** A day with its plan, as far as a short search finds one. */
function planned(seed: number, batchCount: number): { readonly problem: DayProblem; readonly solution: DaySolution } {
  const problem = anyDay(seed, batchCount);
  return { problem, solution: solveDay(problem, { schedules: SCHEDULES, seed }) };
}

function everythingWrong(problem: DayProblem, solution: DaySolution): string[] {
  return [...faultsOf(problem, solution), ...costFaults(problem, solution)];
}

describe('X5 every plan is valid', () => {
  test('of any day, made anew: what never may be broken holds, and what is said of the rest is so', () => {
    fc.assert(
      fc.property(days, ([seed, batchCount]) => {
        const { problem, solution } = planned(seed, batchCount);
        expect(everythingWrong(problem, solution)).toEqual([]);
        expect(solution.schedules).toBeLessThanOrEqual(SCHEDULES);
      }),
      DAYS,
    );
  });

  test('the same problem, budget and seed give the same plan, and each better one on the way is valid and better', () => {
    fc.assert(
      fc.property(days, ([seed, batchCount]) => {
        const { problem, solution } = planned(seed, batchCount);
        const totals: number[] = [];
        const again = solveDay(problem, { schedules: SCHEDULES, seed }, (better) => {
          expect(everythingWrong(problem, better)).toEqual([]);
          totals.push(better.cost.total);
        });
        expect(again).toEqual(solution);
        expect(totals).toEqual([...totals].sort((a, b) => b - a));
        expect(totals.at(-1)).toBeCloseTo(solution.cost.total, 9);
      }),
      { ...DAYS, numRuns: 10 },
    );
  });
});

describe('X6 planning an undisturbed day again changes nothing', () => {
  test('at once, and at any instant of the day with what has begun by then', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: -600, max: 30_000 }), ([seed, batchCount], nowS) => {
        const { problem, solution } = planned(seed, batchCount);
        for (const same of [following(problem, solution), atNow(problem, solution, nowS)]) {
          const again = replanDay(same, solution, { schedules: SCHEDULES, seed });
          expect([...again.startsS]).toEqual([...solution.startsS]);
          expect([...again.options]).toEqual([...solution.options]);
          expect([...repairDay(same, solution).startsS]).toEqual([...solution.startsS]);
        }
      }),
      DAYS,
    );
  });

  test('an order that is moved is no such day: it is served where that can be', () => {
    const bake: Activity = {
      key: 'a',
      batch: 0,
      durationS: 600,
      releaseS: 0,
      fixedStartS: null,
      pinnedStartS: null,
      previousStartS: null,
      isToldAlready: false,
    };
    const wanted = (dueS: number): DayProblem => ({
      activities: [bake],
      lags: [],
      resources: [],
      choices: [],
      holds: [],
      goals: [{ key: 'g', activity: 0, edge: 'end', dueS, latePrice: 100, fresh: null, earlyPrice: 1, isFirst: false }],
      batchCount: 1,
    });
    const before = solveDay(wanted(7200), { schedules: 30, seed: 1 });
    expect([...before.startsS]).toEqual([6600]);
    const after = replanDay(following(wanted(3600), before), before, { schedules: 30, seed: 1 });
    expect(after.late).toEqual([]);
    expect(after.startsS[0]).toBeLessThanOrEqual(3000);
  });
});

describe('X7 a pin is kept, or named as broken', () => {
  test('whatever is pinned, the plan is valid and tells every pin that it does not keep', () => {
    fc.assert(
      fc.property(days, ([seed, batchCount]) => {
        const { problem, solution } = planned(seed, batchCount);
        const random = new Random(seed, 'pins');
        const pins = pinsOn(problem, () => (random.chance(0.2) ? random.whole(0, 20_000) : null));
        const again = replanDay(following(pins, solution), solution, { schedules: SCHEDULES, seed });
        expect(everythingWrong(following(pins, solution), again)).toEqual([]);
        const kept = pins.activities.map(({ pinnedStartS }, index) => pinnedStartS === null || pinnedStartS === again.startsS[index]);
        expect([...again.pinsBroken].sort((a, b) => a - b)).toEqual(kept.flatMap((isKept, index) => (isKept ? [] : [index])));
      }),
      DAYS,
    );
  });

  test('pinned to where it stands, every step stays there', () => {
    fc.assert(
      fc.property(days, ([seed, batchCount]) => {
        const { problem, solution } = planned(seed, batchCount);
        const pins = pinsOn(problem, (index) => solution.startsS[index] ?? null);
        const again = replanDay(following(pins, solution), solution, { schedules: SCHEDULES, seed });
        expect([...again.startsS]).toEqual([...solution.startsS]);
        expect(again.pinsBroken).toEqual([]);
      }),
      { ...DAYS, numRuns: 10 },
    );
  });

  test('a single step that has nothing in its way begins when it is pinned', () => {
    const single: Activity = {
      key: 'a',
      batch: 0,
      durationS: 600,
      releaseS: 0,
      fixedStartS: null,
      pinnedStartS: 4321,
      previousStartS: null,
      isToldAlready: false,
    };
    const problem: DayProblem = { activities: [single], lags: [], resources: [], choices: [], holds: [], goals: [], batchCount: 1 };
    expect([...solveDay(problem, { schedules: 20, seed: 1 }).startsS]).toEqual([4321]);
    const tooSoon = { ...problem, activities: [{ ...single, releaseS: 5000 }] };
    expect(solveDay(tooSoon, { schedules: 20, seed: 1 })).toMatchObject({ startsS: Int32Array.of(5000), pinsBroken: [0] });
  });
});

describe('X8 more room is never worse', () => {
  // The best plan of the wider day costs no more than that of the narrower one. As nobody proves here what is best, this is what is held to:
  // given the plan of the narrower day, the planner answers the wider one with a plan that costs no more than that plan does there.
  test.each<[name: string, widen: (problem: DayProblem) => DayProblem]>([
    [
      'more of every resource',
      (problem) => ({
        ...problem,
        resources: problem.resources.map((one) => ({
          ...one,
          capacity: one.capacity + 1,
          calendar: one.calendar?.map((step) => ({ ...step, capacity: step.capacity + 1 })) ?? null,
        })),
      }),
    ],
    ['nobody has a break', (problem) => ({ ...problem, resources: problem.resources.map((one) => ({ ...one, calendar: null })) })],
    ['no change-over and no heating', (problem) => ({ ...problem, resources: problem.resources.map((one) => ({ ...one, setupS: null })) })],
    ['everything may begin at once', (problem) => ({ ...problem, activities: problem.activities.map((one) => ({ ...one, releaseS: 0 })) })],
    ['doughs bear more', (problem) => ({ ...problem, lags: problem.lags.map((one) => ({ ...one, mostS: null })) })],
    ['wanted an hour later', (problem) => ({ ...problem, goals: problem.goals.map((one) => ({ ...one, dueS: one.dueS + 3600 })) })],
  ])('%s', (_name, widen) => {
    fc.assert(
      fc.property(days, ([seed, batchCount]) => {
        const { problem, solution } = planned(seed, batchCount);
        const wider = following(widen(problem), solution);
        const again = replanDay(wider, solution, { schedules: SCHEDULES, seed });
        expect(faultsOf(wider, solution), 'the plan of the narrower day is one of the wider').toEqual([]);
        expect(everythingWrong(wider, again)).toEqual([]);
        expect(again.cost.total).toBeLessThanOrEqual(costOf(wider, solution).total + CLOSE);
      }),
      { ...DAYS, numRuns: 6 },
    );
  });
});

describe('X9 one disturbance after another', () => {
  test('after each of 300 the plan is valid, what has begun stands where it stands, and two thirds of the rest stay', () => {
    const outcome = disturbDays({ first: solveDay, again: replanDay }, { seed: SEED, count: 300, schedules: 8 });
    expect(outcome.faults).toEqual([]);
    expect(outcome.disturbances).toBe(300);
    expect(outcome.movedShare).toBeLessThan(1 / 3);
  });
});

function pinsOn(problem: DayProblem, pin: (index: number) => number | null): DayProblem {
  return {
    ...problem,
    activities: problem.activities.map((one, index) => ({ ...one, pinnedStartS: one.fixedStartS === null ? pin(index) : null })),
  };
}

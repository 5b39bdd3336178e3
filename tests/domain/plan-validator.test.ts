import { describe, expect, test } from 'vitest';
import type { DayProblem } from '../../shared/plan/day/problem.ts';
import { costFaults, costOf, type Said } from '../support/plan-cost.ts';
import { activity, dayOf, goal, hold, lag, resource } from '../support/plan-problem.ts';
import { faultsOf, offPin, overstayed } from '../support/plan-validator.ts';

/** The names of the faults of a schedule, each once. */
function names(problem: DayProblem, startsS: readonly number[], options: readonly number[] = []): string[] {
  return [...new Set(faultsOf(problem, { startsS, options }).map((fault) => fault.slice(0, fault.indexOf(':'))))];
}

describe('X1 what holds a schedule to its problem finds every planted fault, and none where there is none', () => {
  const two = [activity('a'), activity('b')];

  test.each<[name: string, problem: DayProblem, good: readonly number[], bad: readonly number[], fault: string]>([
    ['a start too many', dayOf({ activities: two }), [0, 0], [0, 0, 0], 'shape'],
    ['no whole second', dayOf({ activities: two }), [0, 0], [0, 0.5], 'shape'],
    ['no start at all', dayOf({ activities: two }), [0, 0], [0, Number.NaN], 'shape'],
    ['before its release', dayOf({ activities: [activity('a', { releaseS: 60 })] }), [60], [59], 'release'],
    ['begun and moved', dayOf({ activities: [activity('a', { fixedStartS: -60, releaseS: 0 })] }), [-60], [0], 'fixed'],
    ['too soon after the one before', dayOf({ activities: two, lags: [lag(0, 1, { minS: 300 })] }), [0, 900], [0, 899], 'minimum lag'],
    [
      'too soon, from start to end',
      dayOf({ activities: two, lags: [lag(0, 1, { fromEdge: 'start', toEdge: 'end', minS: 900 })] }),
      [0, 300],
      [0, 299],
      'minimum lag',
    ],
    [
      'two in one pair of hands',
      dayOf({ activities: two, resources: [resource('station')], holds: [hold(0), hold(1)] }),
      [0, 600],
      [0, 599],
      'capacity',
    ],
    [
      'three slots of two',
      dayOf({
        activities: two,
        resources: [resource('deck', { capacity: 2 })],
        holds: [hold(0), hold(1, { on: { resource: 0, amount: 2 } })],
      }),
      [0, 600],
      [0, 300],
      'capacity',
    ],
    [
      'over a break in the middle',
      dayOf({
        activities: [activity('a', { durationS: 1200 })],
        resources: [
          resource('station', {
            calendar: [
              { fromS: 3600, capacity: 0 },
              { fromS: 4500, capacity: 1 },
            ],
          }),
        ],
        holds: [hold(0)],
      }),
      [2400],
      [2401],
      'capacity',
    ],
    [
      'before anybody is there',
      dayOf({
        activities: [activity('a')],
        resources: [resource('station', { capacity: 0, calendar: [{ fromS: 600, capacity: 1 }] })],
        holds: [hold(0)],
      }),
      [600],
      [599],
      'capacity',
    ],
    [
      'a tin not yet washed',
      dayOf({ activities: two, resources: [resource('vessel')], holds: [hold(0, { afterS: 300 }), hold(1)] }),
      [0, 900],
      [0, 899],
      'capacity',
    ],
    [
      'held from the end of one to the start of another',
      dayOf({
        activities: [activity('a'), activity('b'), activity('c')],
        resources: [resource('restPlace')],
        holds: [hold(0, { fromEdge: 'end', to: 1, toEdge: 'start' }), hold(2)],
      }),
      [0, 1800, 0],
      [0, 1800, 1200],
      'capacity',
    ],
    [
      'a hold that runs backwards',
      dayOf({ activities: two, resources: [resource('restPlace')], holds: [hold(0, { fromEdge: 'end', to: 1, toEdge: 'start' })] }),
      [0, 600],
      [0, 500],
      'hold',
    ],
    [
      'two heats in one deck',
      decks(
        [0, 1],
        [
          [0, 0],
          [0, 0],
        ],
      ),
      [0, 600],
      [0, 599],
      'state',
    ],
    [
      'too hot a deck still',
      decks(
        [1, 0],
        [
          [0, 300],
          [900, 0],
        ],
      ),
      [0, 1500],
      [0, 1499],
      'set-up',
    ],
    [
      'not hot yet',
      decks(
        [0, 1],
        [
          [0, 300],
          [900, 0],
        ],
      ),
      [0, 900],
      [0, 899],
      'set-up',
    ],
    [
      'put in before one that stands later',
      decks(
        [1, 0],
        [
          [0, 300],
          [900, 0],
        ],
      ),
      [900, 0],
      [899, 0],
      'set-up',
    ],
    [
      'begun in another state than it stands in',
      decks(
        [1, 1],
        [
          [0, 300],
          [900, 0],
        ],
        0,
      ),
      [300, 300],
      [299, 300],
      'set-up',
    ],
  ])('%s', (_name, problem, good, bad, fault) => {
    expect(names(problem, good)).toEqual([]);
    expect(names(problem, bad)).toEqual([fault]);
  });

  test('a choice that does not exist, or is fixed to another', () => {
    const choice = {
      options: [
        { resource: 0, price: 0 },
        { resource: 1, price: 0 },
      ],
      fixedOption: null,
      previousOption: null,
    };
    const problem = dayOf({
      activities: [activity('a')],
      resources: [resource('mixer'), resource('mixer')],
      choices: [choice],
      holds: [hold(0, { on: { choice: 0, amounts: [1, 2] } })],
    });
    expect(names(problem, [0], [0])).toEqual([]);
    expect(names(problem, [0], [2])).toEqual(['option']);
    expect(names(problem, [0], [])).toEqual(['shape', 'option']);
    expect(names({ ...problem, choices: [{ ...choice, fixedOption: 1 }] }, [0], [0])).toEqual(['option']);
    expect(names(problem, [0], [1]), 'two asked of an option that has one').toEqual(['capacity']);
  });

  test('both sides of a gap count: what fits its neighbour before may not fit the one after', () => {
    const problem = decks(
      [0, 1, 0],
      [
        [0, 600],
        [600, 0],
      ],
    );
    expect(names(problem, [0, 1200, 2400])).toEqual([]);
    expect(names(problem, [0, 1200, 2399])).toEqual(['set-up']);
    expect(names(problem, [0, 1199, 2400])).toEqual(['set-up']);
  });

  test('what is begun is no fault by itself; what is put beside it is', () => {
    const begun = { fixedStartS: 0 };
    const problem = dayOf({
      activities: [activity('a', begun), activity('b', begun), activity('c')],
      lags: [lag(0, 1, { minS: 300 })],
      resources: [resource('station')],
      holds: [hold(0), hold(1), hold(2)],
    });
    expect(names(problem, [0, 0, 600])).toEqual([]);
    expect(names(problem, [0, 0, 300])).toEqual(['capacity']);
  });
});

/** Work of ten minutes each in one deck that takes all of them, in these states. */
function decks(states: readonly number[], setupS: readonly (readonly number[])[], stateAtFirst: number | null = null): DayProblem {
  return dayOf({
    activities: states.map((_, index) => activity(`bake ${index}`)),
    resources: [resource('deck', { capacity: 9, setupS, stateAtFirst, sharesOneState: true })],
    holds: states.map((state, index) => hold(index, { states: [state] })),
  });
}

describe('X2 what a solution says of itself is reckoned anew', () => {
  const problem = dayOf({
    activities: [activity('a', { pinnedStartS: 0 }), activity('b', { previousStartS: 1800 }), activity('c')],
    lags: [lag(0, 1, { mostS: 900, targetS: 600, awayPrice: 2, spoilPrice: 1000 })],
    resources: [resource('deck', { capacity: 2, idlePrice: 0.05 })],
    choices: [{ options: [{ resource: 0, price: 0.5 }], fixedOption: null, previousOption: null }],
    holds: [hold(0, { on: { choice: 0, amounts: [1] }, states: [0] }), hold(1, { states: [0] })],
    goals: [
      goal(1, 2400),
      goal(2, 7200, { earlyPrice: 0.02, fresh: { activity: 2, edge: 'end', mostS: 3600, price: 3 } }),
      goal(2, 0, { isFirst: true, latePrice: 200 }),
    ],
  });
  // By hand: the lag lasts 1560 s, 11 min over its most and 16 from its target; a is a minute off its pin; b ends 7 min late
  // and was moved by 7; c ends 10 min late for the order that comes first (and 500 a minute as a broken pin), is 110 min early
  // for the other and 50 too old for it; the deck idles for 26 min, the option costs a half.
  const startsS = Int32Array.of(60, 2220, 0);
  const truth: Said = {
    startsS,
    options: Int32Array.of(0),
    cost: {
      spoil: 11_000,
      pins: 500 + 5000,
      late: 700 + 2000,
      ripeness: 32,
      freshness: 150,
      calm: 2.2 + 0.5 + 1.3,
      moved: 3.5,
      total: 19_389.5,
    },
    spoiled: [{ lag: 0, byS: 660 }],
    late: [
      { goal: 0, byS: 420 },
      { goal: 2, byS: 600 },
    ],
    pinsBroken: [0],
  };

  test('the sums are those reckoned by hand', () => {
    expect(overstayed(problem, startsS)).toEqual(truth.spoiled);
    expect(offPin(problem, startsS)).toEqual(truth.pinsBroken);
    const cost = costOf(problem, truth);
    for (const name of Object.keys(truth.cost) as (keyof typeof cost)[]) expect(cost[name], name).toBeCloseTo(truth.cost[name], 9);
    expect(costFaults(problem, truth)).toEqual([]);
  });

  test('hands that are all busy for a stretch of half an hour cost more than twice as many half busy', () => {
    const work = dayOf({
      activities: [activity('a', { durationS: 1800 }), activity('b', { durationS: 1800 })],
      resources: [resource('station', { capacity: 2 })],
      holds: [hold(0), hold(1)],
    });
    expect(costOf(work, { startsS: [0, 0], options: [] }).calm).toBeCloseTo(1, 12);
    expect(costOf(work, { startsS: [0, 1800], options: [] }).calm).toBeCloseTo(2 * 0.25, 12);
    expect(costOf(work, { startsS: [-900, 3600], options: [] }).calm, 'half in one stretch, half in the next').toBeCloseTo(
      2 / 16 + 1 / 4,
      12,
    );
  });

  test.each<[name: string, lie: Partial<Said>, fault: string]>([
    ['a spoiled lag kept back', { spoiled: [] }, 'spoiled'],
    ['a spoiled lag made smaller', { spoiled: [{ lag: 0, byS: 60 }] }, 'spoiled'],
    ['a late goal kept back', { late: [{ goal: 0, byS: 420 }] }, 'late goals'],
    ['a pin called broken that is kept', { pinsBroken: [0, 1] }, 'pins broken'],
    ['spoil made cheap', { cost: { ...truth.cost, spoil: 0, total: truth.cost.total - 11_000 } }, 'cost of spoil'],
    ['pins made cheap', { cost: { ...truth.cost, pins: 0, total: truth.cost.total - 5500 } }, 'cost of pins'],
    ['lateness made cheap', { cost: { ...truth.cost, late: 700, total: truth.cost.total - 2000 } }, 'cost of late'],
    ['ripeness made dear', { cost: { ...truth.cost, ripeness: 64, total: truth.cost.total + 32 } }, 'cost of ripeness'],
    ['calm forgotten', { cost: { ...truth.cost, calm: 0, total: truth.cost.total - 4 } }, 'cost of freshness and calm'],
    ['moved for nothing', { cost: { ...truth.cost, moved: 0, total: truth.cost.total - 3.5 } }, 'cost of moved'],
    ['a total that is no sum', { cost: { ...truth.cost, total: 1 } }, 'total'],
  ])('%s is found', (_name, lie, fault) => {
    const found = costFaults(problem, { ...truth, ...lie });
    expect(found.map((one) => one.slice(0, one.indexOf(':')))).toEqual([fault]);
  });
});

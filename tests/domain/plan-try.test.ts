import { describe, expect, test } from 'vitest';
import { planDay } from '../../server/plan/jobs/planned-day.ts';
import type { BuiltDay } from '../../shared/plan/build/built-day.ts';
import { Random } from '../../shared/plan/core/random.ts';
import type { DaySolution } from '../../shared/plan/day/problem.ts';
import type { FloorState, StepLife } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { proposalAskSchema } from '../../shared/plan/plan-api.ts';
import { sampledDay } from '../../shared/plan/try/sampled-day.ts';
import { spreadsOf } from '../../shared/plan/try/spreads.ts';
import { tryDay } from '../../shared/plan/try/try-day.ts';
import type { Spread, TryResult } from '../../shared/plan/try/try-result.ts';
import { lateMinByOrder } from '../../shared/plan/why/troubles.ts';
import { assert } from '../../shared/result.ts';
import { idOf } from './support/ids.ts';
import { harbourState } from './support/plan-days.ts';
import { activity, after, at, builtDay, goal, problemOf, resource, solutionAt, takes } from './support/plain-day.ts';
import { emptyFloor, MINUTE_MS, NEXT_DATE, order, ordered } from './support/planned-house.ts';

const RUNS = 1_000;
const ORDER = idOf(51);
const NEXT = idOf(52);

/** Every kind spread by so much about so many times its length. */
function spreads(spread: number, mean = Math.sqrt(1 + spread ** 2)): readonly Spread[] {
  return (['hands', 'judged', 'rest', 'bake'] as const).map((kind) => ({ kind, mean, spread, learnedFrom: 0 }));
}

/** One piece of work of an hour, for an order that is due so many minutes after it begins. */
function oneJob(dueMin: number): { readonly built: BuiltDay; readonly solution: DaySolution } {
  const problem = problemOf({ activities: [activity('rye|||shape', 0, 60)], goals: [goal('rye', 0, dueMin)], batchCount: 1 });
  return { built: builtDay(problem, [ORDER], ['hands']), solution: solutionAt(problem, 0) };
}

function played(
  { built, solution }: { readonly built: BuiltDay; readonly solution: DaySolution },
  spread: readonly Spread[],
  seed = 1,
): TryResult {
  return tryDay(built, solution, { runs: RUNS, seed, spreads: spread });
}

const lateShare = (result: TryResult, orderId = ORDER): number => result.orders.find((each) => each.orderId === orderId)?.lateShare ?? NaN;

/** A day of the demo house that was planned, some of its orders late by plan. */
function demoDay(): { readonly built: BuiltDay; readonly solution: DaySolution } {
  const floor = emptyFloor();
  // It is three o'clock: bread for half past ten is too much to ask, and buns for the next day are not.
  const orders = [order(1, 'country-loaf', 10, 10.5 - 24), order(2, 'milk-bun', 60, 7), order(3, 'rye-tin', 8, 9)];
  const ask = proposalAskSchema.parse({ serviceDate: NEXT_DATE });
  const planned = planDay(ordered(floor.state, ...orders), { nowMs: floor.nowMs, ask, budget: { schedules: 60, seed: 1 } });
  assert(planned.ok, 'the day can be planned');
  return planned.value;
}

describe('Z25 a day played without any spread is the planned day', () => {
  const day = demoDay();

  test('each order is late by what the plan says, in every run, and no other is; nothing spoils', () => {
    const { orders, spoilShare } = tryDay(day.built, day.solution, { runs: 5, seed: 3, spreads: spreads(0, 1) });
    const byPlan = lateMinByOrder(day.built, day.solution);
    expect([...byPlan.values()].filter((minutes) => minutes > 1)).toHaveLength(1);
    expect(new Map(orders.map(({ orderId, lateShare: share }) => [orderId, share]))).toEqual(
      new Map(orders.map(({ orderId }) => [orderId, (byPlan.get(orderId) ?? 0) > 1 ? 1 : 0])),
    );
    for (const { orderId, medianLateMin, p90LateMin } of orders) {
      const minutes = byPlan.get(orderId) ?? 0;
      expect([medianLateMin, p90LateMin]).toEqual(minutes > 1 ? [minutes, minutes] : [0, 0]);
    }
    expect(day.solution.spoiled).toEqual([]);
    expect(spoilShare).toBe(0);
  });

  test('the same seed plays the same days, another one others; runs do not depend on how many there are', () => {
    const try_ = (seed: number, runs: number): TryResult => tryDay(day.built, day.solution, { runs, seed, spreads: spreads(0.15) });
    expect(try_(1, 12)).toEqual(try_(1, 12));
    expect(try_(2, 12)).not.toEqual(try_(1, 12));
    const late = (result: TryResult): readonly number[] => result.orders.map(({ lateShare: share }) => Math.round(share * result.runs));
    for (const [index, count] of late(try_(1, 6)).entries()) expect(count).toBeLessThanOrEqual(late(try_(1, 12))[index] ?? -1);
  });
});

/** The error function, by formula 7.1.26 of Abramowitz and Stegun (1964): its error is at most 1.5e-7. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const series = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  return Math.sign(x) * (1 - series * Math.exp(-(x ** 2)));
}

/** How often a standard normal number is at most x. */
const normalShare = (x: number): number => (1 + erf(x / Math.SQRT2)) / 2;

/** How often a log-normal length of a mean and a coefficient of variation is over a limit (textbook formula, from memory). */
function shareOver(limit: number, mean: number, spread: number): number {
  const variance = Math.log(1 + spread ** 2);
  return 1 - normalShare((Math.log(limit) - Math.log(mean) + variance / 2) / Math.sqrt(variance));
}

/** Four standard errors of a share in so many runs: one test of fifteen thousand fails by chance; the seed is fixed. */
const fourErrors = (share: number): number => 4 * Math.sqrt((share * (1 - share)) / RUNS);

describe('Z26 one piece of work is late as often as the distribution function says', () => {
  test.each([
    [0.15, 60],
    [0.15, 72],
    [0.3, 80],
    [0.05, 62],
  ])('spread %f about a median of its length, due after %i minutes of 60', (spread, dueMin) => {
    // Late is what is over by more than a minute.
    const share = shareOver((dueMin + 1) / 60, Math.sqrt(1 + spread ** 2), spread);
    const found = lateShare(played(oneJob(dueMin), spreads(spread)));
    expect(Math.abs(found - share)).toBeLessThanOrEqual(fourErrors(share));
  });

  test.each([
    [1.2, 0.1, 70],
    [0.9, 0.2, 60],
  ])('learned: %f times as long on average, spread %f, due after %i', (mean, spread, dueMin) => {
    const share = shareOver((dueMin + 1) / 60, mean, spread);
    expect(Math.abs(lateShare(played(oneJob(dueMin), spreads(spread, mean))) - share)).toBeLessThanOrEqual(fourErrors(share));
  });

  test('nine of ten are not later than the ninth decile: 60 minutes times e to 1.2816 sigma', () => {
    const spread = 0.2;
    const sigma = Math.sqrt(Math.log(1 + spread ** 2));
    const [result] = played(oneJob(60), spreads(spread)).orders;
    const decileMin = 60 * Math.exp(1.2816 * sigma) - 60;
    // A decile lies between those of shares four standard errors either side of it.
    const [low, high] = [1.2816 - 0.216, 1.2816 + 0.216].map((z) => 60 * Math.exp(z * sigma) - 60);
    expect(decileMin).toBeCloseTo(17.3, 1);
    expect(result?.p90LateMin).toBeGreaterThan(low ?? NaN);
    expect(result?.p90LateMin).toBeLessThan(high ?? NaN);
  });

  test('more spread is never fewer late, in a chain of three steps with some slack', () => {
    const problem = problemOf({
      activities: [activity('a|||mix', 0, 20), activity('a|||shape', 0, 30), activity('a|||bake', 0, 40)],
      lags: [after(0, 1), after(1, 2)],
      goals: [goal('a', 2, 96)],
      batchCount: 1,
    });
    const day = { built: builtDay(problem, [ORDER], ['hands', 'hands', 'bake']), solution: solutionAt(problem, 0, 20, 50) };
    for (const seed of [1, 2]) {
      const shares = [0, 0.06, 0.15, 0.4].map((spread) =>
        lateShare(tryDay(day.built, day.solution, { runs: 300, seed, spreads: spreads(spread) })),
      );
      expect(shares[0]).toBe(0);
      for (const [index, share] of shares.entries()) if (index > 0) expect(share).toBeGreaterThan(shares[index - 1] ?? NaN);
    }
  });
});

describe('Z27 what holds the day back is what a planted bottleneck makes it', () => {
  /** Two bakes, the second just in time behind the first; each on what it is given. */
  const few = (day: ReturnType<typeof twoBakes>, spread: readonly Spread[]): TryResult =>
    tryDay(day.built, day.solution, { runs: 200, seed: 1, spreads: spread });

  function twoBakes(first: number, second: number): { readonly built: BuiltDay; readonly solution: DaySolution } {
    const problem = problemOf({
      activities: [activity('rye|||bake', 0, 50), activity('buns|||shape', 1, 20), activity('buns|||bake', 1, 20)],
      lags: [after(1, 2)],
      resources: [resource('deck', 'bottom'), resource('deck', 'top'), resource('station', 'bench')],
      holds: [takes(0, first), takes(1, 2), takes(2, second)],
      goals: [goal('buns', 2, 71)],
    });
    return { built: builtDay(problem, [NEXT], ['bake', 'hands', 'hands']), solution: solutionAt(problem, 0, 30, 50) };
  }
  // Only bakes take longer than planned: what is late is so because of the first one.
  const onlyBakes = spreads(0, 1).map((spread) => (spread.kind === 'bake' ? { ...spread, mean: 1.1, spread: 0.15 } : spread));

  test.each([
    ['bottom', 0],
    ['top', 1],
  ])('the deck %s, when both are on it', (id, deck) => {
    const { orders, resources } = few(twoBakes(deck, deck), onlyBakes);
    expect(orders[0]?.lateShare).toBeGreaterThan(0.5);
    expect(resources).toEqual([{ kind: 'deck', id, share: 1 }]);
  });

  test('none, when each has a deck of its own: then nothing is late', () => {
    expect(few(twoBakes(0, 1), onlyBakes)).toMatchObject({ orders: [{ lateShare: 0 }], resources: [] });
  });

  test('the doughs themselves, when it is their own work that takes long', () => {
    const work = spreads(0, 1).map((spread) => (spread.kind === 'hands' ? { ...spread, mean: 1.3, spread: 0.1 } : spread));
    expect(few(twoBakes(0, 1), work).resources).toEqual([{ kind: 'dough', id: '', share: 1 }]);
  });

  test('both, in their shares: the deck most of it, where it takes longest', () => {
    const some = onlyBakes.map((spread) => (spread.kind === 'hands' ? { ...spread, mean: 1, spread: 0.1 } : spread));
    const { resources } = few(twoBakes(0, 0), some);
    expect(resources[0]).toMatchObject({ kind: 'deck', id: 'bottom' });
    expect(resources[0]?.share).toBeGreaterThan(0.5);
    expect(resources.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 10);
  });
});

describe('Z28 spreads are learned from what was done, and played as they were learned', () => {
  const CHANCE = new Random(11);
  /** Lengths as a house might have them, as shares of the planned ones. */
  const RATIOS = Array.from({ length: 40 }, () => 0.7 + 0.9 * CHANCE.share());

  /** The demo floor with steps of a kind done, in so many times their planned length. */
  function withDone(kind: Spread['kind'], ratios: readonly number[], more: Partial<StepLife> = {}): FloorState {
    const state = harbourState();
    const left = [...ratios];
    const workpieces = Object.values(state.workpieces).flatMap((workpiece) => {
      const steps = wayOf(state, workpiece).flatMap((step) => {
        const ratio = step.kind === kind || (kind === 'rest' && step.kind === 'timed') ? left.shift() : undefined;
        return ratio === undefined ? [] : [[step.id, life(ratio, more)] as const];
      });
      return [[workpiece.id, { ...workpiece, steps: Object.fromEntries(steps) }] as const];
    });
    assert(left.length === 0, `the floor has only ${ratios.length - left.length} steps of the kind ${kind}`);
    return { ...state, workpieces: Object.fromEntries(workpieces) };
  }

  function life(ratio: number, more: Partial<StepLife>): StepLife {
    const pins = { targetMin: 20, factor: 1.5 } as StepLife['pins'];
    return {
      status: 'done',
      startedMs: 1_000_000,
      endedMs: 1_000_000 + ratio * 30 * MINUTE_MS,
      startedBy: null,
      endedBy: null,
      stationId: null,
      helperIds: [],
      moreMin: 0,
      phaseDone: null,
      isMoved: false,
      pins,
      piecesDone: null,
      inferred: false,
      despite: [],
      reason: null,
      ...more,
    };
  }

  const of = (state: FloorState, kind: Spread['kind']): Spread | undefined => spreadsOf(state).find((each) => each.kind === kind);

  /** Mean and standard deviation over it, by Welford's recurrence (1962). */
  function momentsOf(values: readonly number[]): { readonly mean: number; readonly spread: number } {
    let [mean, squares] = [0, 0];
    for (const [index, value] of values.entries()) {
      const off = value - mean;
      mean += off / (index + 1);
      squares += off * (value - mean);
    }
    return { mean, spread: Math.sqrt(squares / (values.length - 1)) / mean };
  }

  test.each(['hands', 'rest'] as const)('mean and deviation of %s agree with those of the sample', (kind) => {
    const found = of(withDone(kind, RATIOS), kind);
    const { mean, spread } = momentsOf(RATIOS);
    expect(found?.learnedFrom).toBe(RATIOS.length);
    expect(found?.mean).toBeCloseTo(mean, 10);
    expect(found?.spread).toBeCloseTo(spread, 10);
  });

  test('too few, inferred, or forgotten for hours: the customary counts, half longer and half shorter', () => {
    const customary = of(harbourState(), 'hands');
    expect(customary).toMatchObject({ spread: 0.15, learnedFrom: 0 });
    expect(of(withDone('hands', RATIOS.slice(0, 11)), 'hands')).toEqual(customary);
    expect(of(withDone('hands', RATIOS, { inferred: true }), 'hands')).toEqual(customary);
    expect(
      of(
        withDone(
          'hands',
          RATIOS.map((ratio) => ratio + 4),
        ),
        'hands',
      ),
    ).toEqual(customary);
    expect(Math.abs(lateShare(played(oneJob(59), customary === undefined ? [] : [customary])) - 0.5)).toBeLessThanOrEqual(fourErrors(0.5));
  });

  test('what is played has the mean and the deviation that were learned', () => {
    const learned = of(withDone('hands', RATIOS), 'hands');
    assert(learned !== undefined, 'hands are learned');
    const { built } = oneJob(60);
    const lengths = Array.from({ length: 4_000 }, (_, run) => {
      const day = sampledDay(built, at(0).startsS, [learned], new Random(run));
      return (day.activities[0]?.durationS ?? 0) / 3600;
    });
    const { mean, spread } = momentsOf(lengths);
    // Five standard errors of a mean, and as much of a deviation (both from the textbook); what is cut off at 2.5 times is less.
    expect(Math.abs(mean - learned.mean)).toBeLessThan((5 * learned.spread * learned.mean) / Math.sqrt(4_000));
    expect(Math.abs(spread - learned.spread)).toBeLessThan((5 * learned.spread) / Math.sqrt(2 * 4_000));
  });

  test('a rest that ripens slower is waited for as the plan wants it, and may wait so much longer', () => {
    const rest = { from: 0, to: 1, minS: 1_200, targetS: 1_800, mostS: 3_600 };
    const problem = problemOf({
      activities: [activity('a|||mix', 0, 10), activity('a|||shape', 0, 10)],
      lags: [after(rest.from, rest.to, rest.minS / 60, { targetS: rest.targetS, mostS: rest.mostS })],
      goals: [goal('a', 1, 60)],
      batchCount: 1,
    });
    const plain = builtDay(problem, [ORDER], ['hands', 'hands']);
    const built = { ...plain, rests: [restOf(plain)] };
    const slower = [{ kind: 'rest', mean: 1.5, spread: 0, learnedFrom: 0 }] as const;
    const lagIn = (plannedMin: number) => sampledDay(built, at(0, 10 + plannedMin).startsS, slower, new Random(1)).lags[0];
    expect(lagIn(30)).toMatchObject({ minS: 2_700, targetS: 2_700, mostS: 5_400 });
    // Planned short of its target: as ripe as that. Planned longer, for want of an oven: no riper than it need be.
    expect(lagIn(20)).toMatchObject({ minS: 1_800, targetS: 2_700, mostS: 5_400 });
    expect(lagIn(50)).toMatchObject({ minS: 2_700, targetS: 2_700, mostS: 5_400 });
  });

  /** The one lag of a day as its one rest. */
  function restOf({ steps }: BuiltDay): BuiltDay['rests'][number] {
    const [step] = steps;
    assert(step !== undefined, 'the day has steps');
    const { activity: _at, ...place } = step;
    return { ...place, from: { activity: 0, edge: 'end', offsetS: 0 }, to: [{ activity: 1, edge: 'start' }], targetS: 1_800, lags: [0] };
  }
});

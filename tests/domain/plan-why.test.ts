import { describe, expect, test } from 'vitest';
import type { ActivityStep, BuiltDay } from '../../shared/plan/build/built-day.ts';
import type { Activity, DayProblem, DaySolution, Hold, Lag, PlanResource } from '../../shared/plan/day/problem.ts';
import { relaxedInput } from '../../shared/plan/why/relaxed.ts';
import { whatHolds } from '../../shared/plan/why/what-holds.ts';
import { whyNot, type TriedDay } from '../../shared/plan/why/why-not.ts';
import type { Remedy } from '../../shared/plan/why/reason.ts';
import { harbourState } from './support/plan-days.ts';
import { idOf } from './support/ids.ts';

const MIN = 60;
const ORIGIN_MS = 1_770_000_000_000;

function activity(key: string, batch: number, minutes: number, more: Partial<Activity> = {}): Activity {
  return {
    key,
    batch,
    durationS: minutes * MIN,
    releaseS: 0,
    fixedStartS: null,
    pinnedStartS: null,
    previousStartS: null,
    isToldAlready: false,
    ...more,
  };
}

function after(from: number, to: number, minutes = 0, more: Partial<Lag> = {}): Lag {
  return {
    from,
    fromEdge: 'end',
    to,
    toEdge: 'start',
    minS: minutes * MIN,
    mostS: null,
    targetS: null,
    awayPrice: 0,
    spoilPrice: 0,
    ...more,
  };
}

function resource(kind: string, id: string, more: Partial<PlanResource> = {}): PlanResource {
  return { kind, id, capacity: 1, calendar: null, setupS: null, stateAtFirst: null, sharesOneState: false, idlePrice: 0, ...more };
}

function takes(at: number, on: number, states: readonly number[] | null = null): Hold {
  return { from: at, fromEdge: 'start', to: at, toEdge: 'end', afterS: 0, on: { resource: on, amount: 1 }, states };
}

function problemOf(parts: Partial<DayProblem>): DayProblem {
  return { activities: [], lags: [], resources: [], choices: [], holds: [], goals: [], batchCount: 2, ...parts };
}

const at = (...minutes: readonly number[]): { startsS: Int32Array; options: Int32Array } => ({
  startsS: Int32Array.from(minutes, (minute) => minute * MIN),
  options: new Int32Array(0),
});

/** Two doughs that want one deck: rye first, buns after it. */
function oneDeck(more: Partial<DayProblem> = {}): DayProblem {
  return problemOf({
    activities: [activity('rye|||bake', 0, 50), activity('buns|||shape', 1, 10), activity('buns|||bake', 1, 15)],
    lags: [after(1, 2)],
    resources: [resource('deck', 'bottom')],
    holds: [takes(0, 0), takes(2, 0)],
    goals: [{ key: 'buns', activity: 2, edge: 'end', dueS: 40 * MIN, latePrice: 100, fresh: null, earlyPrice: 0, isFirst: false }],
    ...more,
  });
}

describe('P5 what holds a step is found by going back along what binds', () => {
  test('a resource that another batch gives free just then', () => {
    expect(whatHolds(oneDeck(), at(0, 40, 50), 2)).toEqual({ kind: 'busy', at: 2, resource: 0, by: 0, untilS: 50 * MIN });
  });

  test('the set-up between two bakes counts as the other’s', () => {
    const deck = resource('deck', 'bottom', {
      setupS: [
        [0, 12 * MIN],
        [12 * MIN, 0],
      ],
    });
    const problem = oneDeck({ resources: [deck], holds: [takes(0, 0, [0]), takes(2, 0, [1])] });
    expect(whatHolds(problem, at(0, 40, 62), 2)).toMatchObject({ kind: 'busy', by: 0 });
    // Ten minutes would be no set-up of this oven: nothing binds.
    expect(whatHolds(problem, at(0, 40, 60), 2)).toBeNull();
  });

  test('through its own steps: a lag that binds leads to what the step before waits for', () => {
    const problem = oneDeck({
      resources: [resource('deck', 'bottom'), resource('station', 'bench')],
      holds: [takes(0, 1), takes(1, 1), takes(2, 0)],
    });
    expect(whatHolds(problem, at(0, 50, 60), 2)).toEqual({ kind: 'busy', at: 1, resource: 1, by: 0, untilS: 50 * MIN });
  });

  test('a step that must not run far ahead waits for what the later one waits for', () => {
    const problem = oneDeck({ lags: [after(1, 2, 0, { mostS: 5 * MIN })] });
    // Shaped just so early that it waits five minutes for the oven.
    expect(whatHolds(problem, at(0, 35, 50), 1)).toEqual({ kind: 'busy', at: 2, resource: 0, by: 0, untilS: 50 * MIN });
  });

  test('nobody there yet, fixed, pinned, or as early as can be', () => {
    const opens = resource('deck', 'bottom', {
      calendar: [
        { fromS: 0, capacity: 0 },
        { fromS: 30 * MIN, capacity: 1 },
      ],
    });
    const closed = oneDeck({ resources: [opens], holds: [takes(2, 0)] });
    expect(whatHolds(closed, at(0, 0, 30), 2)).toEqual({ kind: 'closed', at: 2, resource: 0, untilS: 30 * MIN });
    expect(whatHolds(oneDeck(), at(0, 0, 10), 2)).toEqual({ kind: 'released', at: 1 });
    const pinned = oneDeck({
      activities: [activity('a', 0, 50), activity('b', 1, 10, { pinnedStartS: 20 * MIN }), activity('c', 1, 15)],
    });
    expect(whatHolds(pinned, at(0, 20, 30), 2)).toEqual({ kind: 'pinned', at: 1 });
    const begun = oneDeck({ activities: [activity('a', 0, 50), activity('b', 1, 10, { fixedStartS: 20 * MIN }), activity('c', 1, 15)] });
    expect(whatHolds(begun, at(0, 20, 30), 2)).toEqual({ kind: 'begun', at: 1 });
    expect(whatHolds(oneDeck(), at(0, 20, 200), 2)).toBeNull();
  });
});

const ORDER = idOf(31);

/** The two doughs as a built day, buns for one order. */
function builtDay(problem: DayProblem): BuiltDay {
  const steps = problem.activities.map(({ key }, index): ActivityStep => {
    const [batchKey = '', , , stepId = ''] = key.split('|');
    return {
      activity: index,
      batchKey,
      workpieceId: null,
      cut: undefined,
      load: undefined,
      stepId,
      verb: 'bake',
      kind: 'bake',
      formulaId: batchKey,
      productId: null,
      tag: null,
      pieces: null,
      grams: null,
      stationId: null,
      restPlaceId: null,
      holds: [],
      status: 'ahead',
    };
  });
  return {
    problem,
    originMs: ORIGIN_MS,
    steps,
    rests: [],
    previous: null,
    orders: { shares: [], short: [], spare: [] },
    goalOrders: [ORDER],
  };
}

function solutionOf(minutes: readonly number[], lateMin: number): DaySolution {
  return {
    ...at(...minutes),
    cost: { spoil: 0, pins: 0, late: 0, ripeness: 0, freshness: 0, calm: 0, moved: 0, total: 0 },
    spoiled: [],
    late: lateMin === 0 ? [] : [{ goal: 0, byS: lateMin * MIN }],
    pinsBroken: [],
    schedules: 1,
  };
}

describe('P6 why a day does not fit is told with what was tried', () => {
  const problem = oneDeck();
  const solution = solutionOf([0, 40, 50], 25);
  const orders = new Map([[ORDER, { pieces: 60, productId: 'milk-bun' }]]);
  const day = (lateMin: number): TriedDay => ({ lateMin: new Map(lateMin === 0 ? [] : [[ORDER, lateMin]]), spoilMin: 0 });

  test('the trouble, its cause in the kitchen’s things, and the least change of each kind that mends it', () => {
    const tried: Remedy['change'][] = [];
    const [reason] = whyNot(builtDay(problem), solution, {
      orders,
      tries: 40,
      tryWith: (change) => {
        tried.push(change);
        // The rye must begin 30 minutes earlier, or a third of the buns be left away.
        if (change.kind === 'beginEarlier') return day(change.minutes >= 30 ? 0 : 25 - change.minutes);
        if (change.kind === 'fewerPieces') return day(change.pieces <= 42 ? 0 : 5);
        return day(0);
      },
    });
    expect(reason?.trouble).toEqual({ kind: 'late', orderId: ORDER, byMin: 25 });
    expect(reason?.cause).toEqual({
      kind: 'busy',
      at: { batchKey: 'buns', stepId: 'bake' },
      resource: { kind: 'deck', id: 'bottom' },
      by: { batchKey: 'rye', stepId: 'bake' },
      untilMs: ORIGIN_MS + 50 * MIN * 1000,
    });
    expect(reason?.remedies.map(({ change }) => change)).toEqual([
      { kind: 'beginEarlier', batchKey: 'rye', stepId: 'bake', minutes: 30, startMs: ORIGIN_MS - 30 * MIN * 1000 },
      { kind: 'fewerPieces', orderId: ORDER, pieces: 42 },
      { kind: 'readyLater', orderId: ORDER, minutes: 25 },
      { kind: 'leaveOut', orderId: ORDER },
    ]);
    expect(tried.filter(({ kind }) => kind === 'beginEarlier')).toHaveLength(3);
  });

  test('what does not help, cannot be made or costs more elsewhere is not named', () => {
    const other = idOf(32);
    const [reason] = whyNot(builtDay(problem), solution, {
      orders,
      tries: 40,
      tryWith: (change) => {
        if (change.kind === 'beginEarlier') return null;
        if (change.kind === 'fewerPieces') return { lateMin: new Map([[other, 90]]), spoilMin: 0 };
        return day(change.kind === 'leaveOut' ? 0 : 10);
      },
    });
    expect(reason?.remedies).toEqual([{ change: { kind: 'leaveOut', orderId: ORDER }, leftMin: 0 }]);
  });

  test('no more is tried than is allowed, and a day that fits has no reasons', () => {
    let tried = 0;
    whyNot(builtDay(problem), solution, {
      orders,
      tries: 5,
      tryWith: () => {
        tried += 1;
        return null;
      },
    });
    expect(tried).toBe(5);
    expect(whyNot(builtDay(problem), solutionOf([0, 0, 50], 0), { orders, tries: 5, tryWith: () => null })).toEqual([]);
  });

  test('one more pair of hands, or somebody there earlier, is tried on the kitchen as it would be', () => {
    const state = harbourState();
    const input = {
      state,
      nowMs: ORIGIN_MS,
      calendars: {
        stations: {
          bench: [
            { fromMs: ORIGIN_MS, toMs: ORIGIN_MS + 10_000_000 },
            { fromMs: ORIGIN_MS + 11_000_000, toMs: ORIGIN_MS + 20_000_000 },
          ],
        },
        cleanings: [],
      },
      proposed: [],
      calendarsEndMs: ORIGIN_MS + 86_400_000,
    };
    const hands = relaxedInput(input, { kind: 'oneMoreHand', stationId: 'bench' });
    expect(hands.state.kitchen?.document.stations.map(({ id, hands: count }) => [id, count])).toContainEqual(['bench', 2]);
    const earlier = relaxedInput(input, { kind: 'openEarlier', stationId: 'bench', minutes: 30 });
    expect(earlier.calendars.stations['bench']).toEqual([{ fromMs: ORIGIN_MS - 1_800_000, toMs: ORIGIN_MS + 20_000_000 }]);
    expect(relaxedInput(input, { kind: 'openEarlier', stationId: 'oven', minutes: 30 })).toEqual(input);
    const pinned = relaxedInput(input, {
      kind: 'beginEarlier',
      batchKey: 'rye#1',
      stepId: 'weigh',
      minutes: 10,
      startMs: ORIGIN_MS,
    });
    expect(pinned.pins).toEqual([{ key: 'rye#1|||weigh', startMs: ORIGIN_MS }]);
  });
});

import type { ActivityStep, BuiltDay } from '../../../shared/plan/build/built-day.ts';
import { priceOf } from '../../../shared/plan/day/price-day.ts';
import type { Activity, DayProblem, DaySolution, Goal, Hold, Lag, PlanResource } from '../../../shared/plan/day/problem.ts';

export const MIN_S = 60;
export const ORIGIN_MS = 1_770_000_000_000;

/** An activity called as the builder calls them: batch, cut, load and step with | between them. */
export function activity(key: string, batch: number, minutes: number, more: Partial<Activity> = {}): Activity {
  return {
    key,
    batch,
    durationS: minutes * MIN_S,
    releaseS: 0,
    fixedStartS: null,
    pinnedStartS: null,
    previousStartS: null,
    isToldAlready: false,
    ...more,
  };
}

export function after(from: number, to: number, minutes = 0, more: Partial<Lag> = {}): Lag {
  return {
    from,
    fromEdge: 'end',
    to,
    toEdge: 'start',
    minS: minutes * MIN_S,
    mostS: null,
    targetS: null,
    awayPrice: 0,
    spoilPrice: 0,
    ...more,
  };
}

export function resource(kind: string, id: string, more: Partial<PlanResource> = {}): PlanResource {
  return { kind, id, capacity: 1, calendar: null, setupS: null, stateAtFirst: null, sharesOneState: false, idlePrice: 0, ...more };
}

export function takes(at: number, on: number, states: readonly number[] | null = null, amount = 1): Hold {
  return { from: at, fromEdge: 'start', to: at, toEdge: 'end', afterS: 0, on: { resource: on, amount }, states };
}

export function goal(key: string, at: number, dueMin: number): Goal {
  return { key, activity: at, edge: 'end', dueS: Math.round(dueMin * MIN_S), latePrice: 100, fresh: null, earlyPrice: 0, isFirst: false };
}

export function problemOf(parts: Partial<DayProblem>): DayProblem {
  return { activities: [], lags: [], resources: [], choices: [], holds: [], goals: [], batchCount: 2, ...parts };
}

export const at = (...minutes: readonly number[]): { startsS: Int32Array; options: Int32Array } => ({
  startsS: Int32Array.from(minutes, (minute) => minute * MIN_S),
  options: new Int32Array(0),
});

/** What a plan that was written down comes to. */
export function solutionAt(problem: DayProblem, ...minutes: readonly number[]): DaySolution {
  const { startsS, options } = at(...minutes);
  return { ...priceOf(problem, startsS, options), schedules: 1 };
}

/** The problem as a built day: every activity a step of its batch, the goals' orders as given. */
export function builtDay(problem: DayProblem, goalOrders: readonly string[], kinds: readonly ActivityStep['kind'][] = []): BuiltDay {
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
      kind: kinds[index] ?? 'bake',
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
  return { problem, originMs: ORIGIN_MS, steps, rests: [], previous: null, orders: { shares: [], short: [], spare: [] }, goalOrders };
}

import type { Activity, DayProblem, Goal, Hold, Lag, PlanResource } from '../../shared/plan/day/problem.ts';

/** An activity of ten minutes that may begin at any time. */
export function activity(key: string, rest: Partial<Activity> = {}): Activity {
  return {
    key,
    batch: 0,
    durationS: 600,
    releaseS: 0,
    fixedStartS: null,
    pinnedStartS: null,
    previousStartS: null,
    isToldAlready: false,
    ...rest,
  };
}

/** From the end of one to the start of another, any length. */
export function lag(from: number, to: number, rest: Partial<Lag> = {}): Lag {
  return { from, fromEdge: 'end', to, toEdge: 'start', minS: 0, mostS: null, targetS: null, awayPrice: 0, spoilPrice: 0, ...rest };
}

/** One of something, always there, in no state. */
export function resource(kind: string, rest: Partial<PlanResource> = {}): PlanResource {
  return { kind, id: kind, capacity: 1, calendar: null, setupS: null, stateAtFirst: null, sharesOneState: false, idlePrice: 0, ...rest };
}

/** One of the first resource, as long as an activity lasts. */
export function hold(of: number, rest: Partial<Hold> = {}): Hold {
  return { from: of, fromEdge: 'start', to: of, toEdge: 'end', afterS: 0, on: { resource: 0, amount: 1 }, states: null, ...rest };
}

/** The end of an activity is wanted by an instant; a minute late costs 100. */
export function goal(of: number, dueS: number, rest: Partial<Goal> = {}): Goal {
  return { key: `goal ${of}`, activity: of, edge: 'end', dueS, latePrice: 100, fresh: null, earlyPrice: 0, isFirst: false, ...rest };
}

/** A day of what is given and nothing else. */
export function dayOf(parts: Partial<DayProblem>): DayProblem {
  const activities = parts.activities ?? [];
  const batchCount = Math.max(0, ...activities.map((one) => one.batch + 1));
  return { activities, lags: [], resources: [], choices: [], holds: [], goals: [], batchCount, ...parts };
}

import type { BuiltDay } from '../build/built-day.ts';
import { Random } from '../core/random.ts';
import type { DayProblem, DaySolution } from '../day/problem.ts';
import { repairDay } from '../day/repair-day.ts';
import { whatHolds } from '../why/what-holds.ts';
import { sampledDay } from './sampled-day.ts';
import type { Spread, TryResult } from './try-result.ts';

/** Less than this is not late. */
const ON_TIME_S = 60;

export interface TryOptions {
  readonly runs: number;
  readonly seed: number;
  readonly spreads: readonly Spread[];
  /** Told after every run. */
  readonly onRun?: (done: number) => void;
}

/**
 * Plays a day many times with lengths that spread, keeping to its plan: nothing begins before its time in the plan, what
 * is held up pushes what comes after it, in the order of the plan, and nobody plans anew. So the shares of late days are
 * rather too high than too low for a house that does. Deterministic for a seed.
 */
export function tryDay(built: BuiltDay, solution: Pick<DaySolution, 'startsS' | 'options'>, options: TryOptions): TryResult {
  const lateMin = new Map<string, number[]>();
  const heldMin = new Map<string, number>();
  let spoiledRuns = 0;
  for (let run = 0; run < options.runs; run += 1) {
    // Each run has chance of its own, so that a run does not depend on how many came before it.
    const random = new Random(options.seed * 1_000_003 + run);
    const problem = planned(sampledDay(built, options.spreads, random), solution.startsS);
    const played = repairDay(problem, solution);
    if (played.spoiled.length > 0) spoiledRuns += 1;
    takeDown(built, problem, played, lateMin, heldMin);
    options.onRun?.(run + 1);
  }
  const heldSum = [...heldMin.values()].reduce((sum, minutes) => sum + minutes, 0);
  return {
    runs: options.runs,
    orders: [...new Set(built.goalOrders)].map((orderId) => orderResult(orderId, lateMin.get(orderId) ?? [], options.runs)),
    resources: [...heldMin]
      .map(([key, minutes]) => {
        const [kind = '', id = ''] = key.split('\n');
        return { kind, id, share: heldSum === 0 ? 0 : minutes / heldSum };
      })
      .sort((a, b) => b.share - a.share),
    spoilShare: spoiledRuns / options.runs,
    spreads: [...options.spreads],
  };
}

/** Nobody begins before the plan says so. */
function planned(problem: DayProblem, startsS: Int32Array): DayProblem {
  return {
    ...problem,
    activities: problem.activities.map((activity, index) => ({
      ...activity,
      releaseS: Math.max(activity.releaseS, startsS[index] ?? 0),
      previousStartS: startsS[index] ?? null,
    })),
  };
}

/** How late each order was in one run, and what the late ones waited for. */
function takeDown(
  built: BuiltDay,
  problem: DayProblem,
  played: DaySolution,
  lateMin: Map<string, number[]>,
  heldMin: Map<string, number>,
): void {
  const latest = new Map<string, { byS: number; goal: number }>();
  for (const { goal, byS } of played.late) {
    const orderId = built.goalOrders[goal];
    if (orderId === undefined || byS <= ON_TIME_S) continue;
    if (byS > (latest.get(orderId)?.byS ?? 0)) latest.set(orderId, { byS, goal });
  }
  for (const [orderId, { byS, goal }] of latest) {
    const minutes = byS / 60;
    const all = lateMin.get(orderId);
    if (all === undefined) lateMin.set(orderId, [minutes]);
    else all.push(minutes);
    const activity = problem.goals[goal]?.activity;
    const holding = activity === undefined ? null : whatHolds(problem, played, activity);
    const resource = holding?.kind === 'busy' || holding?.kind === 'closed' ? problem.resources[holding.resource] : undefined;
    const key = resource === undefined ? 'dough\n' : `${resource.kind}\n${resource.id}`;
    heldMin.set(key, (heldMin.get(key) ?? 0) + minutes);
  }
}

function orderResult(orderId: string, late: readonly number[], runs: number): TryResult['orders'][number] {
  const sorted = [...late].sort((a, b) => a - b);
  const onTime = runs - sorted.length;
  const rank = Math.ceil(runs * 0.9) - 1;
  return {
    orderId,
    lateShare: sorted.length / runs,
    medianLateMin: sorted[Math.floor((sorted.length - 1) / 2)] ?? 0,
    p90LateMin: rank < onTime ? 0 : (sorted[rank - onTime] ?? 0),
  };
}

import type { BuiltDay } from '../build/built-day.ts';
import { Random } from '../core/random.ts';
import type { DayProblem, DaySolution } from '../day/problem.ts';
import { repairDay } from '../day/repair-day.ts';
import { networkOf } from '../why/day-network.ts';
import { whatHoldsIn } from '../why/what-holds.ts';
import { sampledDay } from './sampled-day.ts';
import type { Spread, TryResult } from './try-result.ts';

/** Late runs of which it is found out what held them back: more would change the shares little, and take long. */
const MOST_LOOKED_INTO = 200;
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
  let lookedInto = 0;
  for (let run = 0; run < options.runs; run += 1) {
    // Each run has chance of its own, so that a run does not depend on how many came before it.
    const random = new Random(options.seed * 1_000_003 + run);
    const problem = planned(sampledDay(built, solution.startsS, options.spreads, random), solution.startsS);
    const played = repairDay(problem, solution);
    if (played.spoiled.length > 0) spoiledRuns += 1;
    const late = lateOnes(built, played);
    for (const [orderId, { byS }] of late) noteLate(lateMin, orderId, byS / 60);
    const worst = [...late.values()].sort((a, b) => b.byS - a.byS)[0];
    if (worst !== undefined && lookedInto < MOST_LOOKED_INTO) {
      lookedInto += 1;
      const key = heldBy(problem, played, worst);
      heldMin.set(key, (heldMin.get(key) ?? 0) + worst.byS / 60);
    }
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

function noteLate(lateMin: Map<string, number[]>, orderId: string, minutes: number): void {
  const all = lateMin.get(orderId);
  if (all === undefined) lateMin.set(orderId, [minutes]);
  else all.push(minutes);
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

/** How late an order is, and the goal of its latest pieces. */
interface Latest {
  readonly byS: number;
  readonly goal: number;
}

/** How late each order was in one run. */
function lateOnes(built: BuiltDay, played: DaySolution): ReadonlyMap<string, Latest> {
  const latest = new Map<string, Latest>();
  for (const { goal, byS } of played.late) {
    const orderId = built.goalOrders[goal];
    if (orderId === undefined || byS <= ON_TIME_S) continue;
    if (byS > (latest.get(orderId)?.byS ?? 0)) latest.set(orderId, { byS, goal });
  }
  return latest;
}

/** What the latest order of a run waited for, by the name of a resource; `dough` for what no resource holds back. */
function heldBy(problem: DayProblem, played: DaySolution, { goal, byS }: Latest): string {
  const activity = problem.goals[goal]?.activity;
  const holding = activity === undefined ? null : whatHoldsIn(networkOf(problem, played), activity, byS);
  const resource = holding?.kind === 'busy' || holding?.kind === 'closed' ? problem.resources[holding.resource] : undefined;
  return resource === undefined ? 'dough\n' : `${resource.kind}\n${resource.id}`;
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

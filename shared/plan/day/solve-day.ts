import { anneal, type Warmth } from './anneal.ts';
import { batchOrder } from './batch-orders.ts';
import { compileDay } from './compiled-day.ts';
import { DaySearch, type PlanCopy } from './day-search.ts';
import { solutionOf } from './day-solution.ts';
import { hasHands, levelHands } from './level-hands.ts';
import type { DayBudget, DayProblem, DaySolution } from './problem.ts';

/** Plans made from nothing before a round of the search begins, at most, and the share of its schedules that they may take. */
const MOST_BEGINNINGS = 8;
const BEGINNINGS_SHARE = 0.05;
const WHIM_S = 900;
/** A round has so many schedules for each pair of batches, and so many at least; what is left is for others, from other beginnings. */
const ROUND_PER_PAIR = 5;
const SHORTEST_ROUND = 400;
const MOST_ROUNDS = 12;
/** The last share of the budget goes on from the best of all rounds. */
const LAST_SHARE = 0.25;
const WARMTH = { share: 0.15, minutes: 20 };
const LAST_WARMTH = { share: 0.03, minutes: 5 };
/** Hands are made level in the end, with so large a share of the budget. */
const LEVEL_SHARE = 0.05;

/** Called every so many schedules, whether or not something better was found. */
export const PROGRESS_EVERY = 64;

/**
 * Plans a day. Resources, calendars, set-ups, minimum lags and releases always hold; maximum lags wherever they can, else they cost. `onBetter`
 * is called with each better plan, `onProgress` every 64 schedules; either may throw to end the search, and its exception comes through. The
 * same problem, budget and seed give the same plan.
 */
export function solveDay(
  problem: DayProblem,
  budget: DayBudget,
  onBetter?: (solution: DaySolution, schedulesDone: number) => void,
  onProgress?: (schedulesDone: number) => void,
): DaySolution {
  const day = compileDay(problem);
  const search = new DaySearch(day, budget.seed);
  let best: PlanCopy | null = null;
  let done = 0;
  const tell = (plan: PlanCopy | null): void => {
    done += 1;
    if (plan !== null && (best === null || plan.total < best.total)) {
      best = plan;
      onBetter?.(solutionOf(day, plan, done), done);
    }
    if (done % PROGRESS_EVERY === 0) onProgress?.(done);
  };
  const levelling = hasHands(search) ? Math.floor(budget.schedules * LEVEL_SHARE) : 0;
  const rounds = roundsOf(budget.schedules - levelling, search.openBatches.length);
  for (const [round, { schedules, warmth }] of rounds.entries()) {
    const endsAt = done + schedules;
    if (round === 0 || round < rounds.length - 1) begin(search, round, schedules, tell);
    else if (best !== null) search.load(best);
    anneal(search, Math.max(0, endsAt - done), warmth, tell);
  }
  if (best !== null && levelling > 0) {
    search.load(best);
    levelHands(search, levelling, tell);
  }
  if (best === null) throw new Error('a day was made at least once');
  return solutionOf(day, best, done);
}

interface Round {
  readonly schedules: number;
  readonly warmth: Warmth;
}

/** How the budget is spent: one round where it is small for so many batches, else some and a last one from the best of them. */
function roundsOf(schedules: number, batches: number): readonly Round[] {
  const shortest = Math.max(SHORTEST_ROUND, ROUND_PER_PAIR * batches ** 2);
  const count = Math.min(MOST_ROUNDS, Math.floor((schedules * (1 - LAST_SHARE)) / shortest));
  if (count < 2) return [{ schedules: Math.max(1, schedules), warmth: WARMTH }];
  const each = Math.floor((schedules * (1 - LAST_SHARE)) / count);
  const rounds = Array.from({ length: count }, () => ({ schedules: each, warmth: WARMTH }));
  return [...rounds, { schedules: schedules - count * each, warmth: LAST_WARMTH }];
}

/** Makes some plans from nothing and leaves the best of them in the search. */
function begin(search: DaySearch, round: number, schedules: number, tell: (plan: PlanCopy) => void): void {
  const count = Math.max(1, Math.min(MOST_BEGINNINGS, Math.floor(schedules * BEGINNINGS_SHARE)));
  let best: PlanCopy | null = null;
  for (let made = 0; made < count; made += 1) {
    const isPlain = round === 0 && made === 0;
    // Full days are made best as soon as they can, easy ones just in time: half of the beginnings for each.
    const earlierTries = made % 2 === 0 ? 0 : 2;
    search.construct(batchOrder(search.day, search.openBatches, isPlain ? null : search.random), isPlain ? 0 : WHIM_S, earlierTries);
    const plan = search.copy();
    tell(plan);
    if (best === null || plan.total < best.total) best = plan;
  }
  if (best !== null) search.load(best);
}

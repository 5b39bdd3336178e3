import type { DayBudget, DayProblem, DaySolution } from '../../shared/plan/day/problem.ts';
import { Random } from '../simulation/support/random.ts';
import { anyDay } from './plan-any-day.ts';
import { costFaults } from './plan-cost.ts';
import { disturbed } from './plan-disturbed-day.ts';
import { faultsOf } from './plan-validator.ts';

type Placed = Pick<DaySolution, 'startsS' | 'options'>;

/** The planner that is tried. */
export interface Planner {
  readonly first: (problem: DayProblem, budget: DayBudget) => DaySolution;
  readonly again: (problem: DayProblem, previous: Placed, budget: DayBudget) => DaySolution;
}

/** What came of a chain of disturbances. */
export interface Outcome {
  readonly disturbances: number;
  /** What was wrong after one of them, with what it was. */
  readonly faults: readonly string[];
  /** Of all steps that were still ahead, those that were moved by more than two minutes. */
  readonly movedShare: number;
}

const MOVED_S = 120;

/**
 * Day after day with one disturbance after another, each plan made from the one before: so many of them. Same seed, same days.
 */
export function disturbDays(
  planner: Planner,
  { seed, count, schedules }: { readonly seed: number; readonly count: number; readonly schedules: number },
): Outcome {
  const random = new Random(seed, 'disturbances');
  const faults: string[] = [];
  let [disturbances, ahead, moved] = [0, 0, 0];
  for (let day = 0; disturbances < count; day += 1) {
    let problem = anyDay(random.whole(1, 1_000_000), random.whole(3, 12));
    let solution = planner.first(problem, { schedules: 2 * schedules, seed: day });
    for (;;) {
      const next = disturbances < count ? disturbed(random, problem, solution) : null;
      if (next === null) break;
      problem = next.problem;
      solution = planner.again(problem, solution, { schedules, seed: day });
      disturbances += 1;
      for (const fault of [...faultsOf(problem, solution), ...costFaults(problem, solution)])
        faults.push(`day ${day}, ${next.what}: ${fault}`);
      const open = problem.activities.flatMap(({ fixedStartS, previousStartS }, index) =>
        fixedStartS === null && previousStartS !== null ? [{ index, previousStartS }] : [],
      );
      ahead += open.length;
      moved += open.filter(({ index, previousStartS }) => Math.abs((solution.startsS[index] ?? 0) - previousStartS) > MOVED_S).length;
    }
  }
  return { disturbances, faults, movedShare: ahead === 0 ? 0 : moved / ahead };
}

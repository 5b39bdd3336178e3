import type { Instance, Outcome } from '../../shared/plan/core/instance.ts';
import { solveInstance } from '../../shared/plan/core/solve.ts';
import { assert } from '../../shared/result.ts';
import { projectOf, withMaximumLags } from './plan-instances.ts';
import { lineOf, type Line } from './report.ts';

const PROJECTS = 16;
const ACTIVITIES = [30, 60] as const;
const BUDGETS = [1_000, 50_000] as const;
/** What the deviations are measured from: the best that was seen with this budget, or in any of the runs that are measured. */
const REFERENCE = { schedules: 200_000, seed: 77 };

const LAGGED = 16;
const LAGGED_ACTIVITIES = 20;
const LAGGED_SCHEDULES = 2_000;
const SLACK = 3;

interface Timed {
  readonly outcome: Outcome;
  readonly ms: number;
}

/**
 * The planner's core, on one thread, on projects drawn with fixed seeds: how far from the best known, how long the slowest takes, and
 * how often a schedule is found where maximum lags bind. Every round has another seed.
 */
export async function planCore(rounds: number): Promise<readonly Line[]> {
  return [...ACTIVITIES.flatMap((activities) => projectLines(activities, rounds)), ...lagLines(rounds)];
}

function projectLines(activities: number, rounds: number): readonly Line[] {
  const projects = Array.from({ length: PROJECTS }, (_, seed) => projectOf(activities, seed));
  const runs = BUDGETS.map((schedules) => seedsOf(rounds).map((seed) => projects.map((project) => timed(project, schedules, seed))));
  const best = projects.map((project, index) =>
    Math.min(makespanOf(solveInstance(project, REFERENCE)), ...runs.flat().map((run) => makespanOf(run[index]?.outcome))),
  );
  return BUDGETS.flatMap((schedules, which) => {
    const what = `plan of ${activities} activities, ${schedules} schedules`;
    const own = runs[which] ?? [];
    return [
      lineOf(
        `${what}: mean over the best known`,
        '%',
        aimOf(activities, schedules),
        own.map((run) => meanOver(run, best)),
      ),
      lineOf(
        `${what}: the slowest of ${PROJECTS}`,
        'ms',
        '< 1000 ms',
        own.map((run) => Math.max(...run.map(({ ms }) => ms))),
      ),
    ];
  });
}

function aimOf(activities: number, schedules: number): string {
  if (activities === 60) return schedules === 50_000 ? '≤ 0.40 %' : 'no aim';
  return schedules === 50_000 ? '≤ 0.05 %' : '≤ 0.30 %';
}

function lagLines(rounds: number): readonly Line[] {
  const instances = Array.from({ length: LAGGED }, (_, seed) => {
    const project = projectOf(LAGGED_ACTIVITIES, seed);
    const { starts } = solveInstance(project, { schedules: 1, seed });
    assert(starts !== null, 'a project without lags always has a schedule');
    return withMaximumLags(project, starts, SLACK);
  });
  const runs = seedsOf(rounds).map((seed) => instances.map((instance) => timed(instance, LAGGED_SCHEDULES, seed)));
  const what = `plan of ${LAGGED_ACTIVITIES} activities with maximum lags, ${LAGGED_SCHEDULES} schedules`;
  const found = (run: readonly Timed[]): number => (100 * run.filter(({ outcome }) => outcome.starts !== null).length) / LAGGED;
  return [
    lineOf(`${what}: solved`, '%', '≥ 97 %', runs.map(found)),
    lineOf(
      `${what}: the slowest of ${LAGGED}`,
      'ms',
      '< 1000 ms',
      runs.map((run) => Math.max(...run.map(({ ms }) => ms))),
    ),
  ];
}

function timed(instance: Instance, schedules: number, seed: number): Timed {
  const startMs = performance.now();
  const outcome = solveInstance(instance, { schedules, seed });
  return { outcome, ms: performance.now() - startMs };
}

function meanOver(run: readonly Timed[], best: readonly number[]): number {
  const over = run.map(({ outcome }, index) => makespanOf(outcome) / (best[index] ?? 1) - 1);
  return (100 * over.reduce((sum, part) => sum + part, 0)) / over.length;
}

function makespanOf(outcome: Outcome | undefined): number {
  return outcome?.makespan ?? Infinity;
}

function seedsOf(rounds: number): readonly number[] {
  return Array.from({ length: rounds }, (_, index) => index + 1);
}

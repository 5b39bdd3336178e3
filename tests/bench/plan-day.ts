import { performance } from 'node:perf_hooks';
import { Random } from '../../shared/plan/core/random.ts';
import { priceOf } from '../../shared/plan/day/price-day.ts';
import type { DayProblem, DaySolution } from '../../shared/plan/day/problem.ts';
import { replanDay } from '../../shared/plan/day/replan-day.ts';
import { solveDay } from '../../shared/plan/day/solve-day.ts';
import { dayProblem, FORTY, TWO_HUNDRED, type BakehouseSize } from './day-problems.ts';
import { DayUnderWay } from './day-under-way.ts';
import { lineOf, lineWithFloor, type Line, type Round } from './report.ts';
import { percentile } from './statistics.ts';

interface Case {
  readonly size: BakehouseSize;
  readonly firstSchedules: number;
  readonly firstAim: string;
  readonly replanSchedules: number;
  readonly replanAim: string;
  /** Disturbances a round. */
  readonly disturbances: number;
}

const CASES: readonly Case[] = [
  { size: FORTY, firstSchedules: 8_000, firstAim: '≤ 2000 ms', replanSchedules: 60, replanAim: '≤ 50 ms', disturbances: 200 },
  { size: TWO_HUNDRED, firstSchedules: 20_000, firstAim: '≤ 20000 ms', replanSchedules: 200, replanAim: '≤ 300 ms', disturbances: 60 },
];
/** More than this is a move that somebody has to be told of. */
const MOVED_S = 120;
/** Mean seconds from one disturbance to the next. */
const BETWEEN_S = 600;

/**
 * Whole days of invented batches, planned and planned again at each disturbance, on one thread. Every round has a day of its own. The floor
 * of each figure is what it takes to reckon the price of as many finished plans as the planner may make.
 */
export async function planDay(rounds: number): Promise<readonly Line[]> {
  return CASES.flatMap((one) => linesOf(one, rounds));
}

function linesOf(one: Case, rounds: number): readonly Line[] {
  const firsts: Round[] = [];
  const replans: Round[] = [];
  const slowest: number[] = [];
  const moved: number[] = [];
  let activities = 0;
  for (let round = 0; round < rounds; round += 1) {
    const day = dayProblem(one.size, round + 1);
    activities = day.activities.length;
    const { result: plan, ms } = timed(() => solveDay(day, { schedules: one.firstSchedules, seed: round }));
    const pricing = priceMs(day, plan);
    firsts.push({ value: ms, floor: pricing * one.firstSchedules });
    const { times, movedShare } = livedThrough(one, day, plan, round);
    replans.push({ value: percentile(times, 0.99), floor: pricing * one.replanSchedules });
    slowest.push(Math.max(...times));
    moved.push(movedShare * 100);
  }
  const name = `plan of ${one.size.batches} batches, ${activities} activities`;
  return [
    lineWithFloor(`${name}: first plan, ${one.firstSchedules} schedules; floor: as many prices`, 'ms', one.firstAim, firsts),
    lineWithFloor(
      `${name}: re-plan, p99 of ${one.disturbances}, ${one.replanSchedules} schedules; floor: as many prices`,
      'ms',
      one.replanAim,
      replans,
    ),
    lineOf(`${name}: re-plan, the slowest`, 'ms', 'no aim', slowest),
    lineOf(`${name}: of what is still to come, moved by more than 2 min at a disturbance`, '%', '< 25 %', moved),
  ];
}

/** Disturbances of one day after the other, until there were enough. */
function livedThrough(
  { disturbances, replanSchedules }: Case,
  day: DayProblem,
  first: DaySolution,
  seed: number,
): { times: number[]; movedShare: number } {
  const random = new Random(seed);
  const times: number[] = [];
  let left = 0;
  let moved = 0;
  let underWay = new DayUnderWay(day, first, random);
  while (times.length < disturbances) {
    underWay.goOn(random.below(2 * BETWEEN_S));
    if (underWay.isOver) underWay = new DayUnderWay(day, first, random);
    const before = underWay.plan;
    const problem = underWay.disturb();
    const { result: plan, ms } = timed(() => replanDay(problem, before, { schedules: replanSchedules, seed }));
    times.push(ms);
    for (const [index, startS] of plan.startsS.entries()) {
      if (underWay.hasBegun(index)) continue;
      left += 1;
      if (Math.abs(startS - (before.startsS[index] ?? startS)) > MOVED_S) moved += 1;
    }
    underWay.adopt(plan);
  }
  return { times, movedShare: moved / Math.max(1, left) };
}

/** How long it takes to reckon the price of one finished plan. */
function priceMs(day: DayProblem, { startsS, options }: DaySolution): number {
  const times = 50;
  const { ms } = timed(() => {
    for (let time = 0; time < times; time += 1) priceOf(day, startsS, options);
  });
  return ms / times;
}

function timed<Result>(run: () => Result): { readonly result: Result; readonly ms: number } {
  const startMs = performance.now();
  const result = run();
  return { result, ms: performance.now() - startMs };
}

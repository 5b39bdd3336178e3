import type { Arc, Instance } from '../../../shared/plan/core/instance.ts';

/**
 * Fisher and Thompson's 6 by 6 problem (in Muth and Thompson 1963, Industrial Scheduling), from memory: a line a job, of machine and
 * time in turn. Its least makespan is 55.
 */
export const FT06 = `
  2 1 0 3 1 6 3 7 5 3 4 6
  1 8 2 5 4 10 5 10 0 10 3 4
  2 5 3 4 5 8 0 9 1 1 4 7
  1 5 0 5 2 5 3 3 4 8 5 9
  2 9 1 3 4 5 5 4 0 3 3 1
  1 3 3 3 5 9 0 10 4 4 2 1`;

/** Their 10 by 10 problem, from memory. Its least makespan is 930 (Carlier and Pinson 1989). */
export const FT10 = `
  0 29 1 78 2 9 3 36 4 49 5 11 6 62 7 56 8 44 9 21
  0 43 2 90 4 75 9 11 3 69 1 28 6 46 5 46 7 72 8 30
  1 91 0 85 3 39 2 74 8 90 5 10 7 12 6 89 9 45 4 33
  1 81 2 95 0 71 4 99 6 9 8 52 7 85 3 98 9 22 5 43
  2 14 0 6 1 22 5 61 3 26 4 69 8 21 7 49 9 72 6 53
  2 84 1 2 5 52 3 95 8 48 9 72 0 47 6 65 4 6 7 25
  1 46 0 37 3 61 2 13 6 32 5 21 9 32 8 89 7 30 4 55
  2 31 0 86 1 46 5 74 4 32 6 88 8 19 9 48 7 36 3 79
  0 76 1 69 3 76 5 51 2 85 9 11 6 40 7 89 4 26 8 74
  1 85 0 13 2 61 6 7 8 64 9 76 5 47 3 52 4 90 7 45`;

/** A job shop as an instance: each machine is a resource of which there is one. */
export function jobShop(text: string): Instance {
  const jobs = text
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/u).map(Number));
  const machines = (jobs[0]?.length ?? 0) / 2;
  const last = jobs.length * machines + 1;
  const durations = new Int32Array(last + 1);
  const demands = Array.from({ length: machines }, () => new Int32Array(last + 1));
  const arcs: Arc[] = [];
  for (const [job, numbers] of jobs.entries()) {
    let before = 0;
    for (let step = 0; step < machines; step += 1) {
      const activity = 1 + job * machines + step;
      durations[activity] = numbers[2 * step + 1] ?? 0;
      demands[numbers[2 * step] ?? -1]?.fill(1, activity, activity + 1);
      arcs.push({ from: before, to: activity, lag: durations[before] ?? 0 });
      before = activity;
    }
    arcs.push({ from: before, to: last, lag: durations[before] ?? 0 });
  }
  return { durations, demands, capacities: new Int32Array(machines).fill(1), arcs };
}

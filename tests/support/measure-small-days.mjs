import { runnerImport } from 'vite';

/**
 * Prints how far the day solver stays above the proved optima of the small days, for budgets of schedules.
 * Run: node tests/support/measure-small-days.mjs 1000 4000 16000
 */

const ROOT = new URL('../..', import.meta.url).pathname;

/** @param {string} file */
async function load(file) {
  return (await runnerImport(`${ROOT}${file}`, { configFile: false, root: ROOT })).module;
}

const { provedDays, gapOf } = await load('tests/support/plan-small-days.ts');
const { solveDay } = await load('shared/plan/day/solve-day.ts');
const { days, solver } = provedDays();
process.stdout.write(`${days.length} days, proved by ${solver}\n`);
for (const schedules of process.argv.slice(2).map(Number)) {
  const beganMs = performance.now();
  const gaps = [];
  for (const { problem, optimum } of days) gaps.push(gapOf(solveDay(problem, { schedules, seed: 1 }).cost.total, optimum));
  gaps.sort((a, b) => a - b);
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const percent = (/** @type {number} */ share) => `${(100 * share).toFixed(1)} %`;
  const eachMs = (performance.now() - beganMs) / days.length;
  process.stdout.write(
    `${schedules} schedules: mean ${percent(mean)}, median ${percent(gaps[Math.floor(gaps.length / 2)])}, worst ${percent(gaps.at(-1))}, ` +
      `best ones found ${gaps.filter((gap) => gap < 1e-6).length}, ${eachMs.toFixed(0)} ms a day\n`,
  );
}

import { writeFileSync } from 'node:fs';
import { runnerImport } from 'vite';
import { solveModel, solverName } from './general-solver.mjs';

/**
 * Has small days solved to proven optimality by a general solver and writes small-days.json beside this file, so that tests
 * need no solver. Days that are not proved within the limit are left out and told. Run: node tests/support/prove-small-days.mjs
 */

const ROOT = new URL('../..', import.meta.url).pathname;
const LIMIT_MS = 300_000;
const STEP_S = 300;
/** Days of so many batches, and how many of each. */
const SIZES = [4, 5, 6, 8, 10, 12];
const DAYS_EACH = 6;
/** A best plan has nothing begin so many steps after the last is due, and no lag overrun by so many more: both are looked at below. */
const STEPS_BEHIND = 60;
const MOST_OVER_STEPS = 12;

/** @param {string} file */
async function load(file) {
  return (await runnerImport(`${ROOT}${file}`, { configFile: false, root: ROOT })).module;
}

const { smallDay, PRICE_STEP } = await load('tests/support/plan-small-day.ts');
const { modelOf } = await load('tests/support/plan-small-day-model.ts');
const { digestOf } = await load('tests/support/plan-small-days.ts');
const { costOf } = await load('tests/support/plan-cost.ts');
const { faultsOf } = await load('tests/support/plan-validator.ts');
const { solveDay } = await load('shared/plan/day/solve-day.ts');

/**
 * What anything outside the limits of the model costs at least: every step leads to a goal, so that one that begins at the
 * horizon makes a goal late by what lies between; and a lag overrun by more than the most costs its price.
 *
 * @param {import('../../shared/plan/day/problem.ts').DayProblem} problem
 */
function leastCutOff({ goals, lags }) {
  const horizonS = horizonSteps(goals) * STEP_S;
  const late = goals.map(({ latePrice, dueS }) => (latePrice * (horizonS - dueS)) / 60);
  const spoilt = lags.filter(({ mostS }) => mostS !== null).map(({ spoilPrice }) => (spoilPrice * MOST_OVER_STEPS * STEP_S) / 60);
  return Math.min(...late, ...spoilt);
}

/** @param {import('../../shared/plan/day/problem.ts').DayProblem['goals']} goals */
function horizonSteps(goals) {
  return Math.ceil(Math.max(...goals.map(({ dueS }) => dueS)) / STEP_S) + STEPS_BEHIND;
}

const days = [];
for (const batchCount of SIZES) {
  for (let seed = 1; seed <= DAYS_EACH; seed += 1) {
    const problem = smallDay(seed, batchCount);
    // Something to be better than: it only shortens the search, and were it wrong, there would be no solution.
    const known = solveDay(problem, { schedules: 3000, seed: 1 });
    const limits = { horizonSteps: horizonSteps(problem.goals), mostOverSteps: MOST_OVER_STEPS, priceStep: PRICE_STEP };
    const bound = `constraint cost <= ${Math.ceil(known.cost.total / PRICE_STEP)};`;
    const beganMs = performance.now();
    const { status, solution, errors } = await solveModel(`include "globals.mzn";\n${modelOf(problem, limits)}\n${bound}`, LIMIT_MS);
    const tookS = ((performance.now() - beganMs) / 1000).toFixed(1);
    const name = `${batchCount} batches, seed ${seed}, ${problem.activities.length} activities`;
    if (status !== 'OPTIMAL_SOLUTION' || solution === null) {
      process.stdout.write(`${name}: ${status} after ${tookS} s, known ${known.cost.total} ${JSON.stringify(errors)}\n`);
      continue;
    }
    const startsS = solution.s.map((/** @type {number} */ step) => step * STEP_S);
    const options = problem.choices.map((/** @type {unknown} */ _, /** @type {number} */ index) => solution[`c${index}`]);
    const faults = faultsOf(problem, { startsS, options });
    const optimum = costOf(problem, { startsS, options }).total;
    if (faults.length > 0) throw new Error(`${name}: the model and the check differ: ${faults.join('; ')}`);
    if (optimum >= leastCutOff(problem)) throw new Error(`${name}: ${optimum} is dearer than what the limits of the model cut off`);
    process.stdout.write(`${name}: ${optimum} proved in ${tookS} s, known before ${known.cost.total.toFixed(2)}\n`);
    days.push({ seed, batchCount, digest: digestOf(problem), optimum: Number(optimum.toFixed(6)), startsS, options });
  }
}
writeFileSync(new URL('small-days.json', import.meta.url), `${JSON.stringify({ solver: solverName(), days })}\n`);

import { performance } from 'node:perf_hooks';
import { LaunchFault, say } from './say.mjs';
import { budgetWarnings, closingLine, outcomeTable } from './test-report.mjs';
import { chooseStages, STAGES } from './test-stages.mjs';

/** Exit code of a command line that cannot be understood, as shells use it. */
const USAGE = 2;

/**
 * Runs the stages named, or all of them, in their order, up to the first that fails; then prints the table and the closing line.
 *
 * @param {readonly string[]} names
 * @returns {Promise<number>} the exit code
 */
export async function main(names) {
  const unknown = names.find((name) => STAGES.every((stage) => stage.name !== name));
  if (unknown !== undefined) {
    say(`There is no stage "${unknown}". The stages are: ${STAGES.map((stage) => stage.name).join(', ')}.`);
    return USAGE;
  }

  /** @type {import('./test-report.mjs').StageOutcome[]} */
  const outcomes = [];
  for (const stage of chooseStages(names)) {
    const outcome = await perform(stage);
    outcomes.push(outcome);
    if (outcome.failed > 0) break;
  }
  print('');
  print(outcomeTable(outcomes));
  for (const warning of budgetWarnings(outcomes)) print(`\n${warning}`);
  print(`\n${closingLine(outcomes)}`);
  return outcomes.some((outcome) => outcome.failed > 0) ? 1 : 0;
}

/**
 * @param {import('./test-stages.mjs').Stage} stage
 * @returns {Promise<import('./test-report.mjs').StageOutcome>}
 */
async function perform(stage) {
  print(`\n== ${stage.name}`);
  const beganMs = performance.now();
  const { passed, failed, output, complaint } = await runStage(stage);
  const seconds = (performance.now() - beganMs) / 1_000;
  if (output !== '') print(output);
  if (complaint !== '') print(`\nFAILED: ${stage.name}. ${complaint}`);
  return { name: stage.name, seconds, budgetS: stage.budgetS, passed, failed };
}

/**
 * @param {import('./test-stages.mjs').Stage} stage
 * @returns {Promise<import('./test-stages.mjs').StageResult>}
 */
async function runStage(stage) {
  try {
    return await stage.run();
  } catch (fault) {
    if (!(fault instanceof LaunchFault)) throw fault;
    return { passed: 0, failed: 1, output: fault.details, complaint: fault.message };
  }
}

function print(/** @type {string} */ text) {
  process.stdout.write(`${text}\n`);
}

import { checkTypes, ensureBuilt } from './build.mjs';
import { ensureChromium } from './chromium.mjs';
import { ROOT, tool } from './places.mjs';
import { runTool } from './run-tool.mjs';
import { runSuite } from './test-suite.mjs';

/**
 * How a stage ended. A check that is no suite of tests counts as nothing when it passes and as one failure when it fails.
 *
 * @typedef {{ passed: number, failed: number, output: string, complaint: string }} StageResult
 * `output` is what the tool said if that is still to be shown, `complaint` one line on what is wrong, '' if nothing is
 */

/**
 * One stage of `npm test`: a check, a preparation or a suite. `budgetS` is how long a suite may take on two quiet cores, in seconds;
 * `neededBy` names the stages that cannot run without this one.
 *
 * @typedef {{ name: string, budgetS?: number, neededBy?: readonly string[], run: () => Promise<StageResult> }} Stage
 * @type {readonly Stage[]}
 */
export const STAGES = [
  // First, so that a browser that is missing is told before minutes of other tests and not after.
  { name: 'chromium', neededBy: ['browser', 'live'], run: provideChromium },
  { name: 'types', run: async () => check(await checkTypes(), 'The type check found faults.') },
  { name: 'format', run: () => checkWith('oxfmt', ['--check'], 'Some files are not formatted. Run: npx oxfmt') },
  { name: 'lint', run: () => checkWith('oxlint', ['--type-aware', '--deny-warnings'], 'The linter found faults.') },
  { name: 'domain', budgetS: 30, run: () => runSuite('domain') },
  { name: 'build', neededBy: ['server', 'browser', 'live'], run: build },
  { name: 'server', budgetS: 50, run: () => runSuite('server') },
  { name: 'simulation', budgetS: 30, run: () => runSuite('simulation') },
  { name: 'browser', budgetS: 240, run: () => runSuite('browser') },
  { name: 'live', budgetS: 115, run: () => runSuite('live') },
];

/**
 * The stages to run: all, or those named with what they need.
 *
 * @param {readonly string[]} names
 */
export function chooseStages(names) {
  if (names.length === 0) return STAGES;
  return STAGES.filter((stage) => names.includes(stage.name) || stage.neededBy?.some((name) => names.includes(name)) === true);
}

async function provideChromium() {
  const path = await ensureChromium();
  process.env['CHROMIUM_PATH'] = path;
  return { passed: 0, failed: 0, output: path, complaint: '' };
}

/** The built server and pages, which the server tests and the browser tests start as a user would. */
async function build() {
  // All of it now: a part that is built for the first time while tests run clears away what their servers are started from.
  await ensureBuilt(['server', 'pages', 'tests']);
  return check('', '');
}

/** @param {string} name @param {readonly string[]} args @param {string} complaint */
async function checkWith(name, args, complaint) {
  const { exitCode, output } = await runTool(tool(name), args, { cwd: ROOT });
  return check(exitCode === 0 ? '' : output || `${name} ended with exit code ${exitCode}`, complaint);
}

/** @param {string} faults @param {string} complaint */
function check(faults, complaint) {
  return faults === ''
    ? { passed: 0, failed: 0, output: '', complaint: '' }
    : { passed: 0, failed: 1, output: faults.trimEnd(), complaint };
}

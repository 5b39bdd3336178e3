import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { BUILD, MODULES, ROOT } from './places.mjs';
import { runTool } from './run-tool.mjs';

/**
 * The part of vitest's JSON report that counts. Its fields are those of vitest 4's JSON reporter.
 *
 * @typedef {{
 *   numTotalTests: number, numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number,
 *   testResults: readonly { status: string, assertionResults: readonly unknown[] }[],
 * }} VitestReport
 */

/**
 * Judges a suite by its report and vitest's exit code. A suite fails when a test failed, when a file could not be loaded (counted as
 * one failure each), when a test was skipped or is still to be written, when there was no test at all, and when vitest itself failed.
 *
 * @param {VitestReport | undefined} report `undefined` where vitest wrote none
 * @param {number} exitCode
 * @returns {{ passed: number, failed: number, complaint: string }}
 */
export function judgeSuite(report, exitCode) {
  if (report === undefined) return { passed: 0, failed: 1, complaint: `vitest ended with exit code ${exitCode} and without a report.` };
  const passed = report.numPassedTests;
  const unloaded = report.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
  const failed = report.numFailedTests + unloaded;
  const skipped = report.numPendingTests + report.numTodoTests;
  if (failed > 0) return { passed, failed, complaint: `${failed} failed.` };
  if (skipped > 0)
    return { passed, failed: skipped, complaint: `${skipped} did not run: a test is neither skipped nor left to be written.` };
  if (report.numTotalTests === 0) return { passed, failed: 1, complaint: 'There was no test in it.' };
  if (exitCode !== 0) return { passed, failed: 1, complaint: `Every test passed, but vitest ended with exit code ${exitCode}.` };
  return { passed, failed: 0, complaint: '' };
}

/**
 * Runs one vitest project, its output passed through, and judges it.
 *
 * @param {string} project a project's name in tests/vitest.config.ts
 */
export async function runSuite(project) {
  const reportFile = join(BUILD, `tests-${project}.json`);
  mkdirSync(BUILD, { recursive: true });
  rmSync(reportFile, { force: true });
  const vitest = [join(MODULES, 'vitest/vitest.mjs'), 'run', '--config', 'tests/vitest.config.ts', '--project', project];
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`];
  const env = { ...process.env, NODE_ENV: 'test' };
  const { exitCode } = await runTool(process.execPath, [...vitest, ...reporters], { cwd: ROOT, env, show: true });
  return { ...judgeSuite(readReport(reportFile), exitCode), output: '' };
}

/**
 * @param {string} file
 * @returns {VitestReport | undefined}
 */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    if (error instanceof SyntaxError || /** @type {NodeJS.ErrnoException} */ (error).code === 'ENOENT') return undefined;
    throw error;
  }
}

/**
 * One stage as it went.
 *
 * @typedef {{ name: string, seconds: number, budgetS?: number | undefined, passed: number, failed: number }} StageOutcome
 */

/**
 * The table at the end of `npm test`: seconds, budget, passed and failed of every stage that ran.
 *
 * @param {readonly StageOutcome[]} outcomes
 * @returns {string}
 */
export function outcomeTable(outcomes) {
  const rows = [
    ['stage', 'seconds', 'budget', 'passed', 'failed'],
    ...outcomes.map(({ name, seconds, budgetS, passed, failed }) => {
      return [name, seconds.toFixed(1), budgetS === undefined ? '-' : String(budgetS), String(passed), String(failed)];
    }),
  ];
  const width = (/** @type {number} */ column) => Math.max(...rows.map((row) => row[column]?.length ?? 0));
  const line = (/** @type {readonly string[]} */ row) => {
    return row.map((cell, column) => (column === 0 ? cell.padEnd(width(column)) : cell.padStart(width(column)))).join('  ');
  };
  return rows.map(line).join('\n');
}

/**
 * One line for every stage that took longer than its budget. A warning and never a failure: a machine may be busy with something else.
 *
 * @param {readonly StageOutcome[]} outcomes
 */
export function budgetWarnings(outcomes) {
  return outcomes.flatMap(({ name, seconds, budgetS }) => {
    return budgetS === undefined || seconds <= budgetS ? [] : [`OVER BUDGET: ${name} took ${seconds.toFixed(1)} s of ${budgetS} s`];
  });
}

/**
 * The closing line, which CI reads.
 *
 * @param {readonly StageOutcome[]} outcomes
 */
export function closingLine(outcomes) {
  const sum = (/** @type {'passed' | 'failed'} */ what) => outcomes.reduce((total, outcome) => total + outcome[what], 0);
  return `${sum('passed')} passed, ${sum('failed')} failed`;
}

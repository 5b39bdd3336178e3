import { describe, expect, test } from 'vitest';
import { budgetWarnings, closingLine, outcomeTable } from '../../server/cli/test-report.mjs';
import { chooseStages } from '../../server/cli/test-stages.mjs';
import { judgeSuite } from '../../server/cli/test-suite.mjs';

const LOADED = { status: 'passed', assertionResults: [{}] };

function report(counts: { passed?: number; failed?: number; pending?: number; todo?: number }, testResults = [LOADED]) {
  const { passed = 0, failed = 0, pending = 0, todo = 0 } = counts;
  return {
    numTotalTests: passed + failed + pending + todo,
    numPassedTests: passed,
    numFailedTests: failed,
    numPendingTests: pending,
    numTodoTests: todo,
    testResults,
  };
}

describe('a suite', () => {
  test('passes when all its tests did', () => {
    expect(judgeSuite(report({ passed: 3 }), 0)).toEqual({ passed: 3, failed: 0, complaint: '' });
  });

  test.each([
    ['a failed test', report({ passed: 3, failed: 2 }), 1, { passed: 3, failed: 2 }],
    [
      'a file that cannot be loaded',
      report({ passed: 3 }, [LOADED, { status: 'failed', assertionResults: [] }]),
      1,
      { passed: 3, failed: 1 },
    ],
    ['a skipped test', report({ passed: 3, pending: 1 }), 0, { passed: 3, failed: 1 }],
    ['a test still to be written', report({ passed: 3, todo: 1 }), 0, { passed: 3, failed: 1 }],
    ['no test at all', report({}, []), 0, { passed: 0, failed: 1 }],
    ['an exit code of its own', report({ passed: 3 }), 1, { passed: 3, failed: 1 }],
    ['no report', undefined, 0, { passed: 0, failed: 1 }],
  ])('fails by %s', (_, given, exitCode, counts) => {
    const judged = judgeSuite(given, exitCode);
    expect(judged).toMatchObject(counts);
    expect(judged.complaint).not.toBe('');
  });
});

describe('the stages', () => {
  test('named are run with what they need, in their order', () => {
    expect(chooseStages(['browser', 'domain']).map((stage) => stage.name)).toEqual(['chromium', 'domain', 'build', 'browser']);
    expect(chooseStages(['types']).map((stage) => stage.name)).toEqual(['types']);
  });

  test('are all run where none is named', () => {
    const names = chooseStages([]).map((stage) => stage.name);
    expect(names).toEqual(['chromium', 'types', 'format', 'lint', 'domain', 'build', 'server', 'simulation', 'browser', 'live']);
  });
});

describe('the report', () => {
  const outcomes = [
    { name: 'types', seconds: 2.04, passed: 0, failed: 0 },
    { name: 'domain', seconds: 6.5, budgetS: 5, passed: 120, failed: 0 },
    { name: 'server', seconds: 30, budgetS: 30, passed: 40, failed: 3 },
  ];

  test('is a table of seconds, budget and counts', () => {
    expect(outcomeTable(outcomes).split('\n')).toEqual([
      'stage   seconds  budget  passed  failed',
      'types       2.0       -       0       0',
      'domain      6.5       5     120       0',
      'server     30.0      30      40       3',
    ]);
  });

  test('warns of what took longer than its budget and of nothing else', () => {
    expect(budgetWarnings(outcomes)).toEqual(['OVER BUDGET: domain took 6.5 s of 5 s']);
  });

  test('closes with the sums', () => {
    expect(closingLine(outcomes)).toBe('160 passed, 3 failed');
  });
});

import { describe, expect, it } from 'vitest';
import { solveWithLags } from '../../shared/plan/core/lag-search.ts';
import { readProgenMax } from '../../shared/plan/core/read-progen-max.ts';
import { assert } from '../../shared/result.ts';

/** The layout of ProGen/max (Kolisch, Schwindt and Sprecher 1999), with numbers of our own. */
const LINES = [
  '2\t2\t0\t0',
  '0\t1\t2\t1\t2\t[0]\t[0]',
  '1\t1\t2\t2\t3\t[-1]\t[4]',
  '2\t1\t2\t3\t1\t[3]\t[-2]',
  '3\t1\t0',
  '0\t1\t0\t0\t0',
  '1\t1\t4\t2\t0',
  '2\t1\t3\t1\t1',
  '3\t1\t0\t0\t0',
  '2\t1',
];
const TEXT = `${LINES.join('\r\n')}\r\n`;

describe('reading .SCH', () => {
  it('A23 takes successors with their lags, durations, demands and capacities', () => {
    const instance = {
      durations: Int32Array.of(0, 4, 3, 0),
      demands: [Int32Array.of(0, 2, 1, 0), Int32Array.of(0, 0, 1, 0)],
      capacities: Int32Array.of(2, 1),
      arcs: [
        { from: 0, to: 1, lag: 0 },
        { from: 0, to: 2, lag: 0 },
        { from: 1, to: 2, lag: -1 },
        { from: 1, to: 3, lag: 4 },
        { from: 2, to: 3, lag: 3 },
        { from: 2, to: 1, lag: -2 },
      ],
    };
    expect(readProgenMax(TEXT)).toEqual({ ok: true, value: instance });
    expect(readProgenMax(LINES.join('\n'))).toEqual({ ok: true, value: instance });
    expect(readProgenMax(TEXT.replace('2\t2\t0\t0', '2 2'))).toEqual({ ok: true, value: instance });
  });

  it('A23 an instance that is read can be planned', () => {
    const read = readProgenMax(TEXT);
    assert(read.ok, 'readable');
    // Together they need 3 of 2; the second starts 1 before the first at the earliest, the first 2 before the second.
    expect(solveWithLags(read.value, { schedules: 50, seed: 1 })).toMatchObject({ starts: null, isProvedInfeasible: true });
  });

  it.each<[string, number, string, string]>([
    ['no count', 1, 'two\t2', 'number of activities'],
    ['no resources', 1, '2', 'number of resources'],
    ['other resources', 1, '2\t2\t1\t0', 'only renewable'],
    ['another activity', 3, '2\t1\t2\t2\t3\t[-1]\t[4]', 'activity 1 is expected'],
    ['more modes', 3, '1\t2\t2\t2\t3\t[-1]\t[4]', 'one mode'],
    ['a lag missing', 3, '1\t1\t2\t2\t3\t[-1]', 'as many lags'],
    ['a lag too many', 3, '1\t1\t2\t2\t3\t[-1]\t[4]\t[5]', 'as many lags'],
    ['no such successor', 3, '1\t1\t2\t2\t4\t[-1]\t[4]', 'no activity 4'],
    ['a lag without brackets', 3, '1\t1\t2\t2\t3\t-1\t[4]', 'in brackets, not -1'],
    ['a demand missing', 7, '1\t1\t4\t2', '3 numbers are needed, not 2'],
    ['a demand below 0', 7, '1\t1\t4\t-2\t0', 'whole numbers from 0'],
    ['a last activity that takes time', 9, '3\t1\t1\t0\t0', 'take no time'],
    ['a capacity too many', 10, '2\t1\t1', 'capacities: 2 numbers'],
  ])('A23 names the line that is at fault: %s', (_, line, text, message) => {
    const lines = LINES.with(line - 1, text);
    expect(readProgenMax(lines.join('\n'))).toEqual({ ok: false, fault: { line, message: expect.stringContaining(message) as string } });
  });

  it('A23 says where a text ends too soon or goes on too long, counting empty lines too', () => {
    expect(readProgenMax('')).toMatchObject({ ok: false, fault: { line: 1 } });
    expect(readProgenMax(LINES.slice(0, -1).join('\n'))).toMatchObject({ ok: false, fault: { line: 9 } });
    expect(readProgenMax(`\n${TEXT}\r\n1\t1`)).toMatchObject({ ok: false, fault: { line: 13 } });
  });
});

import { describe, expect, it } from 'vitest';
import { readPsplib } from '../../shared/plan/core/read-psplib.ts';
import { solveInstance } from '../../shared/plan/core/solve.ts';

/** The layout of the library's single-mode files (Kolisch and Sprecher 1996), with numbers of our own. */
const TEXT = `************************************************************************
file with basedata            : own.bas
initial value random generator: 1
************************************************************************
projects                      :  1
jobs (incl. supersource/sink ):  5
horizon                       :  9
RESOURCES
  - renewable                 :  2   R
  - nonrenewable              :  0   N
  - doubly constrained        :  0   D
************************************************************************
PROJECT INFORMATION:
pronr.  #jobs rel.date duedate tardcost  MPM-Time
    1      3      0        9        0        6
************************************************************************
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           5
   4        1          1           5
   5        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  R 2
------------------------------------------------------------------------
  1      1     0       0    0
  2      1     4       2    0
  3      1     3       2    1
  4      1     2       1    1
  5      1     0       0    0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1  R 2
    3    1
************************************************************************
`;

/** The line, counted from 1, in which a text stands first. */
const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;

describe('reading .sm', () => {
  it('A13 takes jobs, precedence, durations, requests and availabilities', () => {
    expect(readPsplib(TEXT)).toEqual({
      ok: true,
      value: {
        durations: Int32Array.of(0, 4, 3, 2, 0),
        demands: [Int32Array.of(0, 2, 2, 1, 0), Int32Array.of(0, 0, 1, 1, 0)],
        capacities: Int32Array.of(3, 1),
        arcs: [
          { from: 0, to: 1, lag: 0 },
          { from: 0, to: 2, lag: 0 },
          { from: 1, to: 3, lag: 4 },
          { from: 2, to: 4, lag: 3 },
          { from: 3, to: 4, lag: 2 },
        ],
      },
    });
    expect(readPsplib(TEXT.replaceAll('\n', '\r\n'))).toEqual(readPsplib(TEXT));
  });

  it('A13 what is read is planned: by hand, jobs 2 and 3 cannot run together, nor 3 and 4', () => {
    const read = readPsplib(TEXT);
    expect(read.ok && solveInstance(read.value, { schedules: 50, seed: 1 }).makespan).toBe(9);
  });

  it.each([
    ['jobs (incl. supersource/sink ):  5', 'jobs (incl. supersource/sink ):  1', 'number of jobs'],
    ['  - renewable                 :  2   R', '  - renewable                 :  999   R', 'renewable'],
    ['  - nonrenewable              :  0   N', '  - nonrenewable              :  2   N', 'only renewable'],
    ['   2        1          1           4', '   2        1          1           9', 'no job 9'],
    ['   2        1          1           4', '   2        1          1           2', 'follow itself'],
    ['   2        1          1           4', '   2        1          2           4', 'as many successors'],
    ['   2        1          1           4', '   2        2          1           4', 'one mode'],
    ['   3        1          1           5', '   7        1          1           5', 'job 3 is expected'],
    ['  3      1     3       2    1', '  3      1     x       2    1', 'whole numbers'],
    ['  3      1     3       2    1', '  3      1     3       2', '2 requests'],
    ['  3      1     3       2    1', '  3      1     -3      2    1', '-3 is not'],
    ['  3      1     3       2    1', '  3      1     3       2    9999999', '9999999 is not'],
    ['  1      1     0       0    0', '  1      1     4       0    0', 'no time'],
    ['    3    1\n', '    3\n', '2 availabilities'],
  ])('A14 names the line and the fault: %s as %s', (right, wrong, message) => {
    expect(TEXT).toContain(right);
    const text = TEXT.replace(right, wrong);
    const read = readPsplib(text);
    expect(read).toMatchObject({ ok: false, fault: { line: lineOf(text, wrong), message: expect.stringContaining(message) as string } });
  });

  it.each(['PRECEDENCE RELATIONS:', 'REQUESTS/DURATIONS:', 'RESOURCEAVAILABILITIES:'])('A14 misses the part %s', (heading) => {
    expect(readPsplib(TEXT.replace(heading, ''))).toMatchObject({
      ok: false,
      fault: { message: expect.stringContaining(heading) as string },
    });
  });

  it('A14 a file that ends too soon is at fault where it ends', () => {
    const cut = TEXT.slice(0, TEXT.indexOf('   4        1          1           5'));
    expect(readPsplib(cut)).toMatchObject({ ok: false });
    expect(readPsplib('')).toMatchObject({ ok: false, fault: { line: 1 } });
  });
});

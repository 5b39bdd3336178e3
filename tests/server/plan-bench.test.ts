import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { main, streamsTo } from '../../server/cli/plan-bench.ts';
import { folderForTest } from './support/temporary-folder.ts';

/** Two jobs on one machine of a capacity that is given: by hand 5 where it is 1, 3 where it is 2. */
const sm = (capacity: number): string => `
jobs (incl. supersource/sink ):  4
  - renewable                 :  1   R
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           4
   4        1          0
REQUESTS/DURATIONS:
jobnr. mode duration  R 1
-------------------------
  1      1     0       0
  2      1     2       1
  3      1     3       1
  4      1     0       0
RESOURCEAVAILABILITIES:
  R 1
    ${capacity}
`;

/** Two activities that both need the one machine; the second starts 1 after the first at the latest, while it lasts. */
const IMPOSSIBLE_SCH = `2 1 0 0
0 1 2 1 2 [0] [0]
1 1 2 2 3 [1] [4]
2 1 2 1 3 [-1] [4]
3 1 0
0 1 0 0
1 1 4 1
2 1 4 1
3 1 0 0
1
`;

interface Said {
  readonly code: number;
  readonly lines: readonly Record<string, unknown>[];
  readonly err: string;
}

async function planBench(...args: readonly string[]): Promise<Said> {
  let [out, err, nowMs] = ['', '', 0];
  const code = await main(args, {
    out: (text) => (out += text),
    err: (text) => (err += text),
    isRead: () => true,
    nowMs: () => (nowMs += 1.5),
  });
  const lines = out.split('\n').slice(0, -1);
  return { code, lines: lines.map((line) => JSON.parse(line) as Record<string, unknown>), err };
}

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = folderForTest();
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

describe('plan-bench', () => {
  it('A14 plans each file in the order of names, an object a line, and nothing else', async () => {
    const folder = folderWith({ 'two.sm': sm(1), 'one.sm': sm(2), 'never.SCH': IMPOSSIBLE_SCH, 'notes.txt': 'no instance' });
    const said = await planBench('--dir', folder, '--schedules', '20', '--seed', '-1');
    expect(said).toMatchObject({ code: 0, err: '' });
    expect(said.lines).toEqual([
      { instance: 'never', makespan: null, starts: [], schedules: expect.any(Number) as number, ms: 1.5 },
      { instance: 'one', makespan: 3, starts: [0, 0, 0, 3], schedules: 1, ms: 1.5 },
      { instance: 'two', makespan: 5, starts: expect.any(Array) as number[], schedules: 1, ms: 1.5 },
    ]);
    expect(await planBench('--dir', folder, '--schedules', '20', '--seed', '-1')).toEqual(said);
  });

  it('A14 a file that cannot be read is named with its fault; the others are planned', async () => {
    const folder = folderWith({ 'a.sm': 'nothing', 'b.sm': sm(1) });
    mkdirSync(join(folder, 'c.sm'));
    const said = await planBench('--dir', folder, '--schedules', '5', '--seed', '1');
    expect(said.code).toBe(1);
    expect(said.lines.map((line) => line['instance'])).toEqual(['b']);
    expect(said.err).toMatch(/^a\.sm: line 1: .*PRECEDENCE RELATIONS.*\nc\.sm: EISDIR.*\n$/u);
  });

  it.each([
    [[], '--dir'],
    [['--dir', '/there/is/no/such/folder', '--schedules', '1', '--seed', '1'], '--dir'],
    [['--dir', '.', '--schedules', '0', '--seed', '1'], '--schedules'],
    [['--dir', '.', '--schedules', '-5', '--seed', '1'], '--schedules'],
    [['--dir', '.', '--schedules', '1.5', '--seed', '1'], '--schedules'],
    [['--dir', '.', '--seed', '1'], '--schedules'],
    [['--dir', '.', '--schedules', '10'], '--seed'],
    [['--dir', '.', '--schedules', '10', '--seed', 'x'], '--seed'],
    [['--dir', '.', '--schedules', '10', '--seed'], '--seed'],
    [['--dir', '.', '--schedules', '10', '--seed', '1', '--fast'], '--fast'],
  ])('A14 refuses %j and names %s', async (args, named) => {
    const { code, lines, err } = await planBench(...args);
    expect({ code, lines }).toEqual({ code: 2, lines: [] });
    expect(err.split('. Usage')[0]).toContain(named);
  });

  it('A14 ends quietly, and plans no more, once nobody reads its lines', async () => {
    const folder = folderWith(Object.fromEntries(Array.from({ length: 20 }, (_, n) => [`${n + 10}.sm`, sm(1)])));
    const taken: string[] = [];
    let [err, plannedCount] = ['', 0];
    // As head does: it takes two lines and closes the pipe, which the third is told.
    const pipe = new Writable({
      write: (chunk: Buffer, _encoding, done) => {
        if (taken.length === 2) return done(Object.assign(new Error('write EPIPE'), { code: 'EPIPE', syscall: 'write' }));
        taken.push(chunk.toString());
        done();
      },
    });
    const said = new Writable({ write: (chunk: Buffer, _encoding, done) => ((err += chunk.toString()), done()) });
    const code = await main(['--dir', folder, '--schedules', '5', '--seed', '1'], {
      ...streamsTo(pipe, said),
      nowMs: () => (plannedCount += 1),
    });
    expect({ code, err, lines: taken.map((line) => (JSON.parse(line) as { instance: string }).instance) }).toEqual({
      code: 0,
      err: '',
      lines: ['10', '11'],
    });
    // Twice a file.
    expect(plannedCount).toBeLessThanOrEqual(2 * 4);
  });

  it('A14 a folder without any instance is refused', async () => {
    const { code, err } = await planBench('--dir', folderWith({ 'a.txt': '' }), '--schedules', '1', '--seed', '1');
    expect(code).toBe(2);
    expect(err).toContain('no .sm or .SCH');
  });
});

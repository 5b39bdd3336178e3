import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryKey, mergeCalls, type Entry } from '../../display/parts/entry.ts';
import { isSteady, steadyOrder } from '../../display/parts/order.ts';
import { groupByStage } from '../../display/wall/rows-plan.ts';
import { boardRow } from './support/board-row.ts';

const NOW_MS = 10_000_000;
const MINUTE_MS = 60_000;

function entry(n: number, dueInMs: number): Entry {
  return [boardRow(n, { dueMs: NOW_MS + dueInMs })];
}

function tags(entries: readonly Entry[]): string[] {
  return entries.map((rows) => rows.map((row) => row.tag).join('+'));
}

describe('the order of the wall', () => {
  test('is the wanted one where nothing is within 60 s of due', () => {
    const wanted = [entry(1, 5 * MINUTE_MS), entry(2, 9 * MINUTE_MS), entry(3, 20 * MINUTE_MS)];
    expect(tags(steadyOrder([...wanted].reverse().map(entryKey), wanted, NOW_MS))).toEqual(['C1', 'C2', 'C3']);
  });

  test('a row within 60 s of due keeps its place when a stronger one comes', () => {
    const before = [entry(1, 30_000), entry(2, 9 * MINUTE_MS)];
    const wanted = [entry(3, -20 * MINUTE_MS), ...before];
    expect(tags(steadyOrder(before.map(entryKey), wanted, NOW_MS))).toEqual(['C1', 'C3', 'C2']);
  });

  test('a row due 60 s ago keeps its place, one due a little longer ago does not', () => {
    const before = [entryKey(entry(2, 0)), entryKey(entry(1, 0))];
    expect(tags(steadyOrder(before, [entry(1, -60_000), entry(2, 5 * MINUTE_MS)], NOW_MS))).toEqual(['C2', 'C1']);
    expect(tags(steadyOrder(before, [entry(1, -60_001), entry(2, 5 * MINUTE_MS)], NOW_MS))).toEqual(['C1', 'C2']);
  });

  test('shows each line once, and steady ones where they were', () => {
    const due = fc.integer({ min: -5 * MINUTE_MS, max: 5 * MINUTE_MS });
    fc.assert(
      fc.property(fc.array(due, { maxLength: 8 }), fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 8 }), (dues, before) => {
        const wanted = dues.map((dueInMs, index) => entry(index, dueInMs));
        const previous = [...new Set(before)].map((n) => entryKey(entry(n, 0)));
        const shown = steadyOrder(previous, wanted, NOW_MS);
        expect(shown.map(entryKey).sort()).toEqual(wanted.map(entryKey).sort());
        for (const line of shown) {
          const was = previous.indexOf(entryKey(line));
          if (isSteady(line, NOW_MS) && was >= 0 && was < shown.length) expect(shown.indexOf(line)).toBe(was);
        }
      }),
    );
  });
});

describe('equal calls', () => {
  const calls = [
    boardRow(1, { role: 'call', verb: 'fold', dueMs: 0 }),
    boardRow(2, { role: 'call', verb: 'divide', dueMs: 10_000 }),
    boardRow(3, { role: 'call', verb: 'fold', dueMs: 90_000 }),
    boardRow(4, { role: 'call', verb: 'fold', dueMs: 90_001 }),
    boardRow(5, { role: 'running', verb: 'fold', dueMs: 95_000 }),
  ];

  test('merge when due within 90 s of the first', () => {
    expect(tags(mergeCalls(calls, 90_000))).toEqual(['C1+C3', 'C2', 'C4', 'C5']);
  });

  test('merge whenever there is no room for each, but never with what only runs', () => {
    expect(tags(mergeCalls(calls, Number.POSITIVE_INFINITY))).toEqual(['C1+C3+C4', 'C2', 'C5']);
  });

  test('a check is another call than the work of the same name', () => {
    const rows = [boardRow(1, { role: 'call', verb: 'secondSpeed', isCheck: true }), boardRow(2, { role: 'call', verb: 'secondSpeed' })];
    expect(mergeCalls(rows, Number.POSITIVE_INFINITY)).toHaveLength(2);
  });
});

describe('group rows', () => {
  test('are one for each stage, and the last takes what is over', () => {
    const stages = ['bulk', 'proving', 'bulk', 'cold', 'oven'] as const;
    const rows = stages.map((stage, index) => boardRow(index, { stage }));
    expect(groupByStage(rows, 3).map((group) => [group.stage, group.rows.length])).toEqual([
      ['bulk', 2],
      ['proving', 1],
      [null, 2],
    ]);
    expect(groupByStage(rows, 4).map((group) => group.stage)).toEqual(['bulk', 'proving', 'cold', 'oven']);
  });
});

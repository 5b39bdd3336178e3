import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { axisMarks, axisX, REACH_MS } from '../../display/wall/axis.ts';
import { groupTicks } from '../../display/wall/group-ticks.ts';
import { textWidthPx } from '../../display/parts/text-width.ts';
import { boardRow } from './support/board-row.ts';

const MINUTE_MS = 60_000;

describe('the compressive axis, x = W·ln(1 + t/6 min) / ln(1 + 12 h/6 min)', () => {
  // Worked by hand: ln(1 + t/6) ÷ ln 121 · 1000.
  test.each([
    [0, 0],
    [6, 144.5],
    [60, 500],
    [120, 634.8],
    [720, 1000],
  ])('%i min stands at %f of 1000 px', (minutes, xPx) => {
    expect(axisX(minutes * MINUTE_MS, 1000)).toBeCloseTo(xPx, 1);
  });

  test('what is past stands at NOW, what is beyond twelve hours at the end', () => {
    expect(axisX(-1, 800)).toBe(0);
    expect(axisX(REACH_MS + 1, 800)).toBe(800);
  });

  test('marks keep their lines where their texts would touch', () => {
    expect(axisMarks(800, 42).map((mark) => mark.text)).toEqual(['5', '15', '30', '1 h', '2 h', '4 h', '8 h']);
    const narrow = axisMarks(300, 42);
    expect(narrow).toHaveLength(7);
    expect(narrow.filter((mark) => mark.text === null).length).toBeGreaterThan(0);
  });

  test('never runs backwards', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: REACH_MS }), fc.integer({ min: 0, max: REACH_MS }), (a, b) => {
        expect(Math.sign(axisX(a, 900) - axisX(b, 900))).toBe(Math.sign(a - b));
      }),
    );
  });
});

describe('the tags of a group row', () => {
  test('never overlap, never run off, and name or count every dough', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -MINUTE_MS, max: 14 * 60 * MINUTE_MS }), { minLength: 1, maxLength: 24 }),
        fc.integer({ min: 300, max: 900 }),
        (dues, widthPx) => {
          const rows = dues.toSorted((a, b) => a - b).map((dueMs, index) => boardRow(index, { dueMs }));
          const { labels } = groupTicks(rows, 0, widthPx, 42);
          let endPx = 0;
          let named = 0;
          for (const label of labels) {
            expect(label.leftPx).toBeGreaterThanOrEqual(endPx);
            endPx = label.leftPx + textWidthPx(label.text, 42);
            for (const word of label.text.split(' ')) named += word.startsWith('+') ? Number(word) : 1;
          }
          expect(endPx).toBeLessThanOrEqual(widthPx + 1e-6);
          expect(named).toBe(rows.length);
        },
      ),
    );
  });

  test('W-G6 ticks whose tags are written together are one comb', () => {
    const rows = [30, 31, 33, 300].map((minutes, index) => boardRow(index, { dueMs: minutes * MINUTE_MS }));
    const { ticksPx, combs, labels } = groupTicks(rows, 0, 800, 42);
    expect(labels.map(({ text }) => text)).toEqual(['C0 C1 C2', 'C3']);
    expect(combs).toEqual([{ fromPx: ticksPx[0], toPx: ticksPx[2] }]);
  });

  test('a dough that stands alone has its tag at its tick', () => {
    const ticks = groupTicks([boardRow(1, { dueMs: 30 * MINUTE_MS })], 0, 800, 42);
    expect(ticks.labels).toEqual([{ text: 'C1', leftPx: ticks.ticksPx[0] }]);
  });
});

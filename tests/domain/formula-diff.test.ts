import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formulaDiff, productsDiff, stepsDiff } from '../../shared/book/formula-diff.ts';
import { merged } from '../../shared/book/merged.ts';
import { formulaSchema, productSchema, type Formula, type Ingredient } from '../../shared/documents/formula.ts';

const INGREDIENTS: Ingredient[] = [
  { id: 'flour', name: 'Flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'water', name: 'Water', kind: 'water', allergens: [] },
  { id: 'salt', name: 'Salt', kind: 'salt', allergens: [] },
];
const step = (id: string, target: number): Record<string, unknown> => ({ id, verb: 'bulk', kind: 'timed', minutes: { target } });
const BEFORE: Formula = formulaSchema.parse({
  id: 'loaf',
  name: 'Loaf',
  letters: 'L',
  doughC: 25,
  parts: [
    {
      name: 'Poolish',
      items: [
        { item: 'flour', g: 200 },
        { item: 'water', g: 200 },
      ],
    },
    {
      name: 'Dough',
      role: 'dough',
      items: [
        { item: 'flour', g: 800 },
        { item: 'water', g: 450 },
        { part: 'Poolish', g: 400 },
        { item: 'salt', g: 20 },
      ],
    },
  ],
  method: [step('a', 10), step('b', 20), step('c', 30)],
});

describe('N24 two versions are told apart line by line', () => {
  test('a version and itself say the same', () => {
    const { facts, parts, method } = formulaDiff(BEFORE, structuredClone(BEFORE), INGREDIENTS);
    expect(facts).toEqual([]);
    expect([...parts, ...parts.flatMap(({ lines }) => lines), ...method].every(({ change }) => change === 'same')).toBe(true);
  });

  test('facts, lines added and gone, other weights and per cents, parts', () => {
    const after: Formula = {
      ...BEFORE,
      doughC: 27,
      parts: [
        {
          name: 'Dough',
          role: 'dough',
          items: [
            { item: 'flour', g: 1000 },
            { item: 'water', g: 700 },
            { item: 'salt', g: 20 },
          ],
        },
      ],
    };
    const { facts, parts } = formulaDiff(BEFORE, after, INGREDIENTS);
    expect(facts).toEqual(['doughC']);
    expect(parts.map(({ name, change, leftG, rightG }) => [name, change, leftG, rightG])).toEqual([
      ['Poolish', 'removed', 400, null],
      ['Dough', 'changed', 1670, 1720],
    ]);
    expect(parts[1]?.lines).toEqual([
      { of: { kind: 'item', id: 'flour' }, change: 'changed', left: { g: 800, pct: 100 }, right: { g: 1000, pct: 100 } },
      { of: { kind: 'item', id: 'water' }, change: 'changed', left: { g: 450, pct: 56.25 }, right: { g: 700, pct: 70 } },
      { of: { kind: 'part', name: 'Poolish' }, change: 'removed', left: { g: 400, pct: 50 }, right: null },
      // As heavy as before, but less of the flour.
      { of: { kind: 'item', id: 'salt' }, change: 'changed', left: { g: 20, pct: 2.5 }, right: { g: 20, pct: 2 } },
    ]);
  });

  test('steps by their ids: moved, changed with the fields that differ, new, gone', () => {
    const [a, b, c] = BEFORE.method;
    if (a === undefined || b === undefined || c === undefined) throw new Error('three steps');
    const later = { ...b, minutes: { target: 25 }, check: 'twice as high' };
    const diffs = stepsDiff([a, b, c], [c, a, later, { ...a, id: 'd' }]);
    expect(diffs.map(({ change, left, right, fields }) => [left?.id ?? null, right?.id ?? null, change, fields])).toEqual([
      ['c', 'c', 'moved', []],
      ['a', 'a', 'same', []],
      ['b', 'b', 'changed', ['minutes', 'check']],
      [null, 'd', 'added', []],
    ]);
    expect(stepsDiff([a, b], [b]).map(({ change }) => change)).toEqual(['removed', 'same']);
  });

  test('products: another weight, a new one', () => {
    const product = productSchema.parse({ id: 'loaf', name: 'Loaf', formula: 'loaf', pieceG: 900, way: [step('x', 5)] });
    const [first, second] = productsDiff(
      [product],
      [
        { ...product, pieceG: 950 },
        { ...product, id: 'roll' },
      ],
    );
    expect(first).toMatchObject({ change: 'changed', facts: ['pieceG'] });
    expect(second).toMatchObject({ change: 'added', left: null });
  });

  test('merging loses nothing: the left list is in it in its order but for what moved, the right one in its order', () => {
    const list = fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { maxLength: 8 });
    fc.assert(
      fc.property(list, list, (left, right) => {
        const rows = merged(left, right, (item) => item);
        expect(rows.flatMap((row) => row.right ?? [])).toEqual(right);
        expect(rows.flatMap((row) => row.left ?? []).sort()).toEqual([...left].sort());
        for (const row of rows) if (row.left !== null && row.right !== null) expect(row.left).toBe(row.right);
        const stayed = rows.filter(({ isMoved, left: before }) => before !== null && !isMoved).map((row) => row.left);
        expect(isWithin(stayed, left)).toBe(true);
      }),
    );
  });
});

/** Whether a list is what is left of another when some of it is taken away. */
function isWithin(part: readonly unknown[], whole: readonly unknown[]): boolean {
  let at = 0;
  for (const item of whole) if (at < part.length && part[at] === item) at += 1;
  return at === part.length;
}

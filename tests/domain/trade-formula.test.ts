import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assert } from '../../shared/result.ts';
import type { CalcFaultCode, CalcItem, CalcPart } from '../../shared/trade/calc-part.ts';
import { sumsOf, totalsOf, type CalcScale, type FormulaTotals } from '../../shared/trade/formula-totals.ts';
import { composedOf, nested } from './support/nested-parts.ts';

const flour = (g: number): CalcItem => ({ item: 'flour', kind: 'flour', g });
const water = (g: number): CalcItem => ({ item: 'water', kind: 'water', g });
const salt = (g: number): CalcItem => ({ item: 'salt', kind: 'salt', g });
const yeast = (g: number): CalcItem => ({ item: 'yeast', kind: 'yeast', g });
const take = (part: string, g: number): CalcItem => ({ part, g });
const part = (name: string, ...items: CalcItem[]): CalcPart => ({ name, items });

function totals(parts: readonly CalcPart[], scale?: CalcScale): FormulaTotals {
  const result = totalsOf(parts, scale);
  assert(result.ok, JSON.stringify(result));
  return result.value;
}

/** By which share two numbers differ. */
function offBy(a: number, b: number): number {
  return Math.abs(a - b) / Math.max(Math.abs(b), Number.MIN_VALUE);
}

const POOLISH = part('Poolish', flour(468), water(468), yeast(0.3));
const WITH_POOLISH = [POOLISH, part('Dough', flour(900), water(468), yeast(9), salt(27), take('Poolish', 936.3))];

describe('K1 the totals of a formula are on all its flour and count all its water', () => {
  test('of a dough with a poolish', () => {
    // Inputs: wildyeastblog, "Baker's Percentage 4"; the overall figures computed twice from them by hand.
    const found = totals(WITH_POOLISH);
    expect(found.hydrationPct).toBeCloseTo(68.42, 2);
    expect(found.saltPct).toBeCloseTo(1.974, 3);
    expect(found.prefermentedFlourPct).toBeCloseTo(34.21, 2);
    expect(found.doughG).toBeCloseTo(2340.3, 9);
    // (468 + 468) ÷ 1368 and (0.3 + 9) ÷ 1368, by hand.
    expect(found).toMatchObject({ flourG: 1368, waterG: 936 });
    expect(found.yeastPct).toBeCloseTo((9.3 / 1368) * 100, 9);
    expect(found.sumPct).toBeCloseTo((2340.3 / 1368) * 100, 9);
  });

  test('with per cent of each part on its own flour, the poolish as an ingredient of the dough', () => {
    // The two tables of the same article, in its own rounding.
    const percents = totals(WITH_POOLISH).parts.map(({ items }) => items.map(({ pct }) => Number(pct?.toFixed(2))));
    expect(percents).toEqual([
      [100, 100, 0.06],
      [100, 52, 1, 3, expect.closeTo(104, 0)],
    ]);
  });

  test('of a dough with 12 per cent of its flour in a levain of equal flour and water', () => {
    // Method: Bread Bakers Guild of America, Formatting Guild Formulas, 2009; the figures computed twice by hand.
    const found = totals([part('Levain', flour(120), water(120)), part('Dough', flour(880), water(580), salt(20), take('Levain', 240))]);
    expect(found).toMatchObject({ flourG: 1000, waterG: 700, doughG: 1720, hydrationPct: 70, prefermentedFlourPct: 12 });
  });

  test('with the dough yield of flour and water together', () => {
    // Brot-Magazin: 600 g flour and 450 g water are TA 175.
    expect(totals([part('Dough', flour(600), water(450))]).doughYield).toBe(175);
  });

  test('with the water in eggs and dairy where the line says so', () => {
    // By hand: 500 + 100 × 0.75 + 200 × 0.88 = 751 g on 1000 g; the butter says nothing.
    const found = totals([
      part(
        'Dough',
        flour(1000),
        water(500),
        { item: 'egg', kind: 'egg', g: 100, waterPct: 75 },
        { item: 'milk', kind: 'dairy', g: 200, waterPct: 88 },
        { item: 'butter', kind: 'fat', g: 100 },
      ),
    ]);
    expect(found.waterG).toBeCloseTo(751, 9);
    expect(found.hydrationPct).toBeCloseTo(75.1, 9);
  });

  test('a soaker’s flour is flour of the dough and not prefermented, the flour of a levain in a soaker is', () => {
    const found = totals([
      part('Levain', flour(50), water(50)),
      { ...part('Scald', flour(200), water(400), take('Levain', 100)), role: 'soaker' },
      part('Dough', flour(750), water(200), take('Scald', 700)),
    ]);
    expect(found).toMatchObject({ flourG: 1000, waterG: 650, hydrationPct: 65, prefermentedFlourPct: 5 });
  });

  test('percentages of a part are on its own flour, and none where it has none', () => {
    const soaker: CalcPart = { name: 'Soaker', role: 'soaker', items: [{ item: 'linseed', kind: 'seed', g: 100 }, water(150)] };
    const found = totals([soaker, POOLISH, part('Dough', flour(500), take('Soaker', 250), take('Poolish', 468.15))]);
    expect(found.parts[0]?.items.map(({ pct }) => pct)).toEqual([null, null]);
    expect(found.parts[1]?.items.map(({ pct }) => pct)).toEqual([100, 100, (0.3 / 468) * 100]);
    expect(found.parts[2]?.items.map(({ pct }) => pct)).toEqual([100, 50, 93.63]);
  });

  test('of nested preferments: no flour and no water is lost or won, four levels down', () => {
    fc.assert(
      fc.property(nested({ depth: 4 }), (parts) => {
        const found = totals(parts);
        // An independent reckoning: what a gram of each part is made of, from the innermost outwards.
        const made = composedOf(parts);
        expect(offBy(found.flourG, made.flourG)).toBeLessThan(1e-9);
        expect(Math.abs(found.waterG - made.waterG)).toBeLessThan(1e-9 * found.doughG);
        // And from what is weighed: the leaves of all parts together are the dough.
        const takes = new Set(parts.map(({ name }) => name));
        const leaves = found.parts.flatMap(({ items }) => items.filter(({ item }) => !takes.has(item)));
        expect(
          offBy(
            leaves.reduce((sum, { g }) => sum + g, 0),
            found.doughG,
          ),
        ).toBeLessThan(1e-9);
      }),
      { seed: 51, numRuns: 300 },
    );
  });
});

describe('K2 each part stands once, scaled to what the dough needs of it', () => {
  test('where more of it is written than is taken', () => {
    const found = totals([part('Poolish', flour(500), water(500)), part('Dough', flour(500), take('Poolish', 936))]);
    expect(found.parts[0]).toMatchObject({
      name: 'Poolish',
      totalG: 936,
      items: [
        { g: 468, pct: 100 },
        { g: 468, pct: 100 },
      ],
    });
    expect(found.flourG).toBe(968);
  });

  test('where two parts take of it', () => {
    const found = totals([
      part('Levain', flour(10), water(10)),
      part('Sponge', flour(90), take('Levain', 20)),
      part('Dough', flour(100), take('Sponge', 110), take('Levain', 30)),
    ]);
    expect(found.parts.map(({ name, totalG }) => [name, totalG])).toEqual([
      ['Levain', 50],
      ['Sponge', 110],
      ['Dough', 240],
    ]);
    expect(found).toMatchObject({ flourG: 215, waterG: 25 });
  });

  test('to flour: 1000 flour, 600 water, 100 starter, 20 salt for 1400 flour', () => {
    // Kleinwächter, The Sourdough Framework: 840, 140 and 28 g. Its starter is weighed as one thing.
    const starter: CalcItem = { item: 'starter', kind: 'other', g: 100 };
    const found = totals([part('Dough', flour(1000), water(600), starter, salt(20))], { flourG: 1400 });
    expect(found.parts[0]?.items.map(({ g }) => g)).toEqual([1400, 840, 140, 28]);
  });

  test('to dough and to pieces with what is lost of them', () => {
    expect(totals(WITH_POOLISH, { doughG: 5000 }).doughG).toBeCloseTo(5000, 9);
    // 24 × 350 ÷ 0.98, by hand.
    expect(totals(WITH_POOLISH, { pieces: 24, pieceG: 350, lossPct: 2 }).doughG).toBeCloseTo(8571.428571428572, 9);
    expect(totals(WITH_POOLISH, { pieces: 24, pieceG: 350 }).doughG).toBeCloseTo(8400, 9);
  });

  const target = fc.double({ min: 1, max: 1e6, noNaN: true });
  const scales = fc.oneof(
    target.map((doughG) => ({ doughG })),
    target.map((flourG) => ({ flourG })),
    fc.record({ pieces: fc.integer({ min: 1, max: 5000 }), pieceG: target, lossPct: fc.double({ min: 0, max: 40, noNaN: true }) }),
  );

  test('every weight grows alike, and no percentage changes', () => {
    fc.assert(
      fc.property(nested({ depth: 4 }), scales, (parts, scale) => {
        const before = totals(parts);
        const after = totals(parts, scale);
        const factor = after.doughG / before.doughG;
        for (const [index, { items, totalG }] of after.parts.entries()) {
          expect(offBy(totalG, (before.parts[index]?.totalG ?? 0) * factor)).toBeLessThan(1e-9);
          for (const [line, { g, pct }] of items.entries()) {
            expect(offBy(g, (before.parts[index]?.items[line]?.g ?? 0) * factor)).toBeLessThan(1e-9);
            expect(pct).toBe(before.parts[index]?.items[line]?.pct);
          }
        }
        expect([after.hydrationPct, after.saltPct, after.prefermentedFlourPct, after.sumPct, after.doughYield]).toEqual([
          before.hydrationPct,
          before.saltPct,
          before.prefermentedFlourPct,
          before.sumPct,
          before.doughYield,
        ]);
      }),
      { seed: 52, numRuns: 200 },
    );
  });

  test('scaling twice is scaling once', () => {
    fc.assert(
      fc.property(nested({ depth: 3 }), target, target, (parts, first, second) => {
        const once = totals(parts, { doughG: second });
        const weighed = totals(parts, { doughG: first }).parts;
        const twice = totals(
          parts.map((each, index) => ({
            ...each,
            items: each.items.map((item, line) => ({ ...item, g: weighed[index]?.items[line]?.g ?? 0 })),
          })),
          { doughG: second },
        );
        expect(offBy(twice.flourG, once.flourG)).toBeLessThan(1e-9);
        expect(offBy(twice.waterG, once.waterG)).toBeLessThan(1e-9);
      }),
      { seed: 53, numRuns: 200 },
    );
  });

  test('to percentages and back: the percentages on a part’s own flour give its weights again', () => {
    fc.assert(
      fc.property(nested({ depth: 4 }), (parts) => {
        for (const { items } of totals(parts).parts) {
          const flourG = items.filter(({ item }) => item.startsWith('flour')).reduce((sum, { g }) => sum + g, 0);
          for (const { g, pct } of items) {
            if (pct === null) expect(flourG).toBe(0);
            else expect(offBy((pct * flourG) / 100, g)).toBeLessThan(1e-9);
          }
        }
      }),
      { seed: 54, numRuns: 200 },
    );
  });
});

describe('K3 what cannot be reckoned is refused at its field', () => {
  const dough = part('Dough', flour(1000), water(600));
  const cases: [string, readonly CalcPart[], CalcScale | undefined, CalcFaultCode, string][] = [
    ['no parts', [], undefined, 'noParts', 'parts'],
    ['no flour', [part('Filling', water(100))], undefined, 'noFlour', 'parts'],
    ['flour of no weight', [part('Dough', flour(0), water(100))], undefined, 'noFlour', 'parts'],
    ['a part that is missing', [part('Dough', flour(1), take('Biga', 1))], undefined, 'partMissing', 'parts[0].items[1].part'],
    ['a part that nothing takes', [POOLISH, dough], undefined, 'partUnused', 'parts[0].name'],
    [
      'two parts that only an unused one takes',
      [part('A', flour(1)), part('B', take('A', 1)), part('C', take('B', 1)), dough],
      undefined,
      'partUnused',
      'parts[0].name',
    ],
    ['two parts of one name', [POOLISH, POOLISH, part('Dough', flour(1), take('Poolish', 9))], undefined, 'partRepeated', 'parts[1].name'],
    ['a part that contains itself', [part('Dough', flour(1), take('Dough', 1))], undefined, 'partOfItself', 'parts[0].items[1].part'],
    [
      'two parts that contain each other',
      [part('A', flour(1), take('B', 1)), part('B', take('A', 1)), part('Dough', flour(9), take('B', 1))],
      undefined,
      'partOfItself',
      'parts[1].items[0].part',
    ],
    ['a circle that the dough does not take', [part('A', take('A', 1)), dough], undefined, 'partOfItself', 'parts[0].items[0].part'],
    [
      'something taken of a part that weighs nothing',
      [part('A', flour(0)), part('Dough', flour(9), take('A', 1))],
      undefined,
      'partWeightless',
      'parts[0].items',
    ],
    ['a negative weight', [part('Dough', flour(1), salt(-0.1))], undefined, 'negative', 'parts[0].items[1].g'],
    ['a weight that is no number', [part('Dough', flour(Number.NaN))], undefined, 'notFinite', 'parts[0].items[0].g'],
    ['weights beyond all numbers', [part('Dough', flour(1e308), water(1e308))], undefined, 'notFinite', 'parts'],
    ['pieces that are not whole', [dough], { pieces: 1.5, pieceG: 10 }, 'notWhole', 'scale.pieces'],
    ['no pieces', [dough], { pieces: 0, pieceG: 10 }, 'scaleNothing', 'scale.pieces'],
    ['a negative dough', [dough], { doughG: -1 }, 'scaleNothing', 'scale.doughG'],
    ['a flour of nothing', [dough], { flourG: 0 }, 'scaleNothing', 'scale.flourG'],
    ['a loss of everything', [dough], { pieces: 1, pieceG: 10, lossPct: 100 }, 'lossTooLarge', 'scale.lossPct'],
    ['a negative loss', [dough], { pieces: 1, pieceG: 10, lossPct: -1 }, 'lossTooLarge', 'scale.lossPct'],
  ];

  test.each(cases)('%s', (_what, parts, scale, code, field) => {
    const result = totalsOf(parts, scale);
    expect(result).toMatchObject({ ok: false, fault: { code, field } });
  });

  test('a filling without flour has weights, and no percentages', () => {
    const result = sumsOf([part('Filling', water(100), salt(1))], { doughG: 202 });
    expect(result).toMatchObject({ ok: true, value: { doughG: 202, waterG: 200, hydrationPct: null, saltPct: null, doughYield: null } });
  });
});

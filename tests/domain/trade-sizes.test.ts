import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assert } from '../../shared/result.ts';
import {
  bakedFromPieceG,
  doughForG,
  pieceFromBakedG,
  piecesG,
  splitByMixer,
  splitPiecesByMixer,
  type SizedPieces,
} from '../../shared/trade/batch-size.ts';
import type { ItemKind } from '../../shared/trade/calc-part.ts';
import { roundedLines, roundedTo, scaleFor } from '../../shared/trade/rounding.ts';

const grams = fc.integer({ min: 0, max: 30_000_000 }).map((mg) => mg / 1000);
const scales = fc.record({ bench: fc.constantFrom(1, 5, 10), fine: fc.constantFrom(0.1, 0.5, 1) });
const kinds = fc.constantFrom<ItemKind>('flour', 'water', 'salt', 'yeast', 'fat', 'sugar', 'egg', 'dairy', 'seed', 'other');
const lines = fc.array(fc.record({ g: grams, kind: kinds }), { minLength: 1, maxLength: 20 });

describe('K4 weights are rounded to the scale that weighs them', () => {
  test('a heavy line on the bench scale, a light one on the fine scale', () => {
    // Common practice: not on a scale whose half division is more than a hundredth of the weight.
    expect(scaleFor(250, { bench: 5, fine: 0.1 })).toBe(5);
    expect(scaleFor(249.9, { bench: 5, fine: 0.1 })).toBe(0.1);
    expect(scaleFor(50, { bench: 1, fine: 0.1 })).toBe(1);
    expect(scaleFor(9, { bench: 1, fine: 0.1 })).toBe(0.1);
    // A fine scale does not carry a kilogram, and one that is no finer is not sought.
    expect(scaleFor(600, { bench: 20, fine: 0.1 })).toBe(20);
    expect(scaleFor(3, { bench: 1, fine: 1 })).toBe(1);
  });

  test.each([
    [2.34, 0.1, 2.3],
    [2.35, 0.1, 2.4],
    [1.005, 0.01, 1.01],
    [2892.4, 5, 2890],
    [2892.5, 5, 2895],
    [0.04, 0.1, 0],
    [0.3, 0.1, 0.3],
  ])('%d g to %d g is %d g, without what floating point adds', (g, divisionG, expected) => {
    expect(roundedTo(g, divisionG)).toBe(expected);
  });

  test('nothing but flour and water moves by more than half a division, salt and yeast least of all, and they by less than one', () => {
    fc.assert(
      fc.property(lines, scales, (exact, used) => {
        const rounded = roundedLines(exact, used);
        for (const [index, { g, divisionG }] of rounded.entries()) {
          const line = exact[index];
          assert(line !== undefined, 'as many lines as before');
          expect(divisionG).toBe(scaleFor(line.g, used));
          const movedG = Math.abs(g - line.g);
          if (line.kind === 'flour' || line.kind === 'water') expect(movedG).toBeLessThan(divisionG);
          else expect(movedG).toBeLessThanOrEqual((divisionG / 2) * (1 + 1e-9));
          // What the scale can show at all is not rounded away for the sum.
          if (roundedTo(line.g, divisionG) > 0) expect(g).toBeGreaterThan(0);
          // On the scale it is a whole number of divisions, written without a tail.
          expect(Math.abs(g / divisionG - Math.round(g / divisionG))).toBeLessThan(1e-6);
          expect(String(g).length).toBeLessThanOrEqual(8);
        }
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  test('the sum is nearer than by rounding each alone, or as near, and no flour or water left could bring it nearer', () => {
    fc.assert(
      fc.property(lines, scales, (exact, used) => {
        const rounded = roundedLines(exact, used);
        const total = exact.reduce((sum, { g }) => sum + g, 0);
        const over = rounded.reduce((sum, { g }) => sum + g, 0) - total;
        const alone = exact.reduce((sum, { g }) => sum + roundedTo(g, scaleFor(g, used)), 0) - total;
        expect(Math.abs(over)).toBeLessThanOrEqual(Math.abs(alone) + 1e-6);
        for (const [index, { g, kind }] of exact.entries()) {
          const line = rounded[index];
          if (line === undefined || (kind !== 'flour' && kind !== 'water')) continue;
          const isNearest = line.g === roundedTo(g, line.divisionG);
          const away = line.g > g ? -line.divisionG : line.divisionG;
          if (isNearest && Math.abs(line.g - g) > 1e-9 && line.g + away > 1e-9)
            expect(Math.abs(over + away)).toBeGreaterThanOrEqual(Math.abs(over) - 2e-6);
        }
      }),
      { seed: 42, numRuns: 500 },
    );
  });

  test('a line that lies on a division stays there, and one does not become nothing', () => {
    // By hand: 4.8 g too little by the butter in the one, 5 g too much in the other; neither the flour, which is exact, nor the last
    // division of the water is taken for it.
    const butter = (g: number) => ({ g, kind: 'fat' }) as const;
    const scalesG = { bench: 5, fine: 0.1 };
    expect(roundedLines([{ g: 1000, kind: 'flour' }, butter(602.4), butter(602.4)], scalesG)[0]).toEqual({ g: 1000, divisionG: 5 });
    expect(roundedLines([{ g: 0.06, kind: 'water' }, butter(602.5), butter(602.5)], scalesG)[0]).toEqual({ g: 0.1, divisionG: 0.1 });
  });

  test('water gives way for the sum of a dough whose lines all go up', () => {
    // By hand: 1002.5, 702.5 and 12.5 would be 1005, 705, 12.5 on a 5 g scale: 5 g too much of 1717.5.
    const rounded = roundedLines(
      [
        { g: 1002.5, kind: 'flour' },
        { g: 702.5, kind: 'water' },
        { g: 12.5, kind: 'salt' },
      ],
      { bench: 5, fine: 0.1 },
    );
    expect(rounded.map(({ g }) => g)).toEqual([1000, 705, 12.5]);
  });
});

describe('K5 a batch is made to a size, within what the mixer takes', () => {
  test('to dough, to flour, and to pieces with what stays on the bench', () => {
    const formula = { sumPct: 172 };
    expect(doughForG({ kind: 'dough', doughG: 5000 }, formula, 3)).toBe(5000);
    expect(doughForG({ kind: 'flour', flourG: 1000 }, formula, 3)).toBe(1720);
    // 24 × 350 + 30 × 90 = 11100 g of pieces; ÷ 0.98, by hand.
    const pieces = [
      { productId: 'plain', pieces: 24, pieceG: 350 },
      { productId: 'filled', pieces: 30, pieceG: 90 },
    ];
    expect(piecesG(pieces)).toBe(11_100);
    expect(doughForG({ kind: 'pieces', pieces }, formula, 2)).toBeCloseTo(11_326.53, 2);
    expect(doughForG({ kind: 'flour', flourG: 1000 }, { sumPct: null })).toBe(0);
  });

  test('a piece’s dough is what it weighs baked ÷ (1 − bake loss), and back', () => {
    // By hand: a loaf of 1000 g with 12 % bake loss, within the 10–13 % of Gisslen, Professional Baking, is 1136.4 g of dough.
    expect(pieceFromBakedG(1000, 12)).toBeCloseTo(1136.36, 2);
    fc.assert(
      fc.property(grams, fc.integer({ min: 0, max: 60 }), (bakedG, lossPct) => {
        expect(bakedFromPieceG(pieceFromBakedG(bakedG, lossPct), lossPct)).toBeCloseTo(bakedG, 6);
      }),
      { seed: 43, numRuns: 200 },
    );
  });

  test.each([
    [60_000, { leastG: 8_000, mostG: 60_000 }, { count: 1, eachG: 60_000 }],
    [60_001, { leastG: 8_000, mostG: 60_000 }, { count: 2, eachG: 30_000.5 }],
    [100_000, { leastG: 8_000, mostG: 30_000 }, { count: 4, eachG: 25_000 }],
    [7_999, { leastG: 8_000, mostG: 60_000 }, null],
    // Two of 35 kg would be below the least, and one of 70 above the most.
    [70_000, { leastG: 40_000, mostG: 60_000 }, null],
    [0, { leastG: 0, mostG: 60_000 }, null],
  ])('%d g in a mixer of %o: %o', (doughG, mixer, expected) => {
    expect(splitByMixer(doughG, mixer)).toEqual(expected);
  });

  const mixers = fc
    .record({ leastG: fc.integer({ min: 0, max: 40_000 }), moreG: fc.integer({ min: 1, max: 80_000 }) })
    .map(({ leastG, moreG }) => ({ leastG, mostG: leastG + moreG }));

  test('split and merged again it is the same dough, within the load, in as few batches as can be', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000_000 }), mixers, (doughG, mixer) => {
        const split = splitByMixer(doughG, mixer);
        const counts = Array.from({ length: 2_000_000 / mixer.mostG > 400 ? 0 : 400 }, (_each, index) => index + 1);
        const possible = counts.find((count) => doughG / count <= mixer.mostG && doughG / count >= mixer.leastG);
        if (counts.length > 0) expect(split?.count).toBe(possible);
        if (split !== null) expect(split.count * split.eachG).toBeCloseTo(doughG, 6);
      }),
      { seed: 44, numRuns: 400 },
    );
  });

  const products = fc
    .array(fc.record({ pieces: fc.integer({ min: 1, max: 300 }), pieceG: fc.integer({ min: 20, max: 2000 }) }), {
      minLength: 1,
      maxLength: 4,
    })
    .map((all) => all.map((each, index): SizedPieces => ({ productId: `product-${index}`, ...each })));

  test('pieces stay whole, none is lost, and every batch has as many of each as the others, or one more', () => {
    fc.assert(
      fc.property(products, fc.integer({ min: 0, max: 10 }), mixers, (pieces, lossPct, mixer) => {
        const batches = splitPiecesByMixer(pieces, lossPct, mixer);
        if (batches === null) return;
        for (const { productId, pieces: wanted, pieceG } of pieces) {
          const counts = batches.map((batch) => batch.find((each) => each.productId === productId)?.pieces ?? 0);
          expect(counts.reduce((sum, count) => sum + count, 0)).toBe(wanted);
          expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
          expect(counts.every(Number.isInteger)).toBe(true);
          for (const batch of batches) {
            const own = batch.find((each) => each.productId === productId);
            if (own !== undefined) expect(own.pieceG).toBe(pieceG);
          }
        }
        const weights = batches.map((batch) => doughForG({ kind: 'pieces', pieces: batch }, { sumPct: null }, lossPct));
        expect(Math.max(...weights)).toBeLessThanOrEqual(mixer.mostG * (1 + 1e-9));
        expect(Math.min(...weights)).toBeGreaterThanOrEqual(mixer.leastG * (1 - 1e-9));
        // No batch is heavier than another by more than the heaviest piece.
        const heaviestG = Math.max(...pieces.map(({ pieceG }) => pieceG)) / (1 - lossPct / 100);
        expect(Math.max(...weights) - Math.min(...weights)).toBeLessThanOrEqual(heaviestG + 1e-6);
      }),
      { seed: 45, numRuns: 400 },
    );
  });

  test('a product of few pieces goes to as many batches as it has pieces', () => {
    const pieces = [
      { productId: 'loaf', pieces: 9, pieceG: 1000 },
      { productId: 'wreath', pieces: 1, pieceG: 1500 },
    ];
    expect(splitPiecesByMixer(pieces, 0, { leastG: 1000, mostG: 6000 })).toEqual([
      [
        { productId: 'loaf', pieces: 4, pieceG: 1000 },
        { productId: 'wreath', pieces: 1, pieceG: 1500 },
      ],
      [{ productId: 'loaf', pieces: 5, pieceG: 1000 }],
    ]);
  });

  test('pieces that no number of batches brings within the load are not split', () => {
    const pieces = [{ productId: 'block', pieces: 3, pieceG: 4000 }];
    expect(splitPiecesByMixer(pieces, 0, { leastG: 5000, mostG: 7000 })).toBeNull();
    expect(splitPiecesByMixer(pieces, 0, { leastG: 1000, mostG: 3000 })).toBeNull();
    expect(splitPiecesByMixer(pieces, 0, { leastG: 1000, mostG: 7000 })).toHaveLength(3);
  });
});

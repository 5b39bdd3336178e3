import { describe, expect, test } from 'vitest';
import { coveringArray, pairsOf } from '../browser/harness/covering-array.ts';

const FACTORS = {
  inch: [32, 43, 55],
  metres: [3, 4, 5, 6],
  font: ['own', 'other'],
  look: ['day', 'night'],
  count: [1, 2, 3, 5, 8],
} as const;

describe('a covering array', () => {
  test('has every value of each factor with every value of each other one', () => {
    const met = new Set(coveringArray(FACTORS, 1).flatMap((chosen) => pairsOf(FACTORS, chosen)));
    // By hand: 3·4 + 3·2 + 3·2 + 3·5 + 4·2 + 4·2 + 4·5 + 2·2 + 2·5 + 2·5 pairs.
    expect(pairsOf(FACTORS)).toHaveLength(99);
    expect(pairsOf(FACTORS).filter((pair) => !met.has(pair))).toEqual([]);
  });

  test('has few cases, the same for the same seed', () => {
    const cases = coveringArray(FACTORS, 7);
    // At least as many as the two largest factors have pairs; of 240 cases in all.
    expect(cases.length).toBeGreaterThanOrEqual(20);
    expect(cases.length).toBeLessThan(40);
    expect(coveringArray(FACTORS, 7)).toEqual(cases);
  });
});

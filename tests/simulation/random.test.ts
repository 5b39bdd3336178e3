import { describe, expect, it } from 'vitest';
import { Random, splitmix64, xoshiro128 } from './support/random.ts';

describe('the generator of chance', () => {
  // From memory: the example that is commonly given for this generator.
  it('splitmix64 gives the published numbers for the seed 1234567', () => {
    const next = splitmix64(1_234_567n);
    expect([next(), next(), next(), next(), next()]).toEqual([
      6_457_827_717_110_365_317n,
      3_203_168_211_198_807_973n,
      9_817_491_932_198_370_423n,
      4_593_380_528_125_082_431n,
      16_408_922_859_458_223_821n,
    ]);
  });

  // What the authors' xoshiro128starstar.c 1.1 (prng.di.unimi.it) gives, as several public test suites quote it.
  it('xoshiro128** gives the published numbers for the state 1, 2, 3, 4', () => {
    const next = xoshiro128([1, 2, 3, 4]);
    const numbers = Array.from({ length: 10 }, () => next());
    expect(numbers).toEqual([
      11_520, 0, 5_927_040, 70_819_200, 2_031_721_883, 1_637_235_492, 1_287_239_034, 3_734_860_849, 3_729_100_597, 4_258_142_804,
    ]);
  });

  it('draws differently for different names and seeds, and the same for the same', () => {
    const draw = (seed: number, name: string): number[] => {
      const random = new Random(seed, name);
      return Array.from({ length: 4 }, () => random.share());
    };
    expect(draw(1, 'network')).toEqual(draw(1, 'network'));
    expect(draw(1, 'network')).not.toEqual(draw(1, 'thumbs'));
    expect(draw(1, 'network')).not.toEqual(draw(2, 'network'));
  });
});

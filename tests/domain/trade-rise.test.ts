import { describe, expect, test } from 'vitest';
import { assert } from '../../shared/result.ts';
import { CUSTOMARY_RISE_K, expectedRise, type MixerReading } from '../../shared/trade/expected-rise.ts';
import { median, RISE_READINGS, riseEstimate } from '../../shared/trade/rise-estimate.ts';
import { requiredWaterC, riseFromDough } from '../../shared/trade/water-temperature.ts';
import { Random } from '../simulation/support/random.ts';
import { normal } from './support/normals.ts';

const MIXERS = 1000;
/** Noise of a dough thermometer and of a floor's habits, as a standard deviation. */
const NOISE_K = 0.5;

const COUNTRY = { formulaId: 'country', loadG: 20_000 };
const reading = (riseK: number, of: { formulaId: string; loadG: number } = COUNTRY): MixerReading => ({ ...of, riseK });

/** A mixer with a rise of its own, what its papers say of it, and a thermometer with noise. */
class SimulatedMixer {
  readonly riseK: number;
  readonly documentRiseK: number | null;
  readonly #random: Random;

  constructor(seed: number) {
    this.#random = new Random(seed, 'mixer');
    this.riseK = this.#random.between(1, 14);
    this.documentRiseK = this.#random.pick([null, this.riseK, this.riseK + 1, this.riseK - 2, this.riseK + 4]);
  }

  noiseK(): number {
    return NOISE_K * normal(this.#random);
  }

  readings(count: number): MixerReading[] {
    return Array.from({ length: count }, () => reading(this.riseK + this.noiseK()));
  }

  misread(): MixerReading {
    return reading(this.riseK + (this.#random.chance(0.5) ? 8 : -8));
  }

  place(count: number): number {
    return this.#random.whole(0, count);
  }
}

function learnedK(mixer: SimulatedMixer, readings: readonly MixerReading[]): number {
  return expectedRise({ readings, ...COUNTRY, documentRiseK: mixer.documentRiseK }).riseK;
}

describe('K9 what a mixer adds is learned from the doughs that come out of it', () => {
  test('after five batches it is known within half a kelvin, as often as five readings of that noise can tell at all', () => {
    let [within, withinByMean, farthestK] = [0, 0, 0];
    for (let seed = 0; seed < MIXERS; seed += 1) {
      const mixer = new SimulatedMixer(seed);
      const readings = mixer.readings(5);
      const offK = Math.abs(learnedK(mixer, readings) - mixer.riseK);
      farthestK = Math.max(farthestK, offK);
      if (offK <= 0.5) within += 1;
      const mean = readings.reduce((sum, { riseK }) => sum + riseK, 0) / 5;
      if (Math.abs(mean - mixer.riseK) <= 0.5) withinByMean += 1;
    }
    // The mean of five is best for such noise: 97.5 % of them are within 0.5 K (normal distribution, 0.5 ÷ √5 = 0.224).
    expect(withinByMean / MIXERS).toBeGreaterThan(0.96);
    expect(within / MIXERS).toBeGreaterThan(0.95);
    expect(farthestK).toBeLessThan(1);
  });

  test.each([4, 5, 6, 10, 30])('after %d batches one that is misread by 8 K moves it by no more than half a kelvin', (count) => {
    let mostK = 0;
    for (let seed = 0; seed < MIXERS; seed += 1) {
      const mixer = new SimulatedMixer(seed);
      const readings = mixer.readings(count);
      const before = learnedK(mixer, readings);
      mostK = Math.max(mostK, Math.abs(learnedK(mixer, readings.toSpliced(mixer.place(count), 0, mixer.misread())) - before));
    }
    expect(mostK).toBeLessThanOrEqual(0.5);
  });

  test('the next batch’s water uses it: from the sixth dough on they come out as they were wanted', () => {
    let offSquared = 0;
    let firstOffSquared = 0;
    for (let seed = 0; seed < MIXERS; seed += 1) {
      const mixer = new SimulatedMixer(seed);
      const readings: MixerReading[] = [];
      for (let batch = 0; batch < 6; batch += 1) {
        const temperaturesC = [18 + batch, 24, 8];
        const waterC = requiredWaterC({ desiredDoughC: 25, temperaturesC, riseK: learnedK(mixer, readings) });
        // The mixer's own physics: the mean of what went in, and its rise.
        const cameOutC = (temperaturesC.reduce((sum, each) => sum + each, 0) + waterC) / 4 + mixer.riseK;
        if (batch === 0) firstOffSquared += (cameOutC - 25) ** 2;
        if (batch === 5) offSquared += (cameOutC - 25) ** 2;
        readings.push(reading(riseFromDough({ doughC: cameOutC + mixer.noiseK(), temperaturesC, waterC })));
      }
    }
    expect(Math.sqrt(firstOffSquared / MIXERS)).toBeGreaterThan(2);
    expect(Math.sqrt(offSquared / MIXERS)).toBeLessThan(0.3);
  });

  test('a new dough begins from the mixer’s other doughs, those from its papers, and those from custom', () => {
    const nobody = { readings: [], ...COUNTRY };
    expect(expectedRise({ ...nobody, documentRiseK: null })).toEqual({ riseK: CUSTOMARY_RISE_K, spreadK: null, count: 0, from: 'custom' });
    expect(expectedRise({ ...nobody, documentRiseK: 7 })).toEqual({ riseK: 7, spreadK: null, count: 0, from: 'document' });
    const others = [8.8, 9, 9.2].map((riseK) => reading(riseK, { formulaId: 'rye', loadG: 20_000 }));
    const byOthers = expectedRise({ readings: others, ...COUNTRY, documentRiseK: null });
    expect(byOthers).toMatchObject({ from: 'mixer', count: 3 });
    expect(byOthers.riseK).toBeCloseTo(9, 1);
  });

  test('papers count as one reading, custom as none', () => {
    const one = { readings: [reading(9)], ...COUNTRY };
    expect(expectedRise({ ...one, documentRiseK: null })).toMatchObject({ riseK: 9, from: 'load' });
    const beside = expectedRise({ ...one, documentRiseK: 8 }).riseK;
    expect(beside).toBeGreaterThan(8.4);
    expect(beside).toBeLessThan(9);
  });

  test('a reading of the formula at such a load counts before one of another load, and that before another formula’s', () => {
    const readings = [
      ...[3, 3.1, 2.9].map((riseK) => reading(riseK, { formulaId: 'rye', loadG: 20_000 })),
      ...[6, 6.1, 5.9].map((riseK) => reading(riseK, { formulaId: 'country', loadG: 60_000 })),
    ];
    const far = expectedRise({ readings, ...COUNTRY, documentRiseK: null });
    expect(far).toMatchObject({ from: 'formula', count: 3 });
    expect(Math.abs(far.riseK - 6)).toBeLessThan(1);
    const near = expectedRise({
      readings: [...readings, ...[9, 9.1, 8.9, 9].map((riseK) => reading(riseK))],
      ...COUNTRY,
      documentRiseK: null,
    });
    expect(near).toMatchObject({ from: 'load', count: 4 });
    expect(Math.abs(near.riseK - 9)).toBeLessThan(0.5);
  });

  test('loads are alike up to half as much again, and no farther', () => {
    const readings = [reading(5, { formulaId: 'country', loadG: 20_000 })];
    const from = (loadG: number) => expectedRise({ readings, formulaId: 'country', loadG, documentRiseK: null }).from;
    expect([13_333, 13_334, 20_000, 30_000, 30_001].map(from)).toEqual(['formula', 'load', 'load', 'load', 'formula']);
  });

  test('the spread is that of the readings, never less than a thermometer’s, and none of one', () => {
    const spread = (...riseKs: number[]) =>
      riseEstimate(
        riseKs.map((riseK) => ({ riseK })),
        null,
      )?.spreadK;
    expect(spread(5)).toBeNull();
    expect(spread(5, 5, 5)).toBe(0.5);
    // By hand: deviations from 6 are 2, 1, 0, 1, 2; their median 1, times 1.4826.
    expect(spread(4, 5, 6, 7, 8)).toBeCloseTo(1.4826, 9);
  });

  test('a mixer that was mended is known anew after as many doughs as count', () => {
    const readings = [...Array.from({ length: 50 }, () => reading(9)), ...Array.from({ length: RISE_READINGS }, () => reading(4))];
    expect(expectedRise({ readings, ...COUNTRY, documentRiseK: null }).riseK).toBeCloseTo(4, 6);
  });

  test('nothing is known of nothing, and the middle of two that contradict each other lies between them', () => {
    expect(riseEstimate([], null)).toBeNull();
    const between = riseEstimate([{ riseK: 2 }, { riseK: 12 }], null);
    assert(between !== null, 'there are two readings');
    expect(between.riseK).toBeCloseTo(7, 6);
    expect([median([3, 1, 2]), median([4, 1])]).toEqual([2, 2.5]);
  });
});

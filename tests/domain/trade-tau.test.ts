import { describe, expect, test } from 'vitest';
import { driftedC } from '../../shared/trade/dough-drift.ts';
import { sphereTauMin, tauEstimate, tauOfPair, type DriftPair } from '../../shared/trade/time-constant.ts';
import { Random } from '../simulation/support/random.ts';
import { normal } from './support/normals.ts';

const CONTAINERS = 200;
/** Noise of a probe in a dough, as a standard deviation. */
const PROBE_K = 0.3;

/** A container with a time constant of its own, in rooms of all kinds, measured with a probe that has noise. */
class SimulatedTub {
  readonly tauMin: number;
  readonly #random: Random;

  constructor(seed: number) {
    this.#random = new Random(seed, 'tub');
    this.tauMin = this.#random.between(40, 400);
  }

  noiseK(): number {
    return PROBE_K * normal(this.#random);
  }

  pair(offK = 0): DriftPair {
    const minutes = this.#random.between(30, 180);
    const [startC, ambientC, selfHeatKPerH] = [this.#random.between(23, 30), this.#random.between(2, 18), this.#random.between(0, 1.5)];
    const endC = driftedC({ doughC: startC, ambientC, tauMin: this.tauMin, selfHeatKPerH }, minutes);
    return { minutes, beforeC: startC + this.noiseK(), afterC: endC + this.noiseK() + offK, ambientC, selfHeatKPerH };
  }

  pairs(count: number): DriftPair[] {
    return Array.from({ length: count }, () => this.pair());
  }

  prior(): number {
    return this.tauMin * this.#random.between(0.5, 2);
  }
}

describe('RP5 the time constant of a container', () => {
  test.each([
    // The design's table, computed twice: a sphere of dough in air, 10 W/(m²·K).
    [500, 1.7],
    [1000, 2.3],
    [2000, 3],
    [10_000, 6.5],
  ])('a sphere of %d g: %d h', (massG, hours) => {
    expect(Math.abs(sphereTauMin(massG) / 60 - hours)).toBeLessThanOrEqual(0.05);
  });

  test('a heavier dough takes longer, by less than its weight and more than its radius', () => {
    for (const massG of [50, 300, 2000, 20_000]) {
      const ratio = sphereTauMin(8 * massG) / sphereTauMin(massG);
      expect(ratio).toBeGreaterThan(2);
      expect(ratio).toBeLessThan(4);
    }
  });

  test('a pair without noise says it exactly, with the dough’s own heat too', () => {
    for (const [startC, ambientC, selfHeatKPerH] of [
      [28, 20, 0],
      [26, 4, 0],
      [10, 30, 0],
      [28, 20, 1.5],
      [4, 24, 1],
    ] as const) {
      const drift = { doughC: startC, ambientC, tauMin: 165, selfHeatKPerH };
      const pair = { minutes: 70, beforeC: startC, afterC: driftedC(drift, 70), ambientC, selfHeatKPerH };
      expect(tauOfPair(pair)).toBeCloseTo(165, 6);
    }
  });

  test('a pair says nothing where dough and air are hardly apart, or it went the wrong way, or nowhere', () => {
    const pair: DriftPair = { minutes: 60, beforeC: 26, afterC: 25, ambientC: 20, selfHeatKPerH: 0 };
    expect(tauOfPair(pair)).not.toBeNull();
    for (const odd of [{ ambientC: 25 }, { afterC: 27 }, { afterC: 25.8 }, { minutes: 0 }, { afterC: 19 }])
      expect(tauOfPair({ ...pair, ...odd })).toBeNull();
    expect(tauEstimate([{ ...pair, minutes: 0 }], null)).toBeNull();
    expect(tauEstimate([{ ...pair, minutes: 0 }], 140)).toEqual({ tauMin: expect.closeTo(140, 9) as number, spreadMin: null, count: 0 });
  });

  test('after eight pairs with a noise of 0.3 K it is within a tenth in nine of ten containers, from an estimate wrong by up to twice', () => {
    let near = 0;
    for (let seed = 0; seed < CONTAINERS; seed += 1) {
      const tub = new SimulatedTub(seed);
      const learned = tauEstimate(tub.pairs(8), tub.prior());
      if (Math.abs((learned?.tauMin ?? 0) / tub.tauMin - 1) < 0.1) near += 1;
    }
    expect(near / CONTAINERS).toBeGreaterThan(0.9);
  });

  test('two of ten pairs that were misread by 6 K leave it within a fifth in nine of ten containers', () => {
    let near = 0;
    for (let seed = 1000; seed < 1000 + CONTAINERS; seed += 1) {
      const tub = new SimulatedTub(seed);
      const pairs = [...tub.pairs(4), tub.pair(6), ...tub.pairs(2), tub.pair(-6), ...tub.pairs(2)];
      const learned = tauEstimate(pairs, tub.prior());
      if (Math.abs((learned?.tauMin ?? 0) / tub.tauMin - 1) < 0.2) near += 1;
    }
    expect(near / CONTAINERS).toBeGreaterThan(0.9);
  });

  test('the spread is that of the pairs: none for one, small where they agree', () => {
    const tub = new SimulatedTub(7);
    expect(tauEstimate(tub.pairs(1), null)?.spreadMin).toBeNull();
    const learned = tauEstimate(tub.pairs(12), null);
    expect(learned?.count).toBe(12);
    expect(learned?.spreadMin).toBeGreaterThan(0);
    expect(learned?.spreadMin).toBeLessThan(0.3 * tub.tauMin);
  });
});

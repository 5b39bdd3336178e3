import { refused, accepted, unreachable, type Result } from '../result.ts';
import { cardinalShare } from './cardinal-rate.ts';
import { LEVAIN_COLD_C, LEVAIN_MOST_C, LEVAIN_POINTS, levainShare } from './levain-curve.ts';
import { areCardinals, BAKERS_YEAST_C, type RateModel } from './rate-model.ts';

/** A rate model ready to be integrated, relative to what it is at its reference temperature. */
export interface RateCurve {
  /** How many times as fast as at the reference, 0 or more. */
  readonly at: (doughC: number) => number;
  /** Where the curve has a knee, in °C, rising: it is smooth between them. */
  readonly kneesC: readonly number[];
  /** A step of temperature over which a polynomial follows the curve well, in kelvin, between its knees. */
  readonly smoothK: number;
}

export type RateFault =
  /** The three temperatures are not in order, or the best is below halfway. */
  | 'cardinalsOutOfOrder'
  /** Nothing grows at the reference temperature: no multiple of that says anything. */
  | 'noGrowthAtReference';

/** Growth curves between their knees are smooth over this, in kelvin. */
const SMOOTH_K = 6;
/** The natural logarithm beyond which rates are as good as none, or as all: what a double holds. */
const LARGEST_EXPONENT = 700;
/** Below this, in °C, no rule of so many times for so many kelvin holds: Gause 1932, Q. Rev. Biol. 7:27. */
export const COLD_C = 15;
/** Where a formula's cold factor counts in full, in °C: a retarder's. */
export const RETARDER_C = 4;

/**
 * The rate of a model relative to that at `referenceC`. perKelvin: (1 + rate)^(T − reference), +10 % a kelvin between 18 and 32 °C (*bake*
 * magazine); q10: q10^((T − reference) ÷ 10); cardinal: Rosso et al. 1993; levain: Gänzle's points.
 */
export function rateCurve(model: RateModel, referenceC: number): Result<RateCurve, RateFault> {
  switch (model.kind) {
    case 'perKelvin':
      return accepted(exponential(Math.log1p(model.rate), referenceC));
    case 'q10':
      return accepted(exponential(Math.log(model.q10) / 10, referenceC));
    case 'cardinal':
      if (!areCardinals(model)) return refused('cardinalsOutOfOrder');
      return relative((doughC) => cardinalShare(doughC, model), [model.minC, model.maxC], referenceC);
    case 'levain':
      return relative(levainShare, LEVAIN_KNEES_C, referenceC);
    default:
      return unreachable(model);
  }
}

const LEVAIN_KNEES_C = [BAKERS_YEAST_C.minC, LEVAIN_COLD_C, ...LEVAIN_POINTS.slice(1, -1).map(({ x }) => x), LEVAIN_MOST_C];

function exponential(perK: number, referenceC: number): RateCurve {
  return {
    at: (doughC) => Math.exp(Math.min(LARGEST_EXPONENT, Math.max(-LARGEST_EXPONENT, perK * (doughC - referenceC)))),
    kneesC: [],
    smoothK: 1 / Math.max(Math.abs(perK), 1 / SMOOTH_K),
  };
}

function relative(
  share: (doughC: number) => number,
  kneesC: readonly number[],
  referenceC: number,
): Result<RateCurve, Extract<RateFault, 'noGrowthAtReference'>> {
  const atReference = share(referenceC);
  if (atReference <= 0) return refused('noGrowthAtReference');
  return accepted({ at: (doughC) => share(doughC) / atReference, kneesC, smoothK: SMOOTH_K });
}

/**
 * A curve for a retard: as it is from 15 °C up; below, the cardinal model's shape (baker's yeast) joined to it there, times a factor that
 * the formula has taught (1 where it has not), which counts in full at 4 °C and below and fades towards 15. Common practice, but for the
 * shape.
 */
export function withCold(curve: RateCurve, coldFactor: number): RateCurve {
  const scale = curve.at(COLD_C) / cardinalShare(COLD_C, BAKERS_YEAST_C);
  const at = (doughC: number): number => {
    if (doughC >= COLD_C) return curve.at(doughC);
    const fading = Math.min(1, (COLD_C - doughC) / (COLD_C - RETARDER_C));
    return scale * cardinalShare(doughC, BAKERS_YEAST_C) * coldFactor ** fading;
  };
  const warmKneesC = curve.kneesC.filter((kneeC) => kneeC > COLD_C);
  return { at, kneesC: [BAKERS_YEAST_C.minC, RETARDER_C, COLD_C, ...warmKneesC], smoothK: curve.smoothK };
}

import { minutesUntilC } from './dough-drift.ts';

/** Heat that still air and a tub's wall take from a dough, in W/(m²·K): free convection and radiation together (common practice). */
const TRANSFER_W_PER_M2_K = 10;
/**
 * Dough as a body that conducts heat: kg/m³, J/(kg·K), W/(m·K). Within what handbooks give (from memory: 1000 to 1200, 2500 to 3000, 0.35 to
 * 0.5); together they give the design's table of 1.7 h for half a kilogram to 6.5 h for ten.
 */
const DOUGH = { density: 1100, heatCapacity: 2760, conductivity: 0.4 } as const;
const ROUNDS = 60;

/**
 * The time constant of a sphere of dough in still air, in minutes, by its weight in grams (more than 0): what is known before anybody has
 * measured. The slowest term of the sphere's series, τ = R² ÷ (a·λ²) with 1 − λ·cot λ = h·R ÷ k (Çengel, Heat Transfer, transient
 * conduction, from memory). Flat tubs take less, lids and crates more.
 */
export function sphereTauMin(massG: number): number {
  const { density, heatCapacity, conductivity } = DOUGH;
  const radiusM = Math.cbrt((3 * (massG / 1000)) / (4 * Math.PI * density));
  const root = sphereRoot((TRANSFER_W_PER_M2_K * radiusM) / conductivity);
  const diffusivity = conductivity / (density * heatCapacity);
  return radiusM ** 2 / (diffusivity * root ** 2) / 60;
}

/** The first root of 1 − λ·cot λ = Bi, between 0 and π: by halving, since the left side only rises. */
function sphereRoot(biot: number): number {
  let [low, high] = [0, Math.PI];
  for (let round = 0; round < ROUNDS; round += 1) {
    const middle = (low + high) / 2;
    if (1 - middle / Math.tan(middle) < biot) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A dough measured twice while it stood in one place. */
export interface DriftPair {
  readonly minutes: number;
  readonly beforeC: number;
  readonly afterC: number;
  readonly ambientC: number;
  readonly selfHeatKPerH: number;
}

/** A time constant that was learned, in minutes; `spreadMin` null where fewer than two pairs say anything. `count` is of pairs alone. */
export interface TauEstimate {
  readonly tauMin: number;
  readonly spreadMin: number | null;
  readonly count: number;
}

/** The newest pairs count: a tub is exchanged, a shelf moved. */
export const TAU_PAIRS = 20;
/** A pair says something only where dough and air were this far apart at first, in kelvin: a probe is good to half of one. */
const LEAST_APART_K = 2;
/** … and where the dough went this much of the way at least: less is the probe's noise. */
const LEAST_WENT_K = 0.5;
/** Time constants of anything that stands in a bakehouse, in minutes: a roll on a tray to a full trough. */
const TAU_RANGE_MIN = { least: 5, most: 3000 } as const;
/** A median deviation times this is a standard deviation, for normal noise. */
const DEVIATION_OF_MEDIAN = 1.4826;

/**
 * What pairs say of a time constant: the weighted median of the rates 1 ÷ τ that each gives, so that one that was misread, or whose door
 * stood open, hardly counts; a pair weighs by how far apart dough and air were and how long it lasted (Theil and Sen's idea, weighted:
 * Jaeckel 1972, from memory). What was known before (`priorTauMin`, the sphere's) counts as one pair of middling weight. The newest 20
 * pairs, oldest first. Null where nothing is known.
 */
export function tauEstimate(pairs: readonly DriftPair[], priorTauMin: number | null): TauEstimate | null {
  const said = pairs.slice(-TAU_PAIRS).flatMap((pair) => {
    const tauMin = tauOfPair(pair);
    return tauMin === null ? [] : [{ value: 1 / tauMin, weight: weightOf(pair) }];
  });
  const all = priorTauMin === null ? said : [...said, { value: 1 / priorTauMin, weight: middleWeight(said) }];
  if (all.length === 0) return null;
  const perMin = weightedMedian(all);
  const tauMin = 1 / perMin;
  const deviations = said.map(({ value, weight }) => ({ value: Math.abs(1 / value - tauMin), weight }));
  const spreadMin = said.length < 2 ? null : DEVIATION_OF_MEDIAN * weightedMedian(deviations);
  return { tauMin, spreadMin, count: said.length };
}

/**
 * The time constant that leads from a pair's first temperature to its second, in minutes; null where the pair says nothing: hardly apart
 * from the air, hardly moved, moved away from where it should have gone, or out of range.
 */
export function tauOfPair({ minutes, beforeC, afterC, ambientC, selfHeatKPerH }: DriftPair): number | null {
  if (minutes <= 0 || Math.abs(beforeC - ambientC) < LEAST_APART_K || Math.abs(afterC - beforeC) < LEAST_WENT_K) return null;
  const tooSoon = (tauMin: number): boolean => {
    const passesMin = minutesUntilC({ doughC: beforeC, ambientC, tauMin, selfHeatKPerH }, afterC);
    return passesMin !== null && passesMin < minutes;
  };
  // The longer the time constant, the later the second temperature is passed, or never.
  let { least: low, most: high } = TAU_RANGE_MIN as { least: number; most: number };
  if (!tooSoon(low) || tooSoon(high)) return null;
  for (let round = 0; round < ROUNDS; round += 1) {
    const middle = Math.sqrt(low * high);
    if (tooSoon(middle)) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/** One over the variance of a pair's rate, but for the probe's own: var(1/τ) ∝ (1/d1² + 1/d2²) ÷ t². */
function weightOf({ minutes, beforeC, afterC, ambientC }: DriftPair): number {
  const [before, after] = [beforeC - ambientC, afterC - ambientC];
  return minutes ** 2 / (1 / before ** 2 + 1 / Math.max(after ** 2, 0.01));
}

interface Weighted {
  readonly value: number;
  readonly weight: number;
}

function middleWeight(said: readonly Weighted[]): number {
  return said.length === 0 ? 1 : weightedMedian(said.map(({ weight }) => ({ value: weight, weight: 1 })));
}

/** The value at which half of the weight is reached; the mean of two where a half ends exactly between them. One value at least. */
function weightedMedian(values: readonly Weighted[]): number {
  const sorted = [...values].sort((a, b) => a.value - b.value);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let reached = 0;
  for (const [index, { value, weight }] of sorted.entries()) {
    reached += weight;
    if (reached > half) return value;
    if (reached === half) return (value + (sorted[index + 1]?.value ?? value)) / 2;
  }
  return sorted[sorted.length - 1]?.value ?? Number.NaN;
}

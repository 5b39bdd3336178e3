/** What one dough said: by how much mixing warmed it, in kelvin. */
export interface RiseReading {
  readonly riseK: number;
}

/** What readings say together, in kelvin. `spreadK` is null where fewer than two say anything; `count` is of readings alone. */
export interface RiseEstimate {
  readonly riseK: number;
  readonly spreadK: number | null;
  readonly count: number;
}

/** The newest readings count: a mixer is mended, a flour changes. */
export const RISE_READINGS = 20;
/** Doughs are not measured nearer than this, in kelvin, however well a few readings agree (common practice). */
const LEAST_SPREAD_K = 0.5;
/** Readings this many spreads away count for nothing: the customary constant of Tukey's biweight (from memory). */
const CUT_OFF = 4.685;
/** A median deviation times this is a standard deviation, for normal noise. */
const DEVIATION_OF_MEDIAN = 1.4826;
const ROUNDS = 30;
const CLOSE_K = 1e-9;

/**
 * A robust mean: the newest readings, oldest first, weighted by Tukey's biweight about their median, so that one that was misread
 * hardly counts. What was known before (`prior`) counts as one reading. Null where nothing is known.
 */
export function riseEstimate(samples: readonly RiseReading[], prior: RiseReading | null): RiseEstimate | null {
  const readings = samples.slice(-RISE_READINGS).map(({ riseK }) => riseK);
  const values = prior === null ? readings : [prior.riseK, ...readings];
  if (values.length === 0) return null;
  const scaleK = spreadAbout(values, median(values));
  return {
    riseK: biweightMean(values, scaleK),
    spreadK: readings.length < 2 ? null : spreadAbout(readings, median(readings)),
    count: readings.length,
  };
}

function biweightMean(values: readonly number[], scaleK: number): number {
  const cutOffK = CUT_OFF * scaleK;
  let centerK = median(values);
  for (let round = 0; round < ROUNDS; round += 1) {
    const weights = values.map((value) => Math.max(0, 1 - ((value - centerK) / cutOffK) ** 2) ** 2);
    const weight = weights.reduce((sum, each) => sum + each, 0);
    // The median of an even number may lie between two groups, far from both.
    if (weight === 0) return centerK;
    const nextK = values.reduce((sum, value, index) => sum + value * (weights[index] ?? 0), 0) / weight;
    if (Math.abs(nextK - centerK) < CLOSE_K) return nextK;
    centerK = nextK;
  }
  return centerK;
}

function spreadAbout(values: readonly number[], centerK: number): number {
  const deviationK = median(values.map((value) => Math.abs(value - centerK)));
  return Math.max(LEAST_SPREAD_K, deviationK * DEVIATION_OF_MEDIAN);
}

/** The middle value; the mean of the two middle ones. Of no values, NaN. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const upper = sorted[Math.floor(middle)] ?? Number.NaN;
  return Number.isInteger(middle) ? ((sorted[middle - 1] ?? Number.NaN) + upper) / 2 : upper;
}

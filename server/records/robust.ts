import { medianAbsoluteDeviation, medianSorted, quantileSorted } from 'simple-statistics';
import type { Spread, Trend } from '../../shared/records/lessons-answer.ts';

/** Of the interval of a median and of a trend: so likely is what is really so within it. */
const CONFIDENCE = 0.95;
/** The quantile of the normal distribution that leaves 2.5 % above it. */
const Z = 1.959_964;
/** A median deviation times this is a standard deviation, for normal noise. */
const DEVIATION_OF_MEDIAN = 1.4826;
/** A median varies by so much more than a mean, for normal noise (asymptotically; from memory). */
const MEDIAN_VARIES = Math.PI / 2;
/** Where how far groups differ cannot be told yet, what is known of all of them counts as so many of each (our choice). */
const PARENT_COUNTS = 5;
/** A trend of fewer points, or over fewer days than these, says nothing. */
const LEAST_POINTS = 6;
const LEAST_DAYS = 10;
/** A trend is told per so many days. */
const TREND_DAYS = 30;
/** Points of a trend; more are thinned evenly: pairs grow by the square. */
const MOST_POINTS = 60;

/** Median, quartiles, tenths. Quantiles between neighbours in proportion (Hyndman & Fan 1996, type 7). Null of no values. */
export function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = medianInterval(sorted);
  return {
    n: sorted.length,
    median: medianSorted(sorted),
    quarter: quantileSorted(sorted, 0.25),
    threeQuarters: quantileSorted(sorted, 0.75),
    tenth: quantileSorted(sorted, 0.1),
    nineTenths: quantileSorted(sorted, 0.9),
    medianLow: low,
    medianHigh: high,
  };
}

/** One quantile of values in any order; NaN of none. */
export function quantileOf(values: readonly number[], share: number): number {
  if (values.length === 0) return Number.NaN;
  return quantileSorted(
    [...values].sort((a, b) => a - b),
    share,
  );
}

/**
 * Between which values the median of what they were drawn from lies, whatever its distribution: the narrowest pair of order statistics,
 * equally far from both ends, that holds it with at least 95 % (the sign test turned round; David & Nagaraja, Order Statistics, from
 * memory). Fewer than six values never hold it so surely: then it is all of them.
 */
function medianInterval(sorted: readonly number[]): readonly [number, number] {
  const n = sorted.length;
  // Each value lies below the median as often as a coin shows heads: so likely is it that at most `k` of them do.
  let term = 0.5 ** n;
  let below = term;
  let k = 0;
  while (k + 1 < n / 2) {
    term = (term * (n - k)) / (k + 1);
    if (2 * (below + term) > 1 - CONFIDENCE) break;
    below += term;
    k += 1;
  }
  return [sorted[k] ?? Number.NaN, sorted[n - 1 - k] ?? Number.NaN];
}

/** How a value goes along with another: the median of the slopes of all pairs, and the interval that holds it with 95 %. */
export interface Slope {
  readonly slope: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The slope of Theil (1950) and Sen (1968): the median of the slopes of all pairs of points. Its interval is Sen's, by the variance of
 * Kendall's statistic with ties of either kind taken out (as it stands in textbooks, from memory). Null where all stand at one place.
 */
export function theilSen(points: readonly (readonly [x: number, y: number])[]): Slope | null {
  // A typed array sorts by value, many times as fast as one that asks which is the less.
  const room = new Float64Array((points.length * (points.length - 1)) / 2);
  let count = 0;
  points.forEach(([x, y], index) => {
    for (let other = index + 1; other < points.length; other += 1) {
      const [otherX, otherY] = points[other] ?? [x, y];
      if (otherX === x) continue;
      room[count] = (otherY - y) / (otherX - x);
      count += 1;
    }
  });
  if (count === 0) return null;
  const slopes = room.subarray(0, count).sort();
  const variance = kendallVariance(points);
  const spread = Z * Math.sqrt(Math.max(0, variance));
  const last = slopes.length - 1;
  const below = Math.max(0, Math.round((slopes.length - spread) / 2) - 1);
  const above = Math.min(last, Math.round((slopes.length + spread) / 2));
  const median = ((slopes[(count - 1) >> 1] ?? Number.NaN) + (slopes[count >> 1] ?? Number.NaN)) / 2;
  return { slope: median, low: slopes[below] ?? Number.NaN, high: slopes[above] ?? Number.NaN };
}

function kendallVariance(points: readonly (readonly [number, number])[]): number {
  const part = (n: number): number => n * (n - 1) * (2 * n + 5);
  const ties = (values: readonly number[]): number => {
    const counts = new Map<number, number>();
    for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
    return [...counts.values()].reduce((sum, count) => sum + part(count), 0);
  };
  return (part(points.length) - ties(points.map(([x]) => x)) - ties(points.map(([, y]) => y))) / 18;
}

/** A value with when it was so. */
export interface Dated {
  readonly atMs: number;
  readonly value: number;
}

/** How values move in 30 days; null where there are too few, or all of them within a few days. */
export function trendOf(values: readonly Dated[]): Trend | null {
  const dayMs = 86_400_000;
  const sorted = [...values].sort((a, b) => a.atMs - b.atMs || a.value - b.value);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined || sorted.length < LEAST_POINTS || last.atMs - first.atMs < LEAST_DAYS * dayMs) return null;
  const step = Math.max(1, sorted.length / MOST_POINTS);
  const thinned = Array.from({ length: Math.min(sorted.length, MOST_POINTS) }, (_, index) => sorted[Math.floor(index * step)] ?? last);
  const slope = theilSen(thinned.map(({ atMs, value }) => [(atMs - first.atMs) / (TREND_DAYS * dayMs), value] as const));
  return slope === null ? null : { perMonth: slope.slope, low: slope.low, high: slope.high };
}

/**
 * Medians of groups, each drawn towards the median of all of them together by how little it says: the normal–normal model with one
 * variance within groups, pooled, and the variance between them by moments, never below nothing (empirical Bayes as in Efron & Morris
 * 1975; medians and their deviations in place of means are our choice). Where that cannot be told, by n/(n + 5).
 */
export function shrunkMedians(groups: readonly (readonly number[])[]): readonly number[] {
  const all = groups.flat().sort((a, b) => a - b);
  if (all.length === 0) return groups.map(() => Number.NaN);
  const parent = medianSorted(all);
  const medians = groups.map((values) => quantileOf(values, 0.5));
  const freedoms = groups.reduce((sum, { length }) => sum + Math.max(0, length - 1), 0);
  const within = groups.reduce((sum, values) => sum + Math.max(0, values.length - 1) * squaredDeviation(values), 0) / freedoms;
  const variances = groups.map(({ length }) => (MEDIAN_VARIES * within) / length);
  const known = medians.flatMap((median, index) => (Number.isNaN(median) ? [] : [{ median, variance: variances[index] ?? 0 }]));
  const between =
    known.length < 2
      ? 0
      : known.reduce((sum, { median }) => sum + (median - parent) ** 2, 0) / (known.length - 1) -
        known.reduce((sum, { variance }) => sum + variance, 0) / known.length;
  return medians.map((median, index) => {
    const n = groups[index]?.length ?? 0;
    if (n === 0) return parent;
    const variance = variances[index] ?? 0;
    const isTold = known.length >= 2 && freedoms > 0 && within > 0;
    const weight = isTold ? Math.max(0, between) / (Math.max(0, between) + variance) : n / (n + PARENT_COUNTS);
    return parent + weight * (median - parent);
  });
}

/** The variance of values about their median, by the median of their deviations. 0 of fewer than two. */
function squaredDeviation(values: readonly number[]): number {
  return values.length < 2 ? 0 : (medianAbsoluteDeviation([...values]) * DEVIATION_OF_MEDIAN) ** 2;
}

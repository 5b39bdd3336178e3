import { assert } from '../../shared/result.ts';

/** The value below which a share (0 to 1) of the values lies, by nearest rank. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const value = sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))];
  assert(value !== undefined, 'a percentile of nothing');
  return value;
}

/** The middle value. */
export function median(values: readonly number[]): number {
  return percentile(values, 0.5);
}

/** Rounded to so many significant digits: more would only be noise. */
export function significant(value: number, digits = 3): number {
  return Number(value.toPrecision(digits));
}

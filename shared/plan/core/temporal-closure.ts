import type { Arc } from './instance.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** Stands for "no path": less than any length of one, and far enough from the smallest 32-bit number that two can be added. */
export const NO_PATH = -(2 ** 29);

/** Longest that a path of a closure may be, either way; beyond it the sums would no longer be exact. */
export const MOST_LENGTH = 2 ** 28;

/** What a lag did to a closure: nothing, as it held already; it tightened something; or it contradicts what is there. */
export const HELD = 0;
export const TIGHTENED = 1;
export const CONTRADICTION = -1;
export type Tightening = typeof HELD | typeof TIGHTENED | typeof CONTRADICTION;

/**
 * All longest paths between activities bound by start-to-start lags: start(to) - start(from) is `lengths[from * size + to]` at
 * least, in the unit of the lags, and what contradicts no entry can be kept together with all lags. Resources play no part in it.
 */
export interface TemporalClosure {
  readonly size: number;
  readonly lengths: Int32Array;
  /** 1 where a path from or to the activity has grown since somebody last set it to 0. */
  readonly touched: Uint8Array;
}

/**
 * The closure of the lags, by Floyd and Warshall: time grows with the cube of `size`. Null where a cycle of lags is longer than 0,
 * so that no starts can keep them. Throws a RangeError where a path could be longer than MOST_LENGTH.
 */
export function closeLags(size: number, arcs: readonly Arc[]): TemporalClosure | null {
  if (longestOf(size, arcs) > MOST_LENGTH) {
    throw new RangeError(`lags that add up to more than ${MOST_LENGTH} units of time cannot be planned; take coarser ones`);
  }
  const lengths = new Int32Array(size * size).fill(NO_PATH);
  for (let activity = 0; activity < size; activity += 1) lengths[activity * size + activity] = 0;
  for (const { from, to, lag } of arcs) {
    const entry = from * size + to;
    lengths[entry] = Math.max(lengths[entry] as number, lag);
  }
  for (let via = 0; via < size; via += 1) {
    closeThrough(lengths, size, via);
    for (let activity = 0; activity < size; activity += 1) {
      if ((lengths[activity * size + activity] as number) > 0) return null;
    }
  }
  return { size, lengths, touched: new Uint8Array(size).fill(1) };
}

/** No path that goes through each activity once at most is longer, either way. */
function longestOf(size: number, arcs: readonly Arc[]): number {
  const longest = new Float64Array(size);
  for (const { from, lag } of arcs) longest[from] = Math.max(longest[from] as number, Math.abs(lag));
  return longest.reduce((sum, lag) => sum + lag, 0);
}

function closeThrough(lengths: Int32Array, size: number, via: number): void {
  for (let from = 0; from < size; from += 1) {
    const first = lengths[from * size + via] as number;
    if (first === NO_PATH || from === via) continue;
    for (let to = 0; to < size; to += 1) {
      const second = lengths[via * size + to] as number;
      if (second !== NO_PATH && first + second > (lengths[from * size + to] as number)) lengths[from * size + to] = first + second;
    }
  }
}

/** A closure of its own with the same paths. */
export function copyOf({ size, lengths, touched }: TemporalClosure): TemporalClosure {
  return { size, lengths: lengths.slice(), touched: touched.slice() };
}

/** Makes `to` hold the paths of `from`, which has the same size, without taking new memory. */
export function copyInto(from: TemporalClosure, to: TemporalClosure): void {
  to.lengths.set(from.lengths);
  to.touched.set(from.touched);
}

/**
 * Adds one lag and keeps all longest paths, in time that grows with the square of the size at most. After CONTRADICTION the closure
 * is as it was.
 */
export function tighten(closure: TemporalClosure, from: number, to: number, lag: number): Tightening {
  const { size, lengths } = closure;
  if (lag <= (lengths[from * size + to] as number)) return HELD;
  const back = lengths[to * size + from] as number;
  if (back !== NO_PATH && lag + back > 0) return CONTRADICTION;
  for (let origin = 0; origin < size; origin += 1) {
    const first = lengths[origin * size + from] as number;
    if (first !== NO_PATH && first + lag > (lengths[origin * size + to] as number)) spread(closure, origin, to, first + lag);
  }
  return TIGHTENED;
}

/** A path from `origin` to `via` has become this long: so have those that go on from there. */
function spread({ size, lengths, touched }: TemporalClosure, origin: number, via: number, length: number): void {
  const [row, onward] = [origin * size, via * size];
  touched[origin] = 1;
  for (let end = 0; end < size; end += 1) {
    const second = lengths[onward + end] as number;
    if (second === NO_PATH || length + second <= (lengths[row + end] as number)) continue;
    lengths[row + end] = length + second;
    touched[end] = 1;
  }
}

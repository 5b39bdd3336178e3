import type { LagProblem } from './lag-problem.ts';
import { CONTRADICTION, HELD, TIGHTENED, tighten, type TemporalClosure, type Tightening } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/**
 * Of two activities that cannot run at once, one has to end before the other begins: where one order contradicts the lags, the other
 * is added to them.
 */
export function orderConflicts(closure: TemporalClosure, { conflicts, durations }: LagProblem): Tightening {
  let result: Tightening = HELD;
  for (const { one, other } of conflicts) {
    const done = orderTwo(closure, durations, one, other);
    if (done === CONTRADICTION) return CONTRADICTION;
    if (done === TIGHTENED) result = TIGHTENED;
  }
  return result;
}

/**
 * Three intervals that overlap two by two have an instant in common, at which a set of three that does not fit together would run. So
 * where two of its pairs have to overlap, the third pair must not.
 */
export function orderTriples(closure: TemporalClosure, { triples, durations }: LagProblem): Tightening {
  let result: Tightening = HELD;
  for (let at = 0; at < triples.length; at += 3) {
    const [a, b, c] = [triples[at] as number, triples[at + 1] as number, triples[at + 2] as number];
    const [ab, bc, ac] = [
      haveToOverlap(closure, durations, a, b),
      haveToOverlap(closure, durations, b, c),
      haveToOverlap(closure, durations, a, c),
    ];
    let done: Tightening = HELD;
    if (ab && bc) done = orderTwo(closure, durations, a, c);
    else if (ab && ac) done = orderTwo(closure, durations, b, c);
    else if (bc && ac) done = orderTwo(closure, durations, a, b);
    if (done === CONTRADICTION) return CONTRADICTION;
    if (done === TIGHTENED) result = TIGHTENED;
  }
  return result;
}

/** Whether the first can end before the second begins, as far as the lags say. */
export function canPrecede({ size, lengths }: TemporalClosure, durations: Int32Array, first: number, second: number): boolean {
  return (durations[first] as number) + (lengths[second * size + first] as number) <= 0;
}

/** Whether the first has to end before the second begins. */
export function hasToPrecede({ size, lengths }: TemporalClosure, durations: Int32Array, first: number, second: number): boolean {
  return (lengths[first * size + second] as number) >= (durations[first] as number);
}

function haveToOverlap(closure: TemporalClosure, durations: Int32Array, one: number, other: number): boolean {
  return !canPrecede(closure, durations, one, other) && !canPrecede(closure, durations, other, one);
}

function orderTwo(closure: TemporalClosure, durations: Int32Array, one: number, other: number): Tightening {
  const isFirstPossible = canPrecede(closure, durations, one, other);
  const isSecondPossible = canPrecede(closure, durations, other, one);
  if (isFirstPossible && isSecondPossible) return HELD;
  if (isFirstPossible) return tighten(closure, one, other, durations[one] as number);
  if (isSecondPossible) return tighten(closure, other, one, durations[other] as number);
  return CONTRADICTION;
}

import { assert } from '../result.ts';
import type { DoughCourse } from './dough-course.ts';
import { driftedC, type Drift } from './dough-drift.ts';
import { rateIntegral, visitStretches } from './rate-integral.ts';
import type { RateCurve } from './ripeness-rate.ts';

/** No rest is foretold further than this, in minutes: 14 days. */
export const RIPENESS_CAP_MIN = 14 * 24 * 60;

/** When a rest is ripe; `notWithinCap` where it is not within 14 days of its beginning. */
export type RipeAt = { readonly atMin: number } | { readonly atMin: null; readonly reason: 'notWithinCap' };

/** Nearer than this an instant need not be known, in minutes: six microseconds. */
const CLOSE_MIN = 1e-7;
const MOST_ROUNDS = 100;

/**
 * How far a rest has come between two instants of its course: E = ∫ r(T(t)) ÷ r(reference) dt, in minutes at the reference temperature; 0 where
 * the second is not after the first. Before the course begins the dough is as it is then.
 */
export function equivalentMin(course: DoughCourse, curve: RateCurve, fromMin: number, toMin: number): number {
  let sum = 0;
  visitParts(course, fromMin, toMin, (drift, beganMin, from, to) =>
    visitStretches(drift, curve, from - beganMin, to - beganMin, (start, end) => {
      sum += rateIntegral(drift, curve, start, end);
      return false;
    }),
  );
  return sum;
}

/**
 * When a rest that began at `fromMin` has come to `nominalMin` (0 or more) minutes at the reference temperature. Before the course
 * begins the dough is as it is then.
 */
export function ripeAt(course: DoughCourse, curve: RateCurve, fromMin: number, nominalMin: number): RipeAt {
  if (nominalMin === 0) return { atMin: fromMin };
  let leftMin = nominalMin;
  let atMin: number | null = null;
  visitParts(course, fromMin, fromMin + RIPENESS_CAP_MIN, (drift, beganMin, from, to) =>
    visitStretches(drift, curve, from - beganMin, to - beganMin, (start, end) => {
      const here = rateIntegral(drift, curve, start, end);
      if (here >= leftMin) atMin = beganMin + instantOf(drift, curve, start, end, leftMin, here);
      else leftMin -= here;
      return atMin !== null;
    }),
  );
  return atMin === null ? { atMin, reason: 'notWithinCap' } : { atMin };
}

type PartVisit = (drift: Drift, beganMin: number, fromMin: number, toMin: number) => boolean;

/** Visits what of each part lies between two instants, until `visit` says that it is enough. */
function visitParts(course: DoughCourse, fromMin: number, toMin: number, visit: PartVisit): void {
  const [first] = course;
  assert(first !== undefined, 'a course has a part');
  const untilCourseMin = Math.min(first.fromMin, toMin);
  if (fromMin < untilCourseMin && visit({ ...first, ambientC: null, selfHeatKPerH: 0 }, fromMin, fromMin, untilCourseMin)) return;
  for (const [index, part] of course.entries()) {
    const from = Math.max(fromMin, part.fromMin);
    const to = Math.min(toMin, course[index + 1]?.fromMin ?? toMin);
    if (from < to && visit(part, part.fromMin, from, to)) return;
  }
}

/** Where in a stretch its integral comes to `wantedMin`: Newton's method, within what is known to hold it. */
function instantOf(drift: Drift, curve: RateCurve, startMin: number, endMin: number, wantedMin: number, wholeMin: number): number {
  let [low, high] = [startMin, endMin];
  let atMin = startMin + ((endMin - startMin) * wantedMin) / wholeMin;
  for (let round = 0; round < MOST_ROUNDS && high - low > CLOSE_MIN; round += 1) {
    const tooMuch = rateIntegral(drift, curve, startMin, atMin) - wantedMin;
    if (tooMuch > 0) high = atMin;
    else low = atMin;
    const next = atMin - tooMuch / curve.at(driftedC(drift, atMin));
    if (Math.abs(next - atMin) < CLOSE_MIN) return Math.min(high, Math.max(low, next));
    atMin = next > low && next < high ? next : (low + high) / 2;
  }
  return atMin;
}

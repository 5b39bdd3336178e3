import { dueOf } from '../../shared/floor/due.ts';
import { ripenedMin } from '../../shared/floor/ripening.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { courseC } from '../../shared/trade/dough-course.ts';

const MINUTE_MS = 60_000;
/** Straight pieces that a curve is drawn with, beside those that begin where its course changes. */
const PIECES = 48;
/** So much of the time stands behind the ripe point, that it is seen. */
const BEHIND = 0.08;
/** Which side of an instant is meant, where the course begins anew at it. */
const HAIR_MIN = 1e-6;
/** A rest that is not ripe within so long is drawn no further. */
const LONGEST_MS = 36 * 60 * MINUTE_MS;

/** A point of both curves. */
export interface CurvePoint {
  readonly atMs: number;
  readonly doughC: number;
  /** How ripe it is, in per cent of what it is to be: 100 at the ripe point. */
  readonly ripePct: number;
}

/** How a rest ripens over its time, as it was and as it will be if nothing changes. */
export interface RipenessCurve {
  readonly fromMs: number;
  readonly toMs: number;
  /** In the order of time; two at one instant where a reading begins the course anew. */
  readonly points: readonly CurvePoint[];
  /** What was read since the rest began. */
  readonly readings: readonly { readonly atMs: number; readonly celsius: number }[];
  readonly ripeMs: number;
  readonly between: { readonly fromMs: number; readonly toMs: number } | null;
}

/**
 * The curve of a dough that rests and of which somebody said how warm it is; null of any other. `nowMs` lengthens it once the
 * ripe point is past; else time changes nothing.
 */
export function ripenessCurve(state: FloorState, workpiece: Workpiece, nowMs: number): RipenessCurve | null {
  const due = dueOf(state, workpiece);
  const life = due === null ? undefined : workpiece.steps[due.step.id];
  if (due?.phase !== 'resting' || due.ripening === null || life === undefined) return null;
  const { ripening, step } = due;
  const { warmth, ripeMs, between } = ripening;
  const { startedMs: fromMs, pins } = life;
  const nominalMin = pins === null ? 0 : pins.targetMin * pins.factor;
  if (fromMs === null || nominalMin === 0) return null;
  const lastMs = Math.min(fromMs + LONGEST_MS, Math.max(ripeMs, between?.toMs ?? ripeMs));
  const toMs = Math.max(lastMs, nowMs) + (lastMs - fromMs) * BEHIND;
  const at = (atMs: number, justBefore = false): CurvePoint => ({
    atMs,
    doughC: courseC(warmth.course, (atMs - warmth.originMs) / MINUTE_MS + (justBefore ? -HAIR_MIN : HAIR_MIN)),
    ripePct: ((ripenedMin(state, workpiece, step, life, atMs) ?? 0) / nominalMin) * 100,
  });
  const changesMs = warmth.course.map((part) => warmth.originMs + part.fromMin * MINUTE_MS).filter((atMs) => atMs > fromMs && atMs < toMs);
  const evenMs = Array.from({ length: PIECES + 1 }, (_, index) => fromMs + ((toMs - fromMs) * index) / PIECES);
  const points = [
    ...[...evenMs, ...(ripeMs < toMs ? [ripeMs] : [])].filter((atMs) => !changesMs.includes(atMs)).map((atMs) => at(atMs)),
    ...changesMs.flatMap((atMs) => [at(atMs, true), at(atMs)]),
  ];
  return {
    fromMs,
    toMs,
    // Stable: of two at one instant what was thought stands before what was read.
    points: points.sort((a, b) => a.atMs - b.atMs),
    readings: warmth.readings.filter(({ atMs }) => atMs >= fromMs).map(({ atMs, celsius }) => ({ atMs, celsius })),
    ripeMs,
    between,
  };
}

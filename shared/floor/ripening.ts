import type { Step } from '../documents/method.ts';
import { courseC, type DoughCourse } from '../trade/dough-course.ts';
import { BAKERS_YEAST_C, rateModelOf, type RateModel } from '../trade/rate-model.ts';
import { equivalentMin, ripeAt, RIPENESS_CAP_MIN } from '../trade/ripeness-progress.ts';
import { rateCurve, withCold, type RateCurve } from '../trade/ripeness-rate.ts';
import type { StepPins } from './events.ts';
import type { FloorState, StepLife, Workpiece } from './state.ts';
import { isWarmthSaid, warmthOf, type Warmth } from './warmth.ts';

const MINUTE_MS = 60_000;
/** Between these the models agree within about a tenth; outside a range is shown (trade.md). */
const MODELS_AGREE_FROM_C = 22;
const MODELS_AGREE_TO_C = 28;
/** What else is sane to believe of a yeasted dough, beside its own model. */
const OTHER_MODELS: readonly RateModel[] = [
  { kind: 'perKelvin', rate: 0.1 },
  { kind: 'q10', q10: 2 },
  { kind: 'cardinal', ...BAKERS_YEAST_C },
];

/** How a rest ripens by how warm its dough is. Instants are those of the floor; times given by hand are not in them. */
export interface Ripening {
  readonly earliestMs: number;
  readonly ripeMs: number;
  /** From here on it is over-ripe; null where the method names no latest. */
  readonly latestMs: number | null;
  /** By how much it is ripe later (+) or earlier than by its minutes alone. */
  readonly byMin: number;
  /** When sane models have it ripe, where they differ: the dough is or will be outside 22 to 28 °C. */
  readonly between: { readonly fromMs: number; readonly toMs: number } | null;
  readonly warmth: Warmth;
}

/**
 * When a rest is ripe by the temperature of its dough: its minutes count at the reference temperature of its model, and pass faster or slower by how
 * warm the dough is. Null where its step says no model, or nobody has said anything of the dough's warmth: then the minutes count as
 * they are. Follows from facts alone; time changes nothing.
 */
export function ripeningOf(state: FloorState, workpiece: Workpiece, step: Step, life: StepLife): Ripening | null {
  if (step.ripening === undefined || life.startedMs === null || life.pins === null) return null;
  const known = KNOWN.get(workpiece);
  if (known?.stepId === step.id && known.of.every((part, index) => part === partsOf(state)[index])) return known.ripening;
  const ripening = reckoned(state, workpiece, step, life);
  KNOWN.set(workpiece, { stepId: step.id, of: partsOf(state), ripening });
  return ripening;
}

/** What was reckoned of a workpiece as it is: a state is asked many times for one tap, and most doughs are as they were. */
const KNOWN = new WeakMap<Workpiece, { readonly stepId: string; readonly of: readonly unknown[]; readonly ripening: Ripening | null }>();

/** What a ripening follows from beside its workpiece. */
function partsOf({ kitchen, placeAir, drifts, formulas, products }: FloorState): readonly unknown[] {
  return [kitchen, placeAir, drifts, formulas, products];
}

function reckoned(state: FloorState, workpiece: Workpiece, step: Step, life: StepLife): Ripening | null {
  const { startedMs, pins } = life;
  if (step.ripening === undefined || startedMs === null || pins === null) return null;
  if (!isWarmthSaid(state, workpiece, step.place ?? null, startedMs)) return null;
  const warmth = warmthOf(state, workpiece);
  const curve = curveOf(rateModelOf(step.ripening), step.ripening.referenceC);
  if (warmth === null || curve === null) return null;
  const fromMin = (startedMs - warmth.originMs) / MINUTE_MS;
  const at = (minutes: number, by: RateCurve = curve): number => {
    const ripe = ripeAt(warmth.course, by, fromMin, minutes);
    return Math.round(warmth.originMs + (ripe.atMin ?? fromMin + RIPENESS_CAP_MIN) * MINUTE_MS);
  };
  const { earliestMin, targetMin, latestMin } = scaled(pins);
  const ripeMs = at(targetMin);
  return {
    earliestMs: at(earliestMin),
    ripeMs,
    latestMs: latestMin === null ? null : at(latestMin),
    byMin: (ripeMs - (startedMs + targetMin * MINUTE_MS)) / MINUTE_MS,
    between: betweenOf(warmth.course, fromMin, (ripeMs - warmth.originMs) / MINUTE_MS, ripeMs, (by) => at(targetMin, by), step),
    warmth,
  };
}

/** How warm a dough is at an instant, in °C, as far as anybody knows; null where nothing says. */
export function doughCAt(state: FloorState, workpiece: Workpiece, atMs: number): number | null {
  const warmth = warmthOf(state, workpiece);
  return warmth === null ? null : courseC(warmth.course, (atMs - warmth.originMs) / MINUTE_MS);
}

/** Minutes at the reference temperature that a rest has had from its start to an instant; as they are where nothing is known of its warmth. */
export function ripenedMin(state: FloorState, workpiece: Workpiece, step: Step, life: StepLife, atMs: number): number | null {
  const { startedMs } = life;
  if (step.ripening === undefined || startedMs === null) return null;
  const curve = curveOf(rateModelOf(step.ripening), step.ripening.referenceC);
  const warmth = isWarmthSaid(state, workpiece, step.place ?? null, startedMs) ? warmthOf(state, workpiece) : null;
  if (warmth === null || curve === null) return (atMs - startedMs) / MINUTE_MS;
  return equivalentMin(warmth.course, curve, (startedMs - warmth.originMs) / MINUTE_MS, (atMs - warmth.originMs) / MINUTE_MS);
}

function scaled({ earliestMin, targetMin, latestMin, factor }: StepPins): {
  readonly earliestMin: number;
  readonly targetMin: number;
  readonly latestMin: number | null;
} {
  return {
    earliestMin: (earliestMin ?? targetMin) * factor,
    targetMin: targetMin * factor,
    latestMin: latestMin === undefined ? null : latestMin * factor,
  };
}

function curveOf(model: RateModel, referenceC: number): RateCurve | null {
  const curve = rateCurve(model, referenceC);
  return curve.ok ? withCold(curve.value, 1) : null;
}

function betweenOf(
  course: DoughCourse,
  fromMin: number,
  ripeMin: number,
  ripeMs: number,
  ripeBy: (curve: RateCurve) => number,
  step: Step,
): Ripening['between'] {
  const seenC = [fromMin, ripeMin, ...course.map((part) => part.fromMin).filter((min) => min > fromMin && min < ripeMin)].map((min) =>
    courseC(course, min),
  );
  if (seenC.every((doughC) => doughC >= MODELS_AGREE_FROM_C && doughC <= MODELS_AGREE_TO_C)) return null;
  const referenceC = step.ripening?.referenceC ?? 0;
  const others = OTHER_MODELS.flatMap((model) => {
    const curve = curveOf(model, referenceC);
    return curve === null ? [] : [ripeBy(curve)];
  });
  return { fromMs: Math.min(ripeMs, ...others), toMs: Math.max(ripeMs, ...others) };
}

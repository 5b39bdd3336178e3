import { px, type Placement } from '../parts/place.ts';
import type { Arrangement } from './arrangement.ts';
import { framePx, type WallPlan } from './governor.ts';
import type { Screen, TypeSizes } from './type-sizes.ts';

/** The whole picture moves by a pixel now and then, so that nothing burns in. House ms. */
const SHIFT_EVERY_MS = 10 * 60_000;
/**
 * Round a square of two pixels, so that it stands as long at either end of both axes. Only to the right and down, where the
 * wall has nothing but air.
 */
const SHIFTS = ['0 0', '1px 0', '2px 0', '2px 1px', '2px 2px', '1px 2px', '0 2px', '0 1px'] as const;
/** Air right of the axis' end, as a share of the near size. */
const AXIS_END = 0.7;

/** The governor's lengths as the elements' styles read them. */
export function wallLengths({ plan, columns }: Arrangement, nowMs: number): Placement {
  return {
    '--glance': px(plan.sizes.glancePx),
    '--verb': px(plan.sizes.verbPx),
    '--second': px(plan.sizes.secondPx),
    '--near': px(plan.sizes.nearPx),
    '--frame': px(framePx(plan.sizes)),
    '--edge': px(columns.edgePx),
    '--gap': px(columns.gapPx),
    '--mark': px(columns.markPx),
    '--tag': px(columns.tagPx),
    '--left': px(plan.leftPx),
    '--now': px(nowLinePx(plan.sizes)),
    '--band': px(plan.bandPx),
    '--header': px(plan.headerPx),
    '--row': px(plan.rowPx),
    '--group': px(plan.groupPx),
    '--lane': px(plan.laneHeightPx),
    '--elsewhere': px(plan.elsewherePx),
    translate: shiftAt(nowMs),
  };
}

/** Where the picture stands at an instant, as CSS `translate`. */
export function shiftAt(nowMs: number): string {
  const turn = Math.floor(nowMs / SHIFT_EVERY_MS);
  return SHIFTS[((turn % SHIFTS.length) + SHIFTS.length) % SHIFTS.length] ?? '0 0';
}

/** Before there is anything to arrange: sizes for a notice. */
export function noticeLengths(sizes: TypeSizes, nowMs: number): Placement {
  return {
    '--glance': px(sizes.glancePx),
    '--second': px(sizes.secondPx),
    '--near': px(sizes.nearPx),
    '--gap': px(sizes.nearPx / 2),
    '--edge': '0px',
    '--band': px(sizes.nearPx * 1.5),
    translate: shiftAt(nowMs),
  };
}

/** The sizes of a notice that nothing can be read from there: small enough to be seen whole from nearer by. */
export function tooSmallSizes(sizes: TypeSizes, { widthPx, heightPx }: Screen): TypeSizes {
  const mostPx = Math.min(widthPx / 24, heightPx / 10);
  return { ...sizes, secondPx: Math.min(sizes.secondPx, mostPx), nearPx: Math.min(sizes.nearPx, mostPx * 0.6) };
}

/** Width of the time axis right of NOW, in px. */
export function axisWidthPx(plan: WallPlan, screenWidthPx: number): number {
  return screenWidthPx - plan.leftPx - nowLinePx(plan.sizes) / 2 - plan.sizes.nearPx * AXIS_END;
}

/** Thickness of the NOW line: an even number of px, so that both halves are whole. */
function nowLinePx(sizes: TypeSizes): number {
  return 2 * Math.max(2, Math.round(sizes.glancePx * 0.045));
}

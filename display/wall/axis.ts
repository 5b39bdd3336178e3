import { textWidthPx } from '../parts/text-width.ts';
import { AXIS_MARKS } from '../words/clock.ts';

const MINUTE_MS = 60_000;
/** The time that lies within the first ln 2 of the axis: below it marks run, beyond it they creep. */
const BEND_MS = 6 * MINUTE_MS;
/** How far the axis reaches. */
export const REACH_MS = 12 * 60 * MINUTE_MS;

const FULL = Math.log(1 + REACH_MS / BEND_MS);

/**
 * Where a time ahead stands on the compressive axis, `x = W·ln(1 + t/6 min) / ln(1 + 12 h/6 min)`, in px. What is past
 * stands at 0, what lies beyond twelve hours at the end.
 */
export function axisX(aheadMs: number, widthPx: number): number {
  if (aheadMs <= 0) return 0;
  if (aheadMs >= REACH_MS) return widthPx;
  return (widthPx * Math.log(1 + aheadMs / BEND_MS)) / FULL;
}

/** A mark of the axis as it is drawn: a line at `xPx`, with its text where that does not touch another. */
export interface AxisMark {
  readonly xPx: number;
  readonly text: string | null;
}

/** Between the texts of two marks, in em. */
const MARK_GAP_EM = 0.35;

/** The marks on an axis of a width, their texts centred on them. */
export function axisMarks(widthPx: number, sizePx: number): readonly AxisMark[] {
  let takenPx = 0;
  return AXIS_MARKS.map(({ minutes, text }) => {
    const xPx = axisX(minutes * MINUTE_MS, widthPx);
    const halfPx = textWidthPx(text, sizePx) / 2;
    if (xPx - halfPx < takenPx + sizePx * MARK_GAP_EM) return { xPx, text: null };
    takenPx = xPx + halfPx;
    return { xPx, text };
  });
}

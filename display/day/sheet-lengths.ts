import { textWidthPx } from '../parts/text-width.ts';
import type { Span } from './sheet-axis.ts';

/** Heights in px: one lane of a row, the bar in it, and the strip under a row in which clashes are named. */
export const LANE_PX = 40;
export const BAR_TOP_PX = 5;
export const BAR_PX = 28;
export const STRIP_PX = 26;

/** The size of texts in the sheet; `--type-small`. */
export const TEXT_PX = 16;

/** Room beside a text in its bar, and the least that will do. */
const BESIDE_PX = 12;
const LEAST_BESIDE_PX = 3;

/** Less wide than this a bar would not be seen. */
const LEAST_BAR_PX = 4;

/** The column in which rows are named, where there is room for names and where there is little. */
export const COLUMN_PX = 236;
export const NARROW_COLUMN_PX = 116;

/** How instants and lengths become px: one linear axis. */
export interface Scale {
  readonly span: Span;
  readonly pxPerHour: number;
  readonly columnPx: number;
}

const HOUR_MS = 3_600_000;

/** Where an instant stands, from the left edge of the axis; what lies outside is at its edge. */
export function leftPx({ span, pxPerHour }: Scale, atMs: number): number {
  const within = Math.min(Math.max(atMs, span.fromMs), span.toMs);
  return ((within - span.fromMs) / HOUR_MS) * pxPerHour;
}

/** How wide a stretch is drawn, never so narrow that it would not be seen. */
export function widthPx(scale: Scale, fromMs: number, toMs: number): number {
  return Math.max(LEAST_BAR_PX, leftPx(scale, toMs) - leftPx(scale, fromMs) - 1);
}

/** How wide the whole axis is. */
export function axisPx(scale: Scale): number {
  return leftPx(scale, scale.span.toMs);
}

/** The first of several texts, the longest first, that fits into a width; '' where none does, the last one where it just does. */
export function firstFitting(texts: readonly string[], roomPx: number): { readonly text: string; readonly isTight: boolean } {
  const text = texts.find((candidate) => textWidthPx(candidate, TEXT_PX) + BESIDE_PX <= roomPx);
  if (text !== undefined) return { text, isTight: false };
  const last = texts.at(-1) ?? '';
  return { text: textWidthPx(last, TEXT_PX) + LEAST_BESIDE_PX <= roomPx ? last : '', isTight: true };
}

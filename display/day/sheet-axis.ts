import { zonedDate, zonedInstantMs } from '../parts/zoned-instant.ts';
import type { Bar, DoughLine } from './sheet-bar.ts';
import type { OrderMark } from './sheet-orders.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/** Room beside the first and the last of what is drawn. */
const MARGIN_MS = 20 * MINUTE_MS;
/** NOW belongs to the sheet while it is so near to what is planned. */
const NOW_WITHIN_MS = 4 * HOUR_MS;
/** What began longer ago than this before the rest of the day is cut off at the left. */
const MOST_BEFORE_MS = 12 * HOUR_MS;
/** The longest day that is drawn: from a dough put to the cold on one day to its bread on the next but one. */
const MOST_SPAN_MS = 60 * HOUR_MS;

/** The stretch of time that the sheet shows. */
export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

/** How closely the sheet is looked at: the whole of it, or so many hours in the width of the screen. */
export type Zoom = 'fit' | 'fourHours' | 'hour';

/** A clock time under which a line is drawn; the day's first has its weekday. */
export interface Tick {
  readonly atMs: number;
  readonly isNewDay: boolean;
}

/** From the first to the last of what is drawn, with NOW where it is near. */
export function spanOf(lines: readonly DoughLine[], orders: readonly OrderMark[], nowMs: number): Span {
  const bars = lines.flatMap((line) => line.bars);
  const ahead = bars.filter((bar) => bar.standing !== 'done');
  const edges = bars.flatMap((bar) => [bar.fromMs, bar.toMs]);
  const ends = lines.flatMap((line) => line.bars.map((bar) => (bar === line.bars.at(-1) ? endOfLast(bar) : bar.toMs)));
  const readyMs = orders.map((mark) => mark.readyMs);
  edges.push(...readyMs);
  const anchorMs = Math.min(nowMs, ...(ahead.length === 0 ? edges : ahead.map((bar) => Math.max(bar.fromMs, nowMs - MOST_BEFORE_MS))));
  const earliestMs = Math.max(Math.min(...edges), anchorMs - MOST_BEFORE_MS);
  const latestMs = Math.max(...ends, ...readyMs);
  const isNear = nowMs > earliestMs - NOW_WITHIN_MS && nowMs < latestMs + NOW_WITHIN_MS;
  const fromMs = (isNear ? Math.min(earliestMs, nowMs) : Math.min(...edges)) - MARGIN_MS;
  const toMs = (isNear ? Math.max(latestMs, nowMs) : latestMs) + MARGIN_MS;
  return { fromMs, toMs: Math.min(toMs, fromMs + MOST_SPAN_MS) };
}

/** A pot that ripens, a filling that is kept: the last rest of a line is seen to begin, and does not make the day longer. */
function endOfLast({ step, fromMs, toMs }: Bar): number {
  return step.kind === 'timed' ? Math.min(toMs, fromMs + HOUR_MS) : toMs;
}

/** How wide an hour is, in px, where the axis has so much room; never less than an hour needs to be told from the next. */
export function hourPx(zoom: Zoom, span: Span, roomPx: number): number {
  const spanHours = (span.toMs - span.fromMs) / HOUR_MS;
  const hours = zoom === 'fit' ? spanHours : zoom === 'fourHours' ? 4 : 1;
  return Math.max(roomPx / Math.min(hours, Math.max(1, spanHours)), LEAST_HOUR_PX);
}

const LEAST_HOUR_PX = 16;

/** Steps between clock times, in minutes, the closest first. */
const STEPS_MIN = [5, 10, 15, 30, 60, 120, 180, 240, 360, 720];

/**
 * The clock times of the axis, in whole steps of the house's clock, at least `leastPx` apart. Where clocks change, the
 * times are those that the clock really shows, each once.
 */
export function ticksOf(span: Span, pxPerHour: number, leastPx: number, zone: string): readonly Tick[] {
  const stepMin = STEPS_MIN.find((minutes) => (minutes / 60) * pxPerHour >= leastPx) ?? 720;
  const ticks: Tick[] = [];
  for (let day = 0; ; day += 1) {
    const date = zonedDate(span.fromMs, zone, day);
    if (zonedInstantMs(date, 0, zone) > span.toMs) return ticks;
    for (let minute = 0; minute < 24 * 60; minute += stepMin) {
      const atMs = zonedInstantMs(date, minute, zone);
      const last = ticks.at(-1);
      if (atMs < span.fromMs || atMs > span.toMs || (last !== undefined && atMs - last.atMs < (stepMin / 2) * MINUTE_MS)) continue;
      ticks.push({ atMs, isNewDay: last === undefined || zonedDate(last.atMs, zone) !== date });
    }
  }
}

/** The instant nearest to another at which the house's clock shows a time (`05:00`). */
export function instantNearMs(clockTime: string, nearMs: number, zone: string): number {
  const [hour = 0, minute = 0] = clockTime.split(':').map(Number);
  const candidates = [-1, 0, 1].map((days) => zonedInstantMs(zonedDate(nearMs, zone, days), hour * 60 + minute, zone));
  return candidates.reduce((best, atMs) => (Math.abs(atMs - nearMs) < Math.abs(best - nearMs) ? atMs : best));
}

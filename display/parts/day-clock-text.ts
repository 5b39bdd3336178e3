import { clockText, weekdayText } from './clock-text.ts';
import { zonedDate } from './zoned-instant.ts';

/** Within so many days a weekday says which day it was. */
const WEEKDAY_IS_ENOUGH_MS = 6 * 24 * 3_600_000;

/** An instant that is over, however long: "05:00", "Fri 05:00", "2026-03-07 05:00". */
export function pastText(atMs: number, nowMs: number, zone: string): string {
  if (nowMs - atMs < WEEKDAY_IS_ENOUGH_MS) return dayClockText(atMs, nowMs, zone);
  return `${zonedDate(atMs, zone)} ${clockText(atMs, zone)}`;
}

/** An instant as a clock time, with its weekday where it is not of today: "05:00", "Fri 05:00". */
export function dayClockText(atMs: number, nowMs: number, zone: string): string {
  const date = zonedDate(atMs, zone);
  const clock = clockText(atMs, zone);
  return date === zonedDate(nowMs, zone) ? clock : `${weekdayText(date)} ${clock}`;
}

import { clockText, weekdayText } from './clock-text.ts';
import { zonedDate } from './zoned-instant.ts';

/** An instant as a clock time, with its weekday where it is not of today: "05:00", "Fri 05:00". */
export function dayClockText(atMs: number, nowMs: number, zone: string): string {
  const date = zonedDate(atMs, zone);
  const clock = clockText(atMs, zone);
  return date === zonedDate(nowMs, zone) ? clock : `${weekdayText(date)} ${clock}`;
}

import { Temporal } from 'temporal-polyfill';

/** Sunday and Monday nights are quiet in the harbour: the house is closed on Mondays (ISO 8601: 1). */
const CLOSED_WEEKDAY = 1;
/** Days of the year on which it is closed whatever the weekday. */
const CLOSED_DATES: ReadonlySet<string> = new Set(['01-01', '12-25', '12-26']);

/** Whether the house is closed on a date. */
export function isClosed(date: string): boolean {
  return weekdayOf(date) === CLOSED_WEEKDAY || CLOSED_DATES.has(date.slice(5));
}

/** ISO 8601: 1 is Monday. */
export function weekdayOf(date: string): number {
  return Temporal.PlainDate.from(date).dayOfWeek;
}

/** The date so many days on. */
export function daysOn(date: string, days: number): string {
  return Temporal.PlainDate.from(date).add({ days }).toString();
}

/** The first date of a period of so many months that ends on a date, both included. */
export function firstOf(lastDate: string, months: number): string {
  return Temporal.PlainDate.from(lastDate).subtract({ months }).add({ days: 1 }).toString();
}

/** Dates from one to another, both included. */
export function datesBetween(firstDate: string, lastDate: string): readonly string[] {
  const count = Temporal.PlainDate.from(firstDate).until(lastDate, { largestUnit: 'days' }).days + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => daysOn(firstDate, index));
}

/** The next date after one on which the house is open. */
export function nextOpen(date: string): string {
  let next = daysOn(date, 1);
  while (isClosed(next)) next = daysOn(next, 1);
  return next;
}

/** How far into the year a date is, from 0 to 1. */
export function yearShare(date: string): number {
  const day = Temporal.PlainDate.from(date);
  return (day.dayOfYear - 1) / day.daysInYear;
}

/** Whether a text is a date of the calendar, as YYYY-MM-DD. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  try {
    return Temporal.PlainDate.from(text).toString() === text;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

import { weekdayText } from '../parts/clock-text.ts';
import { LOCALE } from '../words/clock.ts';
import { STANDING } from '../words/day.ts';

const dates = new Intl.DateTimeFormat(LOCALE, { weekday: 'short', day: 'numeric', month: 'long', timeZone: 'UTC' });

/** A date as it is spoken of, with its weekday: "Sat 7 March". */
export function dateText(date: string): string {
  return dates.format(Date.parse(`${date}T00:00:00Z`));
}

/** Days of the week, Monday to Sunday. */
export const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const;

/** A weekday by its number (Monday 1), short. */
export function weekdayName(weekday: number): string {
  // The first of January 2024 was a Monday.
  return weekdayText(`2024-01-0${weekday}`);
}

/** Weekdays in one text, those in a row as a span: "Mon–Fri, Sun". */
export function weekdaysText(weekdays: readonly number[]): string {
  if (WEEKDAYS.every((weekday) => weekdays.includes(weekday))) return STANDING.daily;
  const spans: number[][] = [];
  for (const weekday of WEEKDAYS) {
    if (!weekdays.includes(weekday)) continue;
    const last = spans.at(-1);
    if (last?.at(-1) === weekday - 1) last.push(weekday);
    else spans.push([weekday]);
  }
  return spans.map(spanText).join(', ');
}

function spanText(span: readonly number[]): string {
  const names = span.map(weekdayName);
  return names.length < 3 ? names.join(', ') : `${names[0] ?? ''}–${names.at(-1) ?? ''}`;
}

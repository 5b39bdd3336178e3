import type { Hours } from '../../shared/documents/kitchen.ts';
import { minuteOfDay } from '../../shared/floor/sound-hours.ts';
import { clockTimeTyped } from './clock-time-typed.ts';

/** Times of one station that a document may have; breaks likewise. */
export const MOST_HOURS = 14;
/** Of the week, by ISO 8601: Monday is 1. */
export const WEEKDAYS = [1, 2, 3, 4, 5, 6, 7] as const;
/** What some days are until somebody says which: Monday to Friday. */
const FIRST_DAYS = [1, 2, 3, 4, 5] as const;
const FIRST_HOURS: Hours = { from: '04:00', to: '12:00' };
const FIRST_BREAK: Hours = { from: '08:00', to: '08:20' };
/** From one break to the next that somebody adds. */
const BREAKS_APART_MIN = 4 * 60;
const DAY_MIN = 24 * 60;

/**
 * One more, after those that are there: hours are what the last ones leave of the day, a break is as long as the last one
 * and some hours later; on the same weekdays. Where the last ones are half typed, as if there were none.
 */
export function withOneMore(all: readonly Hours[], which: 'hours' | 'breaks'): readonly Hours[] {
  const last = all.at(-1);
  if (last === undefined || [last.from, last.to].some((at) => clockTimeTyped(at) !== at))
    return [...all, which === 'hours' ? FIRST_HOURS : FIRST_BREAK];
  const { from, to } = last;
  return [...all, which === 'hours' ? { ...last, from: to, to: from } : { ...last, from: later(from), to: later(to) }];
}

function later(at: string): string {
  const minute = (minuteOfDay(at) + BREAKS_APART_MIN) % DAY_MIN;
  return [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0')).join(':');
}

/** Without one of them; undefined where none is left, as in a station of which nobody said any. */
export function withoutOne(all: readonly Hours[], index: number): readonly Hours[] | undefined {
  const left = all.filter((_hours, place) => place !== index);
  return left.length === 0 ? undefined : left;
}

/** The weekdays where every day holds or where it does not: none is said where every day holds. */
export function firstDays(isDaily: boolean): readonly number[] | undefined {
  return isDaily ? undefined : FIRST_DAYS;
}

/** The weekdays with one more or one less, in the order of the week. */
export function withDay(days: readonly number[], day: number, isOn: boolean): readonly number[] {
  return WEEKDAYS.filter((known) => (known === day ? isOn : days.includes(known)));
}

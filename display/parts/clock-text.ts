import { countdownTo, nextChangeMs } from '../../shared/floor/countdown.ts';
import { hoursWords, LOCALE, minutesWords } from '../words/clock.ts';

const MINUTE_MS = 60_000;

const clockFormats = new Map<string, Intl.DateTimeFormat>();
const weekdays = new Intl.DateTimeFormat(LOCALE, { weekday: 'short', timeZone: 'UTC' });

/** An instant as a clock time of the house's zone, "05:42". Throws a RangeError on a zone that the browser does not know. */
export function clockText(atMs: number, zone: string): string {
  let format = clockFormats.get(zone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat(LOCALE, { hour: '2-digit', minute: '2-digit', hour12: false, timeZone: zone });
    clockFormats.set(zone, format);
  }
  return format.format(atMs);
}

/** The weekday of a service date, "Sat"; without the full stop that some languages put behind it: it stands before a tag. */
export function weekdayText(serviceDate: string): string {
  return weekdays.format(Date.parse(`${serviceDate}T00:00:00Z`)).replace(/\.$/, '');
}

/** What a countdown reads: `0:00` when due, `+m:ss` past it, minutes further out, a clock time of the house far out. */
export function countdownText(dueMs: number, nowMs: number, zone: string): string {
  const countdown = countdownTo(dueMs, nowMs);
  switch (countdown.kind) {
    case 'text':
      return countdown.text;
    case 'minutes':
      return minutesWords(countdown.minutes);
    case 'hours':
      return hoursWords(countdown.hours);
    case 'clock':
      return clockText(countdown.atMs, zone);
  }
}

/** When the next of several countdowns, or the clock itself, reads otherwise. */
export function nextTextChangeMs(duesMs: readonly number[], nowMs: number): number {
  // Every zone is off by whole quarters of an hour, so that a minute begins everywhere at once.
  let nextMs = (Math.floor(nowMs / MINUTE_MS) + 1) * MINUTE_MS;
  for (const dueMs of duesMs) {
    const kind = countdownTo(dueMs, nowMs).kind;
    if (kind === 'text') nextMs = Math.min(nextMs, nextChangeMs(dueMs, nowMs));
    else nextMs = Math.min(nextMs, nextMinuteMs(dueMs, nowMs));
  }
  return nextMs;
}

/** When the whole minutes left next change, or a countdown far out next changes its kind. */
function nextMinuteMs(dueMs: number, nowMs: number): number {
  const phaseMs = (dueMs - nowMs) % MINUTE_MS;
  return nowMs + (phaseMs === 0 ? MINUTE_MS : phaseMs);
}

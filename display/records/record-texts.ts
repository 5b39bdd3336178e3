import { fromC } from '../../shared/trade/units.ts';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import { movedText } from '../parts/moved-text.ts';
import { clockText } from '../parts/clock-text.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { minutesWords } from '../words/clock.ts';
import { numberWords } from '../words/numbers.ts';

const MINUTE_MS = 60_000;

/** An instant as a clock time, with its date where that is not the day of the record: "05:42", "2026-03-06 22:10". */
export function whenText(atMs: number | null, serviceDate: string, zone: string): string {
  if (atMs === null) return '';
  const date = zonedDate(atMs, zone);
  return date === serviceDate ? clockText(atMs, zone) : `${date} ${clockText(atMs, zone)}`;
}

/** How long something lasted, true minutes whatever the clock did meanwhile; nothing where an end is missing. */
export function lastedText(startedMs: number | null, endedMs: number | null): string {
  return startedMs === null || endedMs === null ? '' : minutesWords(Math.round((endedMs - startedMs) / MINUTE_MS));
}

/** By how much an instant is off what was planned: "+12 min"; nothing within half a minute, or where one is missing. */
export function offText(actualMs: number | null, plannedMs: number | null): string {
  if (actualMs === null || plannedMs === null) return '';
  const minutes = Math.round((actualMs - plannedMs) / MINUTE_MS);
  return minutes === 0 ? '0' : movedText(minutes);
}

/** A temperature as it was read, to a tenth, in the house's unit. */
export function readText(celsius: number, units: NamesAnswer['units']): string {
  return `${numberWords(Math.round(fromC(celsius, units.temperature) * 10) / 10)} °${units.temperature}`;
}

import { Temporal } from 'temporal-polyfill';
import type { Cleaning, Hours, Kitchen } from '../../shared/documents/kitchen.ts';
import { minuteOfDay, type HouseCalendar } from '../../shared/floor/sound-hours.ts';
import type { DayCalendars } from '../../shared/plan/build/day-input.ts';

/** From an instant until before another, in milliseconds of house time. */
export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * When somebody is at each station, and when each cleaning may be, between two instants: the kitchen's clock times in the
 * house's zone. Hours belong to the weekday on which they begin. A station of which nobody said hours has somebody always,
 * breaks taken out.
 */
export function calendarsOf(kitchen: Kitchen, calendar: HouseCalendar, { fromMs, toMs }: Span): DayCalendars {
  const dates = datesOf(calendar, fromMs, toMs);
  const within = ({ fromMs: beginMs, toMs: endMs }: Span): readonly Span[] =>
    endMs <= fromMs || beginMs >= toMs ? [] : [{ fromMs: Math.max(beginMs, fromMs), toMs: Math.min(endMs, toMs) }];
  const stations = kitchen.stations.map(({ id, hours, breaks }) => {
    const there = hours === undefined ? [{ fromMs, toMs }] : joined(spansOf(calendar, dates, hours));
    const away = joined(spansOf(calendar, dates, breaks ?? []));
    return [id, without(there, away).flatMap(within)] as const;
  });
  return {
    stations: Object.fromEntries(stations),
    cleanings: (kitchen.cleanings ?? []).flatMap((cleaning) =>
      windowsOf(calendar, dates, cleaning)
        .flatMap(within)
        .map((span) => ({ id: cleaning.id, ...span })),
    ),
  };
}

function windowsOf(calendar: HouseCalendar, dates: readonly string[], { from, to }: Cleaning): readonly Span[] {
  return spansOf(calendar, dates, [{ from, to }]);
}

/** The dates that may have hours in the span: what began the evening before lasts into it. */
function datesOf(calendar: HouseCalendar, fromMs: number, toMs: number): readonly string[] {
  const dates: string[] = [];
  for (let daysOn = -1; ; daysOn += 1) {
    const date = calendar.dateAt(fromMs, daysOn);
    if (daysOn >= 0 && calendar.instantMs(date, 0) >= toMs) return dates;
    dates.push(date);
  }
}

function spansOf(calendar: HouseCalendar, dates: readonly string[], hours: readonly Hours[]): readonly Span[] {
  return dates.flatMap((date) => {
    const { dayOfWeek } = Temporal.PlainDate.from(date);
    return hours
      .filter(({ weekdays }) => weekdays === undefined || weekdays.includes(dayOfWeek))
      .map(({ from, to }) => ({ fromMs: calendar.instantMs(date, minuteOfDay(from)), toMs: endMs(calendar, date, from, to) }));
  });
}

function endMs(calendar: HouseCalendar, date: string, from: string, to: string): number {
  const isOverMidnight = minuteOfDay(to) <= minuteOfDay(from);
  const endDate = isOverMidnight ? Temporal.PlainDate.from(date).add({ days: 1 }).toString() : date;
  return calendar.instantMs(endDate, minuteOfDay(to));
}

/** In order, with what touches or overlaps made one. */
function joined(spans: readonly Span[]): readonly Span[] {
  const all: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    const last = all.at(-1);
    if (last !== undefined && span.fromMs <= last.toMs) all[all.length - 1] = { fromMs: last.fromMs, toMs: Math.max(last.toMs, span.toMs) };
    else if (span.toMs > span.fromMs) all.push(span);
  }
  return all;
}

/** What is left of the first spans outside the others; both in order, each without overlaps. */
function without(spans: readonly Span[], away: readonly Span[]): readonly Span[] {
  return spans.flatMap(({ fromMs, toMs }) => {
    const left: Span[] = [];
    let sinceMs = fromMs;
    for (const gone of away) {
      if (gone.toMs <= sinceMs || gone.fromMs >= toMs) continue;
      if (gone.fromMs > sinceMs) left.push({ fromMs: sinceMs, toMs: gone.fromMs });
      sinceMs = gone.toMs;
    }
    return sinceMs < toMs ? [...left, { fromMs: sinceMs, toMs }] : left;
  });
}

import type { SoundSettings } from '../documents/house.ts';

/** What a house's zone makes of instants. Nothing here knows zones; servers and browsers have their own ways. */
export interface HouseCalendar {
  /** The date at an instant, so many days on (ISO 8601). */
  dateAt(atMs: number, daysOn: number): string;
  /**
   * The instant at which the clock shows so many minutes of a date. What it shows twice is the first of the two, what it
   * leaps over is as long after the leap as it would have been (RFC 5545).
   */
  instantMs(date: string, minuteOfDay: number): number;
}

/** What a house's settings of sound say of an instant. */
export interface SoundHours {
  /** How loud, in percent. */
  volumePct(atMs: number): number;
  /** When the quiet hours end that an instant lies in; null outside them. */
  quietEndMs(atMs: number): number | null;
  /** The last instant at which a daily test was due, this one included. */
  lastTestMs(atMs: number): number;
  /** The first one after. */
  nextTestMs(atMs: number): number;
}

/** Minutes of a clock time, `05:00` is 300. */
export function minuteOfDay(clockTime: string): number {
  const [hours, minutes] = clockTime.split(':').map(Number);
  return (hours ?? 0) * 60 + (minutes ?? 0);
}

/** The hours of a house by its settings, in its zone. */
export function soundHours(settings: SoundSettings, calendar: HouseCalendar): SoundHours {
  const { volumes, quiet, testAt } = settings;
  const onDay = (atMs: number, daysOn: number, clockTime: string): number =>
    calendar.instantMs(calendar.dateAt(atMs, daysOn), minuteOfDay(clockTime));
  const first = volumes[0]?.volumePct ?? 100;
  return {
    volumePct: (atMs) => {
      if (volumes.length === 1) return first;
      // The last one of the day before holds until the first of today.
      const changes = [-1, 0].flatMap((daysOn) =>
        volumes.map(({ from, volumePct }) => ({ sinceMs: onDay(atMs, daysOn, from), volumePct })).sort((a, b) => a.sinceMs - b.sinceMs),
      );
      return changes.findLast(({ sinceMs }) => sinceMs <= atMs)?.volumePct ?? first;
    },
    quietEndMs: (atMs) => {
      if (quiet === null) return null;
      const isOverMidnight = minuteOfDay(quiet.to) < minuteOfDay(quiet.from);
      for (const daysOn of [-1, 0]) {
        const endMs = onDay(atMs, isOverMidnight ? daysOn + 1 : daysOn, quiet.to);
        if (onDay(atMs, daysOn, quiet.from) <= atMs && atMs < endMs) return endMs;
      }
      return null;
    },
    lastTestMs: (atMs) => {
      const todayMs = onDay(atMs, 0, testAt);
      return todayMs <= atMs ? todayMs : onDay(atMs, -1, testAt);
    },
    nextTestMs: (atMs) => {
      const todayMs = onDay(atMs, 0, testAt);
      return todayMs > atMs ? todayMs : onDay(atMs, 1, testAt);
    },
  };
}

/** As loud as can be at every hour, and never a test: a house of which nothing is known yet. */
export const ALWAYS_LOUD: SoundHours = {
  volumePct: () => 100,
  quietEndMs: () => null,
  lastTestMs: () => Number.NEGATIVE_INFINITY,
  nextTestMs: () => Number.POSITIVE_INFINITY,
};

import { serviceDateSchema } from '../../shared/documents/names.ts';

/** The parts of the page, in their order. */
export const SECTIONS = ['orders', 'plan', 'stations', 'try'] as const;
export type Section = (typeof SECTIONS)[number];

/** What the page shows, as its address says it: `?date=2026-03-07&section=plan`. */
export interface DayAddress {
  /** Null: the house's open day, or today. */
  readonly date: string | null;
  readonly section: Section;
}

/** Reads the part of an address behind its question mark. What it does not say, or says wrongly, is as usual. */
export function addressOf(search: string): DayAddress {
  const query = new URLSearchParams(search);
  const date = serviceDateSchema.safeParse(query.get('date'));
  return { date: date.success ? date.data : null, section: SECTIONS.find((known) => known === query.get('section')) ?? 'orders' };
}

/** The part of an address behind its question mark, with it. */
export function searchOf({ date, section }: DayAddress): string {
  const query = new URLSearchParams();
  if (date !== null) query.set('date', date);
  if (section !== 'orders') query.set('section', section);
  const text = query.toString();
  return text === '' ? '' : `?${text}`;
}

const DAY_MS = 86_400_000;

/** A date so many days on, as ISO 8601. */
export function daysOn(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** The weekday of a date, Monday 1 to Sunday 7 (ISO 8601). */
export function weekdayOf(date: string): number {
  return new Date(`${date}T00:00:00Z`).getUTCDay() || 7;
}

import { zoneCalendar } from '../floor/house-hours.ts';

const MONTH = /^\d{4}-(?:0[1-9]|1[0-2])$/;

/** From an instant until before another, in milliseconds of house time. */
export interface MonthSpan {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Whether a text is a month as ISO 8601 writes it: YYYY-MM. */
export function isMonth(text: string): boolean {
  return MONTH.test(text);
}

/** A month of a zone, from its first midnight until that of the next; clocks that are set within it make it longer or shorter. */
export function monthSpan(month: string, zone: string): MonthSpan {
  const calendar = zoneCalendar(zone);
  const [year = 0, ofYear = 0] = month.split('-').map(Number);
  const next =
    ofYear === 12 ? `${String(year + 1).padStart(4, '0')}-01` : `${String(year).padStart(4, '0')}-${String(ofYear + 1).padStart(2, '0')}`;
  return { fromMs: calendar.instantMs(`${month}-01`, 0), toMs: calendar.instantMs(`${next}-01`, 0) };
}

/**
 * Finds how many events are before an instant, of events that come one by one in their order. Clocks are not to be trusted one by one: a
 * battery that was empty, a year mistyped for a minute. So the cut is where the fewest events are on the wrong side; what is before it never
 * is after it for a later instant, so that months follow each other without a gap; what is kept later does not move it, unless more of it is said to be older than is younger. Where all clocks were right it is after the last event
 * before the instant.
 */
export class Cut {
  readonly #instantMs: number;
  #balance = 0;
  #least = 0;
  #count = 0;
  #before = 0;

  constructor(instantMs: number) {
    this.#instantMs = instantMs;
  }

  take(receivedMs: number): void {
    this.#count += 1;
    this.#balance += receivedMs >= this.#instantMs ? 1 : -1;
    if (this.#balance >= this.#least) return;
    this.#least = this.#balance;
    this.#before = this.#count;
  }

  /** How many of the events taken are before the instant. */
  get before(): number {
    return this.#before;
  }
}

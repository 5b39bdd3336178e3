const DAY_MS = 86_400_000;
const formats = new Map<string, Intl.DateTimeFormat>();

/** How far a zone's clock is ahead of UTC at an instant, in ms. Throws a RangeError on a zone that the browser does not know. */
function offsetMs(atMs: number, zone: string): number {
  let format = formats.get(zone);
  if (format === undefined) {
    const two = '2-digit';
    // The Swedish form is ISO 8601's but for the blank.
    format = new Intl.DateTimeFormat('sv-SE', {
      timeZone: zone,
      year: 'numeric',
      month: two,
      day: two,
      hour: two,
      minute: two,
      second: two,
    });
    formats.set(zone, format);
  }
  const secondMs = Math.floor(atMs / 1000) * 1000;
  return Date.parse(`${format.format(secondMs).replace(' ', 'T')}Z`) - secondMs;
}

/**
 * The instant at which the zone's clock reads so on a date. What the clock reads twice is the first of the two; what it
 * leaps over is as long after the leap as it would have been (ISO 8601 date, minutes from midnight).
 */
export function zonedInstantMs(date: string, minuteOfDay: number, zone: string): number {
  const readMs = Date.parse(`${date}T00:00:00Z`) + minuteOfDay * 60_000;
  const before = offsetMs(readMs - DAY_MS, zone);
  const after = offsetMs(readMs + DAY_MS, zone);
  const found = [before, after].map((offset) => readMs - offset).filter((atMs) => atMs + offsetMs(atMs, zone) === readMs);
  return found.length === 0 ? readMs - before : Math.min(...found);
}

/** The date in the zone at an instant, so many days on, as ISO 8601. */
export function zonedDate(atMs: number, zone: string, daysOn = 0): string {
  return new Date(atMs + offsetMs(atMs, zone) + daysOn * DAY_MS).toISOString().slice(0, 10);
}

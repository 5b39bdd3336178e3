/** An entry of a calendar. Instants in milliseconds since 1970. */
export interface CalendarEntry {
  /** Stays the same as long as it is the same entry, for all calendars of the world. */
  readonly uid: string;
  readonly startMs: number;
  /** Not after the start: it has no length. */
  readonly endMs: number;
  readonly summary: string;
  readonly description: string | null;
  readonly location: string | null;
}

/** Longest line in octets, without its end (RFC 5545 section 3.1). */
const LINE_OCTETS = 75;
const PRODUCT = '-//Ovenward//Day plan//EN';

/**
 * A calendar as iCalendar text (RFC 5545). `revisedMs` is when what it says was last changed. Without entries it holds one
 * component that says that the time is free: a calendar must have at least one (section 3.6).
 */
export function calendarText(entries: readonly CalendarEntry[], revisedMs: number, emptyUid: string): string {
  const stamp = `DTSTAMP:${utc(revisedMs)}`;
  const components = entries.flatMap((entry) => eventLines(entry, stamp));
  const body = components.length > 0 ? components : ['BEGIN:VFREEBUSY', `UID:${escaped(emptyUid)}`, stamp, 'END:VFREEBUSY'];
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', `PRODID:${PRODUCT}`, 'CALSCALE:GREGORIAN', ...body, 'END:VCALENDAR'];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function eventLines(entry: CalendarEntry, stamp: string): readonly string[] {
  const start = utc(entry.startMs);
  const end = utc(entry.endMs);
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(entry.uid)}`,
    stamp,
    `DTSTART:${start}`,
    // An end must be later than the start (section 3.8.2.2).
    ...(entry.endMs > entry.startMs && end !== start ? [`DTEND:${end}`] : []),
    `SUMMARY:${escaped(entry.summary)}`,
    ...(entry.description === null ? [] : [`DESCRIPTION:${escaped(entry.description)}`]),
    ...(entry.location === null ? [] : [`LOCATION:${escaped(entry.location)}`]),
    'END:VEVENT',
  ];
}

/** A date with UTC time, in whole seconds (section 3.3.5). */
function utc(atMs: number): string {
  return `${new Date(atMs).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
}

/** A text value (section 3.3.11); control characters have no place in one. */
function escaped(text: string): string {
  return text
    .replaceAll(/\r\n|\r/g, '\n')
    .replaceAll(/[\\;,]/g, (character) => `\\${character}`)
    .replaceAll('\n', String.raw`\n`)
    .replaceAll('\t', ' ')
    .replaceAll(/\p{Cc}/gu, '');
}

/** A line in pieces of at most 75 octets, each but the first behind a space; no character is cut in two. */
function folded(line: string): string {
  const pieces: string[] = [];
  let piece = '';
  let octets = 0;
  for (const character of line) {
    const length = Buffer.byteLength(character, 'utf8');
    if (octets + length > LINE_OCTETS) {
      pieces.push(piece);
      piece = ' ';
      octets = 1;
    }
    piece += character;
    octets += length;
  }
  return [...pieces, piece].join('\r\n');
}

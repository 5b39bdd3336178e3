import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendarText, type CalendarEntry } from '../../server/plan/calendar-text.ts';
import { eventsOf, readCalendar } from './support/read-calendar.ts';

const REVISED_MS = Date.UTC(2026, 2, 7, 3, 30, 15);

function entry(given: Partial<CalendarEntry>): CalendarEntry {
  const startMs = Date.UTC(2026, 2, 7, 4, 0, 0);
  return { uid: 'a@b.invalid', startMs, endMs: startMs + 600_000, summary: 'FOLD C1', description: null, location: null, ...given };
}

describe('a calendar as text', () => {
  it('E4 is what the RFC has for it, line by line', () => {
    expect(calendarText([entry({ description: '24 × Country' })], REVISED_MS, 'none').split('\r\n')).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Ovenward//Day plan//EN',
      'CALSCALE:GREGORIAN',
      'BEGIN:VEVENT',
      'UID:a@b.invalid',
      'DTSTAMP:20260307T033015Z',
      'DTSTART:20260307T040000Z',
      'DTEND:20260307T041000Z',
      'SUMMARY:FOLD C1',
      'DESCRIPTION:24 × Country',
      'END:VEVENT',
      'END:VCALENDAR',
      '',
    ]);
  });

  it('E4 has no end where nothing lasts: an end must be later than the start (RFC 5545 section 3.8.2.2)', () => {
    const startMs = Date.UTC(2026, 2, 7, 4, 0, 0);
    for (const endMs of [startMs, startMs + 400, startMs - 60_000])
      expect(calendarText([entry({ startMs, endMs })], REVISED_MS, 'none')).not.toContain('DTEND');
  });

  it('E4 without entries holds one component still, as it must (RFC 5545 section 3.6)', () => {
    const calendar = readCalendar(calendarText([], REVISED_MS, 'bench.2026-03-07'));
    expect(calendar.getAllSubcomponents().map(({ name }) => name)).toEqual(['vfreebusy']);
    expect(calendar.getFirstSubcomponent('vfreebusy')?.getFirstPropertyValue('uid')).toBe('bench.2026-03-07');
  });

  it('E4 is read by another program as it was meant, whatever letters are in it', () => {
    const text = fc.string({
      unit: fc.constantFrom('a', ' ', ',', ';', '\\', '\n', ':', '"', 'é', '漢', '🥖', 'n', '\t'),
      minLength: 1,
      maxLength: 160,
    });
    fc.assert(
      fc.property(
        text,
        text,
        fc.integer({ min: 0, max: 4_000_000_000 }),
        fc.integer({ min: 1, max: 86_400 }),
        (summary, description, startS, lengthS) => {
          const written = calendarText(
            [entry({ summary, description, startMs: startS * 1000, endMs: (startS + lengthS) * 1000 })],
            REVISED_MS,
            'none',
          );
          for (const line of written.split('\r\n')) expect(Buffer.byteLength(line, 'utf8')).toBeLessThanOrEqual(75);
          expect(written.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
          const [event] = eventsOf(written);
          expect([event?.summary, event?.description]).toEqual([summary.replaceAll('\t', ' '), description.replaceAll('\t', ' ')]);
          expect([event?.startDate.toUnixTime(), event?.endDate.toUnixTime()]).toEqual([startS, startS + lengthS]);
        },
      ),
      { seed: 5545, numRuns: 200 },
    );
  });

  it('E4 leaves out control characters, which text may not have (RFC 5545 section 3.1)', () => {
    expect(calendarText([entry({ summary: 'FO\u0000LD\u007f\u0007 C1' })], REVISED_MS, 'none')).toContain('\r\nSUMMARY:FOLD C1\r\n');
  });
});

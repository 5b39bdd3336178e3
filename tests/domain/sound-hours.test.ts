import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { browserHours } from '../../display/parts/browser-hours.ts';
import { houseHours } from '../../server/floor/house-hours.ts';
import { houseSchema, soundSettingsSchema, type House } from '../../shared/documents/house.ts';
import { minuteOfDay } from '../../shared/floor/sound-hours.ts';
import { Floor } from './support/floor.ts';
import { harbourFile } from './support/harbour.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

function house(sound: object, zone = 'UTC'): House {
  return { ...harbourFile().house, zone, sound: soundSettingsSchema.parse(sound) };
}

/** What a clock of the zone shows, by this machine's own ICU: nothing of the project's arithmetic is in it. */
function clockIn(zone: string, atMs: number): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hour12: false, timeZone: zone }).format(atMs);
}

const utc = (text: string): number => Date.parse(`${text}Z`);

/** The two ways to read a zone: the server's and the browsers'. */
const READERS = [
  ['server', houseHours],
  ['browser', browserHours],
] as const;

describe('S12 the settings of sound', () => {
  test('a house that says nothing of sound is as loud as can be, never quiet, and tests at five', () => {
    const { sound: _said, ...silent } = harbourFile().house;
    expect(houseSchema.parse(silent).sound).toEqual({ volumes: [{ from: '00:00', volumePct: 100 }], quiet: null, testAt: '05:00' });
  });

  test('a journal from before there were such settings folds to what is usual', () => {
    const { sound: _said, ...older } = harbourFile().house;
    const floor = new Floor();
    floor.record({ type: 'houseAdopted', version: 1, house: older as House });
    expect(floor.state.house?.document).toEqual({ ...older, sound: soundSettingsSchema.parse({}) });
  });

  test.each([
    [{ volumes: [] }],
    [{ volumes: [{ from: '24:00', volumePct: 50 }] }],
    [{ volumes: [{ from: '5:00', volumePct: 50 }] }],
    [{ volumes: [{ from: '05:00', volumePct: 4 }] }],
    [{ volumes: [{ from: '05:00', volumePct: 101 }] }],
    [{ quiet: { from: '22:00' } }],
    [{ testAt: 'five' }],
  ])('%j is refused', (sound) => {
    expect(soundSettingsSchema.safeParse(sound).success).toBe(false);
  });

  test('a clock time is minutes from midnight', () => {
    expect(['00:00', '05:00', '23:59'].map(minuteOfDay)).toEqual([0, 300, 1439]);
  });
});

describe.each(READERS)('S12 the volume by the hour, as the %s reads the zone', (_name, hoursOf) => {
  const hours = hoursOf(
    house({
      volumes: [
        { from: '22:00', volumePct: 20 },
        { from: '06:30', volumePct: 80 },
      ],
    }),
  );

  test.each([
    ['2026-03-07T06:29:59', 20],
    ['2026-03-07T06:30:00', 80],
    ['2026-03-07T21:59:59', 80],
    ['2026-03-07T22:00:00', 20],
    ['2026-03-08T00:00:00', 20],
  ])('at %s it is %i', (text, volumePct) => {
    expect(hours.volumePct(utc(text))).toBe(volumePct);
  });

  test('one volume holds all day', () => {
    expect(hoursOf(house({ volumes: [{ from: '12:00', volumePct: 35 }] })).volumePct(utc('2026-03-07T03:00:00'))).toBe(35);
  });
});

describe.each(READERS)('S13 quiet hours, as the %s reads the zone', (_name, hoursOf) => {
  const overnight = hoursOf(house({ quiet: { from: '22:00', to: '05:00' } }));

  test.each([
    ['2026-03-07T21:59:59', null],
    ['2026-03-07T22:00:00', '2026-03-08T05:00:00'],
    ['2026-03-08T00:00:00', '2026-03-08T05:00:00'],
    ['2026-03-08T04:59:59', '2026-03-08T05:00:00'],
    ['2026-03-08T05:00:00', null],
  ])('over midnight: at %s they end %s', (text, end) => {
    expect(overnight.quietEndMs(utc(text))).toBe(end === null ? null : utc(end));
  });

  test('within a day', () => {
    const noon = hoursOf(house({ quiet: { from: '13:00', to: '14:00' } }));
    expect(['12:59', '13:00', '13:59', '14:00'].map((clock) => noon.quietEndMs(utc(`2026-03-07T${clock}:00`)))).toEqual([
      null,
      utc('2026-03-07T14:00:00'),
      utc('2026-03-07T14:00:00'),
      null,
    ]);
  });

  test('that end when they begin are none', () => {
    expect(hoursOf(house({ quiet: { from: '13:00', to: '13:00' } })).quietEndMs(utc('2026-03-07T13:00:00'))).toBeNull();
  });

  // London's clocks: 01:00 to 02:00 on 29 March 2026, 02:00 to 01:00 on 25 October 2026 (from memory; the clocks that are read here are those of this machine's ICU).
  test.each([
    ['forward', '2026-03-28T22:30:00', 5.5],
    ['back', '2026-10-24T21:30:00', 7.5],
  ])('the night clocks go %s they end when the clock shows it', (_way, text, lastsH) => {
    const london = hoursOf(house({ quiet: { from: '22:00', to: '05:00' } }, 'Europe/London'));
    const atMs = utc(text);
    expect(clockIn('Europe/London', atMs)).toBe('22:30');
    const endMs = london.quietEndMs(atMs) ?? 0;
    expect(clockIn('Europe/London', endMs)).toBe('05:00');
    expect(endMs - atMs).toBe(lastsH * HOUR_MS);
  });

  test('an end that the clock leaps over comes as long after the leap; one that it shows twice is the first', () => {
    const forward = hoursOf(house({ quiet: { from: '22:00', to: '01:30' } }, 'Europe/London'));
    const leapMs = forward.quietEndMs(utc('2026-03-28T23:00:00')) ?? 0;
    expect([leapMs, clockIn('Europe/London', leapMs)]).toEqual([utc('2026-03-29T01:30:00'), '02:30']);
    const back = forward.quietEndMs(utc('2026-10-24T22:00:00')) ?? 0;
    expect([back, clockIn('Europe/London', back)]).toEqual([utc('2026-10-25T00:30:00'), '01:30']);
    // The hour that comes again is not quiet again.
    expect(forward.quietEndMs(back + HOUR_MS - MINUTE_MS)).toBeNull();
  });
});

describe.each(READERS)('S14 when the daily test is due, as the %s reads the zone', (_name, hoursOf) => {
  const hours = hoursOf(house({ testAt: '05:00' }, 'Europe/London'));

  test.each([
    ['2026-03-28T04:59:59', '2026-03-27T05:00:00', '2026-03-28T05:00:00'],
    ['2026-03-28T05:00:00', '2026-03-28T05:00:00', '2026-03-29T04:00:00'],
    ['2026-03-29T03:59:59', '2026-03-28T05:00:00', '2026-03-29T04:00:00'],
    ['2026-10-25T05:00:00', '2026-10-25T05:00:00', '2026-10-26T05:00:00'],
  ])('seen at %s: last %s, next %s', (text, last, next) => {
    expect([hours.lastTestMs(utc(text)), hours.nextTestMs(utc(text))]).toEqual([utc(last), utc(next)]);
  });
});

describe('S12 server and browser', () => {
  test('read every house and instant alike', () => {
    const clock = fc
      .integer({ min: 0, max: 1439 })
      .map((minute) => [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0')).join(':'));
    const sound = fc.record({
      volumes: fc.array(fc.record({ from: clock, volumePct: fc.integer({ min: 5, max: 100 }) }), { minLength: 1, maxLength: 5 }),
      quiet: fc.option(fc.record({ from: clock, to: clock })),
      testAt: clock,
    });
    const zone = fc.constantFrom('Europe/Berlin', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'UTC');
    const atMs = fc.integer({ min: utc('2026-01-01T00:00:00'), max: utc('2026-12-31T00:00:00') });
    fc.assert(
      fc.property(sound, zone, atMs, (settings, inZone, instantMs) => {
        const [server, browser] = [houseHours, browserHours].map((hoursOf) => hoursOf(house(settings, inZone)));
        const read = (hours: typeof server): unknown => [
          hours?.volumePct(instantMs),
          hours?.quietEndMs(instantMs),
          hours?.lastTestMs(instantMs),
          hours?.nextTestMs(instantMs),
        ];
        expect(read(browser)).toEqual(read(server));
      }),
      { numRuns: 150 },
    );
  });
});

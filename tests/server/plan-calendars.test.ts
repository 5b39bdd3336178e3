import { describe, expect, it } from 'vitest';
import { zoneCalendar } from '../../server/floor/house-hours.ts';
import { calendarsOf, type Span } from '../../server/plan/calendars.ts';
import { kitchenSchema, type Kitchen } from '../../shared/documents/kitchen.ts';

const MINUTE_MS = 60_000;

function kitchen(given: Partial<Kitchen>): Kitchen {
  return kitchenSchema.parse({
    stations: [{ id: 'bench', name: 'Bench' }],
    mixers: [],
    restPlaces: [{ id: 'shelf', name: 'Shelf', kind: 'bench', temperatureC: 22 }],
    ovens: [],
    ...given,
  });
}

function bench(station: object): Kitchen {
  return kitchen({ stations: [{ id: 'bench', name: 'Bench', hands: 1, ...station }] });
}

/** From one UTC instant to another, as they are written in ISO 8601. */
function span(from: string, to: string): Span {
  return { fromMs: Date.parse(from), toMs: Date.parse(to) };
}

function written(spans: readonly Span[] | undefined): readonly string[] {
  return (spans ?? []).map(
    ({ fromMs, toMs }) => `${new Date(fromMs).toISOString().slice(0, 16)}/${new Date(toMs).toISOString().slice(0, 16)}`,
  );
}

/** 6 March 2026 is a Friday. */
const FRIDAY_TO_SUNDAY = span('2026-03-06T00:00Z', '2026-03-09T00:00Z');

describe('when somebody is at a station', () => {
  it('E1 is by the weekday on which hours begin, over midnight, within what is asked for', () => {
    const hours = [
      { from: '22:00', to: '06:00', weekdays: [4, 5] },
      { from: '05:00', to: '13:30', weekdays: [7] },
    ];
    const { stations } = calendarsOf(bench({ hours }), zoneCalendar('UTC'), FRIDAY_TO_SUNDAY);
    // Thursday's night lasts into Friday; Saturday has no night of its own.
    expect(written(stations['bench'])).toEqual([
      '2026-03-06T00:00/2026-03-06T06:00',
      '2026-03-06T22:00/2026-03-07T06:00',
      '2026-03-08T05:00/2026-03-08T13:30',
    ]);
  });

  it('E1 has breaks taken out, and hours that touch or overlap made one', () => {
    const hours = [
      { from: '04:00', to: '09:00' },
      { from: '08:00', to: '12:00' },
    ];
    const breaks = [
      { from: '07:00', to: '07:30', weekdays: [5] },
      { from: '11:45', to: '12:30', weekdays: [5] },
      { from: '03:30', to: '04:15', weekdays: [5] },
    ];
    const { stations } = calendarsOf(bench({ hours, breaks }), zoneCalendar('UTC'), span('2026-03-06T00:00Z', '2026-03-08T00:00Z'));
    expect(written(stations['bench'])).toEqual([
      '2026-03-06T04:15/2026-03-06T07:00',
      '2026-03-06T07:30/2026-03-06T11:45',
      '2026-03-07T04:00/2026-03-07T12:00',
    ]);
  });

  it('E1 follows the clocks of the zone: a night in which they leap is an hour shorter, one in which they go back an hour longer', () => {
    const nights = (date: string): readonly number[] => {
      const asked = span(`${date}T12:00Z`, `${date}T12:00Z`);
      const { stations } = calendarsOf(bench({ hours: [{ from: '22:00', to: '06:00' }] }), zoneCalendar('Europe/Berlin'), {
        fromMs: asked.fromMs,
        toMs: asked.toMs + 24 * 60 * MINUTE_MS,
      });
      return (stations['bench'] ?? []).map(({ fromMs, toMs }) => (toMs - fromMs) / MINUTE_MS);
    };
    // In the European Union summer time begins on the last Sunday of March and ends on the last one of October (Directive 2000/84/EC, from memory).
    expect(nights('2026-03-28')).toEqual([7 * 60]);
    expect(nights('2026-10-24')).toEqual([9 * 60]);
    expect(nights('2026-06-06')).toEqual([8 * 60]);
  });

  it('E2 is always where nobody said hours, but for breaks', () => {
    const { stations } = calendarsOf(
      bench({ breaks: [{ from: '12:00', to: '12:30' }] }),
      zoneCalendar('UTC'),
      span('2026-03-06T00:00Z', '2026-03-07T00:00Z'),
    );
    expect(written(stations['bench'])).toEqual(['2026-03-06T00:00/2026-03-06T12:00', '2026-03-06T12:30/2026-03-07T00:00']);
  });
});

describe('when a cleaning may be', () => {
  it('E3 is once a day within its clock times, over midnight too', () => {
    const cleaning = {
      id: 'floor-mixer',
      name: 'Mixer',
      resource: { kind: 'mixer' as const, id: 'spiral' },
      minutes: 30,
      from: '23:00',
      to: '01:00',
    };
    const { cleanings } = calendarsOf(
      kitchen({ cleanings: [cleaning] }),
      zoneCalendar('UTC'),
      span('2026-03-06T00:00Z', '2026-03-08T00:00Z'),
    );
    expect(written(cleanings)).toEqual([
      '2026-03-06T00:00/2026-03-06T01:00',
      '2026-03-06T23:00/2026-03-07T01:00',
      '2026-03-07T23:00/2026-03-08T00:00',
    ]);
    expect(new Set(cleanings.map(({ id }) => id))).toEqual(new Set(['floor-mixer']));
  });
});

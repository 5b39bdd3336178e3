import { describe, expect, test } from 'vitest';
import { bakehouseFileSchema, type BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { commandOfFile, dateIn, instantOf } from '../../server/main/planned-starts.ts';
import { levainFile } from '../domain/support/levain-house.ts';

const ZONE = 'Europe/London';

/** A day whose pot is fed at 22:00 the evening before, and whose dough is begun at 05:00. */
function overnight(serviceDate: string): BakehouseFile {
  const file = levainFile([]);
  return bakehouseFileSchema.parse({
    ...file,
    house: { ...file.house, zone: ZONE },
    day: {
      serviceDate,
      batches: [
        { formula: 'levain', start: { at: '22:00', daysBefore: 1 }, doughG: 5000 },
        { formula: 'country', start: { at: '05:00' }, cuts: [{ product: 'country-loaf', pieces: 20 }] },
      ],
    },
  });
}

function startsOf(serviceDate: string): readonly string[] {
  return commandOfFile(overnight(serviceDate), 0).batches.map((batch) => new Date(batch.plannedStartMs).toISOString());
}

/**
 * Summer Time in the United Kingdom begins on the last Sunday of March and ends on the last Sunday of October, both at
 * 01:00 Greenwich mean time (Summer Time Act 1972 as amended by The Summer Time Order 2002; from memory).
 */
describe('D30 clock times of the house are the right instants, also in a night when the clocks change', () => {
  test('in a night without a change, seven hours lie between them', () => {
    expect(startsOf('2026-03-07')).toEqual(['2026-03-06T22:00:00.000Z', '2026-03-07T05:00:00.000Z']);
  });

  test('in the night that is an hour longer, eight', () => {
    expect(startsOf('2026-10-25')).toEqual(['2026-10-24T21:00:00.000Z', '2026-10-25T05:00:00.000Z']);
  });

  test('in the night that is an hour shorter, six', () => {
    expect(startsOf('2027-03-28')).toEqual(['2027-03-27T22:00:00.000Z', '2027-03-28T04:00:00.000Z']);
  });

  test('a time that the clock shows twice is the first of them, one that it leaves out is as long after the change', () => {
    expect(new Date(instantOf(ZONE, '2026-10-25', '01:30')).toISOString()).toBe('2026-10-25T00:30:00.000Z');
    expect(new Date(instantOf(ZONE, '2027-03-28', '01:30')).toISOString()).toBe('2027-03-28T01:30:00.000Z');
  });

  test('without a date of its own a day serves the date on which it is brought in, by the house’s clock', () => {
    expect(dateIn(ZONE, Date.UTC(2026, 6, 31, 23, 30))).toBe('2026-08-01');
    const file = overnight('2026-01-01');
    const { serviceDate: _named, ...day } = file.day;
    expect(commandOfFile({ ...file, day }, Date.UTC(2026, 6, 31, 23, 30)).serviceDate).toBe('2026-08-01');
  });

  test('Y1 an order by the clock is wanted then on its day, one of a demo so long after it is brought in', () => {
    const file = overnight('2026-03-29');
    const wanted = { product: 'country-loaf', pieces: 10, form: 'cooled', weight: 1 } as const;
    const orders = [
      { ...wanted, readyAt: '08:00', label: 'Shop' },
      { ...wanted, readyAfterLoadMin: 90 },
    ];
    const command = commandOfFile({ ...file, day: { ...file.day, orders } }, 1_000_000);
    expect(command.orders).toEqual([
      // Summer Time has begun that night: 08:00 is 07:00 UTC.
      { productId: 'country-loaf', pieces: 10, form: 'cooled', weight: 1, label: 'Shop', readyMs: Date.UTC(2026, 2, 29, 7) },
      { productId: 'country-loaf', pieces: 10, form: 'cooled', weight: 1, readyMs: 1_000_000 + 90 * 60_000 },
    ]);
    expect(command.standing).toBeUndefined();
  });
});

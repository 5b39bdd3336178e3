import { Temporal } from 'temporal-polyfill';
import type { House } from '../../shared/documents/house.ts';
import { ALWAYS_LOUD, soundHours, type HouseCalendar, type SoundHours } from '../../shared/floor/sound-hours.ts';

/** Dates and instants in a zone of the IANA database. Throws a RangeError on one that is not in it. */
export function zoneCalendar(zone: string): HouseCalendar {
  return {
    dateAt: (atMs, daysOn) =>
      Temporal.Instant.fromEpochMilliseconds(atMs).toZonedDateTimeISO(zone).toPlainDate().add({ days: daysOn }).toString(),
    instantMs: (date, minuteOfDay) =>
      Temporal.PlainDate.from(date)
        .toPlainDateTime(new Temporal.PlainTime(Math.floor(minuteOfDay / 60), minuteOfDay % 60))
        .toZonedDateTime(zone, { disambiguation: 'compatible' }).epochMilliseconds,
  };
}

/** The hours by which a house sounds. Before there is a house: loud, and no test. */
export function houseHours(house: House | null): SoundHours {
  return house === null ? ALWAYS_LOUD : soundHours(house.sound, zoneCalendar(house.zone));
}

import type { House } from '../../shared/documents/house.ts';
import { ALWAYS_LOUD, soundHours, type SoundHours } from '../../shared/floor/sound-hours.ts';
import { zonedDate, zonedInstantMs } from './zoned-instant.ts';

/** The hours by which a house sounds, by the browser's zones. Before there is a house: loud, and no test. */
export function browserHours(house: House | null): SoundHours {
  if (house === null) return ALWAYS_LOUD;
  return soundHours(house.sound, {
    dateAt: (atMs, daysOn) => zonedDate(atMs, house.zone, daysOn),
    instantMs: (date, minute) => zonedInstantMs(date, minute, house.zone),
  });
}

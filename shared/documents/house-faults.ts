import type { House } from './house.ts';
import { faultAt, type FileFault } from './kitchen-faults.ts';

/** Whether the time zone is one of the IANA database that this machine has. */
export function isKnownZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch (error) {
    // ECMA-402: a RangeError for a zone that is not there. Anything else is a bug.
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** What is wrong with a house whose shape is right. Paths begin with `house`. Empty where nothing is. */
export function houseFaults(house: House): FileFault[] {
  if (isKnownZone(house.zone)) return [];
  return [faultAt('house.zone', { code: 'zoneUnknown', zone: house.zone })];
}

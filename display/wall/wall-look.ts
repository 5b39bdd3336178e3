import { z } from 'zod';
import { unreachable } from '../../shared/result.ts';
import { clockText } from '../parts/clock-text.ts';
import type { Look } from '../parts/look.ts';

const DAY_MIN = 1440;

/** What somebody chose for a wall: a look, whatever its browser asks for, or night between two times of the house's clock. */
export const WALL_LOOK_CHOICES = ['day', 'night', 'browser', 'hours'] as const;
export type WallLookChoice = (typeof WALL_LOOK_CHOICES)[number];

const minuteOfDaySchema = z
  .number()
  .int()
  .min(0)
  .max(DAY_MIN - 1);

/** The look of a wall. The night's hours are kept while another look is chosen. */
export const wallLookSchema = z.strictObject({
  choice: z.enum(WALL_LOOK_CHOICES),
  /** The night begins and ends, in minutes from midnight by the house's clock. */
  nightFromMin: minuteOfDaySchema,
  nightToMin: minuteOfDaySchema,
});
export type WallLook = z.infer<typeof wallLookSchema>;

export const DEFAULT_WALL_LOOK: WallLook = { choice: 'day', nightFromMin: 20 * 60, nightToMin: 4 * 60 };

/** Minutes since midnight that a zone's clock reads at an instant, 0 to 1439. Throws a RangeError on an unknown zone. */
export function minuteOfDay(atMs: number, zone: string): number {
  return minutesOfClock(clockText(atMs, zone)) ?? 0;
}

/** "20:15" as minutes from midnight; null where it is no time of a day. */
export function minutesOfClock(text: string): number | null {
  const [, hours, minutes] = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text) ?? [];
  return hours === undefined || minutes === undefined ? null : Number(hours) * 60 + Number(minutes);
}

/** Minutes from midnight as "20:15". */
export function clockOfMinutes(minutes: number): string {
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':');
}

/** Whether a minute of the day lies in a night that may run over midnight; its end is morning. A night without length is none. */
export function isNightAt(minute: number, fromMin: number, toMin: number): boolean {
  return fromMin <= toMin ? minute >= fromMin && minute < toMin : minute >= fromMin || minute < toMin;
}

/** The look that a wall has at an instant, by the house's zone and what its browser asks for. */
export function wallLookAt(wallLook: WallLook, atMs: number, zone: string, browserLook: Look): Look {
  switch (wallLook.choice) {
    case 'day':
    case 'night':
      return wallLook.choice;
    case 'browser':
      return browserLook;
    case 'hours':
      return isNightAt(minuteOfDay(atMs, zone), wallLook.nightFromMin, wallLook.nightToMin) ? 'night' : 'day';
    default:
      return unreachable(wallLook.choice);
  }
}

import type { Fault } from './kitchen-faults.ts';
import type { Hours, Kitchen } from './kitchen.ts';

const DAY_MIN = 24 * 60;

/** How long from a clock time to the next of another, in minutes; over midnight where it ends earlier than it begins, 0 where both are one. */
export function minutesBetween({ from, to }: Pick<Hours, 'from' | 'to'>): number {
  return (minuteOf(to) - minuteOf(from) + DAY_MIN) % DAY_MIN;
}

/** Hours and breaks that last no time at all: a whole day is two shifts, or no hours. */
export function checkStationHours({ stations }: Kitchen, fault: Fault): void {
  stations.forEach((station, index) => {
    for (const key of ['hours', 'breaks'] as const)
      (station[key] ?? []).forEach((hours, place) => checkLasting(hours, `kitchen.stations[${index}].${key}[${place}]`, fault));
  });
}

/** A window that lasts no time. */
export function checkLasting(hours: Pick<Hours, 'from' | 'to'>, path: string, fault: Fault): void {
  if (minutesBetween(hours) === 0) fault(`${path}.to`, { code: 'hoursEmpty', at: hours.from });
}

function minuteOf(clockTime: string): number {
  const [hour = 0, minute = 0] = clockTime.split(':').map(Number);
  return hour * 60 + minute;
}

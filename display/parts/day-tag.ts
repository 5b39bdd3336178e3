import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { weekdayText } from './clock-text.ts';

/** A tag, with its weekday before it where the dough is of another day than the floor's: "Fri C1". */
export function dayTag(tag: string, serviceDate: string, floorDate: string | null): string {
  return floorDate === null || floorDate === serviceDate ? tag : `${weekdayText(serviceDate)} ${tag}`;
}

/**
 * The date that needs no saying: the latest open day of which a dough is begun, so that a day which is only planned ahead, or whose
 * levain is only fed, takes no names away from today's. Before anything is begun, the first that there is work for. Once every day is
 * closed, all that is left says its day.
 */
export function floorDateOf(state: FloorState): string | null {
  const { serviceDate, openDates } = state;
  if (serviceDate === null) return null;
  const ofOpenDays = Object.values(state.workpieces).filter((workpiece) => openDates.includes(workpiece.serviceDate));
  const begun = ofOpenDays.filter(isDoughBegun).map((workpiece) => workpiece.serviceDate);
  if (begun.length > 0) return begun.reduce((a, b) => (a > b ? a : b));
  const waiting = ofOpenDays.filter((workpiece) => workpiece.finishedMs === null).map((workpiece) => workpiece.serviceDate);
  if (waiting.length > 0) return waiting.reduce((a, b) => (a < b ? a : b));
  return openDates.includes(serviceDate) ? serviceDate : '';
}

function isDoughBegun({ kind, steps }: Workpiece): boolean {
  return kind === 'cut' || kind === 'load' || (kind === 'batch' && Object.keys(steps).length > 0);
}

import type { FloorState } from '../../shared/floor/state.ts';
import { weekdayText } from './clock-text.ts';

/** A tag, with its weekday before it where the dough is of another day than the floor's: "Fri C1". */
export function dayTag(tag: string, serviceDate: string, floorDate: string | null): string {
  return floorDate === null || floorDate === serviceDate ? tag : `${weekdayText(serviceDate)} ${tag}`;
}

/** The date that needs no saying: the floor's own while it is open. Once it is closed, all that is left says its day. */
export function floorDateOf(state: FloorState): string | null {
  const { serviceDate, openDates } = state;
  return serviceDate === null || openDates.includes(serviceDate) ? serviceDate : '';
}

import type { FloorState } from '../../shared/floor/state.ts';
import { weekdayText } from '../parts/clock-text.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import { compactDayWords } from '../words/wall.ts';

/** A tag as it is written where there is room: "Fri C1" for dough of another day. */
export function longTag(state: FloorState, tag: string, serviceDate: string): string {
  return dayTag(tag, serviceDate, floorDateOf(state));
}

/** A tag as it is written in narrow places, as one word: "FrC1". */
export function shortTag(state: FloorState, tag: string, serviceDate: string): string {
  const floorDate = floorDateOf(state);
  return floorDate === null || floorDate === serviceDate ? tag : compactDayWords(weekdayText(serviceDate), tag);
}

/** The short tag of a workpiece that is only known by its id and tag, as bookings are. */
export function shortTagOf(state: FloorState, workpieceId: string, tag: string): string {
  const workpiece = state.workpieces[workpieceId];
  return workpiece === undefined ? tag : shortTag(state, tag, workpiece.serviceDate);
}

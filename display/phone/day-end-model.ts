import { boardRows, type Row } from '../../shared/floor/board.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';

/** What is still on the floor when the day ends, and where it stands. */
export interface CarriedOver {
  readonly workpieceId: string;
  readonly tag: string;
  readonly name: string;
  readonly row: Row;
  readonly placeName: string | null;
}

/** Everything that goes over into the next day, by tag. */
export function carriesOver(state: FloorState, nowMs: number): readonly CarriedOver[] {
  const places = state.kitchen?.document.restPlaces ?? [];
  return boardRows(state, nowMs)
    .map((row) => ({
      workpieceId: row.workpieceId,
      tag: dayTag(row.tag, row.serviceDate, floorDateOf(state)),
      name: row.name,
      row,
      placeName: places.find((place) => place.id === row.placeId)?.name ?? null,
    }))
    .sort((a, b) => a.row.serviceDate.localeCompare(b.row.serviceDate) || a.tag.localeCompare(b.tag, 'en', { numeric: true }));
}

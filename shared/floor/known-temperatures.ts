import { formulaOf } from './contents.ts';
import { sourcesFor } from './decide/sources.ts';
import type { ReadWhere } from './events.ts';
import type { FloorState, TemperatureReading, Workpiece } from './state.ts';

/** A reading of the flour, the room, the tap or a pot stands for so long: our choice. */
const READING_STANDS_MS = 4 * 3_600_000;

/** A temperature as it is best known: read at an instant, or said of the place where it stands, or taken to be the room's. */
export interface KnownC {
  readonly celsius: number;
  readonly from: 'reading' | 'place' | 'room';
  readonly atMs: number | null;
}

/** The newest reading on the whole floor of what is the house's own, not older than a few hours; null where there is none. */
export function readOnFloor(state: FloorState, where: ReadWhere, nowMs: number): KnownC | null {
  return newestOf(
    Object.values(state.workpieces).flatMap((workpiece) => workpiece.readings),
    where,
    nowMs,
  );
}

/** The temperature of the bench, as the kitchen's document says; null in a kitchen without one. */
export function benchOf(state: FloorState): KnownC | null {
  const bench = state.kitchen?.document.restPlaces.find((place) => place.kind === 'bench');
  return bench === undefined ? null : { celsius: bench.temperatureC, from: 'place', atMs: null };
}

/**
 * How warm a dough's preferment is: as read beside this dough, else the pot that it would be drawn from, as read or as the
 * place where that stands. Null where nobody knows.
 */
export function prefermentOf(state: FloorState, workpiece: Workpiece, nowMs: number): KnownC | null {
  const beside = newestOf(workpiece.readings, 'preferment', nowMs);
  if (beside !== null) return beside;
  for (const line of formulaOf(state, workpiece)?.parts.at(-1)?.items ?? []) {
    const pot =
      'formula' in line ? sourcesFor(state, workpiece, line.formula, nowMs).find((source) => source.kind === 'ferment') : undefined;
    if (pot !== undefined) return newestOf(pot.readings, 'dough', nowMs) ?? placeOf(state, pot);
  }
  return null;
}

function placeOf(state: FloorState, workpiece: Workpiece): KnownC | null {
  const place = state.kitchen?.document.restPlaces.find((candidate) => candidate.id === workpiece.placeId);
  return place === undefined ? null : { celsius: place.temperatureC, from: 'place', atMs: null };
}

function newestOf(readings: readonly TemperatureReading[], where: ReadWhere, nowMs: number): KnownC | null {
  const standing = readings.filter((reading) => reading.where === where && reading.atMs > nowMs - READING_STANDS_MS);
  const newest = standing.reduce<TemperatureReading | null>((a, b) => (a !== null && a.atMs >= b.atMs ? a : b), null);
  return newest === null ? null : { celsius: newest.celsius, from: 'reading', atMs: newest.atMs };
}

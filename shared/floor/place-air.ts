import type { RestPlace } from '../documents/kitchen.ts';
import type { FloorState, PlaceAir } from './state.ts';

/** A reading of the air stands for so long, if nothing newer is said: our choice, the same as for what is read beside a dough. */
export const READING_STANDS_MS = 4 * 3_600_000;
const MINUTE_MS = 60_000;

/** The air of a place from an instant on. */
export interface AirSince {
  readonly sinceMs: number;
  readonly ambientC: number;
}

/**
 * The air of a rest place from one instant to another, as pieces in the order of time: what was read there, while that stands; the room's
 * while its door is open; its programme once begun; else what the kitchen's document says of it. `null` is what stands in no rest place: it
 * has the air of the bench. Empty where the kitchen knows no such place. `toMs` may be infinite: what is last goes on.
 */
export function airOf(state: FloorState, placeId: string | null, fromMs: number, toMs: number): readonly AirSince[] {
  const place = placeOf(state, placeId);
  if (place === null) return [];
  const bench = benchOf(state);
  const air = state.placeAir[place.id];
  const instants = [fromMs, ...changesOf(air), ...(bench === null ? [] : changesOf(state.placeAir[bench.id]))]
    .filter((atMs) => atMs >= fromMs && atMs < toMs)
    .sort((a, b) => a - b);
  const pieces: AirSince[] = [];
  for (const sinceMs of instants) {
    const ambientC = isOpenAt(air, sinceMs) && bench !== null ? closedAirC(state, bench, sinceMs) : closedAirC(state, place, sinceMs);
    if (pieces.at(-1)?.ambientC !== ambientC) pieces.push({ sinceMs, ambientC });
  }
  return pieces;
}

/** How warm it is in a rest place at an instant, in °C; null where the kitchen knows no such place. */
export function airAt(state: FloorState, placeId: string | null, atMs: number): number | null {
  return airOf(state, placeId, atMs, atMs + 1)[0]?.ambientC ?? null;
}

/** A phase of a programme that runs: the nth of so many. */
export interface ProgrammePhase {
  readonly sinceMs: number;
  /** When the next one begins; null in the last, which goes on. */
  readonly nextMs: number | null;
  readonly temperatureC: number;
  readonly nth: number;
  readonly of: number;
}

/** What is known of the air of a rest place at an instant. */
export interface AirNow {
  readonly ambientC: number;
  /** What was read there and still stands; null where nothing does. */
  readonly read: { readonly celsius: number; readonly atMs: number } | null;
  /** The phase of its programme; null where none was begun. */
  readonly phase: ProgrammePhase | null;
  /** Until when its door stands open; null where it is closed. */
  readonly openToMs: number | null;
}

/** How warm it is in a rest place at an instant, and what says so; null where the kitchen knows no such place. */
export function airNow(state: FloorState, placeId: string, atMs: number): AirNow | null {
  const ambientC = airAt(state, placeId, atMs);
  if (ambientC === null) return null;
  const air = state.placeAir[placeId];
  const open = (air?.openings ?? []).filter(({ fromMs, toMs }) => fromMs <= atMs && atMs < toMs);
  return {
    ambientC,
    read: standingReading(air, atMs),
    phase: phaseAt(air, atMs),
    openToMs: open.length === 0 ? null : Math.max(...open.map(({ toMs }) => toMs)),
  };
}

/** Whether anything was said of a place, since an instant, that its document does not say. */
export function isAirSaid(state: FloorState, placeId: string | null, sinceMs: number): boolean {
  const place = placeOf(state, placeId);
  const air = place === null ? undefined : state.placeAir[place.id];
  if (air === undefined) return false;
  return (
    air.programme !== null ||
    air.readings.some(({ atMs }) => atMs + READING_STANDS_MS > sinceMs) ||
    air.openings.some(({ toMs }) => toMs > sinceMs)
  );
}

function closedAirC(state: FloorState, place: RestPlace, atMs: number): number {
  const air = state.placeAir[place.id];
  return standingReading(air, atMs)?.celsius ?? phaseAt(air, atMs)?.temperatureC ?? place.temperatureC;
}

/** What was last read there, while it stands. A programme that has gone on since was not read yet. */
function standingReading(air: PlaceAir | undefined, atMs: number): PlaceAir['readings'][number] | null {
  const phase = phaseAt(air, atMs);
  const reading = air?.readings.findLast((one) => one.atMs <= atMs && one.atMs > atMs - READING_STANDS_MS);
  return reading !== undefined && (phase === null || reading.atMs >= phase.sinceMs) ? reading : null;
}

function phaseAt(air: PlaceAir | undefined, atMs: number): ProgrammePhase | null {
  if (air?.programme === null || air === undefined || atMs < air.programme.begunMs) return null;
  let sinceMs = air.programme.begunMs;
  const of = air.programme.phases.length;
  for (const [index, { minutes, temperatureC }] of air.programme.phases.entries()) {
    const nextMs = sinceMs + minutes * MINUTE_MS;
    if (index === of - 1) return { sinceMs, nextMs: null, temperatureC, nth: of, of };
    if (atMs < nextMs) return { sinceMs, nextMs, temperatureC, nth: index + 1, of };
    sinceMs = nextMs;
  }
  return null;
}

function changesOf(air: PlaceAir | undefined): readonly number[] {
  if (air === undefined) return [];
  const phases: number[] = [];
  let sinceMs = air.programme?.begunMs ?? 0;
  for (const { minutes } of air.programme?.phases ?? []) {
    phases.push(sinceMs);
    sinceMs += minutes * MINUTE_MS;
  }
  return [
    ...air.readings.flatMap(({ atMs }) => [atMs, atMs + READING_STANDS_MS]),
    ...air.openings.flatMap(({ fromMs, toMs }) => [fromMs, toMs]),
    ...phases,
  ];
}

function isOpenAt(air: PlaceAir | undefined, atMs: number): boolean {
  return air?.openings.some(({ fromMs, toMs }) => fromMs <= atMs && atMs < toMs) ?? false;
}

function placeOf(state: FloorState, placeId: string | null): RestPlace | null {
  if (placeId === null) return benchOf(state);
  return state.kitchen?.document.restPlaces.find((place) => place.id === placeId) ?? null;
}

function benchOf(state: FloorState): RestPlace | null {
  return state.kitchen?.document.restPlaces.find((place) => place.kind === 'bench') ?? null;
}

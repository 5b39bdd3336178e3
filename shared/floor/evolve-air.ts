import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import type { DriftSample, FloorState, PlaceAir, RipenessSample } from './state.ts';

type AirEvent = EventOf<'placeRead' | 'placeOpened' | 'programmeBegun' | 'driftLearned' | 'ripenessLearned'>;

const TYPES: ReadonlySet<string> = new Set<AirEvent['type']>([
  'placeRead',
  'placeOpened',
  'programmeBegun',
  'driftLearned',
  'ripenessLearned',
]);

/** Kept in the live state of each place; the journal has them all. */
const READINGS_KEPT = 24;
const OPENINGS_KEPT = 24;
/** Kept of each kind of vessel and each formula: enough for a median that one wild reading does not move. */
const DRIFTS_KEPT = 60;
const RIPENESS_KEPT = 60;

const NOTHING_KNOWN: PlaceAir = { readings: [], openings: [], programme: null };

/** Key of what stands in no counted vessel. */
export const NO_VESSEL = 'none' as const;

/** Whether the event is about the air of a place, or about what dough taught of warmth. */
export function isAirEvent(event: FloorEvent): event is AirEvent {
  return TYPES.has(event.type);
}

/** What is known of the air of places, and what doughs have taught of warmth and ripening. */
export function evolveAir(state: FloorState, event: AirEvent, { commandId }: RecordedEvent): FloorState {
  switch (event.type) {
    case 'placeRead': {
      const { celsius, atMs } = event;
      return withAir(state, event.placeId, (air) => ({ ...air, readings: [...air.readings, { celsius, atMs }].slice(-READINGS_KEPT) }));
    }
    case 'placeOpened': {
      const opening = { fromMs: event.atMs, toMs: event.atMs + event.minutes * 60_000 };
      return withAir(state, event.placeId, (air) => ({ ...air, openings: [...air.openings, opening].slice(-OPENINGS_KEPT) }));
    }
    case 'programmeBegun':
      return withAir(state, event.placeId, (air) => ({ ...air, programme: { phases: event.phases, begunMs: event.atMs } }));
    case 'driftLearned': {
      const { type: _type, vesselKind, ...pair } = event;
      const key = vesselKind ?? NO_VESSEL;
      const sample: DriftSample = { ...pair, commandId };
      return { ...state, drifts: { ...state.drifts, [key]: [...(state.drifts[key] ?? []), sample].slice(-DRIFTS_KEPT) } };
    }
    case 'ripenessLearned': {
      const { workpieceId, formulaId, stepId, factor, atMs } = event;
      const sample: RipenessSample = { workpieceId, stepId, factor, atMs, commandId };
      const samples = [...(state.ripeness[formulaId] ?? []), sample].slice(-RIPENESS_KEPT);
      return { ...state, ripeness: { ...state.ripeness, [formulaId]: samples } };
    }
    default:
      return unreachable(event);
  }
}

function withAir(state: FloorState, placeId: string, change: (air: PlaceAir) => PlaceAir): FloorState {
  return { ...state, placeAir: { ...state.placeAir, [placeId]: change(state.placeAir[placeId] ?? NOTHING_KNOWN) } };
}

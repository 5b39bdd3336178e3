import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import type { FloorState, SlotHeatSample } from './state.ts';

type OvenEvent = EventOf<'testPieceStarted' | 'testPieceEnded' | 'slotHeatLearned' | 'bakePaced'>;

const TYPES: ReadonlySet<string> = new Set<OvenEvent['type']>(['testPieceStarted', 'testPieceEnded', 'slotHeatLearned', 'bakePaced']);

/** Kept of each slot: enough for a median that one wild bake does not move. */
const HEATS_KEPT = 60;

/** Whether the event is about how hot the slots of the ovens are. */
export function isOvenEvent(event: FloorEvent): event is OvenEvent {
  return TYPES.has(event.type);
}

/** What test pieces and bakes have taught of the slots of the ovens, and the bakes that go by it. */
export function evolveOvens(state: FloorState, event: OvenEvent, { commandId }: RecordedEvent): FloorState {
  switch (event.type) {
    case 'testPieceStarted': {
      const { slotId, referenceMin, atMs } = event;
      return { ...state, testPieces: { ...state.testPieces, [slotId]: { referenceMin, startedMs: atMs } } };
    }
    case 'testPieceEnded': {
      const { [event.slotId]: _ended, ...testPieces } = state.testPieces;
      return { ...state, testPieces };
    }
    case 'slotHeatLearned': {
      const { kind, minutesShare, atMs } = event;
      const sample: SlotHeatSample = { kind, minutesShare, atMs, commandId };
      const learned = event.slotIds.map((slotId) => [slotId, [...(state.slotHeat[slotId] ?? []), sample].slice(-HEATS_KEPT)] as const);
      return { ...state, slotHeat: { ...state.slotHeat, ...Object.fromEntries(learned) } };
    }
    case 'bakePaced':
      return paced(state, event);
    default:
      return unreachable(event);
  }
}

function paced(state: FloorState, { workpieceId, stepId, factor }: EventOf<'bakePaced'>): FloorState {
  const workpiece = state.workpieces[workpieceId];
  const life = workpiece?.steps[stepId];
  if (workpiece === undefined || life?.pins === undefined || life.pins === null) return state;
  const steps = { ...workpiece.steps, [stepId]: { ...life, pins: { ...life.pins, factor } } };
  return { ...state, workpieces: { ...state.workpieces, [workpieceId]: { ...workpiece, steps } } };
}

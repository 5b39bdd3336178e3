import { isStronger } from './due.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import type { Call, FloorState, UndoEntry, Workpiece } from './state.ts';

/** Devices whose last command is remembered for undo; the one longest idle is forgotten first. */
const UNDO_DEVICES = 200;

/** The workpieces that an event touches, where undo can put them back; none where it cannot. */
function undoableWorkpieces(event: FloorEvent): readonly string[] {
  switch (event.type) {
    case 'stepStarted':
    case 'stepDone':
    case 'stepSkipped':
    case 'stepProgressed':
    case 'stepHandedOver':
    case 'moreTimeGiven':
    case 'workpieceHeld':
    case 'workpieceReleased':
    case 'workpieceMoved':
    case 'workpieceFinished':
    case 'workpieceDiscarded':
    case 'ovenLoaded':
    case 'ovenUnloaded':
    case 'temperatureRead':
    case 'callHeard':
    case 'countCorrected':
    case 'tagCorrected':
    case 'timeCorrected':
      return [event.workpieceId];
    case 'workpieceDivided':
    case 'loadsMade':
      return [event.workpieceId, ...event.children.map((child) => child.workpieceId)];
    default:
      return [];
  }
}

/** Keeps the workpieces as they were before a device's last command. Its next command replaces them. */
export function rememberForUndo(state: FloorState, recorded: RecordedEvent): FloorState {
  const touched = undoableWorkpieces(recorded.event);
  if (touched.length === 0) return state;
  const existing = state.undo[recorded.deviceId];
  const entry: UndoEntry =
    existing?.commandId === recorded.commandId ? existing : { commandId: recorded.commandId, sequence: recorded.sequence, before: {} };
  const before: Record<string, Workpiece | null> = { ...entry.before };
  for (const workpieceId of touched) {
    if (!(workpieceId in before)) before[workpieceId] = state.workpieces[workpieceId] ?? null;
  }
  return {
    ...state,
    undo: withoutIdlest({ ...state.undo, [recorded.deviceId]: { commandId: entry.commandId, sequence: recorded.sequence, before } }),
  };
}

function withoutIdlest(undo: Readonly<Record<string, UndoEntry>>): Readonly<Record<string, UndoEntry>> {
  const entries = Object.entries(undo);
  if (entries.length <= UNDO_DEVICES) return undo;
  const idlest = entries.reduce((a, b) => (b[1].sequence < a[1].sequence ? b : a));
  return Object.fromEntries(entries.filter((entry) => entry !== idlest));
}

/** Puts the workpieces back as they were before the command that is undone, and forgets it. */
export function forgetUndo(state: FloorState, event: EventOf<'commandUndone'>, deviceId: string): FloorState {
  const entry = state.undo[deviceId];
  if (entry === undefined || entry.commandId !== event.undoneCommandId) return state;
  const workpieces: Record<string, Workpiece> = { ...state.workpieces };
  const gone = new Set<string>();
  for (const [workpieceId, before] of Object.entries(entry.before)) {
    if (before === null) {
      delete workpieces[workpieceId];
      gone.add(workpieceId);
    } else {
      workpieces[workpieceId] = { ...before, call: callToKeep(before.call, workpieces[workpieceId]?.call ?? null) };
    }
  }
  const { [deviceId]: _undone, ...undo } = state.undo;
  const edges = gone.size === 0 ? state.edges : state.edges.filter((edge) => !gone.has(edge.fromId) && !gone.has(edge.toId));
  return { ...state, workpieces, edges, undo };
}

/** A call that has become stronger meanwhile was raised and stays raised: that it was heard is all that can be taken back of it. */
function callToKeep(before: Call | null, present: Call | null): Call | null {
  if (before === null || present === null || before.stepId !== present.stepId) return before;
  return isStronger(present.level, before.level) ? present : before;
}

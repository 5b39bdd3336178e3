import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent } from './events.ts';
import type { Call, FloorState, Workpiece } from './state.ts';

type CallEvent = EventOf<'callRaised' | 'callHeard' | 'callSounded'>;

const TYPES: ReadonlySet<string> = new Set<CallEvent['type']>(['callRaised', 'callHeard', 'callSounded']);

/** Whether the event is about calls. */
export function isCallEvent(event: FloorEvent): event is CallEvent {
  return TYPES.has(event.type);
}

/** What was called, heard and sounded. */
export function evolveCalls(state: FloorState, event: CallEvent): FloorState {
  switch (event.type) {
    case 'callRaised':
      // A stronger level is a new call: what was heard was the weaker one.
      return withCall(state, event.workpieceId, () => ({
        stepId: event.stepId,
        level: event.level,
        dueMs: event.dueMs,
        raisedMs: event.atMs,
        heardMs: null,
        soundedCount: 0,
        lastSoundedMs: null,
      }));
    case 'callHeard':
      return withCall(state, event.workpieceId, (call) =>
        call === null || call.stepId !== event.stepId ? call : { ...call, heardMs: event.atMs },
      );
    case 'callSounded': {
      // One sound says many calls: their workpieces are changed together, for a copy of them all costs more than what is changed.
      const changed: Record<string, Workpiece> = {};
      for (const { workpieceId, stepId, level } of event.calls) {
        const workpiece = changed[workpieceId] ?? state.workpieces[workpieceId];
        const call = workpiece?.call ?? null;
        if (workpiece === undefined || workpiece.finishedMs !== null || call?.stepId !== stepId || call.level !== level) continue;
        changed[workpieceId] = { ...workpiece, call: { ...call, soundedCount: call.soundedCount + 1, lastSoundedMs: event.atMs } };
      }
      const lastSoundedMs = { ...state.lastSoundedMs, [event.burst]: event.atMs };
      return Object.keys(changed).length === 0
        ? { ...state, lastSoundedMs }
        : { ...state, lastSoundedMs, workpieces: { ...state.workpieces, ...changed } };
    }
    default:
      return unreachable(event);
  }
}

function withCall(state: FloorState, workpieceId: string, change: (call: Call | null) => Call | null): FloorState {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined || workpiece.finishedMs !== null) return state;
  const call = change(workpiece.call);
  return call === workpiece.call ? state : { ...state, workpieces: { ...state.workpieces, [workpieceId]: { ...workpiece, call } } };
}

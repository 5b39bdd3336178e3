import { dueOf, isStronger, type Due } from './due.ts';
import type { CallLevel } from './events.ts';
import type { Call, FloorState, Workpiece } from './state.ts';

const SECOND_MS = 1000;
/** Calls that come within so much of one another make one sound. */
export const GROUP_MS = 90 * SECOND_MS;
/** A call sounds when raised and so long after, then is silent until heard, started, done or late. */
export const CALL_REPEATS_MS = [60 * SECOND_MS, 120 * SECOND_MS] as const;
export const LATE_REPEAT_MS = 60 * SECOND_MS;
export const LOST_REPEAT_MS = 12 * SECOND_MS;

export interface CallToSound {
  readonly workpieceId: string;
  readonly stepId: string;
  readonly level: CallLevel;
}

/** What is to sound next: one burst for all calls whose time has come by then, the strongest giving the rhythm. */
export interface NextSound {
  readonly atMs: number;
  readonly burst: CallLevel;
  readonly calls: readonly CallToSound[];
}

/**
 * The next sound, from state alone: after a restart it is the same, and what fell due meanwhile sounds at once, in one
 * group. Null while nothing has to sound.
 */
export function nextSound(state: FloorState, nowMs: number): NextSound | null {
  const pending: { readonly atMs: number; readonly joinsFromMs: number; readonly call: CallToSound }[] = [];
  for (const workpiece of Object.values(state.workpieces)) {
    const { call } = workpiece;
    const due = call === null ? null : dueOf(state, workpiece);
    if (call === null || due === null) continue;
    const atMs = soundMs(state, workpiece, call, due);
    if (atMs === null) continue;
    // One that waits for another's repeat takes part in whatever sounds before that, or it would follow on its heels.
    const joinsFromMs = call.lastSoundedMs === null && call.heardMs === null ? call.raisedMs : atMs;
    pending.push({ atMs, joinsFromMs, call: { workpieceId: workpiece.id, stepId: call.stepId, level: call.level } });
  }
  if (pending.length === 0) return null;
  const firstMs = Math.min(...pending.map((entry) => entry.atMs));
  const atMs = Math.max(firstMs, nowMs);
  const calls = pending.filter((entry) => entry.joinsFromMs <= atMs).map((entry) => entry.call);
  const burst = calls.reduce<CallLevel>((strongest, call) => (isStronger(call.level, strongest) ? call.level : strongest), 'call');
  return { atMs, burst, calls };
}

/** When one call sounds next, or null where it is silent. */
function soundMs(state: FloorState, workpiece: Workpiece, call: Call, due: Due): number | null {
  // Held calls are silent, save one that was raised because the dough is being lost.
  if (call.level !== 'lost' && workpiece.heldUntilMs !== null && workpiece.heldUntilMs > call.raisedMs) return null;
  switch (call.level) {
    case 'call':
      if (call.heardMs !== null || due.isAtOnce) return null;
      return call.lastSoundedMs === null ? firstCallMs(state, call, due) : repeatMs(call);
    case 'late':
      if (call.heardMs !== null) return afterHeardMs(call, due);
      return call.lastSoundedMs === null ? call.raisedMs : call.lastSoundedMs + LATE_REPEAT_MS;
    case 'lost':
      if (call.heardMs !== null) return null;
      return call.lastSoundedMs === null ? call.raisedMs : call.lastSoundedMs + LOST_REPEAT_MS;
  }
}

/** A call raised soon after another one's burst takes part in that one's next repeat, unless it would be late by then. */
function firstCallMs(state: FloorState, call: Call, due: Due): number {
  const burstMs = state.lastSoundedMs.call;
  if (burstMs === undefined || call.raisedMs - burstMs >= GROUP_MS || call.raisedMs < burstMs) return call.raisedMs;
  const joinedMs = Math.max(call.raisedMs, burstMs + CALL_REPEATS_MS[0]);
  return joinedMs < due.lateMs ? joinedMs : call.raisedMs;
}

function repeatMs(call: Call): number | null {
  const [first, second] = CALL_REPEATS_MS;
  if (call.lastSoundedMs === null || call.soundedCount > CALL_REPEATS_MS.length) return null;
  return call.lastSoundedMs + (call.soundedCount === 1 ? first : second - first);
}

/** A late call that was heard sounds once more when half of what was left then before it is lost has gone by. */
function afterHeardMs(call: Call, due: Due): number | null {
  if (call.heardMs === null || due.lostMs === null || due.lostMs <= call.heardMs) return null;
  const halfWayMs = call.heardMs + (due.lostMs - call.heardMs) / 2;
  if (call.lastSoundedMs !== null && call.lastSoundedMs >= halfWayMs) return null;
  return halfWayMs;
}

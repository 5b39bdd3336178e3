import { dueOf, type Due } from './due.ts';
import { isStronger } from './role.ts';
import type { CallLevel } from './events.ts';
import { ALWAYS_LOUD, type SoundHours } from './sound-hours.ts';
import type { Call, FloorState, Workpiece } from './state.ts';

const SECOND_MS = 1000;
/** Calls that come within so much of one another make one sound. */
export const GROUP_MS = 90 * SECOND_MS;
/** What sounded so long ago sounds along with another burst, or its repeat would follow on that one's heels. */
const ALONG_MS = 30 * SECOND_MS;
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
  /** By the hour at which it sounds. */
  readonly volumePct: number;
  readonly calls: readonly CallToSound[];
}

/**
 * The next sound, from state alone: after a restart it is the same, and what fell due meanwhile sounds at once, in one
 * group. Null while nothing has to sound. In quiet hours what is only a call waits for their end, and sounds then if it
 * still stands; what is late or being lost waits for nothing.
 */
export function nextSound(state: FloorState, nowMs: number, hours: SoundHours = ALWAYS_LOUD): NextSound | null {
  const pending: { readonly atMs: number; readonly joinsFromMs: number; readonly call: CallToSound }[] = [];
  for (const workpiece of Object.values(state.workpieces)) {
    const { call } = workpiece;
    const due = call === null ? null : dueOf(state, workpiece);
    if (call === null || due === null) continue;
    const wantedMs = soundMs(state, workpiece, call, due);
    if (wantedMs === null) continue;
    const quietEndMs = call.level === 'call' ? hours.quietEndMs(Math.max(wantedMs, nowMs)) : null;
    const atMs = quietEndMs ?? wantedMs;
    // One that waits for the end of quiet hours joins nothing: its repeats would be over before anybody may hear them.
    const joinsFromMs = quietEndMs === null ? soundsAlongMs(call, atMs) : atMs;
    pending.push({ atMs, joinsFromMs, call: { workpieceId: workpiece.id, stepId: call.stepId, level: call.level } });
  }
  if (pending.length === 0) return null;
  const firstMs = Math.min(...pending.map((entry) => entry.atMs));
  const atMs = Math.max(firstMs, nowMs);
  const calls = pending.filter((entry) => entry.joinsFromMs <= atMs).map((entry) => entry.call);
  const burst = calls.reduce<CallLevel>((strongest, call) => (isStronger(call.level, strongest) ? call.level : strongest), 'call');
  return { atMs, burst, volumePct: hours.volumePct(atMs), calls };
}

/** When one call sounds next, or null where it is silent. */
function soundMs(state: FloorState, workpiece: Workpiece, call: Call, due: Due): number | null {
  // Held calls are silent, save one that was raised because the dough is being lost.
  if (call.level !== 'lost' && workpiece.heldUntilMs !== null && workpiece.heldUntilMs > call.raisedMs) return null;
  switch (call.level) {
    case 'call':
      if (call.heardMs !== null || due.isAtOnce) return null;
      if (call.lastSoundedMs === null) return firstCallMs(state, call, due);
      // What a phase of a bake asks for sounds once, and again when it is late: an oven asks often.
      return due.step.kind === 'bake' && call.stepId === due.step.id ? null : repeatMs(call);
    case 'late':
      if (call.heardMs !== null) return afterHeardMs(call, due);
      return call.lastSoundedMs === null ? firstLateMs(state, call, due) : call.lastSoundedMs + LATE_REPEAT_MS;
    case 'lost':
      if (call.heardMs !== null) return null;
      return call.lastSoundedMs === null ? call.raisedMs : call.lastSoundedMs + LOST_REPEAT_MS;
  }
}

/** From when on a call takes part in whatever sounds. */
function soundsAlongMs(call: Call, atMs: number): number {
  if (call.heardMs !== null) return atMs;
  return Math.min(atMs, call.lastSoundedMs === null ? call.raisedMs : call.lastSoundedMs + ALONG_MS);
}

/**
 * A call raised soon after a burst needs none of its own: that one has had everybody look at the wall. It sounds after a
 * minute if it still stands then; half way to being late where that comes sooner.
 */
function firstCallMs(state: FloorState, call: Call, due: Due): number {
  const burstMs = lastBurstMs(state, call.raisedMs, ['call', 'late', 'lost']);
  if (call.raisedMs - burstMs >= GROUP_MS) return call.raisedMs;
  return call.raisedMs + Math.min(CALL_REPEATS_MS[0], Math.max(0, due.lateMs - call.raisedMs) / 2);
}

/** One that becomes late soon after another late one's burst waits for that one's repeat, where it has the time twice over. */
function firstLateMs(state: FloorState, call: Call, due: Due): number {
  const joinedMs = lastBurstMs(state, call.raisedMs, ['late', 'lost']) + LATE_REPEAT_MS;
  if (joinedMs <= call.raisedMs) return call.raisedMs;
  const isInTime = due.lostMs === null || (joinedMs - call.raisedMs) * 2 <= due.lostMs - call.raisedMs;
  return isInTime ? joinedMs : call.raisedMs;
}

/** The last burst of some levels before an instant; far back where there was none. */
function lastBurstMs(state: FloorState, beforeMs: number, levels: readonly CallLevel[]): number {
  const burstsMs = levels.map((level) => state.lastSoundedMs[level]).filter((atMs) => atMs !== undefined && atMs <= beforeMs);
  return Math.max(Number.NEGATIVE_INFINITY, ...burstsMs.map(Number));
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

import { evolve } from '../../shared/floor/evolve.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { Decider } from './decider.ts';
import type { HeldTap } from './link-state.ts';

/** By whom, where and when the held taps are decided on the page. */
export interface TentativeContext {
  readonly deviceId: string;
  readonly stationId: string | null;
  readonly pageId: string;
  /** House time now. */
  readonly nowMs: number;
}

/**
 * The state as it will be once the server has taken the held taps, decided one after another by the same decider. A tap
 * that is refused here, or not decided here, changes nothing here; whether it counts is the server's to say.
 */
export function withHeldTaps(confirmed: FloorState, taps: readonly HeldTap[], context: TentativeContext, decide: Decider): FloorState {
  return taps.reduce((state, tap) => withHeldTap(state, tap, context, decide), confirmed);
}

function withHeldTap(state: FloorState, { record }: HeldTap, context: TentativeContext, decide: Decider): FloorState {
  const tapMs = Math.round(record.tapMs);
  const { deviceId, stationId } = context;
  const { commandId } = record;
  const decision = decide(state, record.command, {
    commandId,
    deviceId,
    stationId,
    nowMs: Math.max(Math.round(context.nowMs), tapMs),
    tapMs,
    tapUncertain: record.pageId !== context.pageId,
  });
  if (decision === null || !decision.ok) return state;
  let next = state;
  decision.value.forEach((event, ordinal) => {
    next = evolve(next, { sequence: next.sequence + 1, commandId, ordinal, deviceId, event });
  });
  return next;
}

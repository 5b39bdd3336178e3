import type { TapTime } from './commands.ts';

/** The phone's two clocks may differ by so much before its word on when the tap was is not taken. Real time. */
export const TAP_CLOCKS_AGREE_MS = 2000;

/**
 * When a tap was, in house time. Where the phone's two clocks disagree about how long ago (sleep, reload, a clock that
 * was set), the tap's time is uncertain and its arrival counts. Never in the future; the deciders see to it that it is
 * never before the end of what came before. `pace` is house milliseconds per real millisecond.
 */
export function tapInstant(tap: TapTime, nowMs: number, pace: number): { readonly tapMs: number; readonly uncertain: boolean } {
  if (tap.agoMonotonicMs === null || Math.abs(tap.agoMonotonicMs - tap.agoWallMs) > TAP_CLOCKS_AGREE_MS) {
    return { tapMs: nowMs, uncertain: true };
  }
  return { tapMs: Math.round(nowMs - tap.agoMonotonicMs * pace), uncertain: false };
}

/** The first pause before connecting again, which doubles up to the longest. Real time. */
export const RECONNECT_FIRST_MS = 250;
export const RECONNECT_LONGEST_MS = 5_000;
/** Between tries at a server that is full, or that did not understand the page. Real time. */
export const RECONNECT_SLOW_MS = 30_000;
/** Between tries at a tap that the server could not keep: the first pause, which doubles up to the longest. Real time. */
export const RETRY_TAP_FIRST_MS = 1_000;
export const RETRY_TAP_LONGEST_MS = 60_000;

/**
 * How long to wait before the n-th try (from 0), in ms. Between half the pause and all of it, by `random` in [0, 1): the
 * phones of a house must not come back all at once.
 */
export function reconnectDelayMs(attempt: number, random: number): number {
  return jittered(Math.min(RECONNECT_LONGEST_MS, RECONNECT_FIRST_MS * 2 ** Math.min(attempt, 20)), random);
}

/** The pause before trying a full server again, in ms. */
export function slowDelayMs(random: number): number {
  return jittered(RECONNECT_SLOW_MS, random);
}

/** The pause before the n-th repeat (from 0) of taps that the server could not keep, in ms. */
export function retryTapDelayMs(attempt: number, random: number): number {
  return jittered(Math.min(RETRY_TAP_LONGEST_MS, RETRY_TAP_FIRST_MS * 2 ** Math.min(attempt, 20)), random);
}

function jittered(pauseMs: number, random: number): number {
  return pauseMs / 2 + (pauseMs / 2) * random;
}

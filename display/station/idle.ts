/** A screen that nobody has touched for so long shows the most pressing work again. Real ms. */
export const IDLE_MS = 60_000;

/** Whether a screen has been left alone. Both instants are of one clock that only runs forward, in ms. */
export function isLeftAlone(lastTouchMs: number, nowMs: number): boolean {
  return nowMs - lastTouchMs >= IDLE_MS;
}

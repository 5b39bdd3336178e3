import { entryKey, type Entry } from './entry.ts';

/** A line so close to its due time is being looked at: it keeps its place. */
export const STEADY_MS = 60_000;

/** Whether a line must not move at the moment. */
export function isSteady(entry: Entry, nowMs: number): boolean {
  return entry.some((row) => Math.abs(row.dueMs - nowMs) <= STEADY_MS);
}

/**
 * The wanted order, but for lines within 60 s of due that stood on the wall before: those keep their place, and the
 * others take the places left over. Called once for each new sequence number; between events nothing moves.
 */
export function steadyOrder(previousKeys: readonly string[], wanted: readonly Entry[], nowMs: number): Entry[] {
  const placed: (Entry | undefined)[] = Array.from({ length: wanted.length }, () => undefined);
  const moving: Entry[] = [];
  for (const entry of wanted) {
    const index = previousKeys.indexOf(entryKey(entry));
    if (index >= 0 && index < placed.length && isSteady(entry, nowMs)) placed[index] = entry;
    else moving.push(entry);
  }
  return placed.map((entry) => entry ?? moving.shift()).filter((entry) => entry !== undefined);
}

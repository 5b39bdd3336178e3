import type { RecordedEvent } from '../../shared/floor/events.ts';

/**
 * The latest instant of the house that its last events know, in ms since 1970; null where they know none. An event in which a set clock was
 * noted says what the clock showed from then on: nothing before it is later any more.
 */
export function lastKnownHouseMs(recent: readonly RecordedEvent[]): number | null {
  let latestMs: number | null = null;
  for (const { event } of recent.toReversed()) {
    if (event.type === 'clockJumped') return Math.max(latestMs ?? Number.NEGATIVE_INFINITY, event.atMs + event.byMs);
    if ('atMs' in event && event.atMs !== undefined) latestMs = Math.max(latestMs ?? Number.NEGATIVE_INFINITY, event.atMs);
  }
  return latestMs;
}

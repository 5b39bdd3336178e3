import type { Stock } from './state.ts';

/**
 * The feeds that are still planned once a pot has been fed at an instant, or its feed left out: without every one that
 * was meant for until then, or without the next one, where that came early. The first feed only makes the pot.
 */
export function feedsAhead({ fedMs, plannedFeeds }: Stock, atMs: number): Stock['plannedFeeds'] {
  const ahead = plannedFeeds.filter((feed) => feed.feedMs > atMs);
  return fedMs === null || ahead.length < plannedFeeds.length ? ahead : ahead.slice(1);
}

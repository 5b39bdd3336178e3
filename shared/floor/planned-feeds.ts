import { plannedStepBelow } from './planned-step.ts';
import type { FloorState, Stock, Workpiece } from './state.ts';
import { wayOf } from './way.ts';

type Feeds = Stock['plannedFeeds'];

/** Feeds that can be told apart by their hours, so that none has the number of another for four days. */
const FEED_NUMBERS = 101;
const HOUR_MS = 3_600_000;

/**
 * The feeds that are still planned once a pot has been fed at an instant, or its feed left out: without every one that
 * was meant for until then, or without the next one, where that came early. The first feed only makes the pot.
 */
export function feedsAhead({ fedMs, plannedFeeds }: Stock, atMs: number): Feeds {
  const ahead = plannedFeeds.filter((feed) => feed.feedMs > atMs);
  return fedMs === null || ahead.length < plannedFeeds.length ? ahead : ahead.slice(1);
}

/**
 * A pot is fed again and again under one name. In a plan its feeds that are still to come are told apart as loads are, by
 * a number that follows from the hour for which a feed was meant, and stays the same however it is moved and whatever is
 * fed before it. The first feed, which makes the pot, has none.
 */
export function numberedFeeds(feeds: Feeds): readonly (Feeds[number] & { readonly number: number })[] {
  const taken = new Set<number>();
  return feeds.map((feed) => {
    let number = Math.floor(feed.feedMs / HOUR_MS) % FEED_NUMBERS;
    while (taken.has(number)) number = (number + 1) % FEED_NUMBERS;
    taken.add(number);
    return { ...feed, number };
  });
}

/** The feeds of a pot that are still to come, each at the instant (`feedMs`) to which the plan in force has moved it. */
export function feedsAsPlanned(state: FloorState, pot: Workpiece): Feeds {
  const feeds = pot.stock?.plannedFeeds ?? [];
  const [feedStep] = state.plan === null ? [] : wayOf(state, pot);
  if (feedStep === undefined) return feeds;
  return numberedFeeds(feeds).map(({ number, feedMs, grams }) => {
    const planned = plannedStepBelow(state, pot, { load: number }, feedStep.id);
    return { feedMs: planned?.plannedStartMs ?? feedMs, grams };
  });
}

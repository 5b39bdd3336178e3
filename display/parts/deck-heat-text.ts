import type { DeckLanes } from '../../shared/floor/oven-lanes.ts';
import { DECK } from '../words/prompts.ts';
import { clockText } from './clock-text.ts';
import { temperatureText } from './temperature-text.ts';

/** So long before it has to be set a deck says so. */
const AHEAD_MS = 30 * 60_000;

/** It has to be set soon, or already. */
export function asksForHeat<T extends Pick<DeckLanes, 'wants'>>(
  deck: T,
  nowMs: number,
): deck is T & { readonly wants: NonNullable<DeckLanes['wants']> } {
  return deck.wants !== null && nowMs >= deck.wants.setByMs - AHEAD_MS;
}

/**
 * What a deck that is empty has to say of its heat, the longest way first: what to set it to and by when, or when it is hot;
 * empty where it has nothing to say.
 */
export function deckHeatTexts(deck: Pick<DeckLanes, 'wants' | 'readyMs'>, nowMs: number, zone: string, unit: 'C' | 'F'): string[] {
  if (asksForHeat(deck, nowMs)) {
    const temperature = temperatureText(deck.wants.celsius, unit);
    const setNow = DECK.setNow(temperature);
    return nowMs >= deck.wants.setByMs ? [setNow] : [DECK.setBy(temperature, clockText(deck.wants.setByMs, zone)), setNow];
  }
  return deck.readyMs === null ? [] : [DECK.hotBy(clockText(deck.readyMs, zone))];
}

import type { DeckLanes } from '../../shared/floor/oven-lanes.ts';
import { DECK } from '../words/prompts.ts';
import { clockText } from './clock-text.ts';
import { temperatureText } from './temperature-text.ts';

/** So long before it has to be set a deck says so. */
const AHEAD_MS = 30 * 60_000;

/** What a deck that is empty has to say of its heat: what to set it to and by when, or when it is hot; null where it has nothing to say. */
export function deckHeatText(
  { wants, readyMs }: Pick<DeckLanes, 'wants' | 'readyMs'>,
  nowMs: number,
  zone: string,
  unit: 'C' | 'F',
): string | null {
  if (wants !== null && nowMs >= wants.setByMs - AHEAD_MS) {
    const temperature = temperatureText(wants.celsius, unit);
    return nowMs >= wants.setByMs ? DECK.setNow(temperature) : DECK.setBy(temperature, clockText(wants.setByMs, zone));
  }
  return readyMs === null ? null : DECK.hotBy(clockText(readyMs, zone));
}

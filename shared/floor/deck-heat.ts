import type { Deck } from '../documents/kitchen.ts';
import { deckAt } from '../trade/deck-heat.ts';
import { decksOf } from './slots.ts';
import type { FloorState, Workpiece } from './state.ts';
import { wayOf } from './way.ts';

const MINUTE_MS = 60_000;
/** What a deck loses when all its slots are filled at once, and when steam is given, in kelvin. Our choices: ovens differ, and the maker's word comes first. */
const FULL_LOAD_K = 15;
const STEAM_K = 5;

/** How hot a deck is, as far as its rates and what was loaded into it tell. */
export interface DeckHeat {
  readonly celsius: number;
  readonly setC: number;
  /** When it is as hot as it is set; null where it is. */
  readonly readyMs: number | null;
}

/** How hot a deck is at an instant: on its way from what it was to what it was set to, less what loads and steam have taken. */
export function deckHeatAt(state: FloorState, deck: Deck, atMs: number): DeckHeat {
  const setC = state.deckC[deck.id] ?? deck.temperatureC;
  const { fromC, sinceMs } = state.deckSets[deck.id] ?? { fromC: setC, sinceMs: 0 };
  const { celsius, readyMin } = deckAt(
    {
      fromMin: sinceMs / MINUTE_MS,
      fromC,
      setC,
      heatKPerMin: deck.heatKPerMin,
      coolKPerMin: deck.coolKPerMin,
      drops: Object.values(state.workpieces).flatMap((workpiece) => dropsOf(state, workpiece, deck)),
    },
    atMs / MINUTE_MS,
  );
  const readyMs = Math.round(readyMin * MINUTE_MS);
  return { celsius, setC, readyMs: readyMs > atMs ? readyMs : null };
}

/** What a load has taken from the deck in which it lies, when it went in. */
function dropsOf(state: FloorState, workpiece: Workpiece, deck: Deck): readonly { readonly atMin: number; readonly byK: number }[] {
  const filled = deck.slots.filter(({ id }) => workpiece.slotIds.includes(id)).length;
  if (filled === 0) return [];
  const bake = wayOf(state, workpiece).find(({ id, kind }) => kind === 'bake' && workpiece.steps[id]?.status === 'started');
  const startedMs = bake === undefined ? null : (workpiece.steps[bake.id]?.startedMs ?? null);
  if (bake === undefined || startedMs === null) return [];
  const steamK = bake.bake?.[0]?.steam === 'in' ? STEAM_K : 0;
  return [{ atMin: startedMs / MINUTE_MS, byK: (FULL_LOAD_K * filled) / deck.slots.length + steamK }];
}

/** The temperature from which a deck that is set anew begins; null where the kitchen knows no such deck. */
export function deckCAt(state: FloorState, deckId: string, atMs: number): number | null {
  const kitchen = state.kitchen?.document;
  const deck = kitchen === undefined ? undefined : decksOf(kitchen).find(({ id }) => id === deckId);
  return deck === undefined ? null : deckHeatAt(state, deck, atMs).celsius;
}

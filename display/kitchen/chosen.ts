import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Resource } from '../../shared/floor/resources.ts';
import type { Inwards } from '../desk/inwards.ts';

/** Kinds of thing that a kitchen has. */
export type PlaceKind = 'mixer' | 'bowl' | 'restPlace' | 'vessel' | 'oven' | 'deck' | 'slot' | 'station';

/** What the panel is about: a thing of the kitchen, or the house itself. */
export type Chosen = { readonly kind: PlaceKind; readonly id: string } | { readonly kind: 'house' };

/** The list that things of a kind stand in. */
export const LISTS = {
  mixer: 'mixers',
  bowl: 'bowls',
  restPlace: 'restPlaces',
  vessel: 'vessels',
  oven: 'ovens',
  station: 'stations',
} as const satisfies Readonly<Partial<Record<PlaceKind, keyof Kitchen>>>;

/** Where a thing stands in the kitchen; null where it does not. */
export function placeOf(kitchen: Kitchen, chosen: { readonly kind: PlaceKind; readonly id: string }): Inwards | null {
  const { kind, id } = chosen;
  if (kind !== 'deck' && kind !== 'slot') {
    const index = kitchen[LISTS[kind]].findIndex((thing) => thing.id === id);
    return index === -1 ? null : [LISTS[kind], index];
  }
  for (const [ovenIndex, oven] of kitchen.ovens.entries()) {
    for (const [deckIndex, deck] of oven.decks.entries()) {
      const deckPath = ['ovens', ovenIndex, 'decks', deckIndex] as const;
      if (kind === 'deck' && deck.id === id) return deckPath;
      const slotIndex = kind === 'slot' ? deck.slots.findIndex((slot) => slot.id === id) : -1;
      if (slotIndex !== -1) return [...deckPath, 'slots', slotIndex];
    }
  }
  return null;
}

/** What can be blocked of a kind; an oven is blocked deck by deck. */
export function resourceOf(chosen: { readonly kind: PlaceKind; readonly id: string }): Resource | null {
  return chosen.kind === 'oven' ? null : { kind: chosen.kind, id: chosen.id };
}

/** Whether two are about the same. */
export function isSameChosen(a: Chosen | null, b: Chosen): boolean {
  if (a === null || a.kind !== b.kind) return false;
  return a.kind === 'house' || (b.kind !== 'house' && a.id === b.id);
}

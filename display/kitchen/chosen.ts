import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Resource } from '../../shared/floor/resources.ts';
import type { Inwards } from '../desk/inwards.ts';

/** Kinds of thing that a kitchen has. */
export type PlaceKind = 'mixer' | 'bowl' | 'restPlace' | 'vessel' | 'oven' | 'deck' | 'slot' | 'station' | 'cleaning';

/** What the panel is about: a thing of the kitchen, the bench of which there is one, or the house itself. */
export type Chosen = ChosenThing | { readonly kind: 'house' | 'bench' };
export interface ChosenThing {
  readonly kind: PlaceKind;
  readonly id: string;
}

/** The list that things of a kind stand in. */
export const LISTS = {
  mixer: 'mixers',
  bowl: 'bowls',
  restPlace: 'restPlaces',
  vessel: 'vessels',
  oven: 'ovens',
  station: 'stations',
  cleaning: 'cleanings',
} as const satisfies Readonly<Partial<Record<PlaceKind, keyof Kitchen>>>;

/** Where a thing stands in the kitchen; null where it does not. */
export function placeOf(kitchen: Kitchen, chosen: ChosenThing): Inwards | null {
  const { kind, id } = chosen;
  if (kind !== 'deck' && kind !== 'slot') {
    const index = (kitchen[LISTS[kind]] ?? []).findIndex((thing) => thing.id === id);
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

/** What can be blocked of a kind; an oven is blocked deck by deck, and a cleaning is no thing. */
export function resourceOf({ kind, id }: ChosenThing): Resource | null {
  return kind === 'oven' || kind === 'cleaning' ? null : { kind, id };
}

/** Whether it is one of the things that stand in lists. */
export function isThing(chosen: Chosen): chosen is ChosenThing {
  return 'id' in chosen;
}

/** Whether two are about the same. */
export function isSameChosen(a: Chosen | null, b: Chosen): boolean {
  if (a === null || a.kind !== b.kind) return false;
  return !isThing(a) || (isThing(b) && a.id === b.id);
}

import type { Product } from '../../shared/documents/formula.ts';

type DeckRoom = NonNullable<Product['deckRoom']>;

/** With other pieces in a slot of one deck; undefined says that it takes as many as elsewhere. Nothing left is no list. */
export function withDeckRoom(deckRoom: DeckRoom | undefined, deck: string, piecesPerSlot: number | undefined): DeckRoom | undefined {
  const all = deckRoom ?? [];
  const isThere = all.some((room) => room.deck === deck);
  if (piecesPerSlot === undefined) return someOf(all.filter((room) => room.deck !== deck));
  if (!isThere) return [...all, { deck, piecesPerSlot }];
  return all.map((room) => (room.deck === deck ? { deck, piecesPerSlot } : room));
}

/** A list as documents keep it: none at all where nothing is in it. */
export function someOf<Item>(items: readonly Item[]): Item[] | undefined {
  return items.length === 0 ? undefined : [...items];
}

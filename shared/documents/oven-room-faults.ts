import type { BookLookup } from './book-lookup.ts';
import type { Product } from './formula.ts';
import type { Fault } from './kitchen-faults.ts';

/** Decks and slots that a product names for its room and its place, and that are not there or are named twice. */
export function checkOvenRoom({ deckRoom = [], prefersSlots = [] }: Product, path: string, lookup: BookLookup, fault: Fault): void {
  deckRoom.forEach(({ deck }, index) => {
    const at = `${path}.deckRoom[${index}].deck`;
    if (!lookup.claimIds.deck.has(deck)) fault(at, { code: 'claimUnknown', kind: 'deck', id: deck });
    else if (deckRoom.findIndex((other) => other.deck === deck) < index) fault(at, { code: 'idTwice', id: deck });
  });
  prefersSlots.forEach((slot, index) => {
    const at = `${path}.prefersSlots[${index}]`;
    if (!lookup.slotIds.has(slot)) fault(at, { code: 'slotUnknown', id: slot });
    else if (prefersSlots.indexOf(slot) < index) fault(at, { code: 'idTwice', id: slot });
  });
}

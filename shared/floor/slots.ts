import type { Deck, Kitchen } from '../documents/kitchen.ts';
import type { Step } from '../documents/method.ts';
import type { FloorState, Workpiece } from './state.ts';
import { productOf } from './way.ts';

/** All decks of the house, oven by oven, from top to bottom. */
export function decksOf(kitchen: Pick<Kitchen, 'ovens'>): readonly Deck[] {
  return kitchen.ovens.flatMap((oven) => oven.decks);
}

/** The decks that will do for a load, best first: those its claim names, or any. */
export function decksFor(kitchen: Kitchen, load: Step): readonly Deck[] {
  const ids = load.claims.find((claim) => claim.kind === 'deck')?.ids ?? [];
  const decks = decksOf(kitchen);
  if (ids.length === 0) return decks;
  return ids.map((id) => decks.find((deck) => deck.id === id)).filter((deck) => deck !== undefined);
}

/** How many slots a workpiece fills: by its product's pieces for each slot, of a deck where it has its own room, or as many as the load claims. */
export function slotsNeeded(state: FloorState, workpiece: Workpiece, load: Step, deckId?: string): number {
  const product = productOf(state, workpiece);
  const piecesPerSlot = product?.deckRoom?.find(({ deck }) => deck === deckId)?.piecesPerSlot ?? product?.piecesPerSlot;
  if (piecesPerSlot !== undefined && workpiece.pieces !== null) return Math.ceil(workpiece.pieces / piecesPerSlot);
  return load.claims.find((claim) => claim.kind === 'deck')?.count ?? 1;
}

/** Which workpiece stands in which slot. */
export function slotHolders(state: FloorState): ReadonlyMap<string, Workpiece> {
  const holders = new Map<string, Workpiece>();
  for (const workpiece of Object.values(state.workpieces)) {
    for (const slotId of workpiece.slotIds) holders.set(slotId, workpiece);
  }
  return holders;
}

/** The workpiece that has a mixer, or null. */
export function mixerHolder(state: FloorState, mixerId: string): Workpiece | null {
  return Object.values(state.workpieces).find((workpiece) => workpiece.mixerId === mixerId) ?? null;
}

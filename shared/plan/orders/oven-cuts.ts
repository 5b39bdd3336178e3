import type { Formula, Product } from '../../documents/formula.ts';
import type { Deck, Kitchen } from '../../documents/kitchen.ts';
import type { Step } from '../../documents/method.ts';
import { decksFor } from '../../floor/slots.ts';
import { vesselsNeeded } from '../../floor/vessels.ts';
import { loadCounts } from '../build/threads-below.ts';

/** Cuts that one batch may be divided into. */
const MOST_CUTS = 26;

/** What the ovens take of a product at a time, and on which decks; no limit where nobody counts its pieces. */
export interface OvenRoom {
  readonly pieces: number;
  readonly deckIds: readonly string[];
}

/** The most pieces of a product that go into the oven at once: on the best of the decks that will do, at each of its bakes. */
export function ovenRoom(product: Product, kitchen: Kitchen): OvenRoom {
  let room: OvenRoom = { pieces: Infinity, deckIds: [] };
  product.way.forEach((step, index) => {
    if (step.kind !== 'bake') return;
    const decks = decksFor(kitchen, loadingOf(product.way.slice(0, index)) ?? step);
    const most = Math.max(...decks.map((deck) => piecesOn(product, deck)));
    if (decks.length > 0 && most < room.pieces) room = { pieces: most, deckIds: decks.map((deck) => deck.id) };
  });
  return room;
}

function loadingOf(before: readonly Step[]): Step | undefined {
  return before.findLast((step) => step.verb === 'load');
}

function piecesOn({ deckRoom, piecesPerSlot }: Product, deck: Deck): number {
  const perSlot = deckRoom?.find((room) => room.deck === deck.id)?.piecesPerSlot ?? piecesPerSlot;
  return perSlot === undefined ? Infinity : perSlot * deck.slots.length;
}

/**
 * The cuts of a product's pieces in one batch: one, where it goes into the oven as it is or in loads; else as many as there
 * have to be, evenly. Null where its dough cannot be divided so.
 */
export function cutsFor(pieces: number, product: Product, formula: Formula, room: OvenRoom): readonly number[] | null {
  const { loads } = product;
  const atOnce = loads === undefined ? pieces : Math.max(...loadCounts(pieces, loads.pieces));
  if (atOnce <= room.pieces) return [pieces];
  if (loads !== undefined && loads.pieces > room.pieces && room.pieces < 1) return null;
  const cuts = loadCounts(pieces, room.pieces);
  const isDivided = formula.method.at(-1)?.verb === 'divide' && formula.method.slice(0, -1).every((step) => step.verb !== 'divide');
  return isDivided && cuts.length <= MOST_CUTS ? cuts : null;
}

/** The most pieces of a product for which there are vessels at once, at each of the steps that claim any. */
export function vesselRoom(product: Product, formula: Formula, kitchen: Kitchen, pieces: number): number {
  const claims = [...formula.method, ...product.way].flatMap((step) => step.claims).filter((claim) => claim.kind === 'vessel');
  let most = pieces;
  for (const claim of claims) {
    const count = Math.max(0, ...claim.ids.map((id) => kitchen.vessels.find((vessel) => vessel.id === id)?.count ?? 0));
    while (most > 1 && vesselsNeeded(claim, most) > count && claim.perPieces !== undefined)
      most = Math.min(most - 1, count * claim.perPieces);
  }
  return Math.max(1, most);
}

/** A cut of a batch, as far as vessels go. */
export interface VesselCut {
  readonly product: Product;
  readonly pieces: number;
}

/** Whether the kitchen has the vessels for all cuts of one batch at once: they are shaped one right after the other. */
export function haveVessels(cuts: readonly VesselCut[], formula: Formula, kitchen: Kitchen): boolean {
  return kitchen.vessels.every(({ id, count }) => {
    const needed = cuts.map(({ product, pieces }) => {
      const claims = [...formula.method, ...product.way].flatMap((step) => step.claims).filter((claim) => claim.kind === 'vessel');
      // One that can be had of another vessel instead is no reason to divide.
      return Math.max(0, ...claims.filter(({ ids }) => ids.length === 1 && ids[0] === id).map((claim) => vesselsNeeded(claim, pieces)));
    });
    return needed.reduce((sum, one) => sum + one, 0) <= count;
  });
}

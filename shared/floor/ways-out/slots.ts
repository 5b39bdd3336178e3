import type { Deck } from '../../documents/kitchen.ts';
import { blockOn } from '../resources.ts';
import { ovenLanes } from '../oven-lanes.ts';
import { decksFor, decksOf, slotHolders, slotsNeeded } from '../slots.ts';
import type { FloorState } from '../state.ts';
import { productOf } from '../way.ts';
import type { WayOut } from '../ways-out.ts';
import { effectOf, finishOf, refusedStep, wayOut, type Asked } from './asked.ts';
import { blockedUntilMs } from './blocked.ts';

/** Whether it is the oven that is full or cannot be had. */
export function isAboutSlots({ refusal }: Asked): boolean {
  if (refusal.code === 'resourceBlocked') return refusal.resource.kind === 'deck' || refusal.resource.kind === 'slot';
  return refusal.code === 'noFreeSlot' || refusal.code === 'slotTaken';
}

/** Another deck with room for all of it, and as much of it as there is room for. */
export function slotWays(asked: Asked): readonly WayOut[] {
  return isAboutSlots(asked) ? [...otherDecks(asked), ...partOfIt(asked)] : [];
}

function otherDecks(asked: Asked): readonly WayOut[] {
  const { state, due, nowMs } = asked;
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return [];
  const load = refusedStep(asked);
  const needed = slotsNeeded(state, due.workpiece, load);
  const wantedC = new Set(decksFor(kitchen, load).map((deck) => heatOf(state, deck)));
  return decksOf(kitchen).flatMap((deck) => {
    const slotIds = freeSlots(state, [deck], nowMs).slice(0, needed);
    if (slotIds.length < needed) return [];
    const temperatureC = heatOf(state, deck);
    const effect = effectOf(asked, 0, { placeC: wantedC.has(temperatureC) ? null : temperatureC });
    return [wayOut('otherSlot', { ...finishOf(due), slotIds: [...slotIds] }, effect, { slotIds })];
  });
}

/** The slots are left for the tap to choose: by then another load may have one of them, and the next will do as well. */
function partOfIt(asked: Asked): readonly WayOut[] {
  const { state, due, nowMs } = asked;
  const kitchen = state.kitchen?.document;
  const piecesPerSlot = productOf(state, due.workpiece)?.piecesPerSlot;
  const { pieces } = due.workpiece;
  if (kitchen === undefined || piecesPerSlot === undefined || pieces === null) return [];
  const free = freeSlots(state, decksFor(kitchen, refusedStep(asked)), nowMs);
  const loadPieces = free.length * piecesPerSlot;
  if (loadPieces === 0 || loadPieces >= pieces) return [];
  return [wayOut('part', { ...finishOf(due), loadPieces }, effectOf(asked, 0, { pieces: loadPieces }), { slotIds: free })];
}

/** When as many slots as it needs are expected to be free on the decks that will do; infinity where nobody can tell. */
export function slotsFreeMs(asked: Asked): number {
  const { state, due, nowMs } = asked;
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return Infinity;
  const load = refusedStep(asked);
  const deckIds = new Set(decksFor(kitchen, load).map((deck) => deck.id));
  const lanes = ovenLanes(state, nowMs).filter(({ deck }) => deckIds.has(deck.id));
  const freeMs = lanes.flatMap(({ deck, lanes: slots }) => {
    const deckMs = blockedUntilMs(state, 'deck', deck.id, nowMs);
    return slots.map(({ slot, bookings }) =>
      Math.max(
        deckMs,
        blockedUntilMs(state, 'slot', slot.id, nowMs),
        ...bookings.filter((booking) => booking.isIn).map((booking) => booking.toMs),
      ),
    );
  });
  return freeMs.sort((a, b) => a - b)[slotsNeeded(state, due.workpiece, load) - 1] ?? Infinity;
}

function freeSlots(state: FloorState, decks: readonly Deck[], nowMs: number): readonly string[] {
  const holders = slotHolders(state);
  return decks
    .filter((deck) => blockOn(state, { kind: 'deck', id: deck.id }, nowMs) === null)
    .flatMap((deck) => deck.slots.map((slot) => slot.id))
    .filter((slotId) => !holders.has(slotId) && blockOn(state, { kind: 'slot', id: slotId }, nowMs) === null);
}

function heatOf(state: FloorState, deck: Deck): number {
  return state.deckC[deck.id] ?? deck.temperatureC;
}

import type { Deck, Slot } from '../documents/kitchen.ts';
import { minutesTo } from '../trade/deck-heat.ts';
import { deckHeatAt, type DeckHeat } from './deck-heat.ts';
import { openDues } from './due.ts';
import { projectionOf, type OvenStay } from './projection.ts';
import { blockOn } from './resources.ts';
import { decksOf, slotHolders } from './slots.ts';
import type { FloorState, Workpiece } from './state.ts';
import { wayOf } from './way.ts';

/** What lies in a slot, or is expected to. */
export interface Booking {
  readonly workpieceId: string;
  readonly tag: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly isIn: boolean;
  /** What its programme begins at, in °C; null where it says nothing, and once it is in. */
  readonly bakeC: number | null;
  /** Tags that want the slot at the same time, where nothing better was free; the wall shows it as a clash. */
  readonly clashesWith: readonly string[];
}

export interface SlotLane {
  readonly slot: Slot;
  readonly bookings: readonly Booking[];
}

export interface DeckLanes {
  readonly ovenId: string;
  readonly ovenName: string;
  readonly deck: Deck;
  /** As set on the floor, or as the kitchen says. */
  readonly temperatureC: number;
  readonly lanes: readonly SlotLane[];
  /** When the last of what is in comes out; null where the deck is free. */
  readonly freeMs: number | null;
  /** When it is as hot as it is set; null where it is. */
  readonly readyMs: number | null;
  /** What the next load wants it to be set to, and by when; null where it is as that wants it. */
  readonly wants: { readonly celsius: number; readonly setByMs: number; readonly tag: string } | null;
}

/**
 * The decks as they stand, each slot with what is in it and what is expected. Expected loads take, in order of time,
 * the first slots free for their whole stay on the decks that will do; where none is, they are shown clashing.
 */
export function ovenLanes(state: FloorState, nowMs: number): readonly DeckLanes[] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return [];
  const bookings = new Map<string, Booking[]>(decksOf(kitchen).flatMap((deck) => deck.slots.map((slot) => [slot.id, []])));
  const expected: OvenStay[] = [];
  for (const due of openDues(state)) {
    const projection = projectionOf(state, due.workpiece, nowMs);
    if (projection === null) continue;
    const isIn = due.workpiece.slotIds.length > 0;
    expected.push(...projection.stays.filter((stay) => !isIn || !stay.isUnderWay));
    if (isIn) {
      const fromMs = bakeStartMs(state, due.workpiece) ?? due.startedMs ?? nowMs;
      for (const slotId of due.workpiece.slotIds) {
        bookings.get(slotId)?.push({
          workpieceId: due.workpiece.id,
          tag: due.workpiece.tag,
          fromMs,
          toMs: Math.max(due.dueMs, nowMs),
          isIn: true,
          bakeC: null,
          clashesWith: [],
        });
      }
    }
  }
  expected.sort((a, b) => a.fromMs - b.fromMs || a.tag.localeCompare(b.tag, 'en', { numeric: true }));
  for (const stay of expected) book(state, stay, decksOf(kitchen), bookings);
  return lanesOf(state, bookings, nowMs);
}

/** When the last bake that was begun was begun: while somebody takes the load out, it is still from then that it lies there. */
function bakeStartMs(state: FloorState, workpiece: Workpiece): number | null {
  const bake = wayOf(state, workpiece).findLast((step) => step.kind === 'bake' && workpiece.steps[step.id] !== undefined);
  return bake === undefined ? null : (workpiece.steps[bake.id]?.startedMs ?? null);
}

function book(state: FloorState, stay: OvenStay, decks: readonly Deck[], bookings: Map<string, Booking[]>): void {
  const named = stay.deckIds.flatMap((deckId) => decks.find((deck) => deck.id === deckId) ?? []);
  const usable = named.filter((deck) => blockOn(state, { kind: 'deck', id: deck.id }, stay.fromMs) === null);
  // Where every deck that will do is out of use, the load is still expected there: that is what wants deciding.
  const candidates = (usable.length > 0 ? usable : named).flatMap((deck) => deck.slots.map((slot) => slot.id));
  const overlapping = (slotId: string): Booking[] =>
    (bookings.get(slotId) ?? []).filter((booking) => booking.fromMs < stay.toMs && stay.fromMs < booking.toMs);
  const free = candidates.filter((slotId) => overlapping(slotId).length === 0);
  const taken = candidates.filter((slotId) => overlapping(slotId).length > 0);
  const chosen = [...free, ...taken].slice(0, stay.slotsNeeded);
  for (const slotId of chosen) {
    const clashesWith = overlapping(slotId).map((booking) => booking.tag);
    bookings.get(slotId)?.push({
      workpieceId: stay.workpieceId,
      tag: stay.tag,
      fromMs: stay.fromMs,
      toMs: stay.toMs,
      isIn: false,
      bakeC: stay.bakeC,
      clashesWith,
    });
  }
}

/** To be as hot as its next load wants it when that goes in, a deck is set so long before as it takes by its rates. */
function wantsOf(deck: Deck, heat: DeckHeat, lanes: readonly SlotLane[]): DeckLanes['wants'] {
  const ahead = lanes.flatMap(({ bookings }) => bookings.filter(({ isIn }) => !isIn)).sort((a, b) => a.fromMs - b.fromMs);
  const next = ahead[0];
  if (next === undefined || next.bakeC === null || next.bakeC === heat.setC) return null;
  const heatMs = minutesTo(deck, heat.celsius, next.bakeC) * 60_000;
  return { celsius: next.bakeC, setByMs: Math.round(next.fromMs - heatMs), tag: next.tag };
}

function lanesOf(state: FloorState, bookings: ReadonlyMap<string, readonly Booking[]>, nowMs: number): DeckLanes[] {
  const holders = slotHolders(state);
  return (state.kitchen?.document.ovens ?? []).flatMap((oven) =>
    oven.decks.map((deck): DeckLanes => {
      const lanes = deck.slots.map((slot) => ({ slot, bookings: bookings.get(slot.id) ?? [] }));
      const inside = lanes.flatMap((lane) => lane.bookings.filter((booking) => booking.isIn));
      const heat = deckHeatAt(state, deck, nowMs);
      const isOccupied = deck.slots.some((slot) => holders.has(slot.id));
      return {
        ovenId: oven.id,
        ovenName: oven.name,
        deck,
        temperatureC: state.deckC[deck.id] ?? deck.temperatureC,
        lanes,
        freeMs: isOccupied ? Math.max(...inside.map((booking) => booking.toMs)) : null,
        readyMs: heat.readyMs,
        wants: wantsOf(deck, heat, lanes),
      };
    }),
  );
}

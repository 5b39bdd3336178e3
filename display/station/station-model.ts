import type { Mixer } from '../../shared/documents/kitchen.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import type { Role } from '../../shared/floor/role.ts';
import { ovenLanes, type Booking, type DeckLanes, type SlotLane } from '../../shared/floor/oven-lanes.ts';
import { blockOn } from '../../shared/floor/resources.ts';
import { mixerHolder } from '../../shared/floor/slots.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { strongestRole } from '../parts/entry.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import { isOfStation, pressingElsewhere } from '../parts/station-rows.ts';
import { worksAtOvens } from '../wall/oven-station.ts';

type Block = NonNullable<ReturnType<typeof blockOn>>;

/** What a station's screen lists. */
export interface StationList {
  /** The row that stands open; null where the station has nothing. */
  readonly open: Row | null;
  /** The station's other rows, in the order given. */
  readonly rest: readonly Row[];
  /** What is late or being lost at other stations; null where nothing is. */
  readonly elsewhere: { readonly first: Row; readonly role: Role; readonly more: number } | null;
}

/**
 * The rows of a station: its own, and what is anybody's. Open is the one that was asked for, from wherever it is, as long
 * as it is on the floor; otherwise the most pressing one. `rows` come in order of pressure.
 */
export function stationList(rows: readonly Row[], stationId: string, wantedId: string | null): StationList {
  const own = rows.filter((row) => isOfStation(row, stationId));
  const open = rows.find((row) => row.workpieceId === wantedId) ?? own[0] ?? null;
  const pressing = pressingElsewhere(rows, stationId).filter((row) => row !== open);
  const [first] = pressing;
  return {
    open,
    rest: own.filter((row) => row !== open),
    elsewhere: first === undefined ? null : { first, role: strongestRole(pressing), more: pressing.length - 1 },
  };
}

/** A mixer of the station with what is in it. */
export interface MixerLine {
  readonly mixer: Mixer;
  /** The dough in it; null where it is empty. */
  readonly row: Row | null;
  readonly block: Block | null;
}

/** The mixers that a station works, as the kitchen lists them. */
export function mixerLines(state: FloorState, stationId: string, nowMs: number): readonly MixerLine[] {
  const mixers = state.kitchen?.document.mixers ?? [];
  return mixers
    .filter((mixer) => mixer.station === stationId)
    .map((mixer) => {
      const holder = mixerHolder(state, mixer.id);
      return {
        mixer,
        row: holder === null ? null : rowOf(state, holder.id, nowMs),
        block: blockOn(state, { kind: 'mixer', id: mixer.id }, nowMs),
      };
    });
}

/** A slot of a deck: what is in it or comes next. */
export interface SlotLine {
  readonly slotId: string;
  readonly name: string;
  readonly inside: { readonly tag: string; readonly outMs: number } | null;
  readonly next: { readonly tag: string; readonly fromMs: number } | null;
}

/** A deck with its slots, as they stand. */
export interface DeckLine {
  readonly deckId: string;
  readonly name: string;
  readonly temperatureC: number;
  /** When the last of what is in comes out; null where it is free. */
  readonly freeMs: number | null;
  readonly readyMs: number | null;
  readonly wants: DeckLanes['wants'];
  readonly block: Block | null;
  readonly slots: readonly SlotLine[];
}

/** The decks, at a station that loads them or takes out of them; none elsewhere. Bookings beyond `aheadMs` are not told. */
export function deckLines(state: FloorState, stationId: string, nowMs: number, aheadMs: number): readonly DeckLine[] {
  if (!worksAtOvens(state, stationId)) return [];
  return ovenLanes(state, nowMs).map((deck) => deckLine(state, deck, nowMs, aheadMs));
}

function deckLine(
  state: FloorState,
  { deck, temperatureC, freeMs, readyMs, wants, lanes }: DeckLanes,
  nowMs: number,
  aheadMs: number,
): DeckLine {
  return {
    deckId: deck.id,
    name: deck.name,
    temperatureC,
    freeMs,
    readyMs,
    wants,
    block: blockOn(state, { kind: 'deck', id: deck.id }, nowMs),
    slots: lanes.map((lane) => slotLine(state, lane, nowMs, aheadMs)),
  };
}

function slotLine(state: FloorState, { slot, bookings }: SlotLane, nowMs: number, aheadMs: number): SlotLine {
  const inside = bookings.find((booking) => booking.isIn);
  const next = bookings.filter((booking) => !booking.isIn && booking.fromMs - nowMs <= aheadMs).toSorted((a, b) => a.fromMs - b.fromMs)[0];
  return {
    slotId: slot.id,
    name: slot.name,
    inside: inside === undefined ? null : { tag: tagOf(state, inside), outMs: inside.toMs },
    next: next === undefined ? null : { tag: tagOf(state, next), fromMs: next.fromMs },
  };
}

/** A booking's tag, with its weekday where the dough is of another day. */
function tagOf(state: FloorState, { workpieceId, tag }: Booking): string {
  const workpiece = state.workpieces[workpieceId];
  return workpiece === undefined ? tag : dayTag(tag, workpiece.serviceDate, floorDateOf(state));
}

import type { Kitchen, RestPlace } from '../../shared/documents/kitchen.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import { airNow, type AirNow } from '../../shared/floor/place-air.ts';
import { slotHeatAt, slotsByHeat, type MappedSlot } from '../../shared/floor/slot-heats.ts';
import type { FloorState, TestPiece, Workpiece } from '../../shared/floor/state.ts';
import type { SlotHeat } from '../../shared/trade/slot-heat.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';

type VesselKind = Kitchen['vessels'][number]['kind'];

/** Vessels that a dough holds, of one kind. */
export interface HeldVessels {
  readonly kind: VesselKind;
  readonly name: string;
  readonly count: number;
}

/** A dough where it stands. */
export interface Standing {
  readonly workpieceId: string;
  readonly tag: string;
  readonly row: Row;
  /** In what; empty where nobody said. */
  readonly vessels: readonly HeldVessels[];
  /** The bowl it stands in; null where it is in none, or nobody said. */
  readonly bowlName: string | null;
}

export interface PlaceStand {
  readonly place: RestPlace;
  /** How warm it is there, and what says so. */
  readonly air: AirNow | null;
  readonly doughs: readonly Standing[];
}

export interface MixerStand {
  readonly mixerId: string;
  readonly name: string;
  readonly dough: Standing | null;
}

export interface SlotStand {
  readonly slotId: string;
  readonly name: string;
  readonly dough: Standing | null;
  readonly heat: SlotHeat;
  /** A piece of dough that is in it to try it; null where none is. */
  readonly testPiece: TestPiece | null;
}

export interface DeckStand {
  readonly deckId: string;
  readonly name: string;
  readonly temperatureC: number;
  readonly slots: readonly SlotStand[];
}

export interface OvenStand {
  readonly ovenId: string;
  readonly name: string;
  readonly decks: readonly DeckStand[];
  /** Its slots, the hottest first. */
  readonly byHeat: readonly MappedSlot[];
}

/** Where everything stands, as it was said: nothing is guessed. */
export interface Places {
  readonly places: readonly PlaceStand[];
  readonly mixers: readonly MixerStand[];
  /** Bowls that no dough is in. */
  readonly freeBowls: readonly string[];
  readonly ovens: readonly OvenStand[];
  /** Doughs of which nobody said where they stand. */
  readonly unplaced: readonly Standing[];
}

/** Where everything stands that has been begun; what is only planned stands nowhere yet. */
export function placesOf(state: FloorState, nowMs: number): Places {
  const kitchen = state.kitchen?.document;
  const pieces = Object.values(state.workpieces).filter((piece) => piece.finishedMs === null && isThere(piece));
  const standing = (piece: Workpiece): readonly Standing[] => standingOf(state, piece, nowMs);
  if (kitchen === undefined) return { places: [], mixers: [], freeBowls: [], ovens: [], unplaced: pieces.flatMap(standing) };
  const whose = (holds: (piece: Workpiece) => boolean): Standing | null => pieces.filter(holds).flatMap(standing)[0] ?? null;
  const places = kitchen.restPlaces.map((place) => ({
    place,
    air: airNow(state, place.id, nowMs),
    doughs: pieces.filter((piece) => isAtRest(piece) && piece.placeId === place.id).flatMap(standing),
  }));
  const bowlIds = new Set(pieces.map((piece) => piece.bowlId));
  return {
    places,
    mixers: kitchen.mixers.map(({ id, name }) => ({ mixerId: id, name, dough: whose((piece) => piece.mixerId === id) })),
    freeBowls: kitchen.bowls.filter((bowl) => !bowlIds.has(bowl.id)).map((bowl) => bowl.name),
    ovens: kitchen.ovens.map((oven) => ({
      ovenId: oven.id,
      name: oven.name,
      byHeat: slotsByHeat(state, oven.id, nowMs),
      decks: oven.decks.map((deck) => ({
        deckId: deck.id,
        name: deck.name,
        temperatureC: state.deckC[deck.id] ?? deck.temperatureC,
        slots: deck.slots.map(({ id, name }) => ({
          slotId: id,
          name,
          dough: whose((piece) => piece.slotIds.includes(id)),
          heat: slotHeatAt(state, id, nowMs),
          testPiece: state.testPieces[id] ?? null,
        })),
      })),
    })),
    unplaced: pieces.filter((piece) => isAtRest(piece) && !isPlaceOf(kitchen, piece.placeId)).flatMap(standing),
  };
}

/** Begun, or a pot, which is there as long as it lives. */
function isThere(piece: Workpiece): boolean {
  return piece.stock !== null || Object.keys(piece.steps).length > 0;
}

/** Neither in an oven nor on a mixer: a rest place is where it is, if anybody said. */
function isAtRest(piece: Workpiece): boolean {
  return piece.slotIds.length === 0 && piece.mixerId === null;
}

function isPlaceOf(kitchen: Kitchen, placeId: string | null): boolean {
  return kitchen.restPlaces.some((place) => place.id === placeId);
}

function standingOf(state: FloorState, piece: Workpiece, nowMs: number): readonly Standing[] {
  const row = rowOf(state, piece.id, nowMs);
  if (row === null) return [];
  const kitchen = state.kitchen?.document;
  const vessels = piece.vessels.flatMap(({ vesselId, count }) => {
    const vessel = kitchen?.vessels.find((candidate) => candidate.id === vesselId);
    return vessel === undefined ? [] : [{ kind: vessel.kind, name: vessel.name, count }];
  });
  return [
    {
      workpieceId: piece.id,
      tag: dayTag(piece.tag, piece.serviceDate, floorDateOf(state)),
      row,
      vessels,
      bowlName: kitchen?.bowls.find((bowl) => bowl.id === piece.bowlId)?.name ?? null,
    },
  ];
}

/** Every instant that a countdown of the drawing runs to. */
export function duesOfPlaces({ places, mixers, ovens, unplaced }: Places): readonly number[] {
  const inOvens = ovens.flatMap((oven) => oven.decks.flatMap((deck) => deck.slots.flatMap((slot) => slot.dough ?? [])));
  const standings = [...places.flatMap((stand) => stand.doughs), ...mixers.flatMap((mixer) => mixer.dough ?? []), ...inOvens, ...unplaced];
  return standings.map((standing) => standing.row.dueMs);
}

import type { Booking, DeckLanes, SlotLane } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText, countdownText } from '../parts/clock-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { BLOCKED, freeSlotsWords, WALL } from '../words/en/wall.ts';
import { axisX, REACH_MS } from './axis.ts';
import { placeLoadTexts, type LoadText, type NamedLoad } from './load-texts.ts';

/** A load on the axis. */
export interface LoadBlock {
  readonly key: string;
  readonly fromPx: number;
  readonly toPx: number;
  /** The first lane it lies in, and how many it takes. */
  readonly lane: number;
  readonly lanes: number;
  readonly look: 'in' | 'booked' | 'clash';
}

/** What one deck reads. */
export interface DeckModel {
  readonly key: string;
  readonly name: string;
  readonly temperature: string;
  /** When it is free, or why it is not to be used. */
  readonly state: string;
  /** The first two loads that want the same slot at the same time, or null. */
  readonly clash: string | null;
  /** Something in it is to come out now. */
  readonly isDue: boolean;
  readonly lanes: number;
  readonly blocks: readonly LoadBlock[];
  readonly texts: readonly LoadText[];
}

const LEAST_BLOCK_PX = 12;

/** Lanes that a deck would like. */
export function lanesWanted(deck: DeckLanes): number {
  return mergedLanes(deck).length;
}

/** The reading of one deck in so many lanes. */
export function deckModel(state: FloorState, deck: DeckLanes, nowMs: number, lanes: number, widthPx: number, nearPx: number): DeckModel {
  const zone = state.house?.document.zone ?? 'UTC';
  const unit = state.house?.document.units.temperature ?? 'C';
  const isDue = deck.lanes.some((lane) => lane.bookings.some((booking) => booking.isIn && booking.toMs <= nowMs));
  const loads = loadsOf(mergedLanes(deck).slice(0, lanes), nowMs, widthPx, zone);
  return {
    key: deck.deck.id,
    name: deck.deck.name,
    temperature: temperatureText(deck.temperatureC, unit),
    state: stateWords(state, deck, nowMs, zone, isDue),
    clash: clashWords(deck, nowMs, zone),
    isDue,
    lanes,
    blocks: loads.map((load) => load.block),
    texts: placeLoadTexts(loads, widthPx, nearPx),
  };
}

function clashWords(deck: DeckLanes, nowMs: number, zone: string): string | null {
  const clashes = deck.lanes
    .flatMap((lane) => lane.bookings)
    .filter((booking) => booking.clashesWith.length > 0 && booking.fromMs - nowMs < REACH_MS);
  const [first] = clashes.toSorted((a, b) => a.fromMs - b.fromMs);
  return first === undefined ? null : `${first.clashesWith[0] ?? ''} × ${first.tag} ${clockText(first.fromMs, zone)}`;
}

function stateWords(state: FloorState, deck: DeckLanes, nowMs: number, zone: string, isDue: boolean): string {
  const blocked = state.blocked.find((event) => event.resource.kind === 'deck' && event.resource.id === deck.deck.id);
  if (blocked !== undefined) return BLOCKED[blocked.why];
  if (isDue) return WALL.deckOut;
  if (deck.freeMs === null) return WALL.free;
  const free = deck.lanes.filter((lane) => !lane.bookings.some((booking) => booking.isIn)).length;
  return free > 0 ? freeSlotsWords(free) : countdownText(deck.freeMs, nowMs, zone);
}

/** Decks of so many slots have a lane for each, always. */
const FEW_SLOTS = 2;

/** One lane for each slot; on decks of many, neighbours that hold and expect the same are drawn as one: a load lies across them. */
function mergedLanes(deck: DeckLanes): readonly SlotLane[] {
  if (deck.lanes.length <= FEW_SLOTS) return deck.lanes;
  return deck.lanes.filter((lane, index) => {
    const before = deck.lanes[index - 1];
    return before === undefined || laneKey(before) !== laneKey(lane);
  });
}

function laneKey(lane: SlotLane): string {
  return lane.bookings.map((booking) => `${booking.workpieceId} ${booking.tag} ${booking.fromMs}`).join();
}

/** The loads of a deck; one that lies in neighbouring lanes is one block across them. */
function loadsOf(lanes: readonly SlotLane[], nowMs: number, widthPx: number, zone: string): NamedLoad[] {
  const loads: NamedLoad[] = [];
  lanes.forEach((lane, index) => {
    const bookings = lane.bookings.filter((booking) => booking.fromMs - nowMs < REACH_MS);
    const clashing = new Set(
      bookings.flatMap((booking) => (booking.clashesWith.length === 0 ? [] : [booking.tag, ...booking.clashesWith])),
    );
    for (const booking of bookings) {
      const load = loadOf(booking, index, clashing.has(booking.tag), nowMs, widthPx, zone);
      const above = loads.find(
        ({ block }) => block.key === load.block.key && block.look === load.block.look && block.lane + block.lanes === index,
      );
      if (above === undefined) loads.push(load);
      else loads[loads.indexOf(above)] = { ...above, block: { ...above.block, lanes: above.block.lanes + 1 } };
    }
  });
  return loads;
}

function loadOf(booking: Booking, lane: number, clashes: boolean, nowMs: number, widthPx: number, zone: string): NamedLoad {
  const fromPx = Math.min(booking.isIn ? 0 : axisX(booking.fromMs - nowMs, widthPx), widthPx - LEAST_BLOCK_PX);
  const toPx = Math.max(fromPx + LEAST_BLOCK_PX, axisX(booking.toMs - nowMs, widthPx));
  const tags = [...booking.clashesWith, booking.tag].join(' × ');
  return {
    block: {
      key: `${booking.workpieceId} ${booking.tag} ${booking.fromMs}`,
      fromPx,
      toPx,
      lane,
      lanes: 1,
      look: booking.isIn ? 'in' : clashes ? 'clash' : 'booked',
    },
    // A clash is told once, by the load that found no free slot; in the oven the tag says enough.
    texts: booking.isIn ? [tags] : clashes && booking.clashesWith.length === 0 ? [] : [`${tags} ${clockText(booking.fromMs, zone)}`, tags],
  };
}

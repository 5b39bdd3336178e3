import type { Booking, DeckLanes, SlotLane } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText } from '../parts/clock-text.ts';
import { axisX, REACH_MS } from './axis.ts';
import { shortTagOf } from './day-tags.ts';
import type { LoadBlock } from './deck-model.ts';
import type { NamedLoad } from './load-texts.ts';

/** The shortest that a stretch of the axis is drawn, px. */
export const LEAST_BLOCK_PX = 12;
/** Decks of so many slots have a lane for each, always. */
const FEW_SLOTS = 2;

/** One lane for each slot; on decks of many, neighbours that hold and expect the same are drawn as one: a load lies across them. */
export function mergedLanes(deck: DeckLanes, blockedIds: ReadonlySet<string>): readonly SlotLane[] {
  if (deck.lanes.length <= FEW_SLOTS) return deck.lanes;
  return deck.lanes.filter((lane, index) => {
    const before = deck.lanes[index - 1];
    return before === undefined || laneKey(before, blockedIds) !== laneKey(lane, blockedIds);
  });
}

/** What is blocked is drawn by itself. */
function laneKey(lane: SlotLane, blockedIds: ReadonlySet<string>): string {
  if (blockedIds.has(lane.slot.id)) return lane.slot.id;
  return lane.bookings.map((booking) => `${booking.workpieceId} ${booking.tag} ${booking.fromMs}`).join();
}

/** The loads of a deck; one that lies in neighbouring lanes is one block across them. */
export function loadsOf(state: FloorState, lanes: readonly SlotLane[], nowMs: number, widthPx: number, zone: string): NamedLoad[] {
  const loads: NamedLoad[] = [];
  lanes.forEach((lane, index) => {
    const bookings = lane.bookings.filter((booking) => booking.fromMs - nowMs < REACH_MS);
    for (const booking of bookings) {
      const load = loadOf(
        state,
        booking,
        index,
        bookings.some((other) => overlap(other, booking)),
        nowMs,
        widthPx,
        zone,
      );
      const above = loads.find(
        ({ block }) => block.key === load.block.key && block.look === load.block.look && block.lane + block.lanes === index,
      );
      if (above === undefined) loads.push(load);
      else loads[loads.indexOf(above)] = { ...above, block: { ...above.block, lanes: above.block.lanes + 1 } };
    }
  });
  return loads;
}

function loadOf(
  state: FloorState,
  booking: Booking,
  lane: number,
  clashes: boolean,
  nowMs: number,
  widthPx: number,
  zone: string,
): NamedLoad {
  // Whole px, as they are drawn: from one second to the next most of them stand still, and so do their names.
  const fromPx = Math.round(Math.min(booking.isIn ? 0 : axisX(booking.fromMs - nowMs, widthPx), widthPx - LEAST_BLOCK_PX));
  const toPx = Math.max(fromPx + LEAST_BLOCK_PX, Math.round(axisX(booking.toMs - nowMs, widthPx)));
  return {
    block: { key: loadKey(booking), fromPx, toPx, lane, lanes: 1, look: booking.isIn ? 'in' : clashes ? 'clash' : 'booked' },
    tag: shortTagOf(state, booking.workpieceId, booking.tag),
    clock: booking.isIn ? null : clockText(booking.fromMs, zone),
  };
}

/** Whether two loads want one slot at the same time. */
function overlap(a: Booking, b: Booking): boolean {
  return a !== b && a.fromMs < b.toMs && b.fromMs < a.toMs;
}

function loadKey(booking: Booking): string {
  return `${booking.workpieceId} ${booking.tag} ${booking.fromMs}`;
}

/**
 * Where a deck has fewer lanes than it wants, the loads of those left out stand in the first lane that is free for them.
 * Adds them to `loads`; returns how many found none.
 */
export function packIn(loads: NamedLoad[], leftOut: readonly NamedLoad[], lanes: number): number {
  const shown = new Set(loads.map(({ block }) => block.key));
  let unplaced = 0;
  for (const load of leftOut) {
    if (shown.has(load.block.key)) continue;
    shown.add(load.block.key);
    const lane = Array.from({ length: lanes }, (_, index) => index).find((index) =>
      loads.every(({ block }) => !meets(block, load.block, index)),
    );
    if (lane === undefined) unplaced += 1;
    else loads.push({ ...load, block: { ...load.block, lane, lanes: 1 } });
  }
  return unplaced;
}

function meets(block: LoadBlock, other: LoadBlock, lane: number): boolean {
  return block.lane <= lane && lane < block.lane + block.lanes && block.fromPx < other.toPx && other.fromPx < block.toPx;
}

import { boardRows, type Row } from '../../shared/floor/board.ts';
import { ovenLanes, type DeckLanes } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { blockedMixers } from './blocks.ts';
import { lanesWanted } from './deck-model.ts';
import { entryKey, type Entry } from '../parts/entry.ts';
import { govern, type DeckDemand, type WallPlan } from './governor.ts';
import { deckNamePx, leftColumns, type LeftColumns } from './left-columns.ts';
import { leftContentOf } from './left-content.ts';
import { steadyOrder } from '../parts/order.ts';
import type { RowsPlan } from './rows-plan.ts';
import type { Screen } from './type-sizes.ts';

/** What stands where, from one event to the next. */
export interface Arrangement {
  readonly plan: WallPlan;
  readonly columns: LeftColumns;
  readonly deckNamePx: number;
}

/** Arranges the wall anew. `previous` is how it stood: lines within 60 s of due keep their place. */
export function arrange(state: FloorState, nowMs: number, screen: Screen, isPaced: boolean, previous: Arrangement | null): Arrangement {
  const content = leftContentOf(state);
  const decks = ovenLanes(state, nowMs).map((deck) => ({
    lanes: lanesWanted(state, deck, nowMs),
    use: useOf(deck),
  }));
  const plan = govern(screen, {
    rows: boardRows(state, nowMs),
    decks,
    hasBlockedMixers: blockedMixers(state, nowMs).length > 0,
    isPaced,
    leftNeedPx: (sizes) => leftColumns(content, sizes).totalPx,
  });
  const previousKeys = previous === null ? [] : previous.plan.rows.full.map(entryKey);
  const full = steadyOrder(previousKeys, plan.rows.full, nowMs);
  return {
    plan: { ...plan, rows: { ...plan.rows, full } },
    columns: leftColumns(content, plan.sizes),
    deckNamePx: deckNamePx(content, plan.sizes),
  };
}

function useOf(deck: DeckLanes): DeckDemand['use'] {
  const bookings = deck.lanes.flatMap((lane) => lane.bookings);
  return bookings.length === 0 ? 'quiet' : bookings.some((booking) => booking.isIn) ? 'loaded' : 'booked';
}

/** The same lines with what they read at an instant: roles and times move on, places do not. */
export function refreshRows(rows: RowsPlan, state: FloorState, nowMs: number): RowsPlan {
  const now = new Map(boardRows(state, nowMs).map((row) => [row.workpieceId, row]));
  const fresh = (old: readonly Row[]): Row[] => old.map((row) => now.get(row.workpieceId)).filter((row) => row !== undefined);
  const full: Entry[] = [];
  for (const entry of rows.full) {
    const [first, ...others] = fresh(entry);
    if (first !== undefined) full.push([first, ...others]);
  }
  return {
    ...rows,
    full,
    more: rows.more === null ? null : { ...rows.more, rows: fresh(rows.more.rows) },
    groups: rows.groups.map((group) => ({ ...group, rows: fresh(group.rows) })),
  };
}

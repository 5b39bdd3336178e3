import { boardRows, type Row } from '../../shared/floor/board.ts';
import { ovenLanes, type DeckLanes } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { blockedMixers } from './blocks.ts';
import { lanesWanted } from './deck-model.ts';
import { entryKey, type Entry } from '../parts/entry.ts';
import { govern, type DeckDemand, type WallPlan } from './governor.ts';
import { keptRows } from './kept-rows.ts';
import { deckNamePx, leftColumns, type LeftColumns } from './left-columns.ts';
import { leftContentOf } from './left-content.ts';
import { isOfStation } from '../parts/station-rows.ts';
import { worksAtOvens } from './oven-station.ts';
import type { RowsPlan } from './rows-plan.ts';
import type { Screen } from './type-sizes.ts';

/** What stands where, from one event to the next. */
export interface Arrangement {
  readonly plan: WallPlan;
  readonly columns: LeftColumns;
  readonly deckNamePx: number;
}

/**
 * Arranges the wall anew. `previous` is how it stood: lines within 60 s of due keep their place. A wall of one station
 * has its rows only, a line for what presses elsewhere, and the decks where the station works at them.
 */
export function arrange(
  state: FloorState,
  nowMs: number,
  screen: Screen,
  isPaced: boolean,
  previous: Arrangement | null,
  stationId: string | null = null,
): Arrangement {
  const content = leftContentOf(state);
  const shownDecks = worksAtOvens(state, stationId) ? ovenLanes(state, nowMs) : [];
  const decks = shownDecks.map((deck) => ({
    lanes: lanesWanted(state, deck, nowMs),
    use: useOf(deck),
  }));
  const plan = govern(screen, {
    rows: boardRows(state, nowMs).filter((row) => isOfStation(row, stationId)),
    decks,
    isOfOneStation: stationId !== null,
    hasBlockedMixers: blockedMixers(state, nowMs).length > 0,
    isPaced,
    leftNeedPx: (sizes) => leftColumns(content, sizes),
  });
  const previousKeys = previous === null ? [] : previous.plan.rows.full.map(entryKey);
  const columns = leftColumns(content, plan.sizes);
  return {
    plan: { ...plan, rows: keptRows(plan.rows, previousKeys, nowMs) },
    columns,
    deckNamePx: deckNamePx(content, columns, plan.sizes, plan.leftPx),
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

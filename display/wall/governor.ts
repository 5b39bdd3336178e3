import type { Row } from '../../shared/floor/board.ts';
import { planRows, type RowHeights, type RowsPlan } from './rows-plan.ts';
import { typeSizes, type Screen, type TypeSizes } from './type-sizes.ts';

/** What one deck asks for. */
export interface DeckDemand {
  /** How many lanes it would like: one for each slot. */
  readonly lanes: number;
  /** How much it is wanted: nothing in it nor expected, something expected, something in it. Where there is no room, the first go first. */
  readonly use: 'quiet' | 'booked' | 'loaded';
}

/** What wants a place on the wall. */
export interface WallDemand {
  /** In order of pressure. */
  readonly rows: readonly Row[];
  /** As they stand in the house, top to bottom. */
  readonly decks: readonly DeckDemand[];
  /** Mixers cannot be used: a line says which. */
  readonly hasBlockedMixers?: boolean;
  /** Not all doughs are shown: a line is kept for what is late or being lost elsewhere. */
  readonly isOfOneStation?: boolean;
  /** The house runs faster than time: a band says so. */
  readonly isPaced: boolean;
  /** How wide rows and decks must be at these sizes, and how wide they would like to be, in px. */
  leftNeedPx(sizes: TypeSizes): { readonly leastPx: number; readonly totalPx: number };
}

export interface DeckPlan {
  /** Place in the demand's list. */
  readonly index: number;
  readonly lanes: number;
  readonly heightPx: number;
}

/** Where everything stands on the wall. All lengths in px. */
export interface WallPlan {
  readonly sizes: TypeSizes;
  readonly bandPx: number;
  readonly headerPx: number;
  /** Width of the rows; NOW stands at its end. */
  readonly leftPx: number;
  /** Whether there is room for the axis right of it. */
  readonly showsAxis: boolean;
  readonly rows: RowsPlan;
  readonly rowPx: number;
  readonly groupPx: number;
  readonly decks: readonly DeckPlan[];
  /** Decks that found no place. */
  readonly hiddenDecks: number;
  /** Height of a line for those, 0 where there is none. */
  readonly hiddenDecksPx: number;
  /** Height of the line for mixers that cannot be used, 0 where all can. */
  readonly blockedMixersPx: number;
  /** Height of the line for what presses at other stations, 0 where all doughs are shown. */
  readonly elsewherePx: number;
  readonly laneHeightPx: number;
}

/** The left part is at least this share of the width. */
const LEAST_LEFT = 0.5;
/** The axis goes where the rows want more than this share. */
const MOST_LEFT = 0.62;
/** Decks take no more than this share of the height while they have lanes to give up. */
const MOST_DECKS = 0.36;
/** How much taller rows may grow into room that is left over. */
const STRETCH = 1.22;

/** What is given up, in this order, until everything fits: lanes, the verb's size, the glance size, decks. */
const GLANCE_SHARES = [0, 0.5, 1] as const;
const VERB_SHARES = [0.82, 0] as const;
const LANE_LIMITS = [6, 3, 2, 1] as const;

/**
 * The governor: text never gets smaller than can be read, so that what does not fit is put together or left out. Pure;
 * throws where the screen cannot even show two rows of the least size (a settings fault: no such wall can be read).
 */
export function govern(screen: Screen, demand: WallDemand): WallPlan {
  for (let hiddenDecks = 0; hiddenDecks <= demand.decks.length; hiddenDecks += 1) {
    for (const share of GLANCE_SHARES) {
      for (const lanes of LANE_LIMITS) {
        const plan = tryPlan(screen, demand, { share, lanes, hiddenDecks });
        if (plan !== null) return plan;
      }
    }
  }
  throw new ScreenTooSmall(screen);
}

/** No wall can be read on this screen from this distance. */
export class ScreenTooSmall extends Error {
  constructor(screen: Screen) {
    super(`no two rows fit ${screen.widthPx}×${screen.heightPx} px on ${screen.diagonalInch} inches from ${screen.distanceM} m`);
    this.name = 'ScreenTooSmall';
  }
}

interface Sacrifice {
  readonly share: number;
  readonly lanes: number;
  readonly hiddenDecks: number;
}

function tryPlan(screen: Screen, demand: WallDemand, sacrifice: Sacrifice): WallPlan | null {
  const width = fitWidth(screen, demand, sacrifice.share);
  if (width === null) return null;
  const { sizes, leftPx, showsAxis } = width;
  const bandPx = demand.isPaced ? Math.round(sizes.nearPx * 1.5) : 0;
  const headerPx = Math.round(Math.max(sizes.glancePx * 1.22, sizes.nearPx * 2.4));
  const laneHeightPx = Math.round(sizes.nearPx * 1.22);
  const decks = planDecks(demand.decks, sacrifice, showsAxis ? laneHeightPx : 0, sizes);
  const hiddenDecksPx = sacrifice.hiddenDecks > 0 ? Math.round(sizes.nearPx * 1.3) : 0;
  const blockedMixersPx = demand.hasBlockedMixers === true ? Math.round(sizes.nearPx * 1.3) : 0;
  // Descenders and all, since it may be the last line of the screen, which moves down by two pixels at times.
  const elsewherePx = demand.isOfOneStation === true ? Math.round(sizes.secondPx * 1.3) + 4 : 0;
  const decksPx = decks.reduce((sum, deck) => sum + deck.heightPx, 0) + hiddenDecksPx;
  if (sacrifice.lanes > 1 && decksPx > screen.heightPx * MOST_DECKS) return null;
  const roomPx = screen.heightPx - bandPx - headerPx - decksPx - blockedMixersPx - elsewherePx - RULE_PX;
  const heights = rowHeights(sizes);
  const rows = planRows(demand.rows, roomPx, heights);
  if (rows === null) return null;
  return {
    sizes,
    bandPx,
    headerPx,
    leftPx,
    showsAxis,
    rows,
    ...stretched(rows, roomPx, heights),
    decks,
    hiddenDecks: sacrifice.hiddenDecks,
    hiddenDecksPx,
    blockedMixersPx,
    elsewherePx,
    laneHeightPx,
  };
}

/** Rules between rows and decks, and the last px of air. */
const RULE_PX = 8;

function fitWidth(screen: Screen, demand: WallDemand, share: number): Pick<WallPlan, 'sizes' | 'leftPx' | 'showsAxis'> | null {
  const tried = VERB_SHARES.map((verbShare) => {
    const sizes = typeSizes(screen, share, verbShare);
    return { sizes, need: demand.leftNeedPx(sizes) };
  });
  const mostPx = screen.widthPx * MOST_LEFT;
  const beside = tried.find(({ need }) => need.totalPx <= mostPx) ?? tried.find(({ need }) => need.leastPx <= mostPx);
  if (beside !== undefined) {
    const leftPx = Math.max(beside.need.leastPx, Math.min(beside.need.totalPx, mostPx), screen.widthPx * LEAST_LEFT);
    return { sizes: beside.sizes, leftPx: Math.round(leftPx), showsAxis: true };
  }
  const alone = tried.find(({ need }) => need.leastPx <= screen.widthPx);
  if (alone !== undefined) return { sizes: alone.sizes, leftPx: screen.widthPx, showsAxis: false };
  const last = tried.at(-1);
  // At the least size the rows take what there is; their texts are then shortened.
  return share === 1 && last !== undefined ? { sizes: last.sizes, leftPx: screen.widthPx, showsAxis: false } : null;
}

/** Thickness of the frame round what is being lost. */
export function framePx(sizes: TypeSizes): number {
  return Math.max(5, Math.round(sizes.glancePx * 0.07));
}

/** Height of a row's main line, by its capitals rather than by its font's ascent and descent, as a share of the glance size. */
export const MAIN_LINE = 0.78;
/** Height of a line below, as a share of the near size. */
export const NOTE_LINE = 1;

/** Between the main line and the note below it, in px: a verb's descenders stand there. */
export function noteGapPx({ glancePx, verbPx, nearPx }: TypeSizes): number {
  return Math.max(nearPx * 0.1, verbPx * 0.22 - glancePx * 0.06 - nearPx * 0.1);
}

/** Main line and note, without what surrounds them, in px. */
export function rowTextPx(sizes: TypeSizes): number {
  return sizes.glancePx * MAIN_LINE + noteGapPx(sizes) + sizes.nearPx * NOTE_LINE;
}

/** What one more line below a row takes, in px. */
export function detailLinePx({ nearPx }: TypeSizes): number {
  return Math.ceil(nearPx * 1.24);
}

function rowHeights(sizes: TypeSizes): RowHeights {
  // A verb with a note below it inside the frame of what is being lost, or a product's name above its strip.
  const fullPx = Math.ceil(Math.max(sizes.glancePx * 1.2, rowTextPx(sizes) + 2 * (framePx(sizes) + 2), sizes.nearPx * 2.3));
  return { fullPx, detailPx: detailLinePx(sizes), groupPx: Math.ceil(Math.max(sizes.secondPx * 1.02, sizes.nearPx * 1.62)) };
}

function stretched(rows: RowsPlan, roomPx: number, heights: RowHeights): Pick<WallPlan, 'rowPx' | 'groupPx'> {
  const rowPx = heights.fullPx + rows.detailLines * heights.detailPx;
  const lines = rows.groups.length + (rows.more === null ? 0 : 1);
  const usedPx = rows.full.length * rowPx + lines * heights.groupPx;
  const factor = usedPx === 0 ? 1 : Math.min(STRETCH, roomPx / usedPx);
  return { rowPx: Math.floor(rowPx * factor), groupPx: Math.floor(heights.groupPx * factor) };
}

function planDecks(decks: readonly DeckDemand[], sacrifice: Sacrifice, laneHeightPx: number, sizes: TypeSizes): DeckPlan[] {
  const hidden = new Set(hiddenFirst(decks).slice(0, sacrifice.hiddenDecks));
  const plans: DeckPlan[] = [];
  decks.forEach((deck, index) => {
    if (hidden.has(index)) return;
    const lanes = Math.max(1, Math.min(deck.lanes, sacrifice.lanes));
    plans.push({
      index,
      lanes,
      heightPx: Math.round(Math.max(sizes.secondPx * 1.16, sizes.nearPx * 1.16 + 10, lanes * laneHeightPx + 12)),
    });
  });
  return plans;
}

/** In which order decks are left out: the least wanted first, among equals the last of them. */
function hiddenFirst(decks: readonly DeckDemand[]): number[] {
  const indexes = decks.map((_, index) => index).reverse();
  return USES.flatMap((use) => indexes.filter((index) => decks[index]?.use === use));
}

const USES = ['quiet', 'booked', 'loaded'] as const;

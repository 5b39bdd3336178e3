import { textWidthPx } from '../parts/text-width.ts';
import { hoursWords, minutesWords } from '../words/clock.ts';
import { BLOCKED, freeSlotsWords, WALL } from '../words/wall.ts';
import { widthSizes, type TypeSizes } from './type-sizes.ts';

/** Everything that may have to be written left of NOW. It changes with the day, not by the second, so that NOW stands still. */
export interface LeftContent {
  /** In the form for narrow places. */
  readonly tags: readonly string[];
  readonly calls: readonly string[];
  readonly running: readonly string[];
  /** What stands after the count of several doughs on one line. */
  readonly stages: readonly string[];
  readonly decks: readonly { readonly name: string; readonly temperature: string }[];
}

/** The columns of a row, in px: edge, mark, tag, verb, countdown, with a gap before each but the first. */
export interface LeftColumns {
  readonly edgePx: number;
  readonly gapPx: number;
  readonly markPx: number;
  readonly tagPx: number;
  readonly verbPx: number;
  readonly countdownPx: number;
  /** What everything wants beside one another, the widest beside the widest. */
  readonly totalPx: number;
  /** What calls want, and work that runs shortly before it is due; further out, a long name of it may have to be shortened. */
  readonly leastPx: number;
}

/** Tags wider than this (in em) are written smaller. */
const WIDEST_TAG_EM = 2.6;
const NARROWEST_TAG_EM = 1.5;
/** The widest countdowns in use; tabular figures make every other digit as wide. */
const COUNTDOWNS = ['+00:00', minutesWords(100), hoursWords(100), '00:00'];
const CLOCK = '00:00';
/** The mark of a lost link with the gap behind it, in em. */
const LINK_MARK_EM = 1.1;
/** The countdown of work that is soon due. */
const SOON = '0:00';
/** The widest of what a deck that can be used says at its right end. */
const DECK_ENDS = [minutesWords(100), freeSlotsWords(9), WALL.free, WALL.deckOut];

/** The columns that the content needs at these sizes. */
export function leftColumns(content: LeftContent, sizes: TypeSizes): LeftColumns {
  const edgePx = Math.round(sizes.glancePx * 0.16);
  const gapPx = Math.round(sizes.glancePx * 0.26);
  const markPx = Math.round(sizes.glancePx * 0.73);
  const wide = widthSizes(sizes);
  const tagEm = Math.min(WIDEST_TAG_EM, Math.max(NARROWEST_TAG_EM, widest(content.tags, 1)));
  // A longer tag is written smaller, and is whole all the same.
  const tagPx = Math.ceil(Math.max(tagEm * wide.glancePx, widest(content.tags, wide.secondPx)));
  const verbPx = Math.ceil(Math.max(widest(content.calls, wide.verbPx), widest(content.running, wide.verbPx)));
  const countdownPx = Math.ceil(widest(COUNTDOWNS, wide.glancePx));
  const besidePx = edgePx + markPx + tagPx + 5 * gapPx;
  const callPx = widest(content.calls, wide.verbPx) + countdownPx;
  const soonPx = widest(content.running, wide.secondPx) + textWidthPx(SOON, wide.glancePx);
  const stagePx = widest(content.stages, wide.secondPx) + widest(COUNTDOWNS, wide.secondPx);
  const ovensPx = decksPx(content, wide, edgePx, gapPx);
  return {
    edgePx,
    gapPx,
    markPx,
    tagPx,
    verbPx,
    countdownPx,
    totalPx: Math.max(besidePx + verbPx + countdownPx, ovensPx),
    leastPx: Math.ceil(Math.max(besidePx + Math.max(callPx, soonPx, stagePx), ovensPx, headerPx(wide, edgePx, gapPx))),
  };
}

/** Everything a wall is called by from afar beside its clock, when the server is away. */
function headerPx(wide: TypeSizes, edgePx: number, gapPx: number): number {
  const clockPx = textWidthPx(CLOCK, wide.glancePx);
  return edgePx + 3 * gapPx + clockPx + textWidthPx(`${WALL.noLink} ${CLOCK}`, wide.secondPx) + LINK_MARK_EM * wide.secondPx;
}

/** How wide the names beside the clock may be; without an axis they keep away from the corner. */
export function headerSidePx(
  columns: LeftColumns,
  { sizes, leftPx, showsAxis }: { readonly sizes: TypeSizes; readonly leftPx: number; readonly showsAxis: boolean },
): number {
  const clockPx = textWidthPx(CLOCK, widthSizes(sizes).glancePx);
  const cornerPx = showsAxis ? 0 : sizes.nearPx + columns.gapPx;
  return leftPx - columns.edgePx - 3 * columns.gapPx - clockPx - cornerPx;
}

/** How wide what stands beside the tag may be; beside the mark where a line has several tags. */
export function whatPx(columns: LeftColumns, linePx: number, isMerged: boolean): number {
  const verbPx = linePx - columns.edgePx - columns.markPx - columns.tagPx - columns.countdownPx - 5 * columns.gapPx;
  return isMerged ? verbPx + columns.tagPx + columns.gapPx : verbPx;
}

/** How wide a verb may be beside its own countdown, as wide as that is. */
export function verbRoomPx(columns: LeftColumns, linePx: number, countdownPx: number): number {
  return whatPx(columns, linePx, false) + columns.countdownPx - countdownPx;
}

/** How wide what stands below that may be: it goes on below the countdown. */
export function notePx(columns: LeftColumns, linePx: number, isMerged: boolean): number {
  return whatPx(columns, linePx, isMerged) + columns.countdownPx + columns.gapPx;
}

/**
 * How wide the names of the decks are: temperatures begin where the verbs do, unless a name wants more and the rest of
 * the line, whatever it says, leaves it.
 */
export function deckNamePx(content: LeftContent, columns: LeftColumns, sizes: TypeSizes, leftPx: number): number {
  const wide = widthSizes(sizes);
  const ends = [...DECK_ENDS, ...Object.values(BLOCKED)];
  const freePx = leftPx - columns.edgePx - temperaturesPx(content, wide) - widest(ends, wide.secondPx) - 4 * columns.gapPx;
  const wantedPx = Math.max(namesPx(content, wide), columns.markPx + columns.tagPx + columns.gapPx);
  return Math.floor(Math.max(leastNamePx(content, wide), Math.min(wantedPx, freePx)));
}

/** Names wider than this (in em) are shortened where there is no room to spare. */
const LEAST_NAME_EM = 5;

function leastNamePx(content: LeftContent, wide: TypeSizes): number {
  return Math.min(wide.secondPx * LEAST_NAME_EM, namesPx(content, wide));
}

function namesPx({ decks }: LeftContent, wide: TypeSizes): number {
  const names = decks.map((deck) => deck.name);
  return Math.ceil(widest(names, wide.secondPx));
}

function temperaturesPx({ decks }: LeftContent, wide: TypeSizes): number {
  const temperatures = decks.map((deck) => deck.temperature);
  return widest(temperatures, wide.nearPx);
}

function decksPx(content: LeftContent, wide: TypeSizes, edgePx: number, gapPx: number): number {
  if (content.decks.length === 0) return 0;
  const endPx = widest(DECK_ENDS, wide.secondPx);
  return Math.ceil(edgePx + leastNamePx(content, wide) + temperaturesPx(content, wide) + endPx + 4.5 * gapPx);
}

function widest(texts: readonly string[], sizePx: number): number {
  return texts.reduce((most, text) => Math.max(most, textWidthPx(text, sizePx)), 0);
}

import { textWidthPx } from '../parts/text-width.ts';
import type { TypeSizes } from './type-sizes.ts';

/** Everything that may have to be written left of NOW. It changes with the day, not by the second, so that NOW stands still. */
export interface LeftContent {
  /** In the form for narrow places. */
  readonly tags: readonly string[];
  readonly calls: readonly string[];
  readonly running: readonly string[];
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
  readonly totalPx: number;
}

/** Tags wider than this (in em) are written smaller. */
const WIDEST_TAG_EM = 2.6;
const NARROWEST_TAG_EM = 1.5;
/** The widest countdowns in use; tabular figures make every other digit as wide. */
const COUNTDOWNS = ['+00:00', '000 min', '00:00'];
/** The widest of what a deck says at its right end. */
const DECK_ENDS = ['000 min', '0 free'];

/** The columns that the content needs at these sizes. */
export function leftColumns(content: LeftContent, sizes: TypeSizes): LeftColumns {
  const edgePx = Math.round(sizes.glancePx * 0.16);
  const gapPx = Math.round(sizes.glancePx * 0.26);
  const markPx = Math.round(sizes.glancePx * 0.8);
  const tagEm = Math.min(WIDEST_TAG_EM, Math.max(NARROWEST_TAG_EM, widest(content.tags, 1)));
  // A longer tag is written smaller, and is whole all the same.
  const tagPx = Math.ceil(Math.max(tagEm * sizes.glancePx, widest(content.tags, sizes.secondPx)));
  const verbPx = Math.ceil(Math.max(widest(content.calls, sizes.verbPx), widest(content.running, sizes.verbPx)));
  const countdownPx = Math.ceil(widest(COUNTDOWNS, sizes.glancePx));
  const rowPx = edgePx + markPx + tagPx + verbPx + countdownPx + 5 * gapPx;
  return { edgePx, gapPx, markPx, tagPx, verbPx, countdownPx, totalPx: Math.max(rowPx, decksPx(content, sizes, gapPx)) };
}

/** How wide what stands beside the tag may be; beside the mark where a line has several tags. */
export function whatPx(columns: LeftColumns, linePx: number, isMerged: boolean): number {
  const verbPx = linePx - columns.edgePx - columns.markPx - columns.tagPx - columns.countdownPx - 5 * columns.gapPx;
  return isMerged ? verbPx + columns.tagPx + columns.gapPx : verbPx;
}

/** Where deck names end and temperatures begin. */
export function deckNamePx(content: LeftContent, sizes: TypeSizes): number {
  return Math.ceil(
    Math.min(
      sizes.secondPx * 5,
      widest(
        content.decks.map((deck) => deck.name),
        sizes.secondPx,
      ),
    ),
  );
}

function decksPx(content: LeftContent, sizes: TypeSizes, gapPx: number): number {
  if (content.decks.length === 0) return 0;
  const temperaturePx = widest(
    content.decks.map((deck) => deck.temperature),
    sizes.nearPx,
  );
  return Math.ceil(deckNamePx(content, sizes) + temperaturePx + widest(DECK_ENDS, sizes.secondPx) + 4.5 * gapPx);
}

function widest(texts: readonly string[], sizePx: number): number {
  return texts.reduce((most, text) => Math.max(most, textWidthPx(text, sizePx)), 0);
}

import { textWidthPx } from '../parts/text-width.ts';
import type { LoadBlock } from './deck-model.ts';

/** A load with what may be written at it, best first. */
export interface NamedLoad {
  readonly block: LoadBlock;
  readonly texts: readonly string[];
}

/** A load's text and where it stands. */
export interface LoadText {
  readonly key: string;
  readonly text: string;
  readonly leftPx: number;
  /** The lane it is written in, and how many it may use: a text inside its load stands in the middle. */
  readonly lane: number;
  readonly lanes: number;
  /** On its own load; `in` loads are dark. */
  readonly isInside: boolean;
  readonly isOnDark: boolean;
}

/** A stretch of one lane that is taken. */
export interface Taken {
  readonly lane: number;
  readonly fromPx: number;
  readonly toPx: number;
}

/** Between a load and its text, in em. */
const GAP_EM = 0.22;
/** Between a load's edge and the text inside it, in em, at least. */
const INSET_EM = 0.12;

/**
 * Finds each load a place for its text: inside it, right of it, left of it, where nothing else is drawn; shortened where
 * that helps, none where nothing does. Nothing is written on what is reserved. Clashes choose first, then what is in, then what comes soonest.
 */
export function placeLoadTexts(loads: readonly NamedLoad[], widthPx: number, sizePx: number, reserved: readonly Taken[] = []): LoadText[] {
  const drawn = loads.flatMap(({ block }) => lanesOf(block).map((lane) => ({ lane, fromPx: block.fromPx, toPx: block.toPx })));
  const taken: Taken[] = [...reserved, ...drawn];
  const placed: LoadText[] = [];
  for (const load of loads.toSorted((a, b) => rank(a.block) - rank(b.block) || a.block.fromPx - b.block.fromPx)) {
    const text = placesFor(load, widthPx, sizePx).find((place) => isFree(place, place.isInside ? reserved : taken, sizePx));
    if (text === undefined) continue;
    placed.push(text);
    if (!text.isInside) taken.push({ lane: text.lane, fromPx: text.leftPx, toPx: text.leftPx + textWidthPx(text.text, sizePx) });
  }
  return placed;
}

function rank(block: LoadBlock): number {
  return block.look === 'clash' ? 0 : block.look === 'in' ? 1 : 2;
}

function lanesOf(block: LoadBlock): number[] {
  return Array.from({ length: block.lanes }, (_, index) => block.lane + index);
}

function placesFor({ block, texts }: NamedLoad, widthPx: number, sizePx: number): LoadText[] {
  const gapPx = sizePx * GAP_EM;
  return texts.flatMap((text) => {
    const textPx = textWidthPx(text, sizePx);
    const places: LoadText[] = [];
    const insetPx = sizePx * INSET_EM;
    if (block.look !== 'clash' && textPx + 2 * insetPx <= block.toPx - block.fromPx) {
      places.push({
        key: block.key,
        text,
        leftPx: block.fromPx + Math.max(insetPx, Math.min(gapPx, (block.toPx - block.fromPx - textPx) / 2)),
        lane: block.lane,
        lanes: block.lanes,
        isInside: true,
        isOnDark: block.look === 'in',
      });
    }
    for (const leftPx of [block.toPx + gapPx, block.fromPx - gapPx - textPx]) {
      if (leftPx < gapPx || leftPx + textPx > widthPx + sizePx / 2) continue;
      for (const lane of lanesOf(block)) places.push({ key: block.key, text, leftPx, lane, lanes: 1, isInside: false, isOnDark: false });
    }
    return places;
  });
}

function isFree(place: LoadText, taken: readonly Taken[], sizePx: number): boolean {
  const marginPx = sizePx * GAP_EM * 0.9;
  const toPx = place.leftPx + textWidthPx(place.text, sizePx);
  return taken.every(
    (other) =>
      other.lane < place.lane ||
      other.lane >= place.lane + place.lanes ||
      other.toPx + marginPx <= place.leftPx ||
      toPx + marginPx <= other.fromPx,
  );
}

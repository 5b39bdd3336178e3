/** A text on the axis of a picture; `at` is its place as a share of the axis' length. */
export interface AxisMark {
  readonly words: string;
  readonly at: number;
  readonly isStrong: boolean;
}

/** A mark that has room, and which of its ends stands at its place: in the middle, but not beyond an end of the axis. */
export interface PlacedMark extends AxisMark {
  readonly edge: 'first' | 'last' | '';
}

/** What a letter takes of an axis on the narrowest card, as a share, with the type of small texts. */
const LETTER = 0.031;
const GAP = 0.03;

/** The marks that have room beside one another, the more telling ones first in `marks`: what would touch one of those is left out. */
export function fittingMarks(marks: readonly AxisMark[]): readonly PlacedMark[] {
  const placed: { readonly mark: PlacedMark; readonly from: number; readonly to: number }[] = [];
  for (const mark of marks) {
    if (mark.at < 0 || mark.at > 1) continue;
    const width = mark.words.length * LETTER;
    const edge = mark.at < width / 2 ? 'first' : mark.at > 1 - width / 2 ? 'last' : '';
    const from = edge === 'first' ? 0 : edge === 'last' ? 1 - width : mark.at - width / 2;
    const to = from + width;
    if (placed.every((other) => to + GAP <= other.from || from >= other.to + GAP)) placed.push({ mark: { ...mark, edge }, from, to });
  }
  return placed.map(({ mark }) => mark);
}

import type { ItemKind } from './calc-part.ts';

/** Divisions of the scales in use, in grams: the bench scale for what is heavy, the fine scale for what is light. */
export interface Scales {
  readonly bench: number;
  readonly fine: number;
}

export interface RoundedLine {
  readonly g: number;
  readonly divisionG: number;
}

/** A weight goes on the fine scale where half a division of the bench scale would be more than a hundredth of it (common practice). */
const BENCH_LEAST_DIVISIONS = 50;
/** What a fine scale takes at most, in grams (common practice; its own plate says). */
const FINE_MOST_G = 500;
/** Digits that a rounded weight keeps: what floating point adds beyond them is no weight. */
const DIGITS = 12;
/** A sum is not moved for less than this, in grams: it is no weight. */
const LEAST_GAIN_G = 1e-6;

/** The division, in grams, of the scale on which a weight is weighed. */
export function scaleFor(g: number, { bench, fine }: Scales): number {
  const isFine = fine < bench && g < Math.min(BENCH_LEAST_DIVISIONS * bench, FINE_MOST_G);
  return isFine ? fine : bench;
}

/** A weight to the nearest division, both in grams; half a division goes up. */
export function roundedTo(g: number, divisionG: number): number {
  return divisions(Math.round(Number((g / divisionG).toPrecision(DIGITS))), divisionG);
}

interface Line {
  readonly g: number;
  readonly kind: ItemKind;
}

/**
 * Lines as they are weighed, each to the nearest division of its scale. Where that moves the sum of them all, flour and water give
 * way, each by less than a division, as long as one of them brings it nearer; nothing else ever moves by more than half a
 * division. Grams.
 */
export function roundedLines(lines: readonly Line[], scales: Scales): readonly RoundedLine[] {
  const rounded = lines.map(({ g }) => {
    const divisionG = scaleFor(g, scales);
    return { g: roundedTo(g, divisionG), divisionG };
  });
  const moves = lines.flatMap(({ g, kind }, index) => {
    const line = rounded[index];
    const toG = line === undefined || (kind !== 'flour' && kind !== 'water') ? null : otherNeighbour(g, line);
    return line === undefined || toG === null ? [] : [{ index, toG, changeG: toG - line.g, exactG: g }];
  });
  let overG = rounded.reduce((sum, { g }, index) => sum + g - (lines[index]?.g ?? 0), 0);
  // The heaviest feel a division least: among moves that are as good, theirs comes first.
  moves.sort((a, b) => b.exactG - a.exactG);
  for (let best = nearest(moves, overG); best !== null; best = nearest(moves, overG)) {
    overG += best.changeG;
    const line = rounded[best.index];
    if (line !== undefined) rounded[best.index] = { ...line, g: best.toG };
    moves.splice(moves.indexOf(best), 1);
  }
  return rounded;
}

/** The move that brings the sum nearest to what it was; null where each would take it farther away. */
function nearest<Move extends { readonly changeG: number }>(moves: readonly Move[], overG: number): Move | null {
  let best: Move | null = null;
  let bestG = Math.abs(overG) - LEAST_GAIN_G;
  for (const move of moves) {
    const leftG = Math.abs(overG + move.changeG);
    if (leftG >= bestG) continue;
    best = move;
    bestG = leftG - LEAST_GAIN_G;
  }
  return best;
}

/** The division on the other side of the exact weight; null where it lies on one, or where the other is nothing. */
function otherNeighbour(exactG: number, { g, divisionG }: RoundedLine): number | null {
  const steps = Math.round(g / divisionG);
  const other = g > exactG ? steps - 1 : steps + 1;
  return g === exactG || other <= 0 ? null : divisions(other, divisionG);
}

function divisions(count: number, divisionG: number): number {
  return Number((count * divisionG).toPrecision(DIGITS));
}

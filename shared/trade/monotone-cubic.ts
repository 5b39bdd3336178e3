/** A point of a curve. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
}

interface Piece {
  readonly from: CurvePoint;
  readonly to: CurvePoint;
  readonly fromSlope: number;
  readonly toSlope: number;
}

/** Slopes of both ends of a piece, as multiples of its secant, stay within a circle of this radius: no overshoot. */
const RADIUS = 3;

/**
 * A curve through points (two or more, x rising) that never overshoots them: cubic Hermite pieces with the slopes of Fritsch & Carlson
 * 1980, SIAM J. Numer. Anal. 17:238: means of the secants, 0 at a turn, shortened where they would overshoot. To be asked for
 * between the first and the last point alone.
 */
export function monotoneCubic(points: readonly CurvePoint[]): (x: number) => number {
  const pieces = piecesOf(points);
  const last = pieces.length - 1;
  return (x) => {
    let index = 0;
    while (index < last && x > (pieces[index]?.to.x ?? 0)) index += 1;
    const piece = pieces[index];
    return piece === undefined ? Number.NaN : valueIn(piece, x);
  };
}

function valueIn({ from, to, fromSlope, toSlope }: Piece, x: number): number {
  const width = to.x - from.x;
  const t = (x - from.x) / width;
  const s = 1 - t;
  return (1 + 2 * t) * s * s * from.y + t * s * s * width * fromSlope + t * t * (3 - 2 * t) * to.y - t * t * s * width * toSlope;
}

function piecesOf(points: readonly CurvePoint[]): readonly Piece[] {
  const secants = points.slice(1).map((to, index) => secantBetween(points[index] ?? to, to));
  const slopes = points.map((_point, index) => slopeBetween(secants[index - 1], secants[index]));
  secants.forEach((secant, index) => shorten(slopes, index, secant));
  return secants.map((_secant, index) => pieceAt(points, slopes, index));
}

function secantBetween(from: CurvePoint, to: CurvePoint): number {
  return (to.y - from.y) / (to.x - from.x);
}

/** At an end of the curve its one secant. */
function slopeBetween(before: number | undefined, after: number | undefined): number {
  if (before === undefined || after === undefined) return before ?? after ?? 0;
  return before * after <= 0 ? 0 : (before + after) / 2;
}

/** The slopes at both ends of a piece, which its neighbours share. */
function shorten(slopes: number[], index: number, secant: number): void {
  const [from = 0, to = 0] = slopes.slice(index, index + 2);
  const radius = secant === 0 ? Number.POSITIVE_INFINITY : Math.hypot(from / secant, to / secant);
  if (radius > RADIUS) slopes.splice(index, 2, (from * RADIUS) / radius, (to * RADIUS) / radius);
}

function pieceAt(points: readonly CurvePoint[], slopes: readonly number[], index: number): Piece {
  const [from, to] = points.slice(index, index + 2);
  if (from === undefined || to === undefined) throw new Error(`no piece ${index} in a curve of ${points.length} points`);
  return { from, to, fromSlope: slopes[index] ?? 0, toSlope: slopes[index + 1] ?? 0 };
}

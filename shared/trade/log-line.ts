/** A value at an instant. */
export interface LinePoint {
  readonly atMin: number;
  readonly value: number;
}

/** The straight line of least squares through two points or more, at two instants at least. */
export interface FittedLine {
  readonly slopePerMin: number;
  /** The mean of the points, through which the line goes. */
  readonly meanMin: number;
  readonly meanValue: number;
  /** Sum of the squared distances of the instants from their mean, in min². */
  readonly spreadMin2: number;
  readonly count: number;
  /** Scatter of the points about the line as a standard deviation; null of two points, which have none. */
  readonly scatter: number | null;
}

/** The straight line of least squares through points, two or more, not all of one instant. */
export function fitLine(points: readonly LinePoint[]): FittedLine {
  const count = points.length;
  const meanMin = sumOf(points, ({ atMin }) => atMin) / count;
  const meanValue = sumOf(points, ({ value }) => value) / count;
  const spreadMin2 = sumOf(points, ({ atMin }) => (atMin - meanMin) ** 2);
  const slopePerMin = sumOf(points, ({ atMin, value }) => (atMin - meanMin) * (value - meanValue)) / spreadMin2;
  const squares = sumOf(points, ({ atMin, value }) => (value - meanValue - slopePerMin * (atMin - meanMin)) ** 2);
  return { slopePerMin, meanMin, meanValue, spreadMin2, count, scatter: count > 2 ? Math.sqrt(squares / (count - 2)) : null };
}

/** When the line has a value. */
export function whenLineIs(line: FittedLine, value: number): number {
  return line.meanMin + (value - line.meanValue) / line.slopePerMin;
}

/** The line's value at an instant. */
export function lineAt(line: FittedLine, atMin: number): number {
  return line.meanValue + line.slopePerMin * (atMin - line.meanMin);
}

/**
 * The standard error, in minutes, of the instant at which the line crosses a value that is known exactly, for points that scatter by
 * `scatter`: that of the mean of a regression, over its slope (Draper & Smith, Applied Regression Analysis, inverse regression, from
 * memory; the term of the slope's own uncertainty in the denominator is left out).
 */
export function crossingErrorMin(line: FittedLine, atMin: number, scatter: number): number {
  const leverage = 1 / line.count + (atMin - line.meanMin) ** 2 / line.spreadMin2;
  return (scatter * Math.sqrt(leverage)) / Math.abs(line.slopePerMin);
}

function sumOf<Item>(items: readonly Item[], of: (item: Item) => number): number {
  return items.reduce((sum, item) => sum + of(item), 0);
}

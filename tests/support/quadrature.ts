/** Panels that are looked at each by itself, so that nothing is missed between a few points that happen to agree. */
const PANELS = 24;
const MOST_DEPTH = 30;

/**
 * The integral of a function by Simpson's rule, halved where the halves do not agree: not the method of the program. Within about
 * `tolerance` of the true value for functions that are continuous, with kinks wherever they like.
 */
export function adaptiveSimpson(of: (x: number) => number, from: number, to: number, tolerance: number): number {
  const width = (to - from) / PANELS;
  let sum = 0;
  for (let panel = 0; panel < PANELS; panel += 1) {
    const [a, b] = [from + panel * width, from + (panel + 1) * width];
    sum += halved(of, a, b, [of(a), of((a + b) / 2), of(b)], tolerance / PANELS, 0);
  }
  return sum;
}

type Values = readonly [left: number, middle: number, right: number];

function halved(of: (x: number) => number, a: number, b: number, values: Values, tolerance: number, depth: number): number {
  const [left, middle, right] = values;
  const centre = (a + b) / 2;
  const [first, second]: readonly [Values, Values] = [
    [left, of((a + centre) / 2), middle],
    [middle, of((centre + b) / 2), right],
  ];
  const finer = simpson(a, centre, first) + simpson(centre, b, second);
  if (Math.abs(finer - simpson(a, b, values)) < 15 * tolerance || depth === MOST_DEPTH) return finer;
  return halved(of, a, centre, first, tolerance / 2, depth + 1) + halved(of, centre, b, second, tolerance / 2, depth + 1);
}

function simpson(a: number, b: number, [left, middle, right]: Values): number {
  return ((b - a) / 6) * (left + 4 * middle + right);
}

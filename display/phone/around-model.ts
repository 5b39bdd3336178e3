/** The range of a field, both ends in it, in the field's unit. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/**
 * Numbers for chips around an expected one: `below` steps under it to `above` steps over it, rising, in the range. The
 * expected one is taken to the nearest whole step, so that all chips are round.
 */
export function valuesAround(expected: number, step: number, below: number, above: number, range: Range): readonly number[] {
  const middle = Math.round(expected / step);
  return Array.from({ length: below + above + 1 }, (_, index) => toTenths((middle - below + index) * step)).filter(
    (value) => value >= range.least && value <= range.most,
  );
}

function toTenths(value: number): number {
  return Math.round(value * 10) / 10;
}

/** What somebody typed as a number: with a point or a comma, with either minus; null where it is none. */
export function typedNumber(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  const value = Number(plain);
  return plain === '' || !Number.isFinite(value) ? null : value;
}

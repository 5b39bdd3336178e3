import type { House } from '../../shared/documents/house.ts';
import { fromG, toG, type WeightUnit } from '../../shared/trade/units.ts';

/** Units that may be typed behind a number, the longest spelling first. */
const UNIT_PATTERN = /^(-?\d+(?:[.,]\d*)?|[.,]\d+)\s*(kg|g|lb|oz)?$/i;
const POUNDS_AND_OUNCES = /^(\d+(?:[.,]\d*)?)\s*lb\s*(\d+(?:[.,]\d*)?)\s*oz$/i;

/** The unit in which lines are weighed in a house: grams, or ounces. */
export function lineUnit(units: House['units']): Extract<WeightUnit, 'g' | 'oz'> {
  return units.weight === 'g' ? 'g' : 'oz';
}

/** A number as it stands in a field: no more decimals than one can weigh, no zeros behind them. */
export function shownNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '';
  return String(Number(value.toFixed(decimals)));
}

/** A weight as it stands in a field of the house: grams to a hundredth, ounces to a thousandth where there are few. */
export function shownWeight(g: number, units: House['units']): string {
  const unit = lineUnit(units);
  const value = fromG(g, unit);
  return shownNumber(value, unit === 'oz' && value < 1 ? 3 : 2);
}

/** Grams of what was typed, in the house's unit or the one typed behind it (1.5 kg, 2 lb 3 oz); null where it is no weight. */
export function typedWeightG(text: string, units: House['units']): number | null {
  const trimmed = text.trim();
  const both = POUNDS_AND_OUNCES.exec(trimmed);
  if (both !== null) return toG(decimal(both[1]), 'lb') + toG(decimal(both[2]), 'oz');
  const one = UNIT_PATTERN.exec(trimmed);
  if (one === null) return null;
  const unit = (one[2]?.toLowerCase() ?? lineUnit(units)) as WeightUnit;
  const g = toG(decimal(one[1]), unit);
  return g >= 0 ? g : null;
}

/** A number that was typed, with a point or a comma; null where it is none. */
export function typedNumber(text: string): number | null {
  const trimmed = text.trim();
  return /^-?(\d+(?:[.,]\d*)?|[.,]\d+)$/.test(trimmed) ? decimal(trimmed) : null;
}

function decimal(text: string | undefined): number {
  return Number((text ?? '').replace(',', '.'));
}

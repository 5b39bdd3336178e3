import type { House } from '../../shared/documents/house.ts';
import { fromG, poundsAndOunces } from '../../shared/trade/units.ts';
import { LOCALE } from '../words/clock.ts';

/** A number with its unit, as they stand on a scale. */
export interface Figure {
  readonly figure: string;
  readonly unit: 'g' | 'lb' | 'oz';
}

/**
 * A weight in the house's unit: grams, or pounds and ounces. `divisionG` is one division of the scale that will show it, in
 * grams; null where no scale is meant: grams then have a tenth below ten, ounces a tenth, and below one ounce a hundredth.
 */
export function weightFigures(grams: number, units: House['units'], divisionG: number | null = null): readonly Figure[] {
  const decimals = decimalsOf(grams, units, divisionG);
  const figure = (value: number, most: number): string => figureText(value, divisionG === null ? 0 : most, most);
  if (units.weight === 'g') return [{ figure: figure(grams, decimals), unit: 'g' }];
  const { lb, oz } = poundsAndOunces(Math.abs(grams), decimals);
  const ounces: Figure = { figure: figure(oz, decimals), unit: 'oz' };
  if (lb === 0) return [ounces];
  const pounds: Figure = { figure: figureText(lb, 0, 0), unit: 'lb' };
  return divisionG === null && oz === 0 ? [pounds] : [pounds, ounces];
}

/** The same as one text that does not break: "3 900 g", "8 lb 9.6 oz". */
export function weightText(grams: number, units: House['units'], divisionG: number | null = null): string {
  return weightFigures(grams, units, divisionG)
    .map(({ figure, unit }) => `${figure}\u00a0${unit}`)
    .join('\u00a0');
}

/** A machine's load, to a tenth: "26.5 kg", "58.4 lb". */
export function loadText(grams: number, units: House['units']): string {
  const unit = units.weight === 'g' ? 'kg' : 'lb';
  return `${figureText(fromG(grams, unit), 0, 1)}\u00a0${unit}`;
}

function decimalsOf(grams: number, units: House['units'], divisionG: number | null): number {
  if (units.weight === 'g') return divisionG === null ? gramDecimals(Math.abs(grams) < 10 ? 0.1 : 1) : gramDecimals(divisionG);
  if (divisionG === null) return Math.abs(fromG(grams, 'oz')) < 1 ? 2 : 1;
  return ounceDecimals(divisionG);
}

/** Decimals of grams that a scale's division can show. */
function gramDecimals(divisionG: number): number {
  if (divisionG >= 1) return 0;
  return divisionG >= 0.1 ? 1 : 2;
}

/** Decimals of ounces about as fine as a division in grams: a tenth of an ounce is 2.8 g. */
function ounceDecimals(divisionG: number): number {
  if (divisionG >= 2) return 1;
  return divisionG >= 0.2 ? 2 : 3;
}

function figureText(value: number, least: number, most: number): string {
  const text = value.toLocaleString(LOCALE, { useGrouping: false, minimumFractionDigits: least, maximumFractionDigits: most });
  // Whole numbers of four figures and more are read in threes, in every language with the same narrow space.
  return text.replace(/^-?\d+/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, '\u202f'));
}

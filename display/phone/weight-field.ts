import type { House } from '../../shared/documents/house.ts';
import { fromG, toG } from '../../shared/trade/units.ts';

/** A weight that is stepped to or typed, in one unit of the house's. */
export interface WeightField {
  readonly unit: 'g' | 'oz';
  /** Decimals that can be typed. */
  readonly digits: 0 | 1;
  readonly step: number;
  /** Grams as the field has them. */
  shown(grams: number): number;
  /** What was typed, in grams, to a hundredth. */
  gramsOf(shown: number): number;
}

/** The field for a weight in a house; `stepG` is how far a touch goes, in grams, and about as far in ounces. */
export function weightField(units: House['units'], stepG: number): WeightField {
  if (units.weight === 'g') return { unit: 'g', digits: 0, step: stepG, shown: (grams) => Math.round(grams), gramsOf: (shown) => shown };
  return {
    unit: 'oz',
    digits: 1,
    step: Math.max(0.1, Math.round(fromG(stepG, 'oz') * 2) / 2),
    shown: (grams) => Math.round(fromG(grams, 'oz') * 10) / 10,
    gramsOf: (shown) => Math.round(toG(shown, 'oz') * 100) / 100,
  };
}

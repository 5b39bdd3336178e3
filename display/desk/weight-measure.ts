import { fromG, toG } from '../../shared/trade/units.ts';
import type { Measure, Units } from './field.ts';

const SHOWN_DECIMALS = 2;
/** A milligram: what is worked out from it is right to the hundredth of a gram. */
const STORED_DECIMALS = 3;
const OUNCE = 'oz';
const GRAM = 'g';

/** A small weight in the house's unit: grams, or ounces. */
export function weightMeasure(units: Units): Measure {
  const unit = units.weight === 'g' ? GRAM : OUNCE;
  return {
    unit,
    shown: (grams) => Number(fromG(grams, unit).toFixed(SHOWN_DECIMALS)),
    stored: (typed) => Number(toG(typed, unit).toFixed(STORED_DECIMALS)),
  };
}

import type { Customary } from '../../shared/floor/water-customary.ts';
import { fromK } from '../../shared/trade/units.ts';
import { numberWords } from '../words/numbers.ts';
import { WEIGH } from '../words/weigh.ts';

type TemperatureUnit = Customary['unit'];

/** A difference of temperatures in the house's unit: "4.2 K", "7.6 °F". Kelvins are what it is called where it is measured in Celsius. */
export function differenceText(kelvin: number, unit: TemperatureUnit): string {
  return `${numberWords(fromK(kelvin, unit))}\u00a0${unit === 'C' ? 'K' : '°F'}`;
}

/** The mixer's warming as the house speaks of it. */
export function customaryWords({ form, value, unit }: Customary): string {
  const degrees = `${numberWords(value)}\u00a0°${unit}`;
  switch (form) {
    case 'rise':
      return WEIGH.riseWords(`${numberWords(value)}\u00a0${unit === 'C' ? 'K' : '°F'}`);
    case 'friction':
      return WEIGH.frictionWords(degrees);
    case 'base':
      return WEIGH.baseWords(degrees);
  }
}

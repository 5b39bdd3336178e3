import { fromC, toC } from '../../shared/trade/units.ts';
import { numberWords } from '../words/numbers.ts';

export type TemperatureUnit = 'C' | 'F';

/** Step of a reading in each unit, in its degrees: what a probe's display and a thumb agree on. */
export const READING_STEP: Readonly<Record<TemperatureUnit, number>> = { C: 0.5, F: 1 };

/** A temperature in the house's unit, in degrees of it. */
export function degreesIn(unit: TemperatureUnit, celsius: number): number {
  return fromC(celsius, unit);
}

/** A temperature in the house's unit, on the nearest step of a reading. */
export function onReadingStep(unit: TemperatureUnit, celsius: number): number {
  const step = READING_STEP[unit];
  return Math.round(degreesIn(unit, celsius) / step) * step;
}

/** Degrees of the house's unit as °C, to a hundredth: what was said in °F is said again as it was. */
export function celsiusOf(unit: TemperatureUnit, degrees: number): number {
  return Math.round(toC(degrees, unit) * 100) / 100;
}

/** A reading in the house's unit, to a tenth at most: "24.5 °C". */
export function readingText(celsius: number, unit: TemperatureUnit): string {
  return `${numberWords(degreesIn(unit, celsius))}\u00a0°${unit}`;
}

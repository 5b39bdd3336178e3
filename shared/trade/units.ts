import { unreachable } from '../result.ts';

/** Weights as people read them. Grams inside. */
export type WeightUnit = 'g' | 'kg' | 'oz' | 'lb';
/** Temperatures as people read them. Degrees Celsius inside; kelvin for differences. */
export type TemperatureUnit = 'C' | 'F';

/** The avoirdupois pound, in grams: exact since the international yard and pound agreement of 1959. */
export const G_PER_LB = 453.59237;
/** Sixteen ounces to the pound. */
export const OZ_PER_LB = 16;

const G_PER: Readonly<Record<WeightUnit, number>> = { g: 1, kg: 1000, oz: G_PER_LB / OZ_PER_LB, lb: G_PER_LB };

/** Grams of a weight in a unit. */
export function toG(value: number, unit: WeightUnit): number {
  return value * G_PER[unit];
}

/** A weight in grams, in a unit. */
export function fromG(g: number, unit: WeightUnit): number {
  return g / G_PER[unit];
}

/** A weight of 0 grams or more in whole pounds and the ounces over, which keep `ozDecimals` decimals. */
export function poundsAndOunces(g: number, ozDecimals: number): { readonly lb: number; readonly oz: number } {
  // Rounded before it is split: 15.99 ounces are a pound.
  const ounces = Number(fromG(g, 'oz').toFixed(ozDecimals));
  const lb = Math.floor(ounces / OZ_PER_LB);
  return { lb, oz: Number((ounces - lb * OZ_PER_LB).toFixed(ozDecimals)) };
}

/** Degrees Celsius of a temperature in a unit. */
export function toC(value: number, unit: TemperatureUnit): number {
  switch (unit) {
    case 'C':
      return value;
    case 'F':
      return ((value - 32) * 5) / 9;
    default:
      return unreachable(unit);
  }
}

/** A temperature in °C, in a unit. */
export function fromC(celsius: number, unit: TemperatureUnit): number {
  switch (unit) {
    case 'C':
      return celsius;
    case 'F':
      return (celsius * 9) / 5 + 32;
    default:
      return unreachable(unit);
  }
}

/** Kelvins of a difference in a unit. */
export function toK(difference: number, unit: TemperatureUnit): number {
  return unit === 'F' ? (difference * 5) / 9 : difference;
}

/** A difference in kelvin, in degrees of a unit. */
export function fromK(kelvin: number, unit: TemperatureUnit): number {
  return unit === 'F' ? (kelvin * 9) / 5 : kelvin;
}

import type { House } from '../../shared/documents/house.ts';
import { fromC, fromG, fromK, G_PER_LB, toC, toG, toK } from '../../shared/trade/units.ts';
import { TEMPERATURE_UNITS, UNITS } from '../words/unit-symbols.ts';

/** How a number of a document is shown: as it is, or in the house's unit. */
export interface Measure {
  readonly unit: string;
  readonly shown: (stored: number) => number;
  readonly stored: (shown: number) => number;
}

/** One field of a thing: where its value stands in the thing, and what may be in it. Ranges are as stored. */
export type Field = { readonly key: string; readonly label: string } & (
  | {
      readonly kind: 'text';
      readonly most: number;
      readonly hint?: string;
      readonly list?: readonly string[];
      /** For sentences: room for several lines. */
      readonly isLong?: boolean;
    }
  | {
      readonly kind: 'number';
      readonly measure: Measure;
      readonly least: number;
      readonly most: number;
      readonly isWhole: boolean;
      readonly isOptional: boolean;
      /** What stands behind it while it is empty; a word for none where nobody says another. */
      readonly whenEmpty?: string;
    }
  | {
      /** A value that is written in a form of its own: a clock time, a length of time. */
      readonly kind: 'written';
      readonly most: number;
      readonly shown: (stored: unknown) => string;
      /** What a text says; NaN where it says nothing yet, or the text itself where the document takes any. */
      readonly read: (text: string) => unknown;
      /** What is wrong with what says nothing yet. */
      readonly needed: string;
      readonly hint?: string;
    }
  | { readonly kind: 'yes' }
  | { readonly kind: 'several'; readonly options: Readonly<Record<string, string>> }
  | {
      readonly kind: 'one';
      readonly options: Readonly<Record<string, string>>;
      /** More of them, under a heading each. */
      readonly groups?: Readonly<Record<string, Readonly<Record<string, string>>>>;
    }
);

export type Units = House['units'];

const round = (value: number, digits: number): number => Math.round(value * 10 ** digits) / 10 ** digits;

/** A number as it is, with its unit. */
export function plainMeasure(unit = ''): Measure {
  return { unit, shown: (stored) => stored, stored: (shown) => shown };
}

/** A temperature in the house's unit. */
export function temperatureMeasure(units: Units): Measure {
  if (units.temperature === 'C') return plainMeasure(TEMPERATURE_UNITS.C);
  return {
    unit: TEMPERATURE_UNITS.F,
    shown: (celsius) => round(fromC(celsius, 'F'), 1),
    stored: (fahrenheit) => round(toC(fahrenheit, 'F'), 2),
  };
}

/** A difference of temperatures: kelvins, or degrees Fahrenheit of difference. */
export function differenceMeasure(units: Units): Measure {
  if (units.temperature === 'C') return plainMeasure(UNITS.kelvin);
  return {
    unit: TEMPERATURE_UNITS.F,
    shown: (kelvin) => round(fromK(kelvin, 'F'), 1),
    stored: (fahrenheit) => round(toK(fahrenheit, 'F'), 2),
  };
}

/** How fast a temperature changes: kelvins a minute, or degrees Fahrenheit of difference a minute. */
export function rateMeasure(units: Units): Measure {
  const { unit, shown, stored } = differenceMeasure(units);
  return { unit: `${unit}/${UNITS.minutes}`, shown, stored };
}

/** A small weight, such as a scale's division, in grams or ounces. */
export function fineMeasure(units: Units): Measure {
  if (units.weight === 'g') return plainMeasure(UNITS.grams);
  return { unit: UNITS.ounces, shown: (grams) => round(fromG(grams, 'oz'), 4), stored: (ounces) => round(toG(ounces, 'oz'), 4) };
}

/** A weight of dough, in kilograms or pounds. */
export function doughMeasure(units: Units): Measure {
  return units.weight === 'g'
    ? { unit: UNITS.kilograms, shown: (grams) => round(grams / 1000, 3), stored: (kilograms) => round(kilograms * 1000, 0) }
    : { unit: UNITS.pounds, shown: (grams) => round(grams / G_PER_LB, 2), stored: (pounds) => round(pounds * G_PER_LB, 0) };
}

/** A field for a number. */
export function numberField(
  key: string,
  label: string,
  measure: Measure,
  least: number,
  most: number,
  more: 'whole' | 'optional' | '' = '',
): Field {
  return { key, label, kind: 'number', measure, least, most, isWhole: more === 'whole', isOptional: more === 'optional' };
}

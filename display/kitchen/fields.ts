import { houseSchema } from '../../shared/documents/house.ts';
import type { House } from '../../shared/documents/house.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { NAME_CHARACTERS } from '../../shared/documents/names.ts';
import { FIELDS, MIXER_KINDS, PLACE_KINDS, RULE_SETS, TEMPERATURE_UNITS, UNITS, VESSEL_KINDS, WEIGHT_UNITS } from '../words/kitchen.ts';
import type { PlaceKind } from './chosen.ts';

/** How a number of a document is shown: as it is, or in the house's unit. */
export interface Measure {
  readonly unit: string;
  readonly shown: (stored: number) => number;
  readonly stored: (shown: number) => number;
}

/** One field of a thing: where its value stands in the thing, and what may be in it. Ranges are as stored. */
export type Field = { readonly key: string; readonly label: string } & (
  | { readonly kind: 'text'; readonly most: number; readonly hint?: string; readonly list?: readonly string[] }
  | {
      readonly kind: 'number';
      readonly measure: Measure;
      readonly least: number;
      readonly most: number;
      readonly isWhole: boolean;
      readonly isOptional: boolean;
    }
  | { readonly kind: 'yes' }
  | { readonly kind: 'one' | 'several'; readonly options: Readonly<Record<string, string>> }
);

type Units = House['units'];

const round = (value: number, digits: number): number => Math.round(value * 10 ** digits) / 10 ** digits;
/** The international pound of 1959: exactly 0.45359237 kg. */
const GRAMS_IN_A_POUND = 453.592_37;

function plain(unit = ''): Measure {
  return { unit, shown: (stored) => stored, stored: (shown) => shown };
}

/** A temperature in the house's unit. */
export function temperatureMeasure(units: Units): Measure {
  if (units.temperature === 'C') return plain(TEMPERATURE_UNITS.C);
  return {
    unit: TEMPERATURE_UNITS.F,
    shown: (celsius) => round((celsius * 9) / 5 + 32, 1),
    stored: (fahrenheit) => round(((fahrenheit - 32) * 5) / 9, 2),
  };
}

/** A weight of dough, in kilograms or pounds. */
export function doughMeasure(units: Units): Measure {
  return units.weight === 'g'
    ? { unit: UNITS.kilograms, shown: (grams) => round(grams / 1000, 3), stored: (kilograms) => round(kilograms * 1000, 0) }
    : { unit: UNITS.pounds, shown: (grams) => round(grams / GRAMS_IN_A_POUND, 2), stored: (pounds) => round(pounds * GRAMS_IN_A_POUND, 0) };
}

function number(key: string, label: string, measure: Measure, least: number, most: number, more: 'whole' | 'optional' | '' = ''): Field {
  return { key, label, kind: 'number', measure, least, most, isWhole: more === 'whole', isOptional: more === 'optional' };
}

const NAME: Field = { key: 'name', label: FIELDS.name, kind: 'text', most: NAME_CHARACTERS };
const WEEK_MIN = 7 * 24 * 60;
const options = (things: readonly { readonly id: string; readonly name: string }[]): Readonly<Record<string, string>> =>
  Object.fromEntries(things.map((thing) => [thing.id, thing.name]));

/** The fields of a thing of a kind, in the order in which they are asked for. */
export function fieldsOf(kind: PlaceKind, kitchen: Kitchen, units: Units): readonly Field[] {
  const temperature = temperatureMeasure(units);
  const dough = doughMeasure(units);
  switch (kind) {
    case 'mixer':
      return [
        NAME,
        { key: 'kind', label: FIELDS.kind, kind: 'one', options: MIXER_KINDS },
        number('leastG', FIELDS.leastG, dough, 0, 10_000_000),
        number('mostG', FIELDS.mostG, dough, 0, 10_000_000),
        { key: 'bowlComesOff', label: FIELDS.bowlComesOff, kind: 'yes' },
        number('changeOverMin', FIELDS.changeOverMin, plain(UNITS.minutes), 0, WEEK_MIN, 'optional'),
        { key: 'station', label: FIELDS.station, kind: 'one', options: options(kitchen.stations) },
      ];
    case 'bowl':
      return [
        NAME,
        number('litres', FIELDS.litres, plain(UNITS.litres), 0.1, 1000),
        { key: 'fits', label: FIELDS.fits, kind: 'several', options: options(kitchen.mixers) },
      ];
    case 'restPlace':
      return [
        NAME,
        { key: 'kind', label: FIELDS.kind, kind: 'one', options: PLACE_KINDS },
        number('temperatureC', FIELDS.temperatureC, temperature, -40, 600),
        number('humidityPct', FIELDS.humidityPct, plain(UNITS.percent), 0, 100, 'optional'),
        { ...number('room', FIELDS.room, plain(), 1, 1000, 'optional'), isWhole: true } as Field,
      ];
    case 'vessel':
      return [
        NAME,
        { key: 'kind', label: FIELDS.kind, kind: 'one', options: VESSEL_KINDS },
        number('count', FIELDS.count, plain(), 1, 100_000, 'whole'),
        number('turnRoundMin', FIELDS.turnRoundMin, plain(UNITS.minutes), 0, WEEK_MIN),
      ];
    case 'deck':
      return [NAME, number('temperatureC', FIELDS.deckC, temperature, -40, 600)];
    case 'station':
      return [NAME, number('hands', FIELDS.hands, plain(), 1, 20, 'whole')];
    case 'oven':
    case 'slot':
      return [NAME];
  }
}

/** The fields of the house. `zones` are those that the browser knows. */
export function houseFields(zones: readonly string[]): readonly Field[] {
  return [
    NAME,
    { key: 'zone', label: FIELDS.zone, kind: 'text', most: houseSchema.shape.zone.maxLength ?? 64, list: zones },
    { key: 'units.temperature', label: FIELDS.unitOfTemperature, kind: 'one', options: TEMPERATURE_UNITS },
    { key: 'units.weight', label: FIELDS.unitOfWeight, kind: 'one', options: WEIGHT_UNITS },
    number('altitudeM', FIELDS.altitudeM, plain(UNITS.metres), -430, 5500),
    { key: 'ruleSet', label: FIELDS.ruleSet, kind: 'one', options: RULE_SETS },
    number('scalesG.bench', FIELDS.benchScaleG, plain(UNITS.grams), 0.001, 100),
    number('scalesG.fine', FIELDS.fineScaleG, plain(UNITS.grams), 0.001, 10),
  ];
}

/** The key of a thing that is new: once methods may name it, it stays. */
export function keyField(hint: string): Field {
  return { key: 'id', label: FIELDS.id, kind: 'text', most: 40, hint };
}

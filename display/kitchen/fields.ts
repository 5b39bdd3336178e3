import {
  differenceMeasure,
  doughMeasure,
  fineMeasure,
  numberField,
  plainMeasure,
  rateMeasure,
  temperatureMeasure,
  type Field,
  type Units,
} from '../desk/field.ts';
import { houseSchema } from '../../shared/documents/house.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { NAME_CHARACTERS } from '../../shared/documents/names.ts';
import { RULE_SETS } from '../words/fields.ts';
import { TEMPERATURE_UNITS, UNITS } from '../words/unit-symbols.ts';
import { FIELDS, KITCHEN, MIXER_KINDS, PLACE_KINDS, VESSEL_KINDS, WATER_FORMS, WEIGHT_UNITS } from '../words/kitchen.ts';
import { SOUND } from '../words/sound.ts';
import type { PlaceKind } from './chosen.ts';
import { cleanedNames } from './cleaned.ts';
import { clockTimeTyped } from './clock-time-typed.ts';

const NAME: Field = { key: 'name', label: FIELDS.name, kind: 'text', most: NAME_CHARACTERS };
const WEEK_MIN = 7 * 24 * 60;
/** What a field says is the least: documents take any figure over 0, but not 0, by which no deck would ever be ready. */
const LEAST_K_PER_MIN = 0.1;
const options = (things: readonly { readonly id: string; readonly name: string }[]): Readonly<Record<string, string>> =>
  Object.fromEntries(things.map((thing) => [thing.id, thing.name]));

/** The fields of a thing of a kind, in the order in which they are asked for. */
export function fieldsOf(kind: PlaceKind, kitchen: Kitchen, units: Units): readonly Field[] {
  const temperature = temperatureMeasure(units);
  const dough = doughMeasure(units);
  const rate = (key: 'heatKPerMin' | 'coolKPerMin'): Field =>
    unsaid(numberField(key, FIELDS[key], rateMeasure(units), LEAST_K_PER_MIN, 100, 'optional'), KITCHEN.rateUnsaid);
  switch (kind) {
    case 'mixer':
      return [
        NAME,
        { key: 'kind', label: FIELDS.kind, kind: 'one', options: MIXER_KINDS },
        numberField('leastG', FIELDS.leastG, dough, 0, 10_000_000),
        numberField('mostG', FIELDS.mostG, dough, 0, 10_000_000),
        { key: 'bowlComesOff', label: FIELDS.bowlComesOff, kind: 'yes' },
        numberField('changeOverMin', FIELDS.changeOverMin, plainMeasure(UNITS.minutes), 0, WEEK_MIN, 'optional'),
        unsaid(whole('speeds', FIELDS.speeds, 10), KITCHEN.speedsUnsaid),
        numberField('riseK', FIELDS.riseK, differenceMeasure(units), 0, 30, 'optional'),
        { key: 'station', label: FIELDS.station, kind: 'one', options: options(kitchen.stations) },
      ];
    case 'bowl':
      return [
        NAME,
        numberField('litres', FIELDS.litres, plainMeasure(UNITS.litres), 0.1, 1000),
        { key: 'fits', label: FIELDS.fits, kind: 'several', options: options(kitchen.mixers) },
      ];
    case 'restPlace':
      return [
        NAME,
        { key: 'kind', label: FIELDS.kind, kind: 'one', options: PLACE_KINDS },
        numberField('temperatureC', FIELDS.temperatureC, temperature, -40, 600),
        numberField('humidityPct', FIELDS.humidityPct, plainMeasure(UNITS.percent), 0, 100, 'optional'),
        whole('room', FIELDS.room, 1000),
      ];
    case 'vessel':
      return [
        NAME,
        { key: 'kind', label: FIELDS.kind, kind: 'one', options: VESSEL_KINDS },
        numberField('count', FIELDS.count, plainMeasure(), 1, 100_000, 'whole'),
        numberField('turnRoundMin', FIELDS.turnRoundMin, plainMeasure(UNITS.minutes), 0, WEEK_MIN),
      ];
    case 'deck':
      return [NAME, numberField('temperatureC', FIELDS.deckC, temperature, -40, 600), rate('heatKPerMin'), rate('coolKPerMin')];
    case 'station':
      return [NAME, numberField('hands', FIELDS.hands, plainMeasure(), 1, 20, 'whole')];
    case 'cleaning':
      return [
        NAME,
        { key: 'resource', label: FIELDS.cleaned, kind: 'one', options: cleanedNames(kitchen) },
        numberField('minutes', FIELDS.cleaningMin, plainMeasure(UNITS.minutes), 0, WEEK_MIN),
        clockField('from', FIELDS.cleaningFrom),
        clockField('to', FIELDS.cleaningTo),
        { key: 'station', label: FIELDS.cleaningStation, kind: 'one', options: { '': KITCHEN.nobody, ...options(kitchen.stations) } },
      ];
    case 'oven':
    case 'slot':
      return [NAME];
  }
}

/** The fields of the bench: there is one, or nobody counts. */
export const BENCH_FIELDS: readonly Field[] = [
  unsaid(whole('room', FIELDS.benchRoom, 40), KITCHEN.benchUncounted),
  numberField('changeOverMin', FIELDS.changeOverMin, plainMeasure(UNITS.minutes), 0, WEEK_MIN, 'optional'),
];

/** A field for a clock time of the house. What is none yet stands in the document as it was typed, so that nothing typed is lost. */
export function clockField(key: string, label: string): Field {
  return {
    key,
    label,
    kind: 'written',
    most: 5,
    shown: (stored) => (typeof stored === 'string' ? stored : ''),
    read: (text) => clockTimeTyped(text) ?? text,
    needed: SOUND.timeNeeded,
  };
}

/** A whole number from 1 that may be missing. */
function whole(key: string, label: string, most: number): Field {
  return { ...numberField(key, label, plainMeasure(), 1, most, 'optional'), isWhole: true } as Field;
}

/** A number with what its being empty means. */
function unsaid(field: Field, whenEmpty: string): Field {
  return { ...field, whenEmpty } as Field;
}

/** The fields of the house in its own units. `zones` are those that the browser knows. */
export function houseFields(zones: readonly string[], units: Units): readonly Field[] {
  return [
    NAME,
    { key: 'zone', label: FIELDS.zone, kind: 'text', most: houseSchema.shape.zone.maxLength ?? 64, list: zones },
    { key: 'units.temperature', label: FIELDS.unitOfTemperature, kind: 'one', options: TEMPERATURE_UNITS },
    { key: 'units.weight', label: FIELDS.unitOfWeight, kind: 'one', options: WEIGHT_UNITS },
    numberField('altitudeM', FIELDS.altitudeM, plainMeasure(UNITS.metres), -430, 5500),
    { key: 'ruleSet', label: FIELDS.ruleSet, kind: 'one', options: RULE_SETS },
    numberField('scalesG.bench', FIELDS.benchScaleG, fineMeasure(units), 0.001, 100),
    numberField('scalesG.fine', FIELDS.fineScaleG, fineMeasure(units), 0.001, 10),
    { key: 'water.form', label: FIELDS.waterForm, kind: 'one', options: WATER_FORMS },
    numberField('water.iceC', FIELDS.iceC, temperatureMeasure(units), -30, 0),
  ];
}

/** The key of a thing that is new: once methods may name it, it stays. */
export function keyField(hint: string): Field {
  return { key: 'id', label: FIELDS.id, kind: 'text', most: 40, hint };
}

import { describe, expect, test } from 'vitest';
import { calculate } from '../../shared/calc/calculate.ts';
import { assert } from '../../shared/result.ts';

const POOLISH = {
  name: 'Poolish',
  items: [
    { item: 'bread flour', kind: 'flour', g: 468 },
    { item: 'water', kind: 'water', g: 468 },
    { item: 'yeast', kind: 'yeast', g: 0.3 },
  ],
};
const DOUGH = {
  name: 'Dough',
  items: [
    { item: 'bread flour', kind: 'flour', g: 900 },
    { item: 'water', kind: 'water', g: 468 },
    { item: 'yeast', kind: 'yeast', g: 9 },
    { item: 'salt', kind: 'salt', g: 27 },
    { part: 'Poolish', g: 936.3 },
  ],
};
const FORMULA = { parts: [POOLISH, DOUGH] };
const PLAIN = { parts: [{ name: 'Dough', items: [{ item: 'flour', kind: 'flour', g: 1000 }] }] };
const WATER = { desiredDoughC: 26, temperaturesC: [22, 22, 6], riseK: 5 };
const HEAT = { targetC: 25, parts: [{ g: 10_000, kJPerKgK: 1.8, tempC: 22 }], waterG: 6500, riseK: 4, flourG: 10_000, hydrationKJPerKg: 0 };

function answer(name: string, body: unknown): Record<string, unknown> {
  const result = calculate(name, body);
  assert(result.ok, JSON.stringify(result));
  return { ...result.value };
}

/** A body with one line of its dough changed. */
const withLine = (line: unknown): unknown => ({ parts: [{ name: 'Dough', items: [{ item: 'flour', kind: 'flour', g: 1000 }, line] }] });

describe('K12 the sums by name: formula', () => {
  test('has the totals and every part, with these fields and no others', () => {
    const found = answer('formula', FORMULA);
    expect(Object.keys(found)).toEqual([
      'flourG',
      'waterG',
      'doughG',
      'hydrationPct',
      'saltPct',
      'yeastPct',
      'prefermentedFlourPct',
      'sumPct',
      'doughYield',
      'parts',
    ]);
    // Inputs: wildyeastblog, "Baker's Percentage 4"; 468 ÷ 1368 and the like by hand.
    expect(found['prefermentedFlourPct']).toBeCloseTo(34.21, 2);
    expect(found['parts']).toEqual([
      {
        name: 'Poolish',
        totalG: 936.3,
        items: [
          { item: 'bread flour', g: 468, pct: 100 },
          { item: 'water', g: 468, pct: 100 },
          { item: 'yeast', g: 0.3, pct: (0.3 / 468) * 100 },
        ],
      },
      {
        name: 'Dough',
        totalG: 2340.3,
        items: [
          { item: 'bread flour', g: 900, pct: 100 },
          { item: 'water', g: 468, pct: 52 },
          { item: 'yeast', g: 9, pct: 1 },
          { item: 'salt', g: 27, pct: 3 },
          { item: 'Poolish', g: 936.3, pct: (936.3 / 900) * 100 },
        ],
      },
    ]);
  });

  test.each([
    [{ doughG: 5000 }, 'doughG', 5000],
    [{ flourG: 10_000 }, 'flourG', 10_000],
    [{ pieces: 24, pieceG: 350, lossPct: 2 }, 'doughG', 8400 / 0.98],
    [{ pieces: 24, pieceG: 350 }, 'doughG', 8400],
  ])('scaled to %o', (scale, field, expected) => {
    expect(answer('formula', { ...FORMULA, scale })[field]).toBeCloseTo(expected, 9);
  });

  test('an item’s water and a soaker’s flour', () => {
    const soaker = {
      name: 'Scald',
      role: 'soaker',
      items: [
        { item: 'rye', kind: 'flour', g: 100 },
        { item: 'milk', kind: 'dairy', g: 200, waterPct: 88 },
      ],
    };
    const dough = {
      name: 'Dough',
      items: [
        { item: 'flour', kind: 'flour', g: 900 },
        { part: 'Scald', g: 300 },
      ],
    };
    expect(answer('formula', { parts: [soaker, dough] })).toMatchObject({ flourG: 1000, waterG: 176, prefermentedFlourPct: 0 });
  });

  test.each([
    ['nothing', undefined, 'fieldMissing', 'body'],
    ['null', null, 'wrongType', 'body'],
    ['a list', [], 'wrongType', 'body'],
    ['no parts at all', {}, 'fieldMissing', 'parts'],
    ['parts that are none', { parts: [] }, 'noParts', 'parts'],
    ['a field too many', { ...PLAIN, note: 'x' }, 'fieldUnknown', 'note'],
    ['a field too many in a part', { parts: [{ ...DOUGH, id: 1 }] }, 'fieldUnknown', 'parts[0].id'],
    ['a field too many in a line', withLine({ item: 'w', kind: 'water', g: 1, pct: 2 }), 'fieldUnknown', 'parts[0].items[1].pct'],
    ['a line that is both', withLine({ item: 'w', kind: 'water', g: 1, part: 'x' }), 'fieldUnknown', 'parts[0].items[1].item'],
    ['a line that is neither', withLine({ g: 1 }), 'fieldMissing', 'parts[0].items[1].item'],
    ['a line that is a number', withLine(7), 'wrongType', 'parts[0].items[1]'],
    ['a part without a name', { parts: [{ items: DOUGH.items }] }, 'fieldMissing', 'parts[0].name'],
    ['a line without a weight', withLine({ item: 'w', kind: 'water' }), 'fieldMissing', 'parts[0].items[1].g'],
    ['a line without a kind', withLine({ item: 'w', g: 1 }), 'fieldMissing', 'parts[0].items[1].kind'],
    ['a kind that is none', withLine({ item: 'w', kind: 'wine', g: 1 }), 'wordUnknown', 'parts[0].items[1].kind'],
    ['a role that is none', { parts: [{ ...DOUGH, role: 'main' }] }, 'wordUnknown', 'parts[0].role'],
    ['a weight in words', withLine({ item: 'w', kind: 'water', g: '1' }), 'wrongType', 'parts[0].items[1].g'],
    ['a weight of null', withLine({ item: 'w', kind: 'water', g: null }), 'wrongType', 'parts[0].items[1].g'],
    ['a negative weight', withLine({ item: 'w', kind: 'water', g: -1 }), 'negative', 'parts[0].items[1].g'],
    ['a negative weight of a part', withLine({ part: 'x', g: -1 }), 'negative', 'parts[0].items[1].g'],
    [
      'a weight that JSON writes and no number holds',
      withLine(JSON.parse('{"item":"w","kind":"water","g":1e999}')),
      'notFinite',
      'parts[0].items[1].g',
    ],
    ['more water than all of it', withLine({ item: 'egg', kind: 'egg', g: 1, waterPct: 101 }), 'outOfRange', 'parts[0].items[1].waterPct'],
    ['no flour', { parts: [{ name: 'Dough', items: [{ item: 'water', kind: 'water', g: 1 }] }] }, 'noFlour', 'parts'],
    ['a part that is missing', { parts: [DOUGH] }, 'partMissing', 'parts[0].items[4].part'],
    ['a part that is unused', { parts: [POOLISH, ...PLAIN.parts] }, 'partUnused', 'parts[0].name'],
    ['a part that is repeated', { parts: [POOLISH, POOLISH, DOUGH] }, 'partRepeated', 'parts[1].name'],
    ['a part that contains itself', withLine({ part: 'Dough', g: 1 }), 'partOfItself', 'parts[0].items[1].part'],
    ['two scales', { ...PLAIN, scale: { doughG: 1, flourG: 1 } }, 'moreThanOneScale', 'scale'],
    ['two scales, one of them pieces', { ...PLAIN, scale: { flourG: 1, pieces: 2, pieceG: 3 } }, 'moreThanOneScale', 'scale'],
    ['an empty scale', { ...PLAIN, scale: {} }, 'fieldMissing', 'scale.doughG'],
    ['a scale of null', { ...PLAIN, scale: null }, 'wrongType', 'scale'],
    ['pieces without their weight', { ...PLAIN, scale: { pieces: 24 } }, 'fieldMissing', 'scale.pieceG'],
    ['a loss without pieces', { ...PLAIN, scale: { doughG: 1, lossPct: 2 } }, 'fieldUnknown', 'scale.lossPct'],
    ['pieces that are not whole', { ...PLAIN, scale: { pieces: 2.5, pieceG: 10 } }, 'notWhole', 'scale.pieces'],
    ['a negative scale', { ...PLAIN, scale: { flourG: -5 } }, 'scaleNothing', 'scale.flourG'],
    ['a loss of everything', { ...PLAIN, scale: { pieces: 2, pieceG: 10, lossPct: 100 } }, 'lossTooLarge', 'scale.lossPct'],
  ])('refuses %s', (_what, body, code, field) => {
    const result = calculate('formula', body);
    expect(result).toEqual({ ok: false, fault: { code, field, message: expect.stringMatching(/\w/) as string } });
  });
});

describe('K12 the sums by name: water', () => {
  test.each([
    // baeckerlatein, "Teigtemperatur".
    [WATER, { requiredC: 34, reachable: true }],
    // The same factor of 20 subtracted once: 4 × 5.
    [
      { desiredDoughC: 26, temperaturesC: [22, 22, 6], frictionC: 20 },
      { requiredC: 34, reachable: true },
    ],
    // tutti-sandwiches.fr.
    [
      { baseC: 60, temperaturesC: [22, 22] },
      { requiredC: 16, reachable: true },
    ],
    // Warm water is needed: no ice is given.
    [
      { ...WATER, waterG: 1000, tapC: 14 },
      { requiredC: 34, reachable: true },
    ],
    // Without the tap nobody knows of ice.
    [
      { ...WATER, waterG: 1000 },
      { requiredC: 34, reachable: true },
    ],
    [
      { ...WATER, tapC: 40 },
      { requiredC: 34, reachable: true },
    ],
    // The tap is just cold enough.
    [
      { baseC: 60, temperaturesC: [22, 22], waterG: 1000, tapC: 16 },
      { requiredC: 16, iceG: 0, tapWaterG: 1000, reachable: true },
    ],
    // Colder than all ice: −60 − 44 = −104 °C, and all ice counts as −79.8.
    [
      { baseC: -60, temperaturesC: [22, 22], waterG: 700, tapC: 16 },
      { requiredC: -104, iceG: 700, tapWaterG: 0, reachable: false },
    ],
  ])('%o', (body, expected) => {
    expect(answer('water', body)).toEqual(expected);
  });

  test('with ice of its own cold, within the water', () => {
    // Computed twice by hand: 10 kg, tap 20 °C, required 10 °C: 0.919 kg at −18 °C, 1.002 kg at 0 °C.
    const body = { baseC: 54, temperaturesC: [22, 22], waterG: 10_000, tapC: 20 };
    const cold = answer('water', { ...body, iceC: -18 });
    expect(cold).toMatchObject({ requiredC: 10, reachable: true });
    expect(cold['iceG']).toBeCloseTo(918.66, 2);
    expect(Number(cold['iceG']) + Number(cold['tapWaterG'])).toBeCloseTo(10_000, 9);
    expect(answer('water', body)['iceG']).toBeCloseTo(1002.1, 1);
  });

  test('a required temperature below freezing stays what it is', () => {
    // By hand: 4 × (24 − 9) − 78 = −18; 1000 × (20 + 18) ÷ (20 + 334 ÷ 4.186) = 380.79 g.
    const found = answer('water', { desiredDoughC: 24, temperaturesC: [28, 28, 22], riseK: 9, waterG: 1000, tapC: 20 });
    expect(found).toMatchObject({ requiredC: -18, reachable: true });
    expect(found['iceG']).toBeCloseTo(380.79, 1);
  });

  test.each([
    ['no body', null, 'wrongType', 'body'],
    ['no form', { desiredDoughC: 26, temperaturesC: [22] }, 'notExactlyOne', 'riseK'],
    ['two forms', { ...WATER, frictionC: 20 }, 'notExactlyOne', 'frictionC'],
    ['rise and base', { temperaturesC: [22], riseK: 2, baseC: 60 }, 'notExactlyOne', 'baseC'],
    ['no dough', { temperaturesC: [22], riseK: 2 }, 'fieldMissing', 'desiredDoughC'],
    ['a dough beside a base', { temperaturesC: [22], baseC: 60, desiredDoughC: 26 }, 'fieldUnknown', 'desiredDoughC'],
    ['no temperatures', { desiredDoughC: 26, riseK: 2 }, 'fieldMissing', 'temperaturesC'],
    ['temperatures that are none', { ...WATER, temperaturesC: [] }, 'noTemperatures', 'temperaturesC'],
    ['one temperature', { ...WATER, temperaturesC: 22 }, 'wrongType', 'temperaturesC'],
    ['a temperature in words', { ...WATER, temperaturesC: [22, 'warm'] }, 'wrongType', 'temperaturesC[1]'],
    ['a field too many', { ...WATER, flourC: 22 }, 'fieldUnknown', 'flourC'],
    ['a negative weight', { ...WATER, waterG: -1, tapC: 10 }, 'negative', 'waterG'],
    ['ice above freezing', { ...WATER, waterG: 1, tapC: 10, iceC: 1 }, 'outOfRange', 'iceC'],
    ['a rise without end', { ...WATER, riseK: Number.POSITIVE_INFINITY }, 'notFinite', 'riseK'],
    ['numbers that add up to none', { baseC: 0, temperaturesC: [1e308, 1e308] }, 'notFinite', 'body'],
  ])('refuses %s', (_what, body, code, field) => {
    expect(calculate('water', body)).toEqual({ ok: false, fault: { code, field, message: expect.stringMatching(/\w/) as string } });
  });
});

describe('K12 the sums by name: heat', () => {
  test('the water for a dough, with the heat of hydration and without', () => {
    // Computed twice by hand.
    const without = answer('heat', HEAT);
    expect(Object.keys(without)).toEqual(['waterC']);
    expect(without['waterC']).toBeCloseTo(20.34, 2);
    expect(answer('heat', { ...HEAT, hydrationKJPerKg: 15.1 })['waterC']).toBeCloseTo(14.79, 2);
  });

  test.each([
    ['no body', 'x', 'wrongType', 'body'],
    ['a field too many', { ...HEAT, iceG: 1 }, 'fieldUnknown', 'iceG'],
    ['no heat of hydration', { ...HEAT, hydrationKJPerKg: undefined }, 'fieldMissing', 'hydrationKJPerKg'],
    ['a part without its temperature', { ...HEAT, parts: [{ g: 1, kJPerKgK: 1 }] }, 'fieldMissing', 'parts[0].tempC'],
    ['a part with a field too many', { ...HEAT, parts: [{ g: 1, kJPerKgK: 1, tempC: 1, name: 'x' }] }, 'fieldUnknown', 'parts[0].name'],
    ['a negative weight', { ...HEAT, parts: [{ g: -1, kJPerKgK: 1, tempC: 1 }] }, 'negative', 'parts[0].g'],
    ['a negative flour', { ...HEAT, flourG: -1 }, 'negative', 'flourG'],
    ['a negative heat', { ...HEAT, parts: [{ g: 1, kJPerKgK: -1, tempC: 1 }] }, 'negative', 'parts[0].kJPerKgK'],
    ['no parts', { ...HEAT, parts: [] }, 'noParts', 'parts'],
    ['no water', { ...HEAT, waterG: 0 }, 'noWater', 'waterG'],
    ['negative water', { ...HEAT, waterG: -1 }, 'negative', 'waterG'],
    ['numbers beyond all numbers', { ...HEAT, waterG: 1e-300, parts: [{ g: 1e308, kJPerKgK: 4, tempC: 0 }] }, 'notFinite', 'body'],
  ])('refuses %s', (_what, body, code, field) => {
    expect(calculate('heat', body)).toEqual({ ok: false, fault: { code, field, message: expect.stringMatching(/\w/) as string } });
  });
});

const REST = { nominalMin: 120, referenceC: 25, doughC: 28, ambientC: 22, tauMin: 180, model: { kind: 'perKelvin', rate: 0.1 } };
const YEAST = { kind: 'cardinal', minC: 2.8, optC: 32.3, maxC: 45.4 };
const { ambientC: _ambientC, tauMin: _tauMin, ...STILL } = REST;

describe('K12 the sums by name: rest', () => {
  test.each([
    // Computed twice, independently: nominal 120 min at 25 °C.
    [{ ...STILL, doughC: 22 }, 159.72],
    [{ ...STILL, doughC: 22, model: { kind: 'q10', q10: 2 } }, 147.74],
    [{ ...STILL, doughC: 22, model: YEAST }, 143.24],
    [REST, 103.08],
    [{ ...REST, model: { kind: 'q10', q10: 2 } }, 107.89],
    [{ ...REST, model: YEAST }, 112.63],
    // Its time constant says nothing of a dough whose air nobody knows.
    [{ ...STILL, doughC: 22, tauMin: 180 }, 159.72],
    // By hand: (e^(k·t/40) − 1)·40/k = 120·e^(3k) with k = ln 1.1 and 1.5 K/h.
    [{ ...STILL, doughC: 22, selfHeatKPerH: 1.5 }, (40 / Math.log(1.1)) * Math.log1p((120 * 1.1 ** 3 * Math.log(1.1)) / 40)],
    [{ ...REST, nominalMin: 0 }, 0],
    // At its air's temperature, its own heat holding 4.5 K above: after a long time 1.1^4.5 times as fast.
    [{ ...REST, doughC: 26.5, selfHeatKPerH: 1.5 }, 120 * 1.1 ** -1.5],
  ])('%o: %d min', (body, minutes) => {
    const found = answer('rest', body);
    expect(Object.keys(found)).toEqual(['minutes']);
    expect(Math.abs(Number(found['minutes']) - minutes)).toBeLessThan(0.01);
  });

  test('not ripe within 14 days: null, with the reason', () => {
    expect(answer('rest', { ...STILL, doughC: 2, model: YEAST })).toEqual({ minutes: null, reason: 'not ripe within 14 days' });
    expect(answer('rest', { ...REST, nominalMin: 1e9 })).toEqual({ minutes: null, reason: 'not ripe within 14 days' });
  });

  test('numbers that no bakehouse has end too', () => {
    for (const far of [1e6, -1e6, 1e300, -1e300])
      for (const model of [REST.model, YEAST])
        for (const key of ['doughC', 'ambientC', 'selfHeatKPerH']) {
          const minutes = answer('rest', { ...REST, model, [key]: far })['minutes'];
          expect(minutes === null || (typeof minutes === 'number' && minutes >= 0 && minutes <= 20_160)).toBe(true);
        }
  });

  test.each([
    ['no body', null, 'wrongType', 'body'],
    ['a field too many', { ...REST, altitudeM: 0 }, 'fieldUnknown', 'altitudeM'],
    ['no nominal', { ...REST, nominalMin: undefined }, 'fieldMissing', 'nominalMin'],
    ['a negative nominal', { ...REST, nominalMin: -1 }, 'negative', 'nominalMin'],
    ['a nominal without end', { ...REST, nominalMin: Number.POSITIVE_INFINITY }, 'notFinite', 'nominalMin'],
    ['no dough', { ...REST, doughC: undefined }, 'fieldMissing', 'doughC'],
    ['air without a time constant', { ...STILL, ambientC: 22 }, 'fieldMissing', 'tauMin'],
    ['a time constant of nothing', { ...REST, tauMin: 0 }, 'outOfRange', 'tauMin'],
    ['a negative time constant', { ...REST, tauMin: -180 }, 'negative', 'tauMin'],
    ['its own heat in words', { ...REST, selfHeatKPerH: 'some' }, 'wrongType', 'selfHeatKPerH'],
    ['no model', { ...REST, model: undefined }, 'fieldMissing', 'model'],
    ['a model in a word', { ...REST, model: 'q10' }, 'wrongType', 'model'],
    ['a model without its kind', { ...REST, model: { rate: 0.1 } }, 'fieldMissing', 'model.kind'],
    ['a model that is none', { ...REST, model: { kind: 'linear', rate: 0.1 } }, 'wordUnknown', 'model.kind'],
    ['a model without its figure', { ...REST, model: { kind: 'q10' } }, 'fieldMissing', 'model.q10'],
    ['a model with another’s figure', { ...REST, model: { kind: 'q10', q10: 2, rate: 0.1 } }, 'fieldUnknown', 'model.rate'],
    ['a negative rate', { ...REST, model: { kind: 'perKelvin', rate: -0.1 } }, 'negative', 'model.rate'],
    ['ten kelvin that stop everything', { ...REST, model: { kind: 'q10', q10: 0 } }, 'outOfRange', 'model.q10'],
    ['temperatures of growth out of order', { ...REST, model: { ...YEAST, optC: 50 } }, 'outOfRange', 'model.optC'],
    ['a best temperature below halfway', { ...REST, model: { ...YEAST, optC: 20 } }, 'outOfRange', 'model.optC'],
    ['a reference at which nothing grows', { ...REST, referenceC: 50, model: YEAST }, 'outOfRange', 'referenceC'],
  ])('refuses %s', (_what, body, code, field) => {
    expect(calculate('rest', body)).toEqual({ ok: false, fault: { code, field, message: expect.stringMatching(/\w/) as string } });
  });
});

const TWO = [
  { atMin: 10, coreC: 50 },
  { atMin: 14, coreC: 70 },
];
const CORE = { readings: TWO, targetC: 90, plateauC: 100 };

describe('K12 the sums by name: core', () => {
  test('the time to the target on the semi-log line, with these fields and no others', () => {
    // By hand, twice: f = 4 ÷ log10(50 ÷ 30).
    const found = answer('core', CORE);
    expect(Object.keys(found)).toEqual(['atMin', 'fMin', 'plateauC', 'reachable']);
    expect(found['atMin']).toBeCloseTo(22.6, 2);
    expect(found).toMatchObject({ fMin: expect.closeTo(18.03, 2) as number, plateauC: 100, reachable: true });
    expect(answer('core', { ...CORE, targetC: 96 })['atMin']).toBeCloseTo(29.78, 2);
    expect(answer('core', { ...CORE, readings: [...TWO].reverse() })).toEqual(found);
  });

  test('with the altitude for the plateau', () => {
    // psychrolib: 96.649 °C at 1000 m.
    const found = answer('core', { readings: TWO, targetC: 90, altitudeM: 1000 });
    expect(found['plateauC']).toBeCloseTo(96.649, 3);
    const f = 4 / Math.log10((96.648_934 - 50) / (96.648_934 - 70));
    expect(found['atMin']).toBeCloseTo(14 + f * Math.log10((96.648_934 - 70) / (96.648_934 - 90)), 4);
  });

  test('unreachable at the plateau and above it', () => {
    for (const targetC of [100, 104]) expect(answer('core', { ...CORE, targetC })).toMatchObject({ atMin: null, reachable: false });
    expect(answer('core', { readings: TWO, targetC: 96, altitudeM: 2000 })).toMatchObject({ atMin: null, reachable: false });
  });

  test.each([
    ['no body', [], 'notExactlyOne', 'plateauC'],
    ['neither plateau nor altitude', { readings: TWO, targetC: 90 }, 'notExactlyOne', 'plateauC'],
    ['both', { ...CORE, altitudeM: 0 }, 'notExactlyOne', 'altitudeM'],
    ['an altitude of another world', { readings: TWO, targetC: 90, altitudeM: 50_000 }, 'outOfRange', 'altitudeM'],
    ['a field too many', { ...CORE, ovenC: 230 }, 'fieldUnknown', 'ovenC'],
    ['no target', { readings: TWO, plateauC: 100 }, 'fieldMissing', 'targetC'],
    ['no readings', { ...CORE, readings: [] }, 'tooFewReadings', 'readings'],
    ['one reading', { ...CORE, readings: TWO.slice(0, 1) }, 'tooFewReadings', 'readings'],
    ['a reading before the beginning', { ...CORE, readings: [{ atMin: -1, coreC: 20 }, ...TWO] }, 'negative', 'readings[0].atMin'],
    ['two at one time', { ...CORE, readings: [...TWO, { atMin: 14, coreC: 72 }] }, 'sameTime', 'readings[2].atMin'],
    ['a core that falls', { ...CORE, readings: [...TWO, { atMin: 12, coreC: 75 }] }, 'notRising', 'readings[1].coreC'],
    ['a core that stands still', { ...CORE, readings: [...TWO, { atMin: 18, coreC: 70 }] }, 'notRising', 'readings[2].coreC'],
    ['a core at the plateau', { ...CORE, readings: [...TWO, { atMin: 40, coreC: 100 }] }, 'outOfRange', 'readings[2].coreC'],
    ['a reading without its temperature', { ...CORE, readings: [{ atMin: 1 }, ...TWO] }, 'fieldMissing', 'readings[0].coreC'],
  ])('refuses %s', (_what, body, code, field) => {
    expect(calculate('core', body)).toEqual({ ok: false, fault: { code, field, message: expect.stringMatching(/\w/) as string } });
  });
});

const COOLING = { startC: 57, ambientC: 3, tauMin: 90, ruleSet: 'us-food-code' };

describe('K12 the sums by name: cooling', () => {
  test('each step of the rule, counted from its upper temperature', () => {
    // By hand: 90·ln(54 ÷ 18) and 90·ln(54 ÷ 2).
    const steps = [
      { fromC: 57, toC: 21, limitMin: 120, takesMin: expect.closeTo(98.88, 2) as number, pass: true },
      { fromC: 57, toC: 5, limitMin: 360, takesMin: expect.closeTo(296.63, 2) as number, pass: true },
    ];
    expect(answer('cooling', COOLING)).toEqual({ pass: true, steps });
    expect(answer('cooling', { ...COOLING, startC: 85 })).toEqual({ pass: true, steps });
    expect(answer('cooling', { ...COOLING, tauMin: 110 })).toMatchObject({ pass: false, steps: [{ pass: false }, { pass: false }] });
    expect(answer('cooling', { ...COOLING, ambientC: 10, tauMin: 60 })).toMatchObject({
      pass: false,
      steps: [{ pass: true }, { takesMin: null, pass: false }],
    });
    expect(answer('cooling', { ...COOLING, ruleSet: 'australia' })).toMatchObject({
      steps: [{ fromC: 60, limitMin: 120 }, { limitMin: 360 }],
    });
  });

  test.each([
    ['no body', 7, 'wrongType', 'body'],
    ['a rule set without figures for cooling', { ...COOLING, ruleSet: 'england' }, 'noCoolingFigures', 'ruleSet'],
    ['a rule set that is none', { ...COOLING, ruleSet: 'france' }, 'wordUnknown', 'ruleSet'],
    ['no rule set', { ...COOLING, ruleSet: undefined }, 'fieldMissing', 'ruleSet'],
    ['a time constant of nothing', { ...COOLING, tauMin: 0 }, 'outOfRange', 'tauMin'],
    ['no start', { ...COOLING, startC: undefined }, 'fieldMissing', 'startC'],
    ['air in words', { ...COOLING, ambientC: 'cold' }, 'wrongType', 'ambientC'],
    ['a field too many', { ...COOLING, massG: 5000 }, 'fieldUnknown', 'massG'],
    ['a time constant beyond all numbers', { ...COOLING, tauMin: 1.7e308 }, 'notFinite', 'body'],
  ])('refuses %s', (_what, body, code, field) => {
    expect(calculate('cooling', body)).toEqual({ ok: false, fault: { code, field, message: expect.stringMatching(/\w/) as string } });
  });
});

test.each(['', 'dough', 'Formula', 'toString', '__proto__'])('K12 there is no sum by the name "%s"', (name) => {
  expect(calculate(name, FORMULA)).toMatchObject({ ok: false, fault: { code: 'nameUnknown', field: 'name' } });
});

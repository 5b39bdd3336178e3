import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, test } from 'vitest';
import { differenceMeasure, fineMeasure } from '../../display/desk/field.ts';
import { loadText, weightFigures, weightText } from '../../display/parts/weight-text.ts';
import { amountsOnTop } from '../../display/phone/add-model.ts';
import { weightField } from '../../display/phone/weight-field.ts';
import { factsOf } from '../../display/phone/floor-facts.ts';
import { refusalWords } from '../../display/words/en/refusals.ts';
import type { House } from '../../shared/documents/house.ts';
import type { Refusal } from '../../shared/floor/refusals.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { Floor } from './support/floor.ts';

const METRIC: House['units'] = { temperature: 'C', weight: 'g' };
const AMERICAN: House['units'] = { temperature: 'F', weight: 'lb' };
const grams = fc.integer({ min: 1, max: 50_000_000 }).map((tenths) => tenths / 1000);

/** What a text of pounds and ounces says, in grams, by js-quantities. */
function gramsIn(text: string): number {
  return text
    .replaceAll('\u202f', '')
    .split('\u00a0')
    .reduce<readonly string[]>(
      (pairs, word, index, words) => (index % 2 === 0 ? [...pairs, `${word} ${words[index + 1] ?? ''}`] : pairs),
      [],
    )
    .reduce((sum, pair) => sum + Qty(pair).to('g').scalar, 0);
}

describe('U5 a weight reads in the house’s units', () => {
  test('grams with their thousands apart, tenths below ten', () => {
    expect([weightText(1500, METRIC), weightText(2.25, METRIC), weightText(10.4, METRIC), weightText(1_234_567, METRIC)]).toEqual([
      '1\u202f500\u00a0g',
      '2.3\u00a0g',
      '10\u00a0g',
      '1\u202f234\u202f567\u00a0g',
    ]);
  });

  test('as fine as the scale that shows it, with its last figure even where that is nothing', () => {
    expect([weightText(12, METRIC, 0.1), weightText(1200, METRIC, 5), weightText(453.59237, AMERICAN, 0.1)]).toEqual([
      '12.0\u00a0g',
      '1\u202f200\u00a0g',
      '1\u00a0lb\u00a00.000\u00a0oz',
    ]);
  });

  // 0.45359237 kg to the pound, sixteen ounces to the pound (international agreement of 1959).
  test('pounds and ounces are whole pounds and the ounces over, and never sixteen ounces', () => {
    expect([weightText(453.59237, AMERICAN), weightText(28.349523125 * 24.5, AMERICAN), weightText(5, AMERICAN)]).toEqual([
      '1\u00a0lb',
      '1\u00a0lb\u00a08.5\u00a0oz',
      '0.18\u00a0oz',
    ]);
    expect(weightText(28.349523125 * 15.99, AMERICAN)).toBe('1\u00a0lb');
    expect(weightFigures(453.59237 * 3, AMERICAN)).toEqual([{ figure: '3', unit: 'lb' }]);
  });

  test('what is shown is within half of its last figure of what it is, as js-quantities reckons', () => {
    fc.assert(
      fc.property(grams, (g) => {
        const halfOz = Qty(g < 28.3495 ? '0.005 oz' : '0.05 oz').to('g').scalar;
        expect(Math.abs(gramsIn(weightText(g, AMERICAN)) - g)).toBeLessThanOrEqual(halfOz * 1.001);
        expect(Math.abs(gramsIn(weightText(g, METRIC)) - g)).toBeLessThanOrEqual(g < 10 ? 0.0501 : 0.501);
      }),
      { seed: 602, numRuns: 300 },
    );
  });

  test('a machine’s load is kilograms or pounds to a tenth', () => {
    expect([loadText(26_500, METRIC), loadText(26_500, AMERICAN)]).toEqual(['26.5\u00a0kg', '58.4\u00a0lb']);
  });
});

describe('U6 a weight is typed in the house’s units', () => {
  test('grams as they are', () => {
    const field = weightField(METRIC, 10);
    expect([field.unit, field.step, field.digits, field.shown(1234.4), field.gramsOf(50)]).toEqual(['g', 10, 0, 1234, 50]);
  });

  test('ounces come back as the grams that js-quantities says, and read again as they were typed', () => {
    const field = weightField(AMERICAN, 10);
    expect([field.unit, field.step, field.digits]).toEqual(['oz', 0.5, 1]);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (tenths) => {
        const ounces = tenths / 10;
        // Kept to a hundredth of a gram; js-quantities has the ounce to nine digits.
        expect(Math.abs(field.gramsOf(ounces) - Qty(ounces, 'oz').to('g').scalar)).toBeLessThanOrEqual(0.006);
        expect(field.shown(field.gramsOf(ounces))).toBe(ounces);
      }),
      { seed: 603, numRuns: 300 },
    );
  });

  test('what goes in on top is offered in amounts that an ounce scale tells apart', () => {
    const field = weightField(AMERICAN, 5);
    expect(amountsOnTop(null, AMERICAN).map((g) => field.shown(g))).toEqual([0.5, 1, 2, 4, 8]);
    const offered = amountsOnTop(20_000, AMERICAN);
    expect(offered.map((g) => weightText(g, AMERICAN))).toEqual(offered.map((g) => weightText(field.gramsOf(field.shown(g)), AMERICAN)));
    expect(new Set(offered).size).toBe(offered.length);
  });
});

describe('U7 what is refused is told in the house’s units', () => {
  const { state } = Floor.harbour();
  const house = state.house ?? expect.fail('no house');
  const american: FloorState = { ...state, house: { ...house, document: { ...house.document, units: AMERICAN } } };
  const said = (refusal: Refusal, floor: FloorState): string => refusalWords(refusal, factsOf(floor, [], null));

  // 20 °C is 68 °F, 25 °C is 77 °F; 2 lb and 1 lb are 907.18474 g and 453.59237 g.
  test('a temperature, a weight, a load', () => {
    const wild: Refusal = { code: 'wildReading', tag: 'C1', celsius: 20, expectedC: 25 };
    expect(said(wild, state)).toContain('20\u00a0°C is far from the 25\u00a0°C');
    expect(said(wild, american)).toContain('68\u00a0°F is far from the 77\u00a0°F');
    const short: Refusal = { code: 'cutsTooHeavy', tag: 'C1', neededG: 907.18474, hasG: 453.59237 };
    expect(said(short, state)).toMatch(/907\u00a0g.*454\u00a0g/);
    expect(said(short, american)).toMatch(/2\u00a0lb.*1\u00a0lb/);
    const load: Refusal = { code: 'outsideMixer', mixerId: 'spiral', leastG: 2500, mostG: 12_000 };
    expect(said(load, state)).toContain('2.5\u00a0kg to 12\u00a0kg');
    expect(said(load, american)).toContain('5.5\u00a0lb to 26.5\u00a0lb');
  });
});

describe('U8 the kitchen’s new fields are in the house’s units', () => {
  test('the mixer’s warming is a difference: no 32 in it', () => {
    const fahrenheit = differenceMeasure(AMERICAN);
    expect([fahrenheit.shown(10), fahrenheit.stored(9), differenceMeasure(METRIC).shown(7)]).toEqual([18, 5, 7]);
    for (const shown of [0, 5, 12.5, 30]) expect(fahrenheit.shown(fahrenheit.stored(shown))).toBe(shown);
  });

  test('a scale’s division in ounces comes back as it was typed', () => {
    const ounces = fineMeasure(AMERICAN);
    for (const shown of [0.005, 0.01, 0.1, 0.25, 0.5]) expect(ounces.shown(ounces.stored(shown))).toBe(shown);
    expect(ounces.stored(0.1)).toBeCloseTo(Qty('0.1 oz').to('g').scalar, 3);
    expect(fineMeasure(METRIC).unit).toBe('g');
  });
});

import fc from 'fast-check';
import Qty from 'js-quantities';
import { describe, expect, test } from 'vitest';
import { fromC, fromG, fromK, G_PER_LB, poundsAndOunces, toC, toG, toK, type WeightUnit } from '../../shared/trade/units.ts';
import { convertedYeastG, type YeastKind } from '../../shared/trade/yeast-forms.ts';

/** js-quantities keeps the ounce to nine digits. */
const AS_FAR_AS_IT_KNOWS = 2e-8;
const UNITS: readonly WeightUnit[] = ['g', 'kg', 'oz', 'lb'];
/** To the milligram and the millidegree. */
const amount = fc.integer({ min: 0, max: 1e10 }).map((mg) => mg / 1000);
const temperature = fc.integer({ min: -40_000, max: 600_000 }).map((thousandths) => thousandths / 1000);

describe('K10 units are of the edge: grams and degrees Celsius within', () => {
  test.each(UNITS)('%s as js-quantities has it', (unit) => {
    fc.assert(
      fc.property(amount, (value) => {
        const expected = Qty(value, unit).to('g').scalar;
        expect(Math.abs(toG(value, unit) - expected)).toBeLessThanOrEqual(AS_FAR_AS_IT_KNOWS * expected);
        expect(Math.abs(fromG(expected, unit) - value)).toBeLessThanOrEqual(AS_FAR_AS_IT_KNOWS * value);
      }),
      { seed: 101, numRuns: 200 },
    );
  });

  test('the pound is the international one, exactly', () => {
    // International yard and pound agreement of 1959: 0.45359237 kg (from memory).
    expect(G_PER_LB).toBe(453.59237);
    expect(toG(16, 'oz')).toBe(G_PER_LB);
  });

  test('degrees Fahrenheit and differences of them as js-quantities has them', () => {
    fc.assert(
      fc.property(temperature, (value) => {
        expect(toC(value, 'F')).toBeCloseTo(Qty(value, 'tempF').to('tempC').scalar, 9);
        expect(fromC(value, 'F')).toBeCloseTo(Qty(value, 'tempC').to('tempF').scalar, 9);
        expect(toK(value, 'F')).toBeCloseTo(Qty(value, 'degF').to('degK').scalar, 9);
        expect(fromK(value, 'F')).toBeCloseTo(Qty(value, 'degK').to('degF').scalar, 9);
      }),
      { seed: 102, numRuns: 300 },
    );
    expect([toC(32, 'F'), toC(212, 'F'), fromC(-40, 'F'), toC(7, 'C'), fromC(7, 'C'), toK(5, 'C'), fromK(5, 'C')]).toEqual([
      0, 100, -40, 7, 7, 5, 5,
    ]);
  });

  test('there and back is the same weight and the same temperature', () => {
    fc.assert(
      fc.property(amount, temperature, fc.constantFrom(...UNITS), (g, celsius, unit) => {
        expect(Math.abs(toG(fromG(g, unit), unit) - g)).toBeLessThanOrEqual(1e-12 * g);
        expect(toC(fromC(celsius, 'F'), 'F')).toBeCloseTo(celsius, 9);
      }),
      { seed: 103, numRuns: 300 },
    );
  });

  test('pounds and ounces add up to the weight, and no ounces make up a pound', () => {
    fc.assert(
      fc.property(amount, fc.integer({ min: 0, max: 2 }), (g, ozDecimals) => {
        const { lb, oz } = poundsAndOunces(g, ozDecimals);
        expect(Number.isInteger(lb)).toBe(true);
        expect(oz).toBeGreaterThanOrEqual(0);
        expect(oz).toBeLessThan(16);
        const roundedOffG = (toG(1, 'oz') / 2) * 10 ** -ozDecimals;
        expect(Math.abs(toG(lb, 'lb') + toG(oz, 'oz') - g)).toBeLessThanOrEqual(roundedOffG * (1 + 1e-6));
      }),
      { seed: 104, numRuns: 400 },
    );
    expect(poundsAndOunces(G_PER_LB - 0.01, 1)).toEqual({ lb: 1, oz: 0 });
  });
});

describe('K14 yeast in another form raises alike', () => {
  test('by the customary ratios', () => {
    // Common practice: a third as much instant as fresh yeast, 0.4 of it as dry.
    expect(convertedYeastG(30, 'fresh', 'instant')).toBeCloseTo(10, 9);
    expect(convertedYeastG(30, 'fresh', 'dry')).toBeCloseTo(12, 9);
    expect(convertedYeastG(10, 'instant', 'dry')).toBeCloseTo(12, 9);
  });

  test('any way round and back', () => {
    const form = fc.constantFrom<YeastKind>('fresh', 'dry', 'instant');
    fc.assert(
      fc.property(amount, form, form, form, (g, from, by, to) => {
        const straight = convertedYeastG(g, from, to);
        expect(Math.abs(convertedYeastG(convertedYeastG(g, from, by), by, to) - straight)).toBeLessThanOrEqual(1e-12 * straight);
        expect(convertedYeastG(g, from, from)).toBe(g);
      }),
      { seed: 105, numRuns: 200 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromC, fromK, toC, toK } from '../../shared/trade/units.ts';
import {
  allIceC,
  baseOf,
  coldestDoughC,
  countsAsC,
  frictionOf,
  iceFor,
  requiredWaterByBaseC,
  requiredWaterByFrictionC,
  requiredWaterC,
  riseFromDough,
  riseOfBase,
  riseOfFriction,
} from '../../shared/trade/water-temperature.ts';

const roomy = fc.double({ min: -5, max: 45, noNaN: true });
const rise = fc.double({ min: -2, max: 20, noNaN: true });
const given = fc.array(roomy, { minLength: 1, maxLength: 5 });

describe('K6 the water’s temperature, in three customary forms of one truth', () => {
  test.each([
    // San Francisco Baking Institute hand-out, as quoted.
    [{ doughF: 75, temperaturesF: [65, 65], frictionF: 8, waterF: 87 }],
    // Pizza Today, June 2018, a column on dough temperature.
    [{ doughF: 80, temperaturesF: [65, 75], frictionF: 35, waterF: 65 }],
    // Cook's Illustrated, how-to 5818.
    [{ doughF: 75, temperaturesF: [71, 71, 71], frictionF: 20, waterF: 67 }],
  ])('with a friction factor in °F: %o', ({ doughF, temperaturesF, frictionF, waterF }) => {
    const desiredDoughC = toC(doughF, 'F');
    const temperaturesC = temperaturesF.map((each) => toC(each, 'F'));
    const waterC = requiredWaterByFrictionC({ desiredDoughC, temperaturesC, frictionC: toK(frictionF, 'F') });
    expect(fromC(waterC, 'F')).toBeCloseTo(waterF, 9);
    // The same from the rise that is kept.
    const riseK = riseOfFriction(toK(frictionF, 'F'), temperaturesC.length + 1);
    expect(fromC(requiredWaterC({ desiredDoughC, temperaturesC, riseK }), 'F')).toBeCloseTo(waterF, 9);
  });

  test.each([
    // German form, fischeimteigmantel 2021.
    [{ desiredDoughC: 26, temperaturesC: [22, 22], riseK: 3 }, 25],
    // baeckerlatein, "Teigtemperatur".
    [{ desiredDoughC: 26, temperaturesC: [22, 22, 6], riseK: 5 }, 34],
  ])('with the rise: %o', (dough, waterC) => {
    expect(requiredWaterC(dough)).toBe(waterC);
  });

  test('with a base temperature', () => {
    // tutti-sandwiches.fr: base 60, room and flour 22.
    expect(requiredWaterByBaseC({ baseC: 60, temperaturesC: [22, 22] })).toBe(16);
  });

  test('the three agree, and each gives back the rise', () => {
    fc.assert(
      fc.property(roomy, given, rise, (desiredDoughC, temperaturesC, riseK) => {
        const count = temperaturesC.length + 1;
        const waterC = requiredWaterC({ desiredDoughC, temperaturesC, riseK });
        const frictionC = frictionOf(riseK, count);
        expect(requiredWaterByFrictionC({ desiredDoughC, temperaturesC, frictionC })).toBeCloseTo(waterC, 9);
        const baseC = baseOf({ desiredDoughC, riseK }, count);
        expect(requiredWaterByBaseC({ baseC, temperaturesC })).toBeCloseTo(waterC, 9);
        expect(riseOfFriction(frictionC, count)).toBeCloseTo(riseK, 9);
        expect(riseOfBase({ desiredDoughC, baseC }, count)).toBeCloseTo(riseK, 9);
        // A friction factor read in °F is the same one.
        expect(toK(fromK(frictionC, 'F'), 'F')).toBeCloseTo(frictionC, 9);
      }),
      { seed: 61, numRuns: 300 },
    );
  });

  test('the dough that comes out of it teaches the rise that it was reckoned with', () => {
    fc.assert(
      fc.property(roomy, given, rise, (doughC, temperaturesC, riseK) => {
        const waterC = requiredWaterC({ desiredDoughC: doughC, temperaturesC, riseK });
        expect(riseFromDough({ doughC, temperaturesC, waterC })).toBeCloseTo(riseK, 9);
      }),
      { seed: 62, numRuns: 300 },
    );
  });
});

describe('K7 ice within the recipe’s water', () => {
  test('of 10 kg from a tap of 20 °C for 10 °C', () => {
    // Computed twice by hand from L = 334 kJ/kg, 4.186 and 2.108 kJ/(kg·K).
    expect(iceFor({ waterG: 10_000, tapC: 20, requiredC: 10 }).iceG).toBeCloseTo(1002, 0);
    expect(iceFor({ waterG: 10_000, tapC: 20, requiredC: 10, iceC: -18 }).iceG).toBeCloseTo(919, 0);
  });

  test.each([
    // Koerner Co., ice table: pounds of ice for a pound of water. Its constants are a little others.
    [60, 40, 0.115],
    [70, 10, 0.326],
  ])('as the table of a mill has it, from %d °F for %d °F', (tapF, requiredF, share) => {
    const { iceG } = iceFor({ waterG: 1, tapC: toC(tapF, 'F'), requiredC: toC(requiredF, 'F') });
    expect(Math.abs(iceG - share)).toBeLessThan(0.007);
  });

  test('none where the tap is cold enough or too cold', () => {
    for (const requiredC of [12, 30])
      expect(iceFor({ waterG: 500, tapC: 12, requiredC })).toEqual({ iceG: 0, tapWaterG: 500, isReachable: true });
  });

  test('a required temperature below freezing is not taken for freezing', () => {
    // By hand: 1000 × (20 − −20) ÷ (20 + 334 ÷ 4.186) = 400.8; for 0 °C it would be 200.4.
    expect(iceFor({ waterG: 1000, tapC: 20, requiredC: -20 }).iceG).toBeCloseTo(400.8, 1);
  });

  test('where all the water as ice is too warm, all of it is ice, and the coldest dough is said', () => {
    const temperaturesC = [40, 40, 40];
    // By hand: (120 − 334 ÷ 4.186) ÷ 4 + 15 = 25.05 °C.
    const coldestC = coldestDoughC({ temperaturesC, riseK: 15 });
    expect(coldestC).toBeCloseTo(25.05, 2);
    const ice = (desiredDoughC: number) =>
      iceFor({ waterG: 600, tapC: 18, requiredC: requiredWaterC({ desiredDoughC, temperaturesC, riseK: 15 }) });
    expect(ice(coldestC - 0.01)).toEqual({ iceG: 600, tapWaterG: 0, isReachable: false });
    expect(ice(coldestC + 0.01)).toMatchObject({ isReachable: true });
    expect(ice(coldestC + 0.01).iceG).toBeCloseTo(599.8, 0);
  });

  test('the balance of heat holds: what the ice takes up is what the water gives, to 1e-9', () => {
    // A check of its own: enthalpies against water of 0 °C, with the constants written out.
    const enthalpyOfIce = (iceC: number): number => -334 + 2.108 * iceC;
    const enthalpyOfWater = (celsius: number): number => 4.186 * celsius;
    const waterG = fc.double({ min: 1, max: 200_000, noNaN: true });
    const tapC = fc.double({ min: 0, max: 35, noNaN: true });
    const requiredC = fc.double({ min: -75, max: 35, noNaN: true });
    const iceC = fc.double({ min: -30, max: 0, noNaN: true });
    fc.assert(
      fc.property(waterG, tapC, requiredC, iceC, (all, tap, required, ice) => {
        fc.pre(required < tap);
        const { iceG, tapWaterG } = iceFor({ waterG: all, tapC: tap, requiredC: required, iceC: ice });
        const before = iceG * enthalpyOfIce(ice) + tapWaterG * enthalpyOfWater(tap);
        expect(Math.abs(before - all * enthalpyOfWater(required))).toBeLessThan(1e-9 * all * 400);
        expect(iceG + tapWaterG).toBeCloseTo(all, 9);
        expect(countsAsC({ waterG: all, iceG, tapC: tap, iceC: ice })).toBeCloseTo(required, 9);
      }),
      { seed: 63, numRuns: 500 },
    );
  });

  test('ice of its own cold counts for more, and never for less than nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: -0.1, noNaN: true }), fc.double({ min: 0, max: 19.9, noNaN: true }), (iceC, requiredC) => {
        const cold = iceFor({ waterG: 1000, tapC: 20, requiredC, iceC });
        const thawing = iceFor({ waterG: 1000, tapC: 20, requiredC });
        expect(cold.iceG).toBeLessThan(thawing.iceG);
        expect(cold.iceG).toBeGreaterThan(0);
        expect(allIceC(iceC)).toBeLessThan(allIceC(0));
      }),
      { seed: 64, numRuns: 200 },
    );
  });
});

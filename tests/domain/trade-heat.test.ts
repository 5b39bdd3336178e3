import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  doughByBalanceC,
  HYDRATION_KJ_PER_KG,
  SPECIFIC_HEAT_KJ_PER_KG_K,
  waterForBalanceC,
  type HeatInputs,
} from '../../shared/trade/heat-balance.ts';
import { countsAsC, iceFor } from '../../shared/trade/water-temperature.ts';

const FLOUR_10_KG = { g: 10_000, kJPerKgK: SPECIFIC_HEAT_KJ_PER_KG_K.flour, tempC: 22 };
const DOUGH: HeatInputs = { targetC: 25, parts: [FLOUR_10_KG], waterG: 6500, riseK: 4, flourG: 10_000, hydrationKJPerKg: 0 };

const weightG = fc.double({ min: 10, max: 100_000, noNaN: true });
const inputs: fc.Arbitrary<HeatInputs> = fc.record({
  targetC: fc.double({ min: 0, max: 35, noNaN: true }),
  parts: fc.array(
    fc.record({
      g: weightG,
      kJPerKgK: fc.double({ min: 0.5, max: 4.2, noNaN: true }),
      tempC: fc.double({ min: -20, max: 90, noNaN: true }),
    }),
    { minLength: 1, maxLength: 8 },
  ),
  waterG: fc.double({ min: 1000, max: 100_000, noNaN: true }),
  riseK: fc.double({ min: 0, max: 15, noNaN: true }),
  flourG: weightG,
  hydrationKJPerKg: fc.constantFrom(0, HYDRATION_KJ_PER_KG),
});

/** Heat above 0 °C of everything that goes in, with what mixing and wetting add, less that of the dough, in kJ; its own reckoning. */
function surplusKJ({ targetC, parts, waterG, riseK, flourG, hydrationKJPerKg }: HeatInputs, waterKJ: number): number {
  let [capacity, heat] = [(waterG / 1000) * 4.186, waterKJ];
  for (const { g, kJPerKgK, tempC } of parts) {
    capacity += (g / 1000) * kJPerKgK;
    heat += (g / 1000) * kJPerKgK * tempC;
  }
  return (heat + riseK * capacity + (flourG / 1000) * hydrationKJPerKg - capacity * targetC) / (capacity * 100);
}

describe('K8 the balance of heat, a second opinion where parts are far from the room', () => {
  test('10 kg of flour at 22 °C and 6.5 kg of water for 25 °C, where mixing warms by 4 K', () => {
    // Computed twice by hand; flour 1.80 kJ/(kg·K) from Geankoplis, table A.4-1, hydration 15.1 kJ/kg from Baker's Dictionary (6.5 BTU/lb).
    expect(waterForBalanceC(DOUGH)).toBeCloseTo(20.34, 2);
    expect(waterForBalanceC({ ...DOUGH, hydrationKJPerKg: HYDRATION_KJ_PER_KG })).toBeCloseTo(14.79, 2);
  });

  test('6.5 BTU/lb are the 15.1 kJ/kg of hydration', () => {
    // 1 BTU (IT) = 1.05505585262 kJ and 1 lb = 0.45359237 kg, both exact (from memory of NIST SP 811, appendix B).
    expect((6.5 * 1.05505585262) / 0.45359237).toBeCloseTo(HYDRATION_KJ_PER_KG, 1);
  });

  test('energy is conserved to 1e-9, with ice and without', () => {
    fc.assert(
      fc.property(
        inputs,
        fc.double({ min: 0, max: 0.8, noNaN: true }),
        fc.double({ min: -30, max: 0, noNaN: true }),
        (dough, share, iceC) => {
          const waterC = waterForBalanceC(dough);
          expect(Math.abs(surplusKJ(dough, (dough.waterG / 1000) * 4.186 * waterC))).toBeLessThan(1e-9);
          // Water and ice as the ice's own sum divides them, from a tap as warm as it has to be.
          const { waterG } = dough;
          const tapC = waterC + share * 60;
          const { iceG, tapWaterG, isReachable } = iceFor({ waterG, tapC, requiredC: waterC, iceC });
          fc.pre(isReachable);
          const iceKJ = (iceG / 1000) * (2.108 * iceC - 334);
          const tapKJ = (tapWaterG / 1000) * 4.186 * tapC;
          expect(Math.abs(surplusKJ(dough, iceKJ + tapKJ))).toBeLessThan(1e-9);
        },
      ),
      { seed: 81, numRuns: 400 },
    );
  });

  test('agrees with the ice: water and ice that count as what it asks for give the dough that was wanted', () => {
    fc.assert(
      fc.property(inputs, fc.double({ min: -30, max: 0, noNaN: true }), (dough, iceC) => {
        const requiredC = waterForBalanceC(dough);
        fc.pre(requiredC > -70 && requiredC < 30);
        const { waterG } = dough;
        const { iceG } = iceFor({ waterG, tapC: 30, requiredC, iceC });
        expect(doughByBalanceC(dough, countsAsC({ waterG, iceG, tapC: 30, iceC }))).toBeCloseTo(dough.targetC, 9);
      }),
      { seed: 82, numRuns: 400 },
    );
  });
});

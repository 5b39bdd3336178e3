import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assert } from '../../shared/result.ts';
import { courseC, doughCourse, type DoughCourse, type Stay } from '../../shared/trade/dough-course.ts';
import { driftedC, minutesUntilC } from '../../shared/trade/dough-drift.ts';
import { lactobacilliShare, levainShare } from '../../shared/trade/levain-curve.ts';
import { monotoneCubic } from '../../shared/trade/monotone-cubic.ts';
import { BAKERS_YEAST_C, rateModelOf, rateModelSchema, type RateModel } from '../../shared/trade/rate-model.ts';
import { equivalentMin, ripeAt } from '../../shared/trade/ripeness-progress.ts';
import { cardinalShare } from '../../shared/trade/cardinal-rate.ts';
import { rateCurve, withCold, type RateCurve } from '../../shared/trade/ripeness-rate.ts';
import { adaptiveSimpson } from '../support/quadrature.ts';

const YEAST: RateModel = { kind: 'cardinal', ...BAKERS_YEAST_C };
const TENTH: RateModel = { kind: 'perKelvin', rate: 0.1 };
const TWICE: RateModel = { kind: 'q10', q10: 2 };
const LEVAIN: RateModel = { kind: 'levain' };

function curveOf(model: RateModel, referenceC = 25): RateCurve {
  const curve = rateCurve(model, referenceC);
  assert(curve.ok, JSON.stringify(curve));
  return curve.value;
}

const still = (doughC: number): DoughCourse => [{ fromMin: 0, doughC, ambientC: null, tauMin: 60, selfHeatKPerH: 0 }];
const drifting = (doughC: number, ambientC: number, tauMin: number, selfHeatKPerH = 0): DoughCourse => [
  { fromMin: 0, doughC, ambientC, tauMin, selfHeatKPerH },
];

describe('RP1 how fast a dough ripens at a temperature, by published figures', () => {
  test.each([
    // The table of a published R package for cardinal temperatures 5, 20, 30 °C.
    [22, 0.9633333],
    [10, 0.3333333],
    [20, 1],
    [5, 0],
    [30, 0],
    [-10, 0],
    [60, 0],
  ])('CTMI of 5, 20, 30 °C at %d °C: %d', (doughC, expected) => {
    expect(cardinalShare(doughC, { minC: 5, optC: 20, maxC: 30 })).toBeCloseTo(expected, 7);
  });

  test('baker’s yeast between 15 and 28 °C is as much faster for ten kelvin as Gause measured, and no such rule holds below', () => {
    const q10 = (fromC: number, toC: number): number =>
      (cardinalShare(toC, BAKERS_YEAST_C) / cardinalShare(fromC, BAKERS_YEAST_C)) ** (10 / (toC - fromC));
    // Gause 1932, Q. Rev. Biol. 7:27: about 2.2 between 15 and 28 °C, 8 to 10 between 5.7 and 15 °C (ratios reckoned from the measured times).
    expect(Math.abs(q10(15, 28) / 2.2 - 1)).toBeLessThan(0.05);
    expect(q10(5.7, 15)).toBeGreaterThan(8);
    expect(curveOf(TWICE).at(5.7) / curveOf(TWICE).at(15)).toBeGreaterThan(3 * (curveOf(YEAST).at(5.7) / curveOf(YEAST).at(15)));
  });

  test.each([
    // Gänzle, Ehmann & Hammes 1998, AEM 64:2616, as its first author gives it in the FAQ of rec.food.sourdough.
    [27.5, 1],
    [20, 0.5],
    [32, 0.5],
    [14, 0.25],
    [35, 0],
    [40, 0],
  ])('a levain’s yeast at %d °C: %d of its best', (doughC, expected) => {
    expect(levainShare(doughC)).toBeCloseTo(expected, 12);
  });

  test.each([
    [32.5, 1],
    [20, 0.5],
    [37, 0.5],
    [15, 0.25],
    [39, 0.25],
    [4, 0],
    [41, 0],
  ])('its lactobacilli at %d °C: %d (the same table)', (doughC, expected) => {
    expect(lactobacilliShare(doughC)).toBeCloseTo(expected, 12);
  });

  test('a levain in the cold goes on, slower and slower: 40 h in a retarder are more than 12', () => {
    expect(levainShare(13.9999)).toBeCloseTo(levainShare(14), 4);
    expect(levainShare(4)).toBeGreaterThan(0);
    expect(levainShare(4)).toBeLessThan(0.02);
    const retard = drifting(24, 4, 270);
    const [short, long] = [12, 40].map((hours) => equivalentMin(retard, curveOf(LEVAIN), 0, hours * 60));
    expect((long ?? 0) - (short ?? 0)).toBeGreaterThan(5);
  });

  test('a curve through rising points never overshoots, and is the parabola of Fritsch and Carlson where they leave one', () => {
    const square = monotoneCubic([0, 1, 2, 3, 4].map((x) => ({ x, y: x * x })));
    // Means of the secants are a parabola's own slopes, but at its ends.
    for (const x of [1, 1.3, 2.7, 3]) expect(square(x)).toBeCloseTo(x * x, 12);
    const steep = monotoneCubic([
      { x: 0, y: 0 },
      { x: 1, y: 0.01 },
      { x: 2, y: 5 },
    ]);
    const values = Array.from({ length: 201 }, (_, index) => steep(index / 100));
    expect(values.every((value, index) => value >= (values[index - 1] ?? 0))).toBe(true);
  });

  test('what is no model is refused: temperatures out of order, a best below halfway, no growth at the reference', () => {
    const cardinal = (minC: number, optC: number, maxC: number): RateModel => ({ kind: 'cardinal', minC, optC, maxC });
    for (const model of [cardinal(20, 10, 30), cardinal(10, 30, 30), cardinal(0, 10, 40)])
      expect(rateCurve(model, 15)).toEqual({ ok: false, fault: 'cardinalsOutOfOrder' });
    for (const referenceC of [2, 46]) expect(rateCurve(YEAST, referenceC)).toEqual({ ok: false, fault: 'noGrowthAtReference' });
    expect(rateCurve(LEVAIN, 35)).toEqual({ ok: false, fault: 'noGrowthAtReference' });
  });

  test('a step’s ripening is a model of its own', () => {
    const ripenings = [
      { model: 'perKelvin', referenceC: 26, rate: 0.1 },
      { model: 'q10', referenceC: 26, q10: 2 },
      { model: 'cardinal', referenceC: 26, ...BAKERS_YEAST_C },
      { model: 'levain', referenceC: 26 },
    ] as const;
    expect(ripenings.map((ripening) => rateModelSchema.parse(rateModelOf(ripening)))).toEqual([TENTH, TWICE, YEAST, LEVAIN]);
  });
});

describe('RP2 a rest of 120 min at 25 °C', () => {
  test.each([
    // Computed twice, independently, from the equations (the design's table).
    [TWICE, 147.74, 107.89],
    [TENTH, 159.72, 103.08],
    [YEAST, 143.24, 112.63],
  ])('%o: %d min at 22 °C, %d where it drifts from 28 to 22 with a time constant of 180 min', (model, constantMin, driftMin) => {
    expect(ripeAt(still(22), curveOf(model), 0, 120).atMin).toBeCloseTo(constantMin, 1);
    expect(ripeAt(drifting(28, 22, 180), curveOf(model), 0, 120).atMin).toBeCloseTo(driftMin, 2);
  });

  test('a night at 4 °C after 24, time constant 270 min, is between 124 and 177 min at 25 °C by growth models', () => {
    const night = drifting(24, 4, 270);
    expect(equivalentMin(night, curveOf(YEAST), 0, 720)).toBeCloseTo(177.4, 1);
    const byLevain = equivalentMin(night, curveOf(LEVAIN), 0, 720);
    expect(byLevain).toBeGreaterThan(124);
    expect(byLevain).toBeLessThan(177);
  });

  test('is never ripe where it is too cold, or too warm, and that is said after 14 days', () => {
    expect(ripeAt(still(2), curveOf(YEAST), 0, 120)).toEqual({ atMin: null, reason: 'notWithinCap' });
    expect(ripeAt(drifting(30, 50, 60), curveOf(YEAST), 0, 120)).toEqual({ atMin: null, reason: 'notWithinCap' });
    // 14 days at 25 °C are 20 160 min of themselves, and not one more.
    expect(ripeAt(still(25), curveOf(TWICE), 0, 20_159).atMin).toBeCloseTo(20_159, 6);
    expect(ripeAt(still(25), curveOf(TWICE), 0, 20_161).atMin).toBeNull();
    expect(ripeAt(still(25), curveOf(TWICE), 0, 0)).toEqual({ atMin: 0 });
    // Small pieces follow their air within minutes, however far the asking looks ahead: the integral of 2^((T − 25) ÷ 10) as a power series.
    const halving = 0.5 * Math.LN2;
    const terms = [halving, -(halving ** 2) / 4, halving ** 3 / 18, -(halving ** 4) / 96, halving ** 5 / 600];
    const byHand = 90 - 5 * terms.reduce((sum, term) => sum + term, 0);
    expect(ripeAt(drifting(20, 25, 5), curveOf(TWICE), 0, byHand).atMin).toBeCloseTo(90, 4);
  });

  test('below 15 °C a rule of so many for ten kelvin gives way to growth, times what the formula has taught', () => {
    const [plain, cold, half] = [curveOf(TENTH), withCold(curveOf(TENTH), 1), withCold(curveOf(TENTH), 0.5)];
    for (const doughC of [15, 22, 31]) expect(cold.at(doughC)).toBe(plain.at(doughC));
    expect(cold.at(14.999999)).toBeCloseTo(plain.at(15), 5);
    expect(half.at(14.999999)).toBeCloseTo(plain.at(15), 5);
    expect(cold.at(5.7) / cold.at(15)).toBeCloseTo(cardinalShare(5.7, BAKERS_YEAST_C) / cardinalShare(15, BAKERS_YEAST_C), 12);
    for (const doughC of [3.5, 4]) expect(half.at(doughC)).toBeCloseTo(cold.at(doughC) / 2, 12);
  });
});

const modelArbitrary: fc.Arbitrary<RateModel> = fc.oneof(
  fc.record({ kind: fc.constant('perKelvin' as const), rate: fc.double({ min: 0, max: 0.4, noNaN: true }) }),
  fc.record({ kind: fc.constant('q10' as const), q10: fc.double({ min: 1, max: 6, noNaN: true }) }),
  fc.constant(YEAST),
  fc.constant(LEVAIN),
);
const celsius = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const stayArbitrary = fc.record({
  lastsMin: fc.integer({ min: 1, max: 400 }),
  ambientC: fc.option(celsius(-2, 40)),
  tauMin: celsius(8, 500),
  selfHeatKPerH: celsius(0, 2),
});
const courseArbitrary: fc.Arbitrary<DoughCourse> = fc
  .tuple(celsius(2, 36), fc.array(stayArbitrary, { minLength: 1, maxLength: 8 }))
  .map(([startC, lasting]) => {
    let fromMin = 0;
    const stays = lasting.map(({ lastsMin, ...stay }): Stay => {
      const begun = { ...stay, fromMin };
      fromMin += lastsMin;
      return begun;
    });
    return doughCourse({ startC, stays, readings: [] });
  });

describe('RP3 the integral over a temperature course', () => {
  test('is within 0.001 % of an adaptive Simpson’s rule, and so is its inverse', () => {
    fc.assert(
      fc.property(courseArbitrary, modelArbitrary, fc.integer({ min: 30, max: 900 }), fc.boolean(), (course, model, untilMin, isCold) => {
        const curve = isCold ? withCold(curveOf(model), 0.7) : curveOf(model);
        // The temperature anew from the differential equation's solution, part by part.
        const ends = [...course.slice(1).map(({ fromMin }) => fromMin), Number.POSITIVE_INFINITY];
        let [reference, startC] = [0, course[0]?.doughC ?? Number.NaN];
        course.forEach(({ fromMin, ambientC, tauMin, selfHeatKPerH }, index) => {
          const lastsMin = Math.min(ends[index] ?? 0, untilMin) - fromMin;
          const perMin = selfHeatKPerH / 60;
          const began = startC;
          const at = (t: number): number =>
            ambientC === null
              ? began + perMin * t
              : (began - ambientC) * Math.exp(-t / tauMin) + ambientC + perMin * tauMin * (1 - Math.exp(-t / tauMin));
          if (lastsMin > 0) reference += adaptiveSimpson((t) => curve.at(at(t)), 0, lastsMin, 1e-6);
          startC = at((ends[index] ?? 0) - fromMin);
        });
        const found = equivalentMin(course, curve, 0, untilMin);
        expect(Math.abs(found - reference)).toBeLessThanOrEqual(1e-5 * reference + 1e-5);
        fc.pre(found > 1);
        const wantedMin = found * 0.9;
        expect(equivalentMin(course, curve, 0, ripeAt(course, curve, 0, wantedMin).atMin ?? Number.NaN)).toBeCloseTo(wantedMin, 5);
      }),
      { seed: 701, numRuns: 60 },
    );
  });

  test('a rest split in two is the same rest', () => {
    fc.assert(
      fc.property(
        courseArbitrary,
        modelArbitrary,
        fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 3, maxLength: 3 }),
        (course, model, instants) => {
          const curve = curveOf(model);
          const [from = 0, middle = 0, to = 0] = [...instants].sort((a, b) => a - b);
          const [whole, first, second] = [
            [from, to],
            [from, middle],
            [middle, to],
          ].map(([a = 0, b = 0]) => equivalentMin(course, curve, a, b));
          expect((first ?? 0) + (second ?? 0)).toBeCloseTo(whole ?? Number.NaN, 4);
        },
      ),
      { seed: 702, numRuns: 60 },
    );
  });

  test('a reading that agrees changes nothing', () => {
    fc.assert(
      fc.property(courseArbitrary, modelArbitrary, fc.integer({ min: 1, max: 700 }), (course, model, atMin) => {
        const curve = curveOf(model);
        const readings = [{ atMin, doughC: courseC(course, atMin) }];
        const again = doughCourse({ startC: course[0]?.doughC ?? 0, stays: course, readings });
        expect(again).toHaveLength(course.length + 1);
        expect(equivalentMin(again, curve, 0, 900)).toBeCloseTo(equivalentMin(course, curve, 0, 900), 4);
      }),
      { seed: 703, numRuns: 60 },
    );
  });

  test('a warmer dough in warmer places is never later, below the optimum', () => {
    const warmed = celsius(0, 5);
    fc.assert(
      fc.property(courseArbitrary, modelArbitrary, warmed, (course, model, byK) => {
        const curve = withCold(curveOf(model), 1);
        const bestC = model.kind === 'levain' ? 27.5 : 32.3;
        const stays = course.map((stay) => ({ ...stay, ambientC: stay.ambientC ?? 20, selfHeatKPerH: 0 }));
        const cooler = doughCourse({ startC: stays[0]?.doughC ?? 0, stays, readings: [] });
        const warmer = doughCourse({
          startC: (stays[0]?.doughC ?? 0) + byK,
          stays: stays.map((stay) => ({ ...stay, ambientC: stay.ambientC + byK })),
          readings: [],
        });
        fc.pre([...warmer.map(({ doughC }) => doughC), ...warmer.map(({ ambientC }) => ambientC ?? 0)].every((doughC) => doughC <= bestC));
        const [early, late] = [ripeAt(warmer, curve, 0, 120).atMin, ripeAt(cooler, curve, 0, 120).atMin];
        expect(early ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual((late ?? Number.POSITIVE_INFINITY) + 1e-6);
      }),
      { seed: 704, numRuns: 60 },
    );
  });
});

describe('RP4 the course of a dough’s temperature', () => {
  test('goes to the air by Newton’s law, and with its own heat above it', () => {
    // By hand: after one time constant e⁻¹ = 36.79 % of the way is left; 1.5 K/h for 3 h of time constant hold 4.5 K.
    expect(driftedC({ doughC: 28, ambientC: 22, tauMin: 180, selfHeatKPerH: 0 }, 180)).toBeCloseTo(22 + 6 * 0.367_879_4, 6);
    expect(driftedC({ doughC: 22, ambientC: 22, tauMin: 180, selfHeatKPerH: 1.5 }, 100_000)).toBeCloseTo(26.5, 9);
    expect(driftedC({ doughC: 22, ambientC: null, tauMin: 180, selfHeatKPerH: 1.5 }, 120)).toBeCloseTo(25, 12);
  });

  test('passes each temperature on its way once, and none beyond', () => {
    const drift = { doughC: 28, ambientC: 22, tauMin: 180, selfHeatKPerH: 0 };
    expect(driftedC(drift, minutesUntilC(drift, 23.3) ?? Number.NaN)).toBeCloseTo(23.3, 9);
    expect([22, 21, 29].map((doughC) => minutesUntilC(drift, doughC))).toEqual([null, null, null]);
    expect(minutesUntilC({ ...drift, ambientC: null, selfHeatKPerH: 2 }, 29)).toBeCloseTo(30, 9);
    expect(minutesUntilC({ ...drift, ambientC: null }, 29)).toBeNull();
  });

  test('a tub that is moved goes on from where it was; a reading begins anew; one from before says where it starts', () => {
    const bench: Stay = { fromMin: 0, ambientC: 22, tauMin: 120, selfHeatKPerH: 0 };
    const shelf: Stay = { fromMin: 60, ambientC: 30, tauMin: 120, selfHeatKPerH: 0 };
    const course = doughCourse({
      startC: 26,
      stays: [bench, shelf],
      readings: [
        { atMin: 90, doughC: 24 },
        { atMin: -5, doughC: 25 },
      ],
    });
    const movedC = 22 + 3 * Math.exp(-0.5);
    expect(courseC(course, 0)).toBe(25);
    expect(courseC(course, 60)).toBeCloseTo(movedC, 12);
    expect(courseC(course, 75)).toBeCloseTo(30 + (movedC - 30) * Math.exp(-15 / 120), 12);
    expect(courseC(course, 90)).toBe(24);
    expect(courseC(course, 210)).toBeCloseTo(30 - 6 * Math.exp(-1), 12);
  });

  test('a rest that began before anything is known of its dough counts with the first that is', () => {
    const course: DoughCourse = [{ fromMin: 30, doughC: 22, ambientC: 30, tauMin: 60, selfHeatKPerH: 0 }];
    expect(equivalentMin(course, curveOf(TWICE), 0, 30)).toBeCloseTo(30 * 2 ** -0.3, 9);
    expect(ripeAt(course, curveOf(TWICE), 0, 10).atMin).toBeCloseTo(10 * 2 ** 0.3, 6);
  });
});

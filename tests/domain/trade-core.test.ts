import { describe, expect, test } from 'vitest';
import { assert } from '../../shared/result.ts';
import { boilingPointC, saturationPressurePa, standardPressurePa } from '../../shared/trade/boiling-point.ts';
import { coreForecast, LAG_SHARE, type CoreForecast } from '../../shared/trade/core-forecast.ts';
import { coreAtC, coreLine, coreRange, coreReachesMin, type CoreReading } from '../../shared/trade/core-temperature.ts';
import { Random } from '../simulation/support/random.ts';
import { normal } from './support/normals.ts';

const TWO: readonly CoreReading[] = [
  { atMin: 10, coreC: 50 },
  { atMin: 14, coreC: 70 },
];
/** A core exactly on a line: f = 20 min, the distance to 98 °C is 98 at minute 0. */
const onLine = (atMin: number): CoreReading => ({ atMin, coreC: 98 - 98 * 10 ** (-atMin / 20) });

function reaching(forecast: CoreForecast): Extract<CoreForecast, { kind: 'reaches' }> {
  assert(forecast.kind === 'reaches', JSON.stringify(forecast));
  return forecast;
}

describe('CT1 the plateau of the crumb is where water boils', () => {
  test.each([
    // psychrolib 1.1.1, GetSatVapPres inverted by halving at GetStandardAtmPressure.
    [0, 99.974_099],
    [500, 98.312_475],
    [1000, 96.648_934],
    [1600, 94.649_985],
    [2000, 93.315_616],
    [-400, 101.302_098],
    [3500, 88.298_118],
    [5000, 83.256_289],
  ])('at %d m: %d °C', (altitudeM, expected) => {
    expect(boilingPointC(altitudeM)).toBeCloseTo(expected, 5);
  });

  test('by the handbook’s pressures', () => {
    // ASHRAE Handbook — Fundamentals 2017, chapter 1, tables 1 and 3, as psychrolib's own tests quote them; the equation claims 300 ppm.
    for (const [altitudeM, pa] of [
      [-500, 107_478],
      [500, 95_461],
      [1000, 89_875],
      [4000, 61_640],
    ] as const)
      expect(Math.abs(standardPressurePa(altitudeM) - pa)).toBeLessThan(1);
    for (const [waterC, pa] of [
      [5, 872.6],
      [25, 3169.7],
      [50, 12_351.3],
      [100, 101_418],
      [150, 476_101.4],
    ] as const)
      expect(Math.abs(saturationPressurePa(waterC) / pa - 1)).toBeLessThan(3e-4);
  });
});

describe('CT2 the semi-log line to the plateau', () => {
  test.each([
    // By hand, twice: f = 4 ÷ log10(50 ÷ 30) = 18.03 min; t = 14 + f·log10(30 ÷ (100 − target)).
    [90, 22.6],
    [96, 29.78],
    [70, 14],
    [50, 10],
  ])('50 °C at 10 min and 70 at 14, plateau 100: %d °C at %d min', (targetC, expected) => {
    const core = coreLine(TWO, 100);
    expect(core.fMin).toBeCloseTo(18.03, 2);
    expect(coreReachesMin(core, targetC)).toBeCloseTo(expected, 2);
    expect(coreAtC(core, expected)).toBeCloseTo(targetC, 1);
  });

  test('of more readings it is the line of least squares of the logarithm', () => {
    const readings = [...TWO, { atMin: 17, coreC: 80 }, { atMin: 19, coreC: 83 }];
    // The normal equations anew.
    const [n, x, y, xx, xy] = readings.reduce(
      ([a, b, c, d, e], { atMin, coreC }) => {
        const log = Math.log10(99 - coreC);
        return [a + 1, b + atMin, c + log, d + atMin * atMin, e + atMin * log] as const;
      },
      [0, 0, 0, 0, 0] as readonly [number, number, number, number, number],
    );
    const slope = (n * xy - x * y) / (n * xx - x * x);
    const core = coreLine(readings, 99);
    expect(core.fMin).toBeCloseTo(-1 / slope, 9);
    expect(coreReachesMin(core, 92)).toBeCloseTo((Math.log10(99 - 92) - (y - slope * x) / n) / slope, 9);
  });

  test('a reading on the line changes nothing; a higher target is never sooner', () => {
    const core = coreLine([onLine(12), onLine(18)], 98);
    const again = coreLine([onLine(12), onLine(18), onLine(15.5), onLine(25)], 98);
    const targets = Array.from({ length: 40 }, (_, index) => 58 + index);
    const instants = targets.map((targetC) => coreReachesMin(core, targetC) ?? Number.NaN);
    targets.forEach((targetC, index) => expect(coreReachesMin(again, targetC)).toBeCloseTo(instants[index] ?? Number.NaN, 8));
    expect(instants.every((atMin, index) => index === 0 || atMin > (instants[index - 1] ?? 0))).toBe(true);
  });
});

describe('CT3 what can be said of a core', () => {
  const ask = (readings: readonly CoreReading[], targetC = 94, loadedC?: number): CoreForecast =>
    coreForecast({ readings, plateauC: 98, targetC, ...(loadedC === undefined ? {} : { loadedC }) });

  test('a target at the plateau or above it is unreachable here', () => {
    expect(ask(TWO, 98)).toEqual({ kind: 'unreachable' });
    expect(ask([], 99)).toEqual({ kind: 'unreachable' });
    expect(coreReachesMin(coreLine(TWO, 98), 98)).toBeNull();
    // Part-baked at 96 °C: not at 1600 m, where water boils at 94.65.
    expect(coreForecast({ readings: TWO, plateauC: boilingPointC(1600), targetC: 96 })).toEqual({ kind: 'unreachable' });
  });

  test('nothing while the core is still flat, nothing of one reading beyond that', () => {
    const flat = [
      { atMin: 2, coreC: 26 },
      { atMin: 5, coreC: 29 },
      { atMin: 8, coreC: 40 },
    ];
    expect(ask([])).toEqual({ kind: 'lag' });
    expect(ask(flat)).toEqual({ kind: 'lag' });
    expect(ask([...flat, { atMin: 12, coreC: 60 }])).toEqual({ kind: 'needsAnother' });
    expect(
      ask([
        { atMin: 12, coreC: 60 },
        { atMin: 12, coreC: 61 },
      ]),
    ).toEqual({ kind: 'needsAnother' });
    // Loaded from the cold room at 4 °C the lag is over at 32 °C.
    expect(
      ask(
        [
          { atMin: 8, coreC: 35 },
          { atMin: 12, coreC: 55 },
        ],
        94,
        4,
      ).kind,
    ).toBe('reaches');
  });

  test('what was read during the lag does not bend the line', () => {
    const readings = [onLine(12), onLine(18), onLine(15)];
    const plain = reaching(ask(readings));
    const withLag = reaching(ask([{ atMin: 1, coreC: 26 }, { atMin: 5, coreC: 27 }, ...readings]));
    expect(withLag.atMin).toBe(plain.atMin);
    // 98·10^(−t ÷ 20) = 4, by hand.
    expect(plain.atMin).toBeCloseTo(20 * Math.log10(98 / 4), 9);
  });

  test('readings that fall, or stand at the plateau, are no line', () => {
    expect(
      ask([
        { atMin: 12, coreC: 60 },
        { atMin: 15, coreC: 58 },
      ]),
    ).toEqual({ kind: 'noRise' });
    expect(
      ask([
        { atMin: 12, coreC: 60 },
        { atMin: 15, coreC: 60 },
      ]),
    ).toEqual({ kind: 'noRise' });
    expect(
      ask([
        { atMin: 12, coreC: 60 },
        { atMin: 15, coreC: 98 },
      ]),
    ).toEqual({ kind: 'noRise' });
  });
});

/** Heat conduction in a sphere (Çengel, Heat Transfer, chapter 4, and its table 4–2; equations from memory). */
const SPHERES = [
  // Table 4–2: Bi, λ1, A1.
  { biot: 1, lambda: 1.5708, amplitude: 1.2732 },
  { biot: 10, lambda: 2.8363, amplitude: 1.9249 },
] as const;

/** Roots of 1 − λ·cot λ = Bi, one in each half turn, by halving. */
function roots(biot: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => {
    let [low, high] = [index * Math.PI + 1e-9, (index + 1) * Math.PI - 1e-9];
    for (let round = 0; round < 80; round += 1) {
      const middle = (low + high) / 2;
      if (1 - middle / Math.tan(middle) < biot) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  });
}

const amplitudeOf = (lambda: number): number => (4 * (Math.sin(lambda) - lambda * Math.cos(lambda))) / (2 * lambda - Math.sin(2 * lambda));
/** What is left of the way at the middle of the sphere, by the whole series. */
const leftAt = (lambdas: readonly number[], fourier: number): number =>
  lambdas.reduce((sum, lambda) => sum + amplitudeOf(lambda) * Math.exp(-(lambda ** 2) * fourier), 0);

describe('CT4 against the conduction of heat in a sphere', () => {
  const FOURIER_PER_MIN = 0.01;
  const [loadedC, plateauC] = [26, 99];

  test.each(SPHERES)(
    'of Biot number $biot: the line has the slope of the table’s first root, and meets the whole series',
    ({ biot, lambda, amplitude }) => {
      const lambdas = roots(biot, 40);
      expect(lambdas[0]).toBeCloseTo(lambda, 4);
      expect(amplitudeOf(lambdas[0] ?? 0)).toBeCloseTo(amplitude, 4);
      const read = (atMin: number): CoreReading => ({
        atMin,
        coreC: plateauC - (plateauC - loadedC) * leftAt(lambdas, atMin * FOURIER_PER_MIN),
      });
      const whenLeft = (left: number): number => {
        let [low, high] = [0.5, 2000];
        for (let round = 0; round < 60; round += 1) {
          const middle = (low + high) / 2;
          if (leftAt(lambdas, middle * FOURIER_PER_MIN) > left) low = middle;
          else high = middle;
        }
        return low;
      };
      // Readings at 60 and 75 % of the way: well beyond the lag.
      const forecast = reaching(coreForecast({ readings: [read(whenLeft(0.4)), read(whenLeft(0.25))], plateauC, targetC: 95, loadedC }));
      const expectedF = Math.LN10 / (lambda ** 2 * FOURIER_PER_MIN);
      expect(Math.abs(forecast.core.fMin / expectedF - 1)).toBeLessThan(0.03);
      expect(Math.abs(forecast.atMin / whenLeft(4 / (plateauC - loadedC)) - 1)).toBeLessThan(0.02);
      // The first readings that are used say too late, never too early, and by less than a sixth.
      const first = reaching(
        coreForecast({ readings: [read(whenLeft(1 - LAG_SHARE) + 0.01), read(whenLeft(0.5))], plateauC, targetC: 95, loadedC }),
      );
      const error = first.atMin / whenLeft(4 / (plateauC - loadedC)) - 1;
      expect(error).toBeGreaterThan(0);
      expect(error).toBeLessThan(1 / 6);
    },
  );

  test('with its surface at the plateau the line is a fifth too flat where the lag ends, and four fifths at a tenth of the way', () => {
    const lambdas = Array.from({ length: 60 }, (_, index) => (index + 1) * Math.PI);
    const left = (fourier: number): number =>
      2 * lambdas.reduce((sum, lambda, index) => sum + (index % 2 === 0 ? 1 : -1) * Math.exp(-(lambda ** 2) * fourier), 0);
    const tooFlat = (share: number): number => {
      let [low, high] = [0.005, 1];
      for (let round = 0; round < 60; round += 1) {
        const middle = (low + high) / 2;
        if (left(middle) > 1 - share) low = middle;
        else high = middle;
      }
      const slope = Math.log(left(low - 1e-5) / left(low + 1e-5)) / 2e-5;
      return Math.PI ** 2 / slope - 1;
    };
    expect(tooFlat(LAG_SHARE)).toBeCloseTo(0.2, 1);
    expect(tooFlat(0.1)).toBeCloseTo(0.8, 1);
  });
});

describe('CT5 the range of a forecast', () => {
  const noise = (random: Random, deviation: number): number => deviation * normal(random);

  test('holds the instant in nine of ten simulated bakes, with a probe of half a kelvin and the weather', () => {
    const random = new Random(911, 'cores');
    let held = 0;
    const bakes = 400;
    for (let bake = 0; bake < bakes; bake += 1) {
      const plateauC = 99 + noise(random, 0.25);
      const fMin = random.between(12, 40);
      const lateBy = Math.log10((plateauC - 26) / (plateauC - 92)) * fMin;
      const count = random.whole(2, 6);
      const readings = Array.from({ length: count }, (_, index) => {
        const atMin = fMin * (0.25 + (0.5 * index) / (count - 1));
        return { atMin, coreC: plateauC - (plateauC - 26) * 10 ** (-atMin / fMin) + noise(random, 0.5) };
      });
      const range = coreRange(readings, 99, 92);
      if (range !== null && range.earliestMin <= lateBy && (range.latestMin ?? Number.POSITIVE_INFINITY) >= lateBy) held += 1;
    }
    expect(held / bakes).toBeGreaterThan(0.9);
  });

  test('is wide near the plateau, and has no end where the weather may put the plateau below the target', () => {
    const readings = [onLine(10), onLine(16), onLine(22)];
    const width = (targetC: number): number => {
      const range = coreRange(readings, 98, targetC);
      return (range?.latestMin ?? Number.POSITIVE_INFINITY) - (range?.earliestMin ?? 0);
    };
    expect(width(90)).toBeGreaterThan(0);
    expect(width(96)).toBeGreaterThan(2 * width(90));
    expect(coreRange(readings, 98, 97.6)?.latestMin).toBeNull();
    expect(coreRange(readings, 98, 97.6)?.earliestMin).toBeGreaterThan(22);
  });
});

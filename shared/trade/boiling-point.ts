/** Pressure of the standard atmosphere at sea level, in pascal. */
const SEA_LEVEL_PA = 101_325;
const ZERO_C_IN_K = 273.15;
const CLOSE_K = 1e-9;
const MOST_ROUNDS = 50;

/**
 * Pressure of the standard atmosphere (ISA) at an altitude in metres above the sea, −5000 to 11 000, in pascal: ASHRAE Handbook —
 * Fundamentals 2017, chapter 1, equation 3.
 */
export function standardPressurePa(altitudeM: number): number {
  return SEA_LEVEL_PA * (1 - 2.25577e-5 * altitudeM) ** 5.2559;
}

/**
 * Pressure of saturated water vapour over liquid water of 0 to 200 °C, in pascal: Hyland & Wexler 1983, as ASHRAE Handbook — Fundamentals 2017,
 * chapter 1, equation 6.
 */
export function saturationPressurePa(waterC: number): number {
  return Math.exp(logPressure(waterC + ZERO_C_IN_K));
}

function logPressure(k: number): number {
  return -5800.2206 / k + 1.3914993 - 0.048640239 * k + 4.1764768e-5 * k ** 2 - 1.4452093e-8 * k ** 3 + 6.5459673 * Math.log(k);
}

function logPressureSlope(k: number): number {
  return 5800.2206 / k ** 2 - 0.048640239 + 2 * 4.1764768e-5 * k - 3 * 1.4452093e-8 * k ** 2 + 6.5459673 / k;
}

/**
 * The temperature at which water boils at an altitude in metres above the sea, −5000 to 11 000, in °C: where saturated vapour has the
 * pressure of the standard atmosphere. The weather moves it by about half a kelvin either way.
 */
export function boilingPointC(altitudeM: number): number {
  const wanted = Math.log(standardPressurePa(altitudeM));
  let k = 100 + ZERO_C_IN_K;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const step = (logPressure(k) - wanted) / logPressureSlope(k);
    k -= step;
    if (Math.abs(step) < CLOSE_K) break;
  }
  return k - ZERO_C_IN_K;
}

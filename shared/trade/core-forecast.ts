import { coreLine, coreRange, coreReachesMin, type CoreLine, type CoreRange, type CoreReading } from './core-temperature.ts';

/**
 * A core begins on its semi-log line when it has come this share of the way from the dough's temperature to the plateau. Until then it
 * lags. Of a sphere whose surface is at the plateau the line is by a fifth too flat here, and by four fifths at a tenth of the way
 * (the series of Carslaw & Jaeger, Conduction of Heat in Solids, from memory; reckoned in the tests), so that a forecast from the first
 * readings beyond the lag is rather too late than too early.
 */
export const LAG_SHARE = 0.3;
/** The dough's temperature when it went in, in °C, where nobody measured it: that of a prover. Common practice. */
export const USUAL_LOADED_C = 26;

/** When a core has its target, or why nothing can be said. */
export type CoreForecast =
  | ({ readonly kind: 'reaches'; readonly atMin: number; readonly core: CoreLine } & CoreRange)
  /** The target is at the plateau of this altitude or above it. */
  | { readonly kind: 'unreachable' }
  /** The core is still flat: no line yet. */
  | { readonly kind: 'lag' }
  /** One reading beyond the lag is no line; another is needed. */
  | { readonly kind: 'needsAnother' }
  /** Readings that do not rise, or stand at the plateau already. */
  | { readonly kind: 'noRise' };

/**
 * When a core reaches `targetC`, from its readings (in any order, times in minutes) and the plateau. What was read during the lag is left
 * out; `loadedC` is the dough's temperature when it went in. Necessary, not sufficient: crust and crumb say the rest.
 */
export function coreForecast({
  readings,
  plateauC,
  targetC,
  loadedC = USUAL_LOADED_C,
}: {
  readonly readings: readonly CoreReading[];
  readonly plateauC: number;
  readonly targetC: number;
  readonly loadedC?: number;
}): CoreForecast {
  if (targetC >= plateauC) return { kind: 'unreachable' };
  const lagEndsC = loadedC + LAG_SHARE * (plateauC - loadedC);
  const usable = readings.filter(({ coreC }) => coreC >= lagEndsC);
  const [first] = usable;
  if (first === undefined) return { kind: 'lag' };
  if (usable.every(({ atMin }) => atMin === first.atMin)) return { kind: 'needsAnother' };
  return alongLine(usable, plateauC, targetC);
}

function alongLine(readings: readonly CoreReading[], plateauC: number, targetC: number): CoreForecast {
  if (readings.some(({ coreC }) => coreC >= plateauC)) return { kind: 'noRise' };
  const core = coreLine(readings, plateauC);
  const atMin = coreReachesMin(core, targetC);
  const range = coreRange(readings, plateauC, targetC);
  if (!(core.line.slopePerMin < 0) || atMin === null || range === null) return { kind: 'noRise' };
  return { kind: 'reaches', atMin, core, ...range };
}

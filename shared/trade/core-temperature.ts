import { crossingErrorMin, fitLine, lineAt, whenLineIs, type FittedLine } from './log-line.ts';

/** A core temperature that was measured, so many minutes after the bake (or anything else) began. */
export interface CoreReading {
  readonly atMin: number;
  readonly coreC: number;
}

/**
 * A core on its way to the plateau of the crumb, not to the oven's temperature (Ball's method): the distance to the plateau shrinks to a
 * tenth in every `fMin` minutes, T(t) = TR − j·(TR − T0)·10^(−t ÷ f).
 */
export interface CoreLine {
  readonly plateauC: number;
  readonly fMin: number;
  readonly line: FittedLine;
}

/**
 * The semi-log line through readings, two or more at different instants, all below the plateau. Through two it goes exactly, f = (t2 − t1) ÷
 * log10[(TR − T1) ÷ (TR − T2)]; of more it is the line of least squares of log10(TR − T).
 */
export function coreLine(readings: readonly CoreReading[], plateauC: number): CoreLine {
  const line = fitLine(readings.map(({ atMin, coreC }) => ({ atMin, value: Math.log10(plateauC - coreC) })));
  return { plateauC, fMin: -1 / line.slopePerMin, line };
}

/** When the core has a temperature, in minutes; null at the plateau and above it, which it never reaches. */
export function coreReachesMin({ line, plateauC }: CoreLine, targetC: number): number | null {
  return targetC < plateauC ? whenLineIs(line, Math.log10(plateauC - targetC)) : null;
}

/** The core's temperature at an instant by its line, in °C. */
export function coreAtC({ line, plateauC }: CoreLine, atMin: number): number {
  return plateauC - 10 ** lineAt(line, atMin);
}

/** A probe in a core is read to within this, as a standard deviation, in kelvin (common practice). */
export const PROBE_K = 0.5;
/** The plateau is known to within this, in kelvin: the weather's pressure moves water's boiling point by as much (from 970 to 1040 hPa). */
export const PLATEAU_K = 0.5;
/** A range is of two standard errors either side. */
const ERRORS = 2;

/** A range of instants, in minutes; `latestMin` null where it may never be reached. */
export interface CoreRange {
  readonly earliestMin: number;
  readonly latestMin: number | null;
}

/**
 * Between which instants the core has a temperature below its plateau: two standard errors of the line, which scatters as its points do
 * but no less than a probe, by each plateau that the weather may give. Wide near the plateau, and without an end where the plateau
 * may be lower than the target.
 */
export function coreRange(readings: readonly CoreReading[], plateauC: number, targetC: number): CoreRange | null {
  const bounds = [plateauC - PLATEAU_K, plateauC, plateauC + PLATEAU_K].map((eachC) => boundsBy(readings, eachC, targetC));
  const possible = bounds.filter((bound) => bound !== null);
  if (possible.length === 0) return null;
  const isSure = possible.length === bounds.length;
  return {
    earliestMin: Math.min(...possible.map(({ earliestMin }) => earliestMin)),
    latestMin: isSure ? Math.max(...possible.map(({ latestMin }) => latestMin)) : null,
  };
}

function boundsBy(readings: readonly CoreReading[], plateauC: number, targetC: number): { earliestMin: number; latestMin: number } | null {
  if (readings.some(({ coreC }) => coreC >= plateauC)) return null;
  const core = coreLine(readings, plateauC);
  const atMin = coreReachesMin(core, targetC);
  if (atMin === null) return null;
  const errorMin = ERRORS * crossingErrorMin(core.line, atMin, Math.max(core.line.scatter ?? 0, probeScatter(readings, plateauC)));
  return { earliestMin: atMin - errorMin, latestMin: atMin + errorMin };
}

/** What a probe's half kelvin is on the log line, on the mean over the readings: more, the nearer they are to the plateau. */
function probeScatter(readings: readonly CoreReading[], plateauC: number): number {
  const squares = readings.map(({ coreC }) => (PROBE_K / (Math.LN10 * (plateauC - coreC))) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / readings.length);
}

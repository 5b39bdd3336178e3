import type { CoreHeat } from '../../shared/floor/core-heat.ts';
import { coreAtC } from '../../shared/trade/core-temperature.ts';

const MINUTE_MS = 60_000;
/** Straight pieces that the curve is drawn with. */
const PIECES = 32;
/** So much of the time stands behind its end, that it is seen. */
const BEHIND = 0.08;

/** A core's way to its target, as it was read and as it will be by its line. */
export interface CoreCurve {
  readonly fromMs: number;
  readonly toMs: number;
  readonly targetC: number;
  readonly plateauC: number;
  readonly readings: CoreHeat['readings'];
  /** Along the semi-log line, from the first reading that is on it; empty where there is no line yet. */
  readonly points: readonly { readonly atMs: number; readonly coreC: number }[];
  readonly reachesMs: number | null;
  readonly between: { readonly fromMs: number; readonly toMs: number } | null;
}

/** The curve of a bake's core from when it went in until it is due, or now where that is past; null where nobody has read it. */
export function coreCurve(core: CoreHeat, dueMs: number, nowMs: number): CoreCurve | null {
  const { bakedFromMs: fromMs, readings, forecast, reachesMs, between, targetC, plateauC } = core;
  const [first] = readings;
  if (first === undefined) return null;
  const endMs = Math.max(dueMs, nowMs, reachesMs ?? 0, between?.toMs ?? 0);
  const toMs = endMs + (endMs - fromMs) * BEHIND;
  return {
    fromMs,
    toMs,
    targetC,
    plateauC,
    readings,
    points: forecast.kind === 'reaches' ? alongLine(core, forecast.core, first.atMs, toMs) : [],
    reachesMs,
    // Where it may never have it, it may have it until the end of the picture.
    between: between === null ? null : { fromMs: between.fromMs, toMs: between.toMs ?? toMs },
  };
}

/** What was read during the lag is on no line: it begins where the line is no colder than what was read first. */
function alongLine(
  { bakedFromMs, readings }: CoreHeat,
  line: Parameters<typeof coreAtC>[0],
  firstMs: number,
  toMs: number,
): CoreCurve['points'] {
  const coldestC = Math.min(...readings.map(({ celsius }) => celsius));
  const points = Array.from({ length: PIECES + 1 }, (_, index) => {
    const atMs = firstMs + ((toMs - firstMs) * index) / PIECES;
    return { atMs, coreC: coreAtC(line, (atMs - bakedFromMs) / MINUTE_MS) };
  });
  return points.filter(({ coreC }) => coreC >= coldestC - 1);
}

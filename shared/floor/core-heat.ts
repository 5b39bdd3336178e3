import type { Step } from '../documents/method.ts';
import { boilingPointC } from '../trade/boiling-point.ts';
import { coreForecast, type CoreForecast } from '../trade/core-forecast.ts';
import type { FloorState, StepLife, Workpiece } from './state.ts';

const MINUTE_MS = 60_000;

/** How the core of a bake goes toward its target. Instants are those of the floor; times given by hand are not in them. */
export interface CoreHeat {
  readonly bakedFromMs: number;
  readonly targetC: number;
  /** Water's boiling point at the house's altitude: no crumb gets warmer. */
  readonly plateauC: number;
  /** What was read since it went in, in the order of time. */
  readonly readings: readonly { readonly atMs: number; readonly celsius: number }[];
  /** In minutes since it went in. */
  readonly forecast: CoreForecast;
  /** When the core has its target: as read, or as foreseen; null where nothing says. */
  readonly reachesMs: number | null;
  /** Somebody read the target. */
  readonly isReached: boolean;
  /** From when to when it may have it, where that is foreseen; no end where it may never. */
  readonly between: { readonly fromMs: number; readonly toMs: number | null } | null;
}

/**
 * Where the core of a bake stands by what was read since it went in; null where its step names no target, or nobody has read it and it
 * can be reached here. Each bake of a load begins anew: what was read at the part-bake says nothing of the bake off.
 */
export function coreHeatOf(state: FloorState, workpiece: Workpiece, step: Step, life: StepLife): CoreHeat | null {
  const { startedMs: bakedFromMs } = life;
  const { coreC: targetC } = step;
  if (step.kind !== 'bake' || targetC === undefined || bakedFromMs === null) return null;
  const plateauC = boilingPointC(state.house?.document.altitudeM ?? 0);
  const readings = workpiece.readings
    .filter(({ where, atMs }) => where === 'core' && atMs >= bakedFromMs)
    .map(({ atMs, celsius }) => ({ atMs, celsius }))
    .sort((a, b) => a.atMs - b.atMs);
  const atMs = (minutes: number): number => Math.round(bakedFromMs + minutes * MINUTE_MS);
  const forecast = coreForecast({
    readings: readings.map(({ atMs: readMs, celsius }) => ({ atMin: (readMs - bakedFromMs) / MINUTE_MS, coreC: celsius })),
    plateauC,
    targetC,
  });
  if (readings.length === 0 && forecast.kind !== 'unreachable') return null;
  const reached = readings.find(({ celsius }) => celsius >= targetC);
  const foreseen = reached === undefined && forecast.kind === 'reaches' ? forecast : null;
  return {
    bakedFromMs,
    targetC,
    plateauC,
    readings,
    forecast,
    reachesMs: reached?.atMs ?? (foreseen === null ? null : atMs(foreseen.atMin)),
    isReached: reached !== undefined,
    between:
      foreseen === null
        ? null
        : { fromMs: atMs(foreseen.earliestMin), toMs: foreseen.latestMin === null ? null : atMs(foreseen.latestMin) },
  };
}

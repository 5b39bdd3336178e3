import type { FloorState } from '../../floor/state.ts';
import { wayOf } from '../../floor/way.ts';
import type { Spread } from './try-result.ts';

/** Customary: how much lengths of work spread in a house that has kept no records yet. Common practice, no source. */
const ASSUMED: Readonly<Record<Spread['kind'], number>> = { hands: 0.15, judged: 0.15, rest: 0.1, bake: 0.04 };
/** With fewer steps of a kind than this, what is customary counts. */
const LEAST_STEPS = 12;
/** Shorter than this nothing is learned from: a tap is not that exact. */
const LEAST_MIN = 2;
/** A step that took more than so many times its length was forgotten, not slow. */
const MOST_TIMES = 3;
/** Steps that are all but skipped say nothing of how long they take. */
const LEAST_MEAN = 0.1;

const MINUTE_MS = 60_000;

/**
 * How much the real lengths of steps spread about their planned ones: learned from what has been done lately, where that is
 * enough, with the customary spread otherwise. Inferred steps and such that were given more time on purpose do not count.
 */
export function spreadsOf(state: FloorState): readonly Spread[] {
  const ratios: Record<Spread['kind'], number[]> = { hands: [], judged: [], rest: [], bake: [] };
  for (const workpiece of Object.values(state.workpieces)) {
    for (const step of wayOf(state, workpiece)) {
      const life = workpiece.steps[step.id];
      if (life === undefined || life.status !== 'done' || life.inferred || life.pins === null) continue;
      if (life.startedMs === null || life.endedMs === null) continue;
      const plannedMin = life.pins.targetMin * life.pins.factor;
      const ratio = (life.endedMs - life.startedMs) / MINUTE_MS / plannedMin;
      if (plannedMin < LEAST_MIN || ratio <= 0 || ratio > MOST_TIMES) continue;
      ratios[step.kind === 'timed' ? 'rest' : step.kind].push(ratio);
    }
  }
  return (Object.keys(ratios) as Spread['kind'][]).map((kind) => spreadOf(kind, ratios[kind]));
}

function spreadOf(kind: Spread['kind'], ratios: readonly number[]): Spread {
  if (ratios.length < LEAST_STEPS) return assumedSpread(kind);
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const variance = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / (ratios.length - 1);
  return { kind, mean: Math.max(LEAST_MEAN, mean), spread: Math.min(1, Math.sqrt(variance) / mean), learnedFrom: ratios.length };
}

/** What counts while nothing is known: half of the steps take longer than planned, half less; some take much longer. */
function assumedSpread(kind: Spread['kind']): Spread {
  const spread = ASSUMED[kind];
  return { kind, mean: Math.sqrt(1 + spread ** 2), spread, learnedFrom: 0 };
}

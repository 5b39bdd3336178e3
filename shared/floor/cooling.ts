import type { CoolingRule, RuleSet } from '../trade/holding-rules.ts';
import { coolingOutlook, type OutlookStep } from '../trade/cooling-outlook.ts';
import { sphereTauMin, tauEstimate, type DriftPair } from '../trade/time-constant.ts';
import type { KeptCourse } from './kept-courses.ts';
import { airAt } from './place-air.ts';
import type { FloorState, Stay, Workpiece } from './state.ts';
import { warmedG } from './warmth.ts';

const MINUTE_MS = 60_000;
/**
 * The air about food where nothing says how warm it is, in °C: a warm kitchen's, in which it passes no rule, so that whoever reads it is
 * asked early. Our choice.
 */
const UNSAID_C = 25;

/** A step of a cooling on the clock of the floor. */
export interface CoolingStepAt {
  readonly toC: number;
  readonly byMs: number | null;
  readonly reachesMs: number | null;
  readonly passes: boolean;
  /** Somebody read it at or below. */
  readonly isSeen: boolean;
  readonly clause: string;
}

/** How food from the heat cools: what was read, and what is to be expected. */
export interface Cooling {
  readonly fromMs: number;
  readonly rule: CoolingRule;
  /** What was read of it since, in the order of time. */
  readonly readings: readonly { readonly atMs: number; readonly celsius: number }[];
  readonly ambientC: number;
  readonly tauMin: number;
  readonly steps: readonly CoolingStepAt[];
}

/**
 * Where a cooling stands by the rule's steps. Minutes count from when it was read at the rule's upper temperature; where nobody read
 * it there, from when it came out of the heat. How fast it cools is taken from pairs of readings in one place; before, from a sphere of its weight: a
 * shallow tray is faster. A forecast, no measurement.
 */
export function coolingOf(state: FloorState, rules: RuleSet, course: KeptCourse, workpiece: Workpiece): Cooling | null {
  if (!course.isHot || rules.cooling === null) return null;
  const rule = rules.cooling;
  const { fromMs } = course;
  const readings = course.readings.filter(({ atMs }) => atMs >= fromMs).map(({ atMs, celsius }) => ({ atMs, celsius }));
  // Where it stands now is where it goes on cooling from its last reading, whenever it came there.
  const stay = course.stays.at(-1);
  const ambientC = airAt(state, stay?.placeId ?? null, Math.max(stay?.sinceMs ?? fromMs, readings.at(-1)?.atMs ?? fromMs)) ?? UNSAID_C;
  const tauMin = tauEstimate(pairsOf(state, course.stays, readings), sphereTauMin(warmedG(workpiece)))?.tauMin ?? 1;
  const wasHot = readings.some(({ celsius }) => celsius >= rule.fromC);
  const counted = wasHot ? readings : [{ atMs: fromMs, celsius: rule.fromC }, ...readings.filter(({ atMs }) => atMs > fromMs)];
  const outlook = coolingOutlook(
    { readings: counted.map(({ atMs, celsius }) => ({ atMin: (atMs - fromMs) / MINUTE_MS, coreC: celsius })), ambientC, tauMin },
    rule,
  );
  return { fromMs, rule, readings, ambientC, tauMin, steps: outlook.map((step) => onClock(step, fromMs, readings)) };
}

function onClock({ toC, byMin, reachesMin, passes, clause }: OutlookStep, fromMs: number, readings: Cooling['readings']): CoolingStepAt {
  const atMs = (minutes: number | null): number | null => (minutes === null ? null : Math.round(fromMs + minutes * MINUTE_MS));
  return { toC, byMs: atMs(byMin), reachesMs: atMs(reachesMin), passes, isSeen: readings.some(({ celsius }) => celsius <= toC), clause };
}

/** Neighbouring readings between which it was not moved. */
function pairsOf(state: FloorState, stays: readonly Stay[], readings: Cooling['readings']): readonly DriftPair[] {
  return readings.slice(1).flatMap((after, index) => {
    const before = readings[index];
    if (before === undefined || stays.some(({ sinceMs }) => sinceMs > before.atMs && sinceMs <= after.atMs)) return [];
    const ambientC = airAt(state, stays.findLast(({ sinceMs }) => sinceMs <= before.atMs)?.placeId ?? null, before.atMs);
    if (ambientC === null) return [];
    const minutes = (after.atMs - before.atMs) / MINUTE_MS;
    return [{ minutes, beforeC: before.celsius, afterC: after.celsius, ambientC, selfHeatKPerH: 0 }];
  });
}

/**
 * When a cooling has failed its rule: at the instant by which a step had to be reached and, as was read, was not. The last step has to be
 * shown by a reading; of the ones before it, what is read later tells. Null while nothing says so and nothing runs.
 */
export function coolingLimit({ steps, readings }: Cooling): { readonly limitMs: number; readonly clause: string } | null {
  for (const [index, { toC, byMs, reachesMs, isSeen, clause }] of steps.entries()) {
    if (byMs === null) continue;
    const wasAbove = readings.some(({ atMs, celsius }) => atMs >= byMs && celsius > toC);
    const wasLate = isSeen && (reachesMs === null || reachesMs > byMs);
    const isUnshown = index === steps.length - 1 && !isSeen;
    if (wasAbove || wasLate || isUnshown) return { limitMs: byMs, clause };
  }
  return null;
}

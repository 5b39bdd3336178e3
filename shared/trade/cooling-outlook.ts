import type { CoreReading } from './core-temperature.ts';
import { minutesUntilC } from './dough-drift.ts';
import type { CoolingRule } from './holding-rules.ts';

/** One step of a cooling rule on the clock of the readings. */
export interface OutlookStep {
  readonly toC: number;
  /** When the food has to be there; null while nothing counts yet. */
  readonly byMin: number | null;
  /** When it is, or will be; null for never. */
  readonly reachesMin: number | null;
  readonly passes: boolean;
  readonly clause: string;
}

/**
 * Where a cooling stands: what the readings (in any order, times in minutes) have shown, and what Newton's law makes of
 * the rest from the last of them on, in air of `ambientC` with a time constant of `tauMin`. Between two readings the food is taken to
 * cool evenly on the log scale of its distance from the air. A forecast, no measurement.
 */
export function coolingOutlook(
  { readings, ambientC, tauMin }: { readonly readings: readonly CoreReading[]; readonly ambientC: number; readonly tauMin: number },
  rule: CoolingRule,
): readonly OutlookStep[] {
  const inOrder = [...readings].sort((a, b) => a.atMin - b.atMin);
  const passedMin = (toC: number): number | null => seenAt(inOrder, ambientC, toC) ?? foreseenAt(inOrder, ambientC, tauMin, toC);
  const countsFromMin = passedMin(rule.fromC);
  return rule.steps.map(({ toC, withinMin, clause }): OutlookStep => {
    const byMin = countsFromMin === null ? null : countsFromMin + withinMin;
    const reachesMin = passedMin(toC);
    return { toC, byMin, reachesMin, passes: byMin !== null && reachesMin !== null && reachesMin <= byMin, clause };
  });
}

/** When the readings show a temperature passed downwards for the first time: at the first of them, or between two. */
function seenAt(readings: readonly CoreReading[], ambientC: number, toC: number): number | null {
  const index = readings.findIndex(({ coreC }) => coreC <= toC);
  const [before, after] = [readings[index - 1], readings[index]];
  if (after === undefined) return null;
  return before === undefined ? after.atMin : before.atMin + (after.atMin - before.atMin) * shareOfWay(before, after, ambientC, toC);
}

function shareOfWay(before: CoreReading, after: CoreReading, ambientC: number, toC: number): number {
  const share = Math.log((before.coreC - ambientC) / (toC - ambientC)) / Math.log((before.coreC - ambientC) / (after.coreC - ambientC));
  // Read at the air's temperature or below it: no log scale, so evenly.
  return Number.isFinite(share) ? share : (before.coreC - toC) / (before.coreC - after.coreC);
}

function foreseenAt(readings: readonly CoreReading[], ambientC: number, tauMin: number, toC: number): number | null {
  const last = readings[readings.length - 1];
  if (last === undefined) return null;
  const takesMin = minutesUntilC({ doughC: last.coreC, ambientC, tauMin, selfHeatKPerH: 0 }, toC);
  return takesMin === null ? null : last.atMin + takesMin;
}

import { minutesUntilC, type Drift } from './dough-drift.ts';
import type { CoolingRule } from './holding-rules.ts';

/** One step of a cooling rule and what a curve makes of it. All minutes count from when the food passes `fromC`, the rule's upper temperature. */
export interface CoolingStep {
  readonly fromC: number;
  readonly toC: number;
  readonly limitMin: number;
  /** Null where the food never gets there. */
  readonly takesMin: number | null;
  readonly passes: boolean;
  readonly clause: string;
}

/** What a cooling curve makes of a rule. `countsAfterMin`: when the minutes begin to count, after its start; null for never. */
export interface CoolingForecast {
  readonly passes: boolean;
  readonly countsAfterMin: number | null;
  readonly steps: readonly CoolingStep[];
}

/**
 * Whether food that cools by Newton's law (no heat of its own) gets through each step of a rule in time. The minutes count from when the curve
 * passes the rule's upper temperature, or from the start where it begins at or below it. A forecast, no measurement: a probe in the
 * middle of the food decides.
 */
export function coolingForecast(
  { startC, ambientC, tauMin }: { readonly startC: number; readonly ambientC: number; readonly tauMin: number },
  rule: CoolingRule,
): CoolingForecast {
  const drift: Drift = { doughC: startC, ambientC, tauMin, selfHeatKPerH: 0 };
  const countsAfterMin = coolsToAfterMin(drift, rule.fromC);
  const steps = rule.steps.map(({ toC, withinMin, clause }): CoolingStep => {
    const reachedMin = coolsToAfterMin(drift, toC);
    const takesMin = reachedMin === null || countsAfterMin === null ? null : reachedMin - countsAfterMin;
    return { fromC: rule.fromC, toC, limitMin: withinMin, takesMin, passes: takesMin !== null && takesMin <= withinMin, clause };
  });
  return { passes: steps.every(({ passes }) => passes), countsAfterMin, steps };
}

/** When a drift is at or below a temperature for the first time; null for never. */
function coolsToAfterMin(drift: Drift, toC: number): number | null {
  return drift.doughC <= toC ? 0 : minutesUntilC(drift, toC);
}

/** The longest time constant with which food gets through all of a rule in such air, in minutes; 0 where no food does. */
export function longestTauMin(ambientC: number, rule: CoolingRule): number {
  const each = rule.steps.map(({ toC, withinMin }) =>
    ambientC < toC ? withinMin / Math.log((rule.fromC - ambientC) / (toC - ambientC)) : 0,
  );
  return Math.min(...each);
}

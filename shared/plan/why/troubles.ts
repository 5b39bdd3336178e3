import type { BuiltDay, StepPlace } from '../build/built-day.ts';
import type { DaySolution } from '../day/problem.ts';
import type { Trouble } from './reason.ts';

/** Less than this is nothing. */
export const NOTHING_MIN = 1;
/** Cleanings are no dough: that one comes late is foreseen, and explained by nothing but the day. */
const CLEANING = 'clean>';

/** A trouble with the activity that comes too late, or not when it is pinned to. */
export interface FoundTrouble {
  readonly trouble: Trouble;
  readonly activity: number;
}

/** What is not right with a day, each kind by itself, the worst first. Several lags or goals of one step or order are one trouble. */
export function troublesOf(
  built: BuiltDay,
  solution: DaySolution,
): { readonly late: readonly FoundTrouble[]; readonly spoils: readonly FoundTrouble[]; readonly pins: readonly FoundTrouble[] } {
  return { late: lateOnes(built, solution), spoils: spoiledOnes(built, solution), pins: brokenPins(built, solution) };
}

/** By how many minutes each late order is late: as its latest pieces are. */
export function lateMinByOrder(built: BuiltDay, solution: Pick<DaySolution, 'late'>): ReadonlyMap<string, number> {
  const byOrder = new Map<string, number>();
  for (const { goal, byS } of solution.late) {
    const orderId = built.goalOrders[goal];
    if (orderId !== undefined) byOrder.set(orderId, Math.max(byOrder.get(orderId) ?? 0, byS / 60));
  }
  return byOrder;
}

/** Minutes by which doughs wait longer than they may, all together. */
export function spoilMinOf(built: BuiltDay, solution: DaySolution): number {
  return sumMin(spoiledOnes(built, solution));
}

/** Minutes by which steps are off their pins, all together. */
export function pinMinOf(built: BuiltDay, solution: DaySolution): number {
  return sumMin(brokenPins(built, solution));
}

function sumMin(troubles: readonly FoundTrouble[]): number {
  return troubles.reduce((sum, { trouble }) => sum + trouble.byMin, 0);
}

function lateOnes(built: BuiltDay, solution: DaySolution): FoundTrouble[] {
  const byOrder = new Map<string, FoundTrouble>();
  for (const { goal, byS } of solution.late) {
    const orderId = built.goalOrders[goal];
    const activity = built.problem.goals[goal]?.activity;
    const byMin = byS / 60;
    if (orderId === undefined || activity === undefined || byMin < NOTHING_MIN) continue;
    if (byMin > (byOrder.get(orderId)?.trouble.byMin ?? 0)) byOrder.set(orderId, { trouble: { kind: 'late', orderId, byMin }, activity });
  }
  return worstFirst([...byOrder.values()]);
}

function spoiledOnes(built: BuiltDay, solution: DaySolution): FoundTrouble[] {
  const byActivity = new Map<number, FoundTrouble>();
  for (const { lag, byS } of solution.spoiled) {
    const activity = built.problem.lags[lag]?.to;
    const step = activity === undefined ? undefined : built.steps[activity];
    const byMin = byS / 60;
    if (activity === undefined || step === undefined || byMin < NOTHING_MIN || step.batchKey.startsWith(CLEANING)) continue;
    if (byMin > (byActivity.get(activity)?.trouble.byMin ?? 0))
      byActivity.set(activity, { trouble: { kind: 'spoils', ...placeOf(step), byMin }, activity });
  }
  return worstFirst([...byActivity.values()]);
}

function brokenPins(built: BuiltDay, solution: DaySolution): FoundTrouble[] {
  return worstFirst(
    solution.pinsBroken.flatMap((activity): FoundTrouble[] => {
      const step = built.steps[activity];
      const pinnedS = built.problem.activities[activity]?.pinnedStartS;
      if (step === undefined || pinnedS === undefined || pinnedS === null) return [];
      const byMin = Math.abs((solution.startsS[activity] ?? 0) - pinnedS) / 60;
      return [{ trouble: { kind: 'pinBroken', ...placeOf(step), atMs: built.originMs + pinnedS * 1000, byMin }, activity }];
    }),
  );
}

function worstFirst(found: FoundTrouble[]): FoundTrouble[] {
  return found.sort((a, b) => b.trouble.byMin - a.trouble.byMin);
}

/** Where a step belongs, as reasons say it. */
export function placeOf({
  batchKey,
  cut,
  load,
  stepId,
}: StepPlace): Pick<StepPlace, 'batchKey' | 'stepId'> & { cut?: number; load?: number } {
  return { batchKey, stepId, ...(cut === undefined ? {} : { cut }), ...(load === undefined ? {} : { load }) };
}

import { targetMin, type Step } from '../documents/method.ts';
import { dueOf } from './due.ts';
import { versionKey, type FloorState, type Workpiece } from './state.ts';
import { positionOf, wayOf } from './way.ts';

const MINUTE_MS = 60_000;

/** When a side prep is wanted and when it may be begun, following the dough that it joins. */
export interface PrepTimes {
  /** When the step that takes it begins, if every step takes its target. */
  readonly joinsMs: number;
  /** Not to be begun before: by its order rule, or because it is last minute. */
  readonly notBeforeMs: number | null;
}

/**
 * When a side prep that nobody has begun is due: so long before it joins as it takes and should be ready, but not
 * before its order rules. Follows from the dough it serves as that stands, by targets from its due time on, so that time
 * alone does not move it. Null where it serves nothing that is still ahead: then its plan counts.
 */
export function prepDueMs(state: FloorState, prep: Workpiece): number | null {
  const times = prepTimes(state, prep);
  if (times === null || prep.serves === null) return null;
  const wantedMs = times.joinsMs - (prepWorkMin(wayOf(state, prep)) + prep.serves.readyMin) * MINUTE_MS;
  return times.notBeforeMs === null ? wantedMs : Math.max(wantedMs, times.notBeforeMs);
}

/** How many minutes a prep takes until it can be kept: the last rest is where it is kept until it joins, and takes none of them. */
export function prepWorkMin(way: readonly Step[]): number {
  const isKeptAtLast = way.at(-1)?.kind === 'timed';
  // A prep is not in pieces: its work is as long as the method says.
  return way.slice(0, isKeptAtLast ? -1 : undefined).reduce((sum, step) => sum + targetMin(step, null), 0);
}

/** When the prep joins and may be begun; null where its dough is no longer on the floor or past that step. */
export function prepTimes(state: FloorState, prep: Workpiece): PrepTimes | null {
  const { serves } = prep;
  if (serves === null) return null;
  const joins = stepAhead(state, serves.workpieceId, serves.stepId);
  if (joins === null) return null;
  const limits: number[] = [];
  if (serves.withinMin !== undefined) limits.push(joins - serves.withinMin * MINUTE_MS);
  if (serves.notBeforeStepId !== undefined) {
    const begins = stepAhead(state, serves.workpieceId, serves.notBeforeStepId);
    if (begins !== null) limits.push(begins);
  }
  return { joinsMs: joins, notBeforeMs: limits.length === 0 ? null : Math.max(...limits) };
}

/** When a step of a dough, or of one of the cuts and loads that came of it, begins or is expected to; the earliest. Null where it is behind them all. */
function stepAhead(state: FloorState, workpieceId: string, stepId: string): number | null {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined) return null;
  if (workpiece.finishedMs !== null) {
    const found = workpiece.childIds.map((childId) => stepAhead(state, childId, stepId)).filter((atMs) => atMs !== null);
    return found.length === 0 ? null : Math.min(...found);
  }
  const due = dueOf(state, workpiece);
  if (due === null) return null;
  const way = wayOf(state, workpiece);
  const ways = [way, ...(workpiece.productId === null ? cutWays(state, workpiece).map((cutWay) => [...way, ...cutWay]) : [])];
  const from = positionOf(way, workpiece);
  const found = ways.flatMap((steps) => {
    const index = steps.findIndex((step) => step.id === stepId);
    if (index < from) return [];
    if (index === from) return [due.startedMs ?? due.dueMs];
    const current = due.startedMs === null ? from : from + 1;
    return [due.dueMs + steps.slice(current, index).reduce((sum, step) => sum + targetMin(step, workpiece.pieces), 0) * MINUTE_MS];
  });
  return found.length === 0 ? null : Math.min(...found);
}

function cutWays(state: FloorState, workpiece: Workpiece): readonly (readonly Step[])[] {
  return workpiece.cuts.map((cut) => state.products[versionKey(cut.productId, cut.productVersion)]?.way ?? []);
}

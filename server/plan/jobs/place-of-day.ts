import type { BuiltDay, StepPlace } from '../../../shared/plan/build/built-day.ts';
import { edgeOffsetS, activityAt } from '../../../shared/plan/day/edges.ts';
import type { DaySolution, Edge } from '../../../shared/plan/day/problem.ts';

/** The instant of an edge of an activity in a solution. */
export function edgeMs(built: BuiltDay, startsS: Int32Array, activity: number, edge: Edge): number {
  return built.originMs + (startS(startsS, activity) + edgeOffsetS(activityAt(built.problem, activity), edge)) * 1000;
}

/** When an activity begins, in seconds after the origin. Throws where the solution has no such activity. */
export function startS(startsS: Int32Array, activity: number): number {
  const found = startsS[activity];
  if (found === undefined) throw new RangeError(`the solution has no activity ${activity}`);
  return found;
}

/** Where a step belongs, as plans and proposals write it. */
interface NamedPlace {
  readonly batchKey: string;
  readonly cut?: number | undefined;
  readonly load?: number | undefined;
  readonly stepId: string;
}

/** A place by one text: batch or workpiece, cut, load, step, as activities are called. */
export function placeKey({ batchKey, cut, load, stepId }: NamedPlace): string {
  return `${batchKey}|${cut ?? ''}|${load ?? ''}|${stepId}`;
}

/** The step that waits too long where a lag is not kept: the rest that it bounds, or the step that it leads to. */
export function waitingStep(built: BuiltDay, lag: number): StepPlace | null {
  const rest = built.rests.find(({ lags }) => lags.includes(lag));
  if (rest !== undefined) return rest;
  const to = built.problem.lags[lag]?.to;
  return to === undefined ? null : (built.steps[to] ?? null);
}

/** From when on a lag's dough waits too long. */
export function spoilsFromMs(built: BuiltDay, solution: Pick<DaySolution, 'startsS'>, lag: number): number {
  const found = built.problem.lags[lag];
  if (found === undefined) throw new RangeError(`the day has no lag ${lag}`);
  return edgeMs(built, solution.startsS, found.from, found.fromEdge) + (found.mostS ?? 0) * 1000;
}

import { MOST_MOVED, type MovedStep, type PlannedStep } from '../../../shared/floor/events.ts';
import { planPlacesOf } from '../../../shared/floor/planned-step.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { BuiltDay, StepOf, StepPlace } from '../../../shared/plan/build/built-day.ts';
import { stepsOf } from '../../../shared/plan/build/proposed-steps.ts';
import type { DaySolution } from '../../../shared/plan/day/problem.ts';
import type { ProposedStep } from '../../../shared/plan/proposed.ts';
import { MoveReasons, type Hint } from './moved-because.ts';
import { placeKey } from './place-of-day.ts';

/** Moves of more than this are told. */
export const MOVED_MS = 2 * 60_000;
/** Less than this is how an instant was rounded. */
const SAME_MS = 1000;

/** What of a solution is not as the plan has it, and which moves are worth a line; in order of time. */
export function changesOf(
  state: FloorState,
  built: BuiltDay,
  solution: DaySolution,
  hint: Hint,
): { readonly starts: readonly PlannedStep[]; readonly moved: readonly MovedStep[] } {
  const stepByPlace = new Map<string, StepOf>([...built.rests, ...built.steps].map((step) => [placeKey(step), step]));
  const activityByPlace = new Map(built.steps.map((step) => [placeKey(step), step.activity]));
  const reasons = new MoveReasons(built, solution, hint);
  const planned = plannedByPlace(state);
  const starts: PlannedStep[] = [];
  const moved: MovedStep[] = [];
  const inOrder = [...stepsOf(built, solution)].sort((a, b) => a.plannedStartMs - b.plannedStartMs);
  for (const proposed of inOrder) {
    const key = placeKey(proposed);
    const step = stepByPlace.get(key);
    if (step === undefined || step.workpieceId === null || step.status !== 'ahead') continue;
    const before = plannedBefore(state, planned, step);
    if (before !== null && isSame(before, proposed)) continue;
    const { batchKey: _key, ...start } = proposed;
    starts.push({ ...start, workpieceId: step.workpieceId });
    const activity = activityByPlace.get(key);
    // Rests go with the work around them; a line for each would say everything twice.
    if (before === null || activity === undefined || step.kind === 'timed') continue;
    if (Math.abs(before.plannedStartMs - proposed.plannedStartMs) <= MOVED_MS || moved.length >= MOST_MOVED) continue;
    const { cut, load, stepId } = start;
    moved.push({
      workpieceId: step.workpieceId,
      ...(cut === undefined ? {} : { cut }),
      ...(load === undefined ? {} : { load }),
      stepId,
      fromMs: before.plannedStartMs,
      toMs: proposed.plannedStartMs,
      because: reasons.of(activity),
    });
  }
  return { starts, moved };
}

/** What the plan in force says of steps, by their places in it. */
function plannedByPlace(state: FloorState): ReadonlyMap<string, PlannedStep> {
  const planned = new Map<string, PlannedStep>();
  for (const [batchKey, steps] of Object.entries(state.plan?.steps ?? {}))
    for (const step of steps) planned.set(placeKey({ ...step, batchKey }), step);
  return planned;
}

/** What the plan says of a step: under its own workpiece, or as a cut or load of what that came of. */
function plannedBefore(state: FloorState, planned: ReadonlyMap<string, PlannedStep>, step: StepPlace): PlannedStep | null {
  const workpiece = step.workpieceId === null ? undefined : state.workpieces[step.workpieceId];
  if (workpiece === undefined) return null;
  for (const place of planPlacesOf(state, workpiece)) {
    const { cut = place.cut, load = place.load, stepId } = step;
    const found = planned.get(placeKey({ batchKey: place.workpieceId, cut, load, stepId }));
    if (found !== undefined) return found;
  }
  return null;
}

function isSame(before: PlannedStep, now: ProposedStep): boolean {
  const beforeEndMs = before.plannedEndMs ?? before.plannedStartMs;
  return (
    Math.abs(before.plannedStartMs - now.plannedStartMs) < SAME_MS &&
    Math.abs(beforeEndMs - now.plannedEndMs) < SAME_MS &&
    before.resources.length === now.resources.length &&
    before.resources.every(({ kind, id }, index) => now.resources[index]?.kind === kind && now.resources[index].id === id)
  );
}

import type { PlannedStep } from './events.ts';
import type { FloorState, Workpiece } from './state.ts';

/** Where a workpiece stands below the one that its plan was made for: the n-th cut of it, the n-th load of that. */
export interface PlanPlace {
  readonly workpieceId: string;
  readonly cut: number | undefined;
  readonly load: number | undefined;
}

/** The n-th cut, the n-th load: parts that are not there yet. */
export interface PlanBelow {
  readonly cut?: number;
  readonly load?: number;
}

/**
 * The places under which a plan may name a workpiece, its own first: what was divided since the plan was made stands in
 * it as a cut or load of what it came of. Loads and cuts are counted from 0 in the order in which they were made.
 */
export function planPlacesOf(state: FloorState, workpiece: Workpiece): readonly PlanPlace[] {
  const places: PlanPlace[] = [{ workpieceId: workpiece.id, cut: undefined, load: undefined }];
  const parent = workpiece.parentId === null ? undefined : state.workpieces[workpiece.parentId];
  if (parent === undefined) return places;
  const index = ofKind(state, parent, workpiece.kind).indexOf(workpiece.id);
  if (index === -1) return places;
  if (workpiece.kind === 'cut') places.push({ workpieceId: parent.id, cut: index, load: undefined });
  if (workpiece.kind !== 'load') return places;
  for (const above of planPlacesOf(state, parent)) places.push({ ...above, load: index });
  return places;
}

/** When the plan has a step of a workpiece begin; null where there is no plan, or none for it. */
export function plannedStepOf(state: FloorState, workpiece: Workpiece, stepId: string): PlannedStep | null {
  return plannedStepBelow(state, workpiece, {}, stepId);
}

/** A step of a cut or load that a workpiece is still to be divided into; null where no plan has it. */
export function plannedStepBelow(state: FloorState, workpiece: Workpiece, at: PlanBelow, stepId: string): PlannedStep | null {
  if (state.plan === null) return null;
  for (const place of planPlacesOf(state, workpiece)) {
    const cut = at.cut ?? place.cut;
    const load = at.load ?? place.load;
    const found = state.plan.steps[place.workpieceId]?.find((step) => step.stepId === stepId && step.cut === cut && step.load === load);
    if (found !== undefined) return found;
  }
  return null;
}

function ofKind(state: FloorState, parent: Workpiece, kind: Workpiece['kind']): readonly string[] {
  return parent.childIds.filter((id) => state.workpieces[id]?.kind === kind);
}

import type { Step } from '../../shared/documents/method.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';

/** The step of a workpiece by its id; null where either is no longer in the live state. Apart from the card, for pages that show no doughs. */
export function stepOf(state: FloorState, workpieceId: string, stepId: string): Step | null {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined) return null;
  return wayOf(state, workpiece).find((step) => step.id === stepId) ?? null;
}

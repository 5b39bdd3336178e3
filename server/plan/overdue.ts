import { dueOf } from '../../shared/floor/due.ts';
import { plannedStepOf } from '../../shared/floor/planned-step.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';

/** So long after its planned time something counts as late to begin or to end; as moves that are told. */
export const OVERDUE_MS = 2 * 60_000;

/** When the first of what is planned next will be late if nobody does anything; null where nothing is planned. */
export function nextOverdueMs(state: FloorState): number | null {
  let firstMs: number | null = null;
  for (const workpiece of Object.values(state.workpieces)) {
    const plannedMs = plannedNextMs(state, workpiece);
    if (plannedMs !== null && (firstMs === null || plannedMs < firstMs)) firstMs = plannedMs;
  }
  return firstMs === null ? null : firstMs + OVERDUE_MS;
}

/** When the plan has the next thing happen to a workpiece: what waits begins, what is worked on ends. */
function plannedNextMs(state: FloorState, workpiece: Workpiece): number | null {
  const due = dueOf(state, workpiece);
  if (due === null) return null;
  const planned = plannedStepOf(state, workpiece, due.action.id);
  if (planned === null) return null;
  const isAtWork = due.phase === 'working' || due.phase === 'judging';
  if (!isAtWork) return planned.plannedStartMs;
  const lengthMs = (planned.plannedEndMs ?? planned.plannedStartMs) - planned.plannedStartMs;
  // It may have begun at another time than planned; more time that was given is part of when it is due.
  return Math.max(due.dueMs, (due.startedMs ?? planned.plannedStartMs) + lengthMs);
}

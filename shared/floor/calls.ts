import { calledStep, openDues, roleAt, type Due } from './due.ts';
import { isStronger } from './role.ts';
import type { CommandOf } from './commands.ts';
import type { FloorState } from './state.ts';

/** The calls that are true at an instant and not raised yet, as commands to the floor. `dues` are the state's, where somebody has them already. */
export function callsToRaise(state: FloorState, nowMs: number, dues: readonly Due[] = openDues(state)): readonly CommandOf<'raiseCall'>[] {
  const commands: CommandOf<'raiseCall'>[] = [];
  for (const due of dues) {
    const level = roleAt(due, nowMs);
    if (level === 'running') continue;
    const { call } = due.workpiece;
    const stepId = calledStep(due, nowMs).id;
    if (call !== null && call.stepId === stepId && !isStronger(level, call.level)) continue;
    commands.push({ type: 'raiseCall', workpieceId: due.workpiece.id, stepId, level });
  }
  return commands;
}

/** The next instant after `nowMs` at which some role changes by time alone, or null. The one thing that is waited for. */
export function nextRoleChangeMs(state: FloorState, nowMs: number, dues: readonly Due[] = openDues(state)): number | null {
  let next: number | null = null;
  for (const due of dues) {
    for (const atMs of changesOf(due)) {
      if (atMs > nowMs && (next === null || atMs < next)) next = atMs;
    }
  }
  return next;
}

function changesOf(due: Due): number[] {
  const changes = [due.dueMs, due.lateMs];
  if (due.prompt !== null) changes.push(due.prompt.dueMs, due.prompt.lateMs);
  if (due.lostMs !== null) changes.push(due.lostMs);
  if (due.workpiece.heldUntilMs !== null) changes.push(due.workpiece.heldUntilMs);
  return changes;
}

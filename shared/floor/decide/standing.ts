import type { Step } from '../../documents/method.ts';
import { accepted, assert, refused, type Result } from '../../result.ts';
import type { CommandContext } from '../commands.ts';
import { dueOf, type Due } from '../due.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, StepLife, Workpiece } from '../state.ts';
import { positionOf, wayOf } from '../way.ts';

/** A workpiece with its way and the place on it, as every decider needs it. */
export interface Standing {
  readonly workpiece: Workpiece;
  readonly way: readonly Step[];
  readonly index: number;
  readonly due: Due;
  /** When the command's fact is taken to have happened: the tap, but never before what came before it. */
  readonly atMs: number;
}

/** Finds the workpiece on the floor, or says why there is none to act on. */
export function standingOf(state: FloorState, workpieceId: string, context: CommandContext): Result<Standing, Refusal> {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined) return refused({ code: 'workpieceUnknown', workpieceId });
  if (workpiece.finishedMs !== null) return refused({ code: 'workpieceFinished', tag: workpiece.tag, atMs: workpiece.finishedMs });
  const due = dueOf(state, workpiece);
  assert(due !== null, `${workpiece.tag} is open and not due`);
  const way = wayOf(state, workpiece);
  return accepted({ workpiece, way, index: positionOf(way, workpiece), due, atMs: clampTap(workpiece, context) });
}

/** The tap's time, not before the last thing that happened to the workpiece and not in the future. */
function clampTap(workpiece: Workpiece, context: CommandContext): number {
  let earliestMs = workpiece.parentId === null ? 0 : workpiece.plannedStartMs;
  for (const life of Object.values(workpiece.steps)) {
    earliestMs = Math.max(earliestMs, life.startedMs ?? 0, life.endedMs ?? 0);
  }
  return Math.min(context.nowMs, Math.max(earliestMs, context.tapMs));
}

/** What finished workpieces and steps that are over, not reached or not there have to say to a tap on a step. */
export function believedStep(state: FloorState, workpieceId: string, stepId: string, context: CommandContext): Result<Standing, Refusal> {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece !== undefined) {
    // A cut's parent, or a dough that is packed: the second thumb still wants to know who was first.
    const over = overRefusal(state, workpiece, stepId);
    if (over !== null) return refused(over);
  }
  const standing = standingOf(state, workpieceId, context);
  if (!standing.ok) return standing;
  const { way, due } = standing.value;
  if (stepId === due.action.id || stepId === due.step.id) return standing;
  const tag = standing.value.workpiece.tag;
  if (!way.some((step) => step.id === stepId)) return refused({ code: 'stepUnknown', tag, stepId });
  return refused({ code: 'stepNotReached', tag, stepId, currentStepId: due.action.id });
}

function overRefusal(state: FloorState, workpiece: Workpiece, stepId: string): Refusal | null {
  const life = workpiece.steps[stepId];
  if (life === undefined || life.status === 'started') return null;
  // A pot that ripens is to be fed again, though its feed is done.
  if (workpiece.stock !== null && dueOf(state, workpiece)?.action.id === stepId) return null;
  return alreadyDone(workpiece, stepId, life);
}

/** The refusal for a step that somebody has done or left out already. */
export function alreadyDone(workpiece: Workpiece, stepId: string, life: StepLife): Refusal {
  return {
    code: 'stepAlreadyDone',
    tag: workpiece.tag,
    stepId,
    atMs: life.endedMs ?? 0,
    skipped: life.status === 'skipped',
    ...by(life.endedBy, life.stationId),
  };
}

/** The refusal for a step that somebody began already. */
export function alreadyStarted(workpiece: Workpiece, stepId: string, life: StepLife): Refusal {
  return { code: 'stepAlreadyStarted', tag: workpiece.tag, stepId, atMs: life.startedMs ?? 0, ...by(life.startedBy, life.stationId) };
}

function by(deviceId: string | null, stationId: string | null): { deviceId?: string; stationId?: string } {
  return { ...(deviceId === null ? {} : { deviceId }), ...(stationId === null ? {} : { stationId }) };
}

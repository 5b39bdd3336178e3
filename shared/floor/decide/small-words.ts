import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { believedStep } from './standing.ts';

/** A little more: the step under way, or the one that waits, gets so many minutes on top. */
export function decideMoreTime(state: FloorState, command: CommandOf<'giveMoreTime'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due, atMs } = believed.value;
  // The call is named after the step that ends a rest, the minutes go to the rest itself.
  return accepted([{ type: 'moreTimeGiven', workpieceId: workpiece.id, stepId: due.step.id, minutes: command.minutes, atMs }]);
}

/** Sets a call aside for so many minutes. The dough goes on: when it is being lost it calls all the same. */
export function decideHold(state: FloorState, command: CommandOf<'holdWorkpiece'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due, atMs } = believed.value;
  return accepted([
    { type: 'workpieceHeld', workpieceId: workpiece.id, stepId: due.action.id, atMs, untilMs: atMs + command.minutes * 60_000 },
  ]);
}

/** Ends a hold before its time. */
export function decideRelease(state: FloorState, command: CommandOf<'releaseWorkpiece'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due, atMs } = believed.value;
  if (workpiece.heldUntilMs === null || workpiece.heldUntilMs <= context.nowMs)
    return refused({ code: 'notHeld', tag: workpiece.tag, stepId: command.stepId });
  return accepted([{ type: 'workpieceReleased', workpieceId: workpiece.id, stepId: due.action.id, atMs }]);
}

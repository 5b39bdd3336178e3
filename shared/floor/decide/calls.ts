import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { calledStep, dueOf, levelSinceMs, roleAt } from '../due.ts';
import { isStronger } from '../role.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState, Workpiece } from '../state.ts';
import type { Decision } from './decision.ts';
import { believedStep } from './standing.ts';

/** Somebody has heard a call: it is silent until it becomes late, and nothing about the dough has changed. */
export function decideHearCall(state: FloorState, command: CommandOf<'hearCall'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece } = believed.value;
  const { call } = workpiece;
  if (call === null) return refused({ code: 'nothingCalls', tag: workpiece.tag, stepId: command.stepId });
  if (call.heardMs !== null) return refused({ code: 'alreadyHeard', tag: workpiece.tag, stepId: command.stepId, atMs: call.heardMs });
  return accepted([heard(workpiece, call, context)]);
}

/** Everything that calls is heard: a key on the wall. */
export function decideHearAllCalls(state: FloorState, context: CommandContext): Decision {
  const events: FloorEvent[] = [];
  for (const workpiece of Object.values(state.workpieces)) {
    if (workpiece.call !== null && workpiece.call.heardMs === null && workpiece.finishedMs === null)
      events.push(heard(workpiece, workpiece.call, context));
  }
  return events.length === 0 ? refused({ code: 'nothingCalls' }) : accepted(events);
}

function heard(workpiece: Workpiece, call: NonNullable<Workpiece['call']>, context: CommandContext): FloorEvent {
  const atMs = Math.min(context.nowMs, Math.max(call.raisedMs, context.tapMs));
  return { type: 'callHeard', workpieceId: workpiece.id, stepId: call.stepId, level: call.level, atMs };
}

/** The server finds that a step calls. Refused where a tap has meanwhile made it untrue. */
export function decideRaiseCall(state: FloorState, command: CommandOf<'raiseCall'>, context: CommandContext): Decision {
  const workpiece = state.workpieces[command.workpieceId];
  const due = workpiece === undefined ? null : dueOf(state, workpiece);
  const role = due === null ? 'running' : roleAt(due, context.nowMs);
  const isTrue = due !== null && calledStep(due, context.nowMs).id === command.stepId && role === command.level;
  const isNews =
    workpiece?.call === null ||
    workpiece?.call === undefined ||
    workpiece.call.stepId !== command.stepId ||
    isStronger(command.level, workpiece.call.level);
  if (!isTrue || !isNews) return refused({ code: 'callOutdated' });
  // Its instant as it is now: since the server looked, a tap may have moved it without making the call untrue.
  return accepted([
    {
      type: 'callRaised',
      workpieceId: command.workpieceId,
      stepId: command.stepId,
      level: command.level,
      dueMs: levelSinceMs(due, command.level, context.nowMs),
      atMs: context.nowMs,
    },
  ]);
}

/** A device has sounded a burst. Kept as it was, even where a tap has answered the call meanwhile. */
export function decideNoteSounded(_state: FloorState, command: CommandOf<'noteSounded'>, context: CommandContext): Decision {
  return accepted([{ type: 'callSounded', burst: command.burst, calls: command.calls, atMs: context.nowMs }]);
}

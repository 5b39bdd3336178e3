import { refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import { beginCalled } from './begin.ts';
import type { Decision } from './decision.ts';
import { fedJustNow } from './feed.ts';
import { alreadyStarted, believedStep } from './standing.ts';

/** Somebody begins a step; a rest that it ends is over with that. */
export function decideStartStep(state: FloorState, command: CommandOf<'startStep'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due, atMs } = believed.value;
  const life = workpiece.steps[command.stepId];
  if (life?.status === 'started') return refused(alreadyStarted(workpiece, command.stepId, life));
  const again = fedJustNow(state, workpiece, due.action, atMs);
  if (again !== null && command.stepId === due.action.id) return refused(again);
  return beginCalled(state, believed.value, context, command);
}

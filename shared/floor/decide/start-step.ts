import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import { startOf, stationFields } from './begin.ts';
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
  const started = startOf(state, workpiece, due.action, atMs, context, command);
  if (!started.ok) return started;
  if (due.phase !== 'resting') return accepted(started.value);
  // A rest stands before the step that is called, and is over now.
  return accepted([
    { type: 'stepDone', workpieceId: workpiece.id, stepId: due.step.id, atMs, ...stationFields(context) },
    ...started.value,
  ]);
}

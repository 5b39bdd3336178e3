import { accepted, refused } from '../../result.ts';
import { asksOf } from '../bake-phases.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import { stationFields } from './begin.ts';
import type { Decision } from './decision.ts';
import { believedStep } from './standing.ts';

/**
 * What a phase of a bake asks for is done: the steam is out, the load is turned. Whoever answers a later one has dealt with those before
 * it. The programme goes by its minutes all the same: steam that went out late shortens no bake.
 */
export function decideAnswerPrompt(state: FloorState, command: CommandOf<'answerPrompt'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, due, atMs } = believed.value;
  const { step } = due;
  const life = workpiece.steps[step.id];
  const at = { tag: workpiece.tag, stepId: command.stepId, phase: command.phase };
  if (step.id !== command.stepId || life === undefined || asksOf(step.bake ?? [], command.phase).length === 0)
    return refused({ code: 'nothingAsked', ...at });
  if (command.phase <= (life.phaseDone ?? 0)) return refused({ code: 'promptAnswered', ...at });
  return accepted([
    { type: 'promptAnswered', workpieceId: workpiece.id, stepId: step.id, phase: command.phase, atMs, ...stationFields(context) },
  ]);
}

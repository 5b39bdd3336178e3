import { unreachable } from '../result.ts';
import type { CommandContext, FloorCommand } from './commands.ts';
import { decideBringInDay } from './decide/bring-in-day.ts';
import { decideHearAllCalls, decideHearCall, decideNoteSounded, decideRaiseCall } from './decide/calls.ts';
import { decideFinishStep } from './decide/finish-step.ts';
import { decideHold, decideMoreTime, decideReadTemperature, decideRelease } from './decide/small-words.ts';
import { decideDiscard, decideSkipStep } from './decide/skip-step.ts';
import { decideStartStep } from './decide/start-step.ts';
import type { Decision } from './decide/decision.ts';
import { decideUndo } from './decide/undo.ts';
import type { FloorState } from './state.ts';

/**
 * Decides a command on a state: the facts that follow from it, or why there are none. Pure; the server decides with
 * it, and the phone shows at once what a tap will do. Instants are house time; `context.tapMs` is at most `nowMs`.
 */
export function decide(state: FloorState, command: FloorCommand, context: CommandContext): Decision {
  switch (command.type) {
    case 'startStep':
      return decideStartStep(state, command, context);
    case 'finishStep':
      return decideFinishStep(state, command, context);
    case 'giveMoreTime':
      return decideMoreTime(state, command, context);
    case 'hearCall':
      return decideHearCall(state, command, context);
    case 'hearAllCalls':
      return decideHearAllCalls(state, context);
    case 'holdWorkpiece':
      return decideHold(state, command, context);
    case 'releaseWorkpiece':
      return decideRelease(state, command, context);
    case 'skipStep':
      return decideSkipStep(state, command, context);
    case 'discardWorkpiece':
      return decideDiscard(state, command, context);
    case 'readTemperature':
      return decideReadTemperature(state, command, context);
    case 'undoCommand':
      return decideUndo(state, command, context);
    case 'bringInDay':
      return decideBringInDay(state, command, context);
    case 'raiseCall':
      return decideRaiseCall(state, command, context);
    case 'noteSounded':
      return decideNoteSounded(state, command, context);
    case 'anchorClock':
      return { ok: true, value: [{ type: 'clockAnchored', houseMs: command.houseMs, realMs: command.realMs, pace: command.pace }] };
    case 'noteClockJump':
      return { ok: true, value: [{ type: 'clockJumped', byMs: command.byMs, atMs: context.nowMs }] };
    default:
      return unreachable(command);
  }
}

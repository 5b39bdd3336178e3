import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { unreachable } from '../../shared/result.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { DID, PHONE } from '../words/en/phone.ts';
import { VERBS } from '../words/en/verbs.ts';
import { stepOf } from './card-model.ts';

/** What a tap did, in words: "C2 folded". */
export function didWords(state: FloorState, command: ClientCommand): string {
  if (command.type === 'hearAllCalls') return PHONE.everything;
  if (command.type === 'undoCommand') return DID.undone;
  const tag = state.workpieces[command.workpieceId]?.tag ?? '';
  const step = 'stepId' in command ? stepOf(state, command.workpieceId, command.stepId) : null;
  const verb = step === null ? '' : VERBS[step.verb].running;
  switch (command.type) {
    case 'finishStep':
      return DID.finished(tag, step === null ? '' : VERBS[step.verb].done);
    case 'startStep':
      return DID.started(tag, verb);
    case 'giveMoreTime':
      return DID.moreTime(tag, command.minutes);
    case 'hearCall':
      return DID.heard(tag);
    case 'holdWorkpiece':
      return DID.held(tag, command.minutes);
    case 'releaseWorkpiece':
      return DID.released(tag);
    case 'skipStep':
      return DID.skipped(tag, verb);
    case 'discardWorkpiece':
      return DID.discarded(tag);
    case 'readTemperature':
      return DID.read(tag, temperatureText(command.celsius, state.house?.document.units.temperature ?? 'C'));
    default:
      return unreachable(command);
  }
}

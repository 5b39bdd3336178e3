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
import { decideAddIngredient, decideNameLoss } from './decide/amounts.ts';
import { decideAdoptHouse, decideAdoptKitchen } from './decide/adopt.ts';
import { decideBlockResource, decideFreeResource, decideSetDeck } from './decide/resources.ts';
import { decideCloseDay } from './decide/close-day.ts';
import { decideCorrectCount, decideCorrectTag, decideCorrectTime } from './decide/correct.ts';
import { decideDrawFrom } from './decide/draw.ts';
import { decidePlanFeed } from './decide/feed.ts';
import { decideJoin } from './decide/join.ts';
import { decideMakeLoads } from './decide/loads.ts';
import { decideMove } from './decide/move.ts';
import { decideHandOver, decideHelpStep, decideReportProgress } from './decide/progress.ts';
import { decidePutBack } from './decide/put-back.ts';
import { decideAnswerSoundTest, decideAskSoundTest, decideNoteSoundTestSounded } from './decide/sound-test.ts';
import { decideSayWhere } from './decide/say-where.ts';
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
    case 'reportProgress':
      return decideReportProgress(state, command, context);
    case 'helpStep':
      return decideHelpStep(state, command, context);
    case 'handOver':
      return decideHandOver(state, command, context);
    case 'sayWhere':
      return decideSayWhere(state, command, context);
    case 'moveWorkpiece':
      return decideMove(state, command, context);
    case 'correctTime':
      return decideCorrectTime(state, command, context);
    case 'correctCount':
      return decideCorrectCount(state, command, context);
    case 'correctTag':
      return decideCorrectTag(state, command, context);
    case 'makeLoads':
      return decideMakeLoads(state, command, context);
    case 'joinWorkpieces':
      return decideJoin(state, command, context);
    case 'drawFrom':
      return decideDrawFrom(state, command, context);
    case 'putBack':
      return decidePutBack(state, command, context);
    case 'planFeed':
      return decidePlanFeed(state, command, context);
    case 'addIngredient':
      return decideAddIngredient(state, command, context);
    case 'nameLoss':
      return decideNameLoss(state, command, context);
    case 'setDeck':
      return decideSetDeck(state, command, context);
    case 'blockResource':
      return decideBlockResource(state, command, context);
    case 'freeResource':
      return decideFreeResource(state, command, context);
    case 'closeDay':
      return decideCloseDay(state, command, context);
    case 'adoptKitchen':
      return decideAdoptKitchen(state, command, context);
    case 'adoptHouse':
      return decideAdoptHouse(state, command, context);
    case 'askSoundTest':
      return decideAskSoundTest(state, 'hand', context);
    case 'answerSoundTest':
      return decideAnswerSoundTest(state, command, context);
    case 'undoCommand':
      return decideUndo(state, command, context);
    case 'bringInDay':
      return decideBringInDay(state, command, context);
    case 'raiseCall':
      return decideRaiseCall(state, command, context);
    case 'noteSounded':
      return decideNoteSounded(state, command, context);
    case 'askDailySoundTest':
      return decideAskSoundTest(state, 'daily', context);
    case 'noteSoundTestSounded':
      return decideNoteSoundTestSounded(state, context);
    case 'anchorClock':
      return { ok: true, value: [{ type: 'clockAnchored', houseMs: command.houseMs, realMs: command.realMs, pace: command.pace }] };
    case 'noteClockJump':
      return { ok: true, value: [{ type: 'clockJumped', byMs: command.byMs, atMs: context.nowMs }] };
    default:
      return unreachable(command);
  }
}

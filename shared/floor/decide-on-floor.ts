import { decideEndTestPiece, decideStartTestPiece } from './decide/test-piece.ts';
import { decideMoveLoad } from './decide/move-load.ts';
import { decideAnswerPrompt } from './decide/answer-prompt.ts';
import { unreachable } from '../result.ts';
import type { ClientCommand, CommandContext } from './commands.ts';
import type { WeighingCommand } from './decide-weighing.ts';
import type { Decision } from './decide/decision.ts';
import { decideHearAllCalls, decideHearCall } from './decide/calls.ts';
import { decideFinishStep } from './decide/finish-step.ts';
import { decideHold, decideMoreTime, decideRelease } from './decide/small-words.ts';
import { decideDecideHolding, unlessPastLimit } from './decide/holding.ts';
import { decideReadTemperature } from './decide/read-temperature.ts';
import { decideDiscard, decideSkipStep } from './decide/skip-step.ts';
import { decideStartStep } from './decide/start-step.ts';
import { decideUndo } from './decide/undo.ts';
import { decideAddIngredient, decideNameLoss } from './decide/amounts.ts';
import { decideBlockResource, decideFreeResource, decideSetDeck } from './decide/resources.ts';
import { decideCloseDay } from './decide/close-day.ts';
import { decideCorrectCount, decideCorrectTag, decideCorrectTime } from './decide/correct.ts';
import { decideDrawFrom } from './decide/draw.ts';
import { decidePlanFeed } from './decide/feed.ts';
import { decideJoin } from './decide/join.ts';
import { decideMakeLoads } from './decide/loads.ts';
import { decideMove } from './decide/move.ts';
import { decideBeginProgramme, decideOpenPlace, decideReadPlace } from './decide/place-air.ts';
import { decideHandOver, decideHelpStep, decideReportProgress } from './decide/progress.ts';
import { decidePutBack } from './decide/put-back.ts';
import { decideAnswerSoundTest, decideAskSoundTest } from './decide/sound-test.ts';
import { decideSayWhere } from './decide/say-where.ts';
import type { FloorState } from './state.ts';

/** What changes the house's documents, or plans by them: with all that can be wrong with them. The server alone decides it. */
export type DocumentCommand = Extract<
  ClientCommand,
  {
    readonly type:
      | 'adoptKitchen'
      | 'adoptHouse'
      | 'adoptFormula'
      | 'adoptProduct'
      | 'adoptIngredient'
      | 'archiveFormula'
      | 'leaveLesson'
      | 'bringInBook'
      | 'planBatches'
      | 'placeOrders'
      | 'withdrawOrders'
      | 'adoptStanding'
      | 'setPin'
      | 'liftPin';
  }
>;
export type OnFloorCommand = Exclude<ClientCommand, DocumentCommand | WeighingCommand>;

/** Decides on whatever is said of doughs, machines and calls. Every page does, to show at once what a tap will do. */
export function decideOnFloor(state: FloorState, command: OnFloorCommand, context: CommandContext): Decision {
  return unlessPastLimit(state, decideAlone(state, command, context));
}

function decideAlone(state: FloorState, command: OnFloorCommand, context: CommandContext): Decision {
  switch (command.type) {
    case 'startStep':
      return decideStartStep(state, command, context);
    case 'finishStep':
      return decideFinishStep(state, command, context);
    case 'giveMoreTime':
      return decideMoreTime(state, command, context);
    case 'answerPrompt':
      return decideAnswerPrompt(state, command, context);
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
    case 'decideHolding':
      return decideDecideHolding(state, command, context);
    case 'readTemperature':
      return decideReadTemperature(state, command, context, () => null);
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
    case 'readPlace':
      return decideReadPlace(state, command, context);
    case 'openPlace':
      return decideOpenPlace(state, command, context);
    case 'beginProgramme':
      return decideBeginProgramme(state, command, context);
    case 'moveLoad':
      return decideMoveLoad(state, command, context);
    case 'startTestPiece':
      return decideStartTestPiece(state, command, context);
    case 'endTestPiece':
      return decideEndTestPiece(state, command, context);
    case 'blockResource':
      return decideBlockResource(state, command, context);
    case 'freeResource':
      return decideFreeResource(state, command, context);
    case 'closeDay':
      return decideCloseDay(state, command, context);
    case 'askSoundTest':
      return decideAskSoundTest(state, 'hand', context);
    case 'answerSoundTest':
      return decideAnswerSoundTest(state, command, context);
    case 'undoCommand':
      return decideUndo(state, command, context);
    default:
      return unreachable(command);
  }
}

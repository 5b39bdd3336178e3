import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { unreachable } from '../../shared/result.ts';
import { workpieceIdOf, type DoughCommand } from '../link/command-workpiece.ts';
import { clockText } from '../parts/clock-text.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import { weightText } from '../parts/weight-text.ts';
import { DID, PHONE } from '../words/phone.ts';
import { SOUND } from '../words/sound.ts';
import { VERBS } from '../words/verbs.ts';
import { stepOf } from './step-of.ts';
import { readingText } from './degrees.ts';
import { stationName, unitsOf, zoneOf } from './floor-facts.ts';

/** What a tap did, in words: "C2 folded". */
export function didWords(state: FloorState, command: ClientCommand): string {
  switch (command.type) {
    case 'hearAllCalls':
      return PHONE.everything;
    case 'undoCommand':
      return DID.undone;
    case 'closeDay':
      return DID.dayEnded;
    case 'adoptKitchen':
      return DID.kitchen;
    case 'adoptHouse':
      return DID.house;
    case 'adoptFormula':
    case 'adoptProduct':
    case 'adoptIngredient':
    case 'archiveFormula':
    case 'leaveLesson':
    case 'bringInBook':
      return DID.book;
    case 'planBatches':
      return DID.planned;
    case 'placeOrders':
    case 'withdrawOrders':
    case 'adoptStanding':
      return DID.orders;
    case 'setPin':
    case 'liftPin':
      return DID.pinned;
    case 'forgetRise':
      return DID.riseForgotten;
    case 'askSoundTest':
    case 'answerSoundTest':
      return SOUND.testDid;
    case 'setDeck':
      return DID.deck;
    case 'readPlace':
    case 'openPlace':
    case 'beginProgramme':
      return DID.air;
    case 'startTestPiece':
    case 'endTestPiece':
      return DID.testPiece;
    case 'blockResource':
      return DID.blocked;
    case 'freeResource':
      return DID.freed;
    default:
      return doughWords(state, command);
  }
}

function doughWords(state: FloorState, command: DoughCommand): string {
  const workpieceId = workpieceIdOf(command);
  const tag = tagOf(state, workpieceId);
  const step = 'stepId' in command ? stepOf(state, workpieceId, command.stepId) : null;
  const verb = step === null ? '' : VERBS[step.verb].running;
  switch (command.type) {
    case 'finishStep':
      return DID.finished(tag, step === null ? '' : VERBS[step.verb].done);
    case 'startStep':
      return DID.started(tag, verb);
    case 'giveMoreTime':
      return DID.moreTime(tag, command.minutes);
    case 'answerPrompt':
      return DID.prompt(tag);
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
    case 'decideHolding':
      return DID.holdingDecided(tag, command.minutes);
    case 'readTemperature':
      return DID.read(tag, readingText(command.celsius, state.house?.document.units.temperature ?? 'C'));
    case 'reportProgress':
      return DID.progressed(tag, command.piecesDone);
    case 'helpStep':
      return DID.helped(tag);
    case 'handOver':
      return DID.handedOver(tag, stationName(state, command.toStationId));
    case 'sayWhere':
      return DID.where(tag, verb);
    case 'moveLoad':
    case 'moveWorkpiece':
      return DID.moved(tag);
    case 'correctTime':
      return DID.time(tag);
    case 'correctCount':
      return DID.count(tag, command.pieces);
    case 'correctTag':
      return DID.tag(command.toTag);
    case 'makeLoads':
      return DID.loads(tag, command.pieces.length);
    case 'joinWorkpieces':
      return DID.joined(command.workpieceIds.map((id) => tagOf(state, id)).join(' + '));
    case 'drawFrom':
      return DID.drawn(tagOf(state, command.fromWorkpieceId), tag);
    case 'putBack':
      return DID.putBack(tagOf(state, command.fromWorkpieceId), tag);
    case 'planFeed':
      return DID.feedPlanned(tag, clockText(command.feedMs, zoneOf(state)));
    case 'addIngredient':
      return DID.added(tag);
    case 'weighIngredient':
      return DID.weighed(tag);
    case 'unweighIngredient':
      return DID.unweighed(tag);
    case 'scaleToLine':
      return DID.rescaled(tag);
    case 'takeWater':
      return DID.watered(tag);
    case 'nameLoss':
      return DID.lost(tag, weightText(command.grams, unitsOf(state)));
    default:
      return unreachable(command);
  }
}

function tagOf(state: FloorState, workpieceId: string): string {
  const workpiece = state.workpieces[workpieceId];
  return workpiece === undefined ? '' : dayTag(workpiece.tag, workpiece.serviceDate, floorDateOf(state));
}

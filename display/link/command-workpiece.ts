import type { ClientCommand } from '../../shared/floor/commands.ts';

/** Commands that are about the house, a document or the device, and no workpiece. */
type Apart =
  | 'undoCommand'
  | 'hearAllCalls'
  | 'closeDay'
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
  | 'liftPin'
  | 'forgetRise'
  | 'askSoundTest'
  | 'answerSoundTest'
  | 'setDeck'
  | 'readPlace'
  | 'openPlace'
  | 'startTestPiece'
  | 'endTestPiece'
  | 'beginProgramme'
  | 'blockResource'
  | 'freeResource';

/** A command about a workpiece, or about several. */
export type DoughCommand = Exclude<ClientCommand, { type: Apart }>;

/** The workpiece that a command changes; the one that takes where something goes from one into another. */
export function workpieceIdOf(command: DoughCommand): string {
  switch (command.type) {
    case 'joinWorkpieces':
      return command.workpieceIds[0] ?? '';
    case 'drawFrom':
    case 'putBack':
      return command.toWorkpieceId;
    default:
      return command.workpieceId;
  }
}

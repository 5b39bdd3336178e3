import type { ClientCommand, CommandContext } from '../../shared/floor/commands.ts';
import { decideOnFloor } from '../../shared/floor/decide-on-floor.ts';
import type { Decision } from '../../shared/floor/decide/decision.ts';
import type { FloorState } from '../../shared/floor/state.ts';

/** What a page can tell of a tap before the server has answered; null where it waits for the server's word. */
export type Decider = (state: FloorState, command: ClientCommand, context: CommandContext) => Decision | null;

/** For pages that show doughs: what becomes of documents and of weighing is told by the server. */
export function decidedOnFloor(state: FloorState, command: ClientCommand, context: CommandContext): Decision | null {
  switch (command.type) {
    case 'adoptKitchen':
    case 'adoptHouse':
    case 'adoptFormula':
    case 'adoptProduct':
    case 'adoptIngredient':
    case 'archiveFormula':
    case 'leaveLesson':
    case 'bringInBook':
    case 'planBatches':
    case 'placeOrders':
    case 'withdrawOrders':
    case 'adoptStanding':
    case 'setPin':
    case 'liftPin':
    case 'weighIngredient':
    case 'unweighIngredient':
    case 'scaleToLine':
    case 'takeWater':
    case 'forgetRise':
      return null;
    default:
      return decideOnFloor(state, command, context);
  }
}

import type { ClientCommand, CommandContext } from '../../shared/floor/commands.ts';
import { decideWeighing } from '../../shared/floor/decide-weighing.ts';
import type { Decision } from '../../shared/floor/decide/decision.ts';
import { decideReadTemperature } from '../../shared/floor/decide/read-temperature.ts';
import { doughReadingOf } from '../../shared/floor/dough-reading.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { decidedOnFloor } from '../link/decider.ts';

/** At the mixer a tick shows at once as well. */
export function decidedAtWeigh(state: FloorState, command: ClientCommand, context: CommandContext): Decision | null {
  switch (command.type) {
    case 'readTemperature':
      return decideReadTemperature(state, command, context, doughReadingOf);
    case 'weighIngredient':
    case 'unweighIngredient':
    case 'scaleToLine':
    case 'takeWater':
    case 'forgetRise':
      return decideWeighing(state, command, context);
    default:
      return decidedOnFloor(state, command, context);
  }
}

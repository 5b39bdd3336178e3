import { unreachable } from '../result.ts';
import type { CommandContext, CommandOf } from './commands.ts';
import type { Decision } from './decide/decision.ts';
import { decideForgetRise, decideTakeWater } from './decide/water.ts';
import { decideScaleToLine } from './decide/scale-to-line.ts';
import { decideUnweighIngredient, decideWeighIngredient } from './decide/weigh.ts';
import type { FloorState } from './state.ts';

/** What is said at the mixer of weighing and of the water: with the sums that belong to it, which no other page needs. */
export type WeighingCommand = CommandOf<'weighIngredient' | 'unweighIngredient' | 'scaleToLine' | 'takeWater' | 'forgetRise'>;

/** Decides on what is weighed and on the water. */
export function decideWeighing(state: FloorState, command: WeighingCommand, context: CommandContext): Decision {
  switch (command.type) {
    case 'weighIngredient':
      return decideWeighIngredient(state, command, context);
    case 'unweighIngredient':
      return decideUnweighIngredient(state, command, context);
    case 'scaleToLine':
      return decideScaleToLine(state, command, context);
    case 'takeWater':
      return decideTakeWater(state, command, context);
    case 'forgetRise':
      return decideForgetRise(state, command, context);
    default:
      return unreachable(command);
  }
}

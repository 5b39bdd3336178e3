import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState } from '../state.ts';
import { lineOf, weighOutOf, type WeighLine, type WeighOut } from '../weigh-out.ts';
import type { Decision } from './decision.ts';
import { standingOf, type Standing } from './standing.ts';

/** More than so many times a line is a slip of the finger or another line: our choice. */
const MOST_TIMES = 2;

/** A line with the weigh-out and the workpiece that it belongs to. */
export interface StandingLine {
  readonly standing: Standing;
  readonly weighOut: WeighOut;
  readonly line: WeighLine;
}

/** Finds a line of the weigh-out of a workpiece on the floor, or says why there is none. */
export function standingLine(
  state: FloorState,
  { workpieceId, lineId }: { readonly workpieceId: string; readonly lineId: string },
  context: CommandContext,
): Result<StandingLine, Refusal> {
  const standing = standingOf(state, workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece } = standing.value;
  const weighOut = weighOutOf(state, workpiece);
  const line = weighOut === null ? null : lineOf(weighOut, lineId);
  if (weighOut === null || line === null) return refused({ code: 'lineUnknown', tag: workpiece.tag, lineId });
  return accepted({ standing: standing.value, weighOut, line });
}

/**
 * A line is in the bowl, with its lot numbers; weighed again, the last counts. Refused once the last of it has been mixed
 * in, for nothing, and for more than twice what belongs there.
 */
export function decideWeighIngredient(state: FloorState, command: CommandOf<'weighIngredient'>, context: CommandContext): Decision {
  const found = openLine(state, command, context);
  if (!found.ok) return found;
  const { standing, line } = found.value;
  const { workpiece, atMs } = standing;
  const { tag } = workpiece;
  const { grams, lotNumbers, lineId } = command;
  if (grams === 0) return refused({ code: 'nothingChanges', tag });
  const mostG = MOST_TIMES * Math.max(line.grams, line.divisionG);
  if (grams > mostG) return refused({ code: 'moreThanThere', tag, fromTag: tag, neededG: grams, hasG: line.grams });
  const ingredient = line.ingredientId === null ? {} : { ingredientId: line.ingredientId };
  return accepted([{ type: 'ingredientWeighed', workpieceId: workpiece.id, lineId, ...ingredient, grams, lotNumbers, atMs }]);
}

/** A line was not in the bowl after all. Refused where nobody had said so, and once the last of it has been mixed in. */
export function decideUnweighIngredient(state: FloorState, command: CommandOf<'unweighIngredient'>, context: CommandContext): Decision {
  const found = openLine(state, command, context);
  if (!found.ok) return found;
  const { standing, line } = found.value;
  const { workpiece, atMs } = standing;
  if (line.weighed === null) return refused({ code: 'notWeighed', tag: workpiece.tag, lineId: line.id });
  return accepted([{ type: 'ingredientUnweighed', workpieceId: workpiece.id, lineId: line.id, atMs }]);
}

function openLine(
  state: FloorState,
  command: CommandOf<'weighIngredient' | 'unweighIngredient'>,
  context: CommandContext,
): Result<StandingLine, Refusal> {
  const found = standingLine(state, command, context);
  if (!found.ok || !found.value.line.isIn) return found;
  return refused({ code: 'alreadyMixed', tag: found.value.standing.workpiece.tag });
}

import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { EMPTY_G } from './sources.ts';
import { believedStep, standingOf, type Standing } from './standing.ts';
import { giveBackAll } from './vessels.ts';

/** What went in beside the way, on top of what it weighed; or the lot number alone of what the way says. */
export function decideAddIngredient(state: FloorState, command: CommandOf<'addIngredient'>, context: CommandContext): Decision {
  const believed = believedStep(state, command.workpieceId, command.stepId, context);
  if (!believed.ok) return believed;
  const { workpiece, atMs } = believed.value;
  const { stepId, ingredientId, grams, lotNumber } = command;
  const at = { tag: workpiece.tag, stepId };
  const isKnown = state.ingredients?.document.some((ingredient) => ingredient.id === ingredientId) ?? false;
  if (!isKnown) return refused({ code: 'ingredientUnknown', ...at, ingredientId });
  if (grams === 0 && lotNumber === undefined) return refused({ code: 'nothingChanges', ...at });
  return accepted([
    {
      type: 'ingredientAdded',
      workpieceId: workpiece.id,
      stepId,
      atMs,
      ingredientId,
      grams,
      ...(lotNumber === undefined ? {} : { lotNumber }),
      ...(grams === 0 ? {} : { isExtra: true as const }),
    },
  ]);
}

/** What is no longer there, and why: never more than there was. Pieces that are gone are off the count with it. */
export function decideNameLoss(state: FloorState, command: CommandOf<'nameLoss'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, atMs } = standing.value;
  const { what, grams, pieces = 0 } = command;
  const { tag, pieces: has } = workpiece;
  if (grams === 0 && pieces === 0) return refused({ code: 'nothingChanges', tag });
  if (grams > workpiece.grams) return refused({ code: 'moreThanThere', tag, fromTag: tag, neededG: grams, hasG: workpiece.grams });
  if (pieces > 0 && has === null) return refused({ code: 'noPieces', tag });
  if (has !== null && pieces > has) return refused({ code: 'morePiecesThanThere', tag, wanted: pieces, has });
  const lost = { type: 'lossNamed' as const, workpieceId: workpiece.id, what, grams, ...(pieces === 0 ? {} : { pieces }), atMs };
  const events: FloorEvent[] = [lost];
  if (has !== null && pieces > 0)
    events.push({ type: 'countCorrected', workpieceId: workpiece.id, fromPieces: has, toPieces: has - pieces, atMs });
  const isGone = (pieces > 0 && pieces === has) || workpiece.grams - grams < EMPTY_G;
  return accepted(isGone ? [...events, ...noneLeft(state, standing.value, undefined)] : events);
}

/** Nothing of a workpiece is left: it is out of the oven, gives back its vessels, and is off the floor. */
export function noneLeft(state: FloorState, standing: Standing, reason: string | undefined): readonly FloorEvent[] {
  const { workpiece, due, atMs } = standing;
  const events: FloorEvent[] = [];
  if (workpiece.slotIds.length > 0)
    events.push({ type: 'ovenUnloaded', workpieceId: workpiece.id, stepId: due.action.id, atMs, slotIds: [...workpiece.slotIds] });
  events.push(...giveBackAll(state, workpiece, atMs));
  return [...events, { type: 'workpieceDiscarded', workpieceId: workpiece.id, atMs, reason: reason ?? 'none left' }];
}

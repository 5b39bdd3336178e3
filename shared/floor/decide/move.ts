import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { blockOn } from '../resources.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { standingOf } from './standing.ts';

/**
 * It stands somewhere else now: the dough that will not wait goes into the cold. With minutes, its call is set aside for
 * so long. Nobody counts the room of a place here: one that is too full is shown, not refused.
 */
export function decideMove(state: FloorState, command: CommandOf<'moveWorkpiece'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, due, atMs } = standing.value;
  const { placeId, holdMin } = command;
  const at = { tag: workpiece.tag };
  const isKnown = state.kitchen?.document.restPlaces.some((place) => place.id === placeId) ?? false;
  if (!isKnown) return refused({ code: 'placeUnknown', ...at, placeId });
  if (workpiece.placeId === placeId) return refused({ code: 'alreadyThere', ...at, placeId });
  // What is in the oven is taken out first, or its slot would stay taken.
  if (workpiece.slotIds.length > 0) return refused({ code: 'stepNotReached', ...at, currentStepId: due.action.id });
  const block = blockOn(state, { kind: 'restPlace', id: placeId }, context.nowMs);
  if (block !== null) {
    const until = block.untilMs === undefined ? {} : { untilMs: block.untilMs };
    return refused({ code: 'resourceBlocked', ...at, resource: block.resource, why: block.why, ...until });
  }
  const events: FloorEvent[] = [{ type: 'workpieceMoved', workpieceId: workpiece.id, placeId, atMs }];
  if (holdMin !== undefined) {
    const untilMs = atMs + holdMin * 60_000;
    events.push({ type: 'workpieceHeld', workpieceId: workpiece.id, stepId: due.action.id, atMs, untilMs });
  }
  return accepted(events);
}

import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { blockOn } from '../resources.ts';
import { bakeFactor } from '../slot-heats.ts';
import { decksOf, slotHolders } from '../slots.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { standingOf } from './standing.ts';

const MINUTE_MS = 60_000;

/**
 * A load goes on in other slots: to the side, onto another deck, or spread over two. What is left of its bake goes by the heat of the
 * slots where it is now.
 */
export function decideMoveLoad(state: FloorState, command: CommandOf<'moveLoad'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, due, atMs } = standing.value;
  const at = { tag: workpiece.tag, stepId: due.step.id };
  const slotIds = [...new Set(command.slotIds)];
  if (workpiece.slotIds.length === 0) return refused({ code: 'notInOven', ...at });
  if (sameSlots(slotIds, workpiece.slotIds)) return refused({ code: 'nothingChanges', ...at });
  const decks = decksOf(state.kitchen?.document ?? { ovens: [] });
  const holders = slotHolders(state);
  for (const slotId of slotIds) {
    const deck = decks.find(({ slots }) => slots.some(({ id }) => id === slotId));
    if (deck === undefined) return refused({ code: 'slotUnknown', ...at, slotId });
    const holder = holders.get(slotId);
    if (holder !== undefined && holder.id !== workpiece.id)
      return refused({ code: 'slotTaken', ...at, slotId, takenByTag: holder.tag, freeSlotIds: [] });
    const block =
      blockOn(state, { kind: 'deck', id: deck.id }, context.nowMs) ?? blockOn(state, { kind: 'slot', id: slotId }, context.nowMs);
    if (block !== null)
      return refused({
        code: 'resourceBlocked',
        ...at,
        resource: block.resource,
        why: block.why,
        ...(block.untilMs === undefined ? {} : { untilMs: block.untilMs }),
      });
  }
  const moved: FloorEvent = { type: 'loadMoved', workpieceId: workpiece.id, slotIds, atMs };
  const life = workpiece.steps[due.step.id];
  if (due.step.kind !== 'bake' || life?.pins === undefined || life.pins === null || life.startedMs === null) return accepted([moved]);
  const { targetMin, factor } = life.pins;
  // So much of its bake is behind it, in minutes of the reference; the rest goes by the new slots.
  const doneMin = Math.min(targetMin, (atMs - life.startedMs) / MINUTE_MS / factor);
  const paced = (doneMin * factor + (targetMin - doneMin) * bakeFactor(state, slotIds, atMs)) / targetMin;
  return accepted([moved, { type: 'bakePaced', workpieceId: workpiece.id, stepId: due.step.id, factor: paced, atMs }]);
}

function sameSlots(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((slotId) => other.includes(slotId));
}

import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { bakeFactor, bakingIn, hasSlot } from '../slot-heats.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { after } from './tentative.ts';

const MINUTE_MS = 60_000;
/** A piece that took so much less or more than at the reference was forgotten, or never put in: it says nothing. Our choice. */
const LEAST_SHARE = 0.25;
const MOST_SHARE = 4;

/** A piece of dough goes into a slot, to see how hot it is there. One that was in is forgotten. */
export function decideStartTestPiece(
  state: FloorState,
  { slotId, referenceMin }: CommandOf<'startTestPiece'>,
  context: CommandContext,
): Decision {
  if (!hasSlot(state, slotId)) return refused({ code: 'noSuchSlot', slotId });
  return accepted([{ type: 'testPieceStarted', slotId, referenceMin, atMs: context.tapMs }]);
}

/**
 * It is as the reference is after its minutes, or it is thrown away and says nothing. The minutes that it took, as a multiple of the
 * reference's, move the bakes that are in that slot as well.
 */
export function decideEndTestPiece(state: FloorState, { slotId, isDone }: CommandOf<'endTestPiece'>, context: CommandContext): Decision {
  const piece = state.testPieces[slotId];
  if (piece === undefined) return refused({ code: 'noTestPiece', slotId });
  const atMs = Math.min(context.nowMs, Math.max(piece.startedMs, context.tapMs));
  const ended: FloorEvent = { type: 'testPieceEnded', slotId, isDone, atMs };
  const minutesShare = (atMs - piece.startedMs) / MINUTE_MS / piece.referenceMin;
  if (!isDone || minutesShare < LEAST_SHARE || minutesShare > MOST_SHARE) return accepted([ended]);
  const learned: FloorEvent = { type: 'slotHeatLearned', slotIds: [slotId], kind: 'testPiece', minutesShare, atMs };
  const then = after(state, [ended, learned], context);
  const paced = bakingIn(state, slotId).map((workpiece): FloorEvent => {
    const stepId = Object.keys(workpiece.steps).find((id) => workpiece.steps[id]?.status === 'started') ?? '';
    return { type: 'bakePaced', workpieceId: workpiece.id, stepId, factor: bakeFactor(then, workpiece.slotIds, atMs), atMs };
  });
  return accepted([ended, learned, ...paced]);
}

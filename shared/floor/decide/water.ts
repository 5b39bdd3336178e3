import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { mixerFor, riseOf } from '../rise.ts';
import type { FloorState } from '../state.ts';
import { weighOutOf } from '../weigh-out.ts';
import type { Decision } from './decision.ts';
import { standingOf } from './standing.ts';

/**
 * The water is in: all of it with its ice and what is kept back, so warm before the ice. Kept with what it was reckoned
 * from, so that the dough's temperature teaches. Said again before the mixing, the last counts.
 */
export function decideTakeWater(state: FloorState, command: CommandOf<'takeWater'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, atMs } = standing.value;
  const { tag } = workpiece;
  const { waterC, waterG, iceG, flourC, roomC, prefermentC } = command;
  const weighOut = weighOutOf(state, workpiece);
  if (weighOut === null) return refused({ code: 'pastMixing', tag });
  if (weighOut.isMixed) return refused({ code: 'alreadyMixed', tag });
  const mixerId = command.mixerId ?? mixerFor(state, workpiece);
  // Where no mixer runs, nothing can be learned of one.
  if (mixerId === null || waterG === 0) return refused({ code: 'nothingChanges', tag });
  if (!isMixer(state, mixerId)) return refused({ code: 'mixerUnknown', tag, mixerId });
  if (iceG > waterG) return refused({ code: 'moreThanThere', tag, fromTag: tag, neededG: iceG, hasG: waterG });
  const { riseK } = riseOf(state, mixerId, workpiece.formulaId, workpiece.scaledToG);
  const preferment = prefermentC === undefined ? {} : { prefermentC };
  return accepted([
    { type: 'waterTaken', workpieceId: workpiece.id, mixerId, waterC, waterG, iceG, flourC, roomC, ...preferment, riseK, atMs },
  ]);
}

/** What was learned of a mixer is forgotten, of one formula or of all. Refused where there is nothing to forget. */
export function decideForgetRise(state: FloorState, command: CommandOf<'forgetRise'>, context: CommandContext): Decision {
  const { mixerId, formulaId } = command;
  const samples = state.rises[mixerId] ?? [];
  if (samples.length === 0 && !isMixer(state, mixerId)) return refused({ code: 'mixerUnknown', mixerId });
  if (!samples.some((sample) => formulaId === undefined || sample.formulaId === formulaId)) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'riseForgotten', mixerId, ...(formulaId === undefined ? {} : { formulaId }), atMs: context.tapMs }]);
}

function isMixer(state: FloorState, mixerId: string): boolean {
  return state.kitchen?.document.mixers.some((mixer) => mixer.id === mixerId) ?? false;
}

import type { RestPlace } from '../../documents/kitchen.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/** How warm it is in a rest place: what stands there drifts to that, until it is read again or a few hours are over. */
export function decideReadPlace(state: FloorState, { placeId, celsius }: CommandOf<'readPlace'>, context: CommandContext): Decision {
  if (placeIn(state, placeId) === null) return refused({ code: 'placeUnknown', placeId });
  return accepted([{ type: 'placeRead', placeId, celsius, atMs: context.tapMs }]);
}

/** Its door stands open for so many minutes. */
export function decideOpenPlace(state: FloorState, { placeId, minutes }: CommandOf<'openPlace'>, context: CommandContext): Decision {
  if (placeIn(state, placeId) === null) return refused({ code: 'placeUnknown', placeId });
  return accepted([{ type: 'placeOpened', placeId, minutes, atMs: context.tapMs }]);
}

/** Its programme begins with the tap, with the temperatures that the kitchen's document gives it now. */
export function decideBeginProgramme(state: FloorState, { placeId }: CommandOf<'beginProgramme'>, context: CommandContext): Decision {
  const place = placeIn(state, placeId);
  if (place === null) return refused({ code: 'placeUnknown', placeId });
  if (place.programme === undefined) return refused({ code: 'programmeMissing', placeId });
  return accepted([{ type: 'programmeBegun', placeId, phases: place.programme, atMs: context.tapMs }]);
}

function placeIn(state: FloorState, placeId: string): RestPlace | null {
  return state.kitchen?.document.restPlaces.find((place) => place.id === placeId) ?? null;
}

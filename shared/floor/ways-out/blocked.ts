import type { EventOf } from '../events.ts';
import { blockOn } from '../resources.ts';
import type { FloorState } from '../state.ts';

/** Until when a resource cannot be had: `nowMs` where it can, infinity where nobody said. */
export function blockedUntilMs(state: FloorState, kind: EventOf<'resourceBlocked'>['resource']['kind'], id: string, nowMs: number): number {
  const block = blockOn(state, { kind, id }, nowMs);
  return block === null ? nowMs : (block.untilMs ?? Infinity);
}

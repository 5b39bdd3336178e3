import type { CommandContext } from '../commands.ts';
import { evolve } from '../evolve.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';

/** The state as it will be after the events so far, for a decider whose next fact depends on them. */
export function after(state: FloorState, events: readonly FloorEvent[], context: CommandContext): FloorState {
  let next = state;
  events.forEach((event, ordinal) => {
    next = evolve(next, { sequence: next.sequence + 1, commandId: context.commandId, ordinal, deviceId: context.deviceId, event });
  });
  return next;
}

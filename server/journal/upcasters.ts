import { EVENT_VERSION } from '../../shared/floor/events.ts';
import { assert } from '../../shared/result.ts';

/** By version: what lifts an event of that version to the next one. What is kept, and its hash, stay as they were. */
export type Upcasters = ReadonlyMap<number, (event: unknown) => unknown>;

/** The events' first version is 1, and nothing has to be lifted yet. */
export const EVENT_UPCASTERS: Upcasters = new Map();

/** Lifts an event to the version that this program knows. Throws on one from a later program, or that nothing can lift. */
export function liftedEvent(event: unknown, version: number, upcasters: Upcasters): unknown {
  if (version === EVENT_VERSION) return event;
  assert(version < EVENT_VERSION, `an event of version ${version}; this program knows ${EVENT_VERSION}`);
  let lifted = event;
  for (let from = version; from < EVENT_VERSION; from += 1) {
    const lift = upcasters.get(from);
    assert(lift !== undefined, `nothing lifts an event of version ${from}`);
    lifted = lift(lifted);
  }
  return lifted;
}

import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent } from './events.ts';
import type { FloorState } from './state.ts';

type SoundTestEvent = EventOf<'soundTestAsked' | 'soundTestSounded' | 'soundTestAnswered'>;

const TYPES: ReadonlySet<string> = new Set<SoundTestEvent['type']>(['soundTestAsked', 'soundTestSounded', 'soundTestAnswered']);

/** Whether the event is about a test of the loudspeakers. */
export function isSoundTestEvent(event: FloorEvent): event is SoundTestEvent {
  return TYPES.has(event.type);
}

/** The last test, and when one was last heard. */
export function evolveSoundTest(state: FloorState, event: SoundTestEvent): FloorState {
  const { soundTest } = state;
  switch (event.type) {
    case 'soundTestAsked': {
      const { why, atMs } = event;
      return { ...state, soundTest: { why, askedMs: atMs, soundedMs: null, byDeviceId: null, answeredMs: null, heard: null } };
    }
    case 'soundTestSounded':
      if (soundTest === null) return state;
      return { ...state, soundTest: { ...soundTest, soundedMs: event.atMs, byDeviceId: event.byDeviceId } };
    case 'soundTestAnswered':
      if (soundTest === null) return state;
      return {
        ...state,
        soundTest: { ...soundTest, answeredMs: event.atMs, heard: event.heard },
        // What was proved is that a burst was heard when it sounded, whenever somebody got to saying so.
        soundHeardMs: event.heard ? soundTest.soundedMs : state.soundHeardMs,
        soundUnheardMs: event.heard ? null : soundTest.soundedMs,
      };
    default:
      return unreachable(event);
  }
}

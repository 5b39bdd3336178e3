import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { EventOf } from '../events.ts';
import { testIsUnderWay, workpieceBeingLost } from '../sound-test.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/** Somebody wants to know whether a call would be heard. Refused while a dough is being lost: nothing may sound beside it. */
export function decideAskSoundTest(state: FloorState, why: EventOf<'soundTestAsked'>['why'], context: CommandContext): Decision {
  const { soundTest } = state;
  if (soundTest !== null && testIsUnderWay(soundTest)) return refused({ code: 'soundTestWaits', atMs: soundTest.askedMs });
  const lost = workpieceBeingLost(state);
  if (lost !== null) return refused({ code: 'beingLost', tag: lost.tag });
  return accepted([{ type: 'soundTestAsked', why, atMs: context.nowMs }]);
}

/** A device has played the test. Refused where none waits any more. */
export function decideNoteSoundTestSounded(state: FloorState, context: CommandContext): Decision {
  if (!testIsUnderWay(state.soundTest)) return refused({ code: 'noSoundTest' });
  return accepted([{ type: 'soundTestSounded', byDeviceId: context.deviceId, atMs: context.nowMs }]);
}

/** Somebody says whether they heard it. One answer is enough; one that was given before this test was asked for is about another. */
export function decideAnswerSoundTest(state: FloorState, command: CommandOf<'answerSoundTest'>, context: CommandContext): Decision {
  const { soundTest } = state;
  if (soundTest === null || soundTest.soundedMs === null) return refused({ code: 'noSoundTest' });
  // A phone that was away sends yesterday's answer, or one of unknown time: it proves nothing of today's loudspeakers.
  if (context.tapUncertain || context.tapMs < soundTest.askedMs) return refused({ code: 'noSoundTest' });
  if (soundTest.answeredMs !== null && soundTest.heard !== null)
    return refused({ code: 'soundTestAnswered', heard: soundTest.heard, atMs: soundTest.answeredMs });
  const atMs = Math.min(context.nowMs, Math.max(soundTest.soundedMs, context.tapMs));
  return accepted([{ type: 'soundTestAnswered', heard: command.heard, atMs }]);
}

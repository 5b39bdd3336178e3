import type { SoundHours } from './sound-hours.ts';
import type { FloorState, SoundTest, Workpiece } from './state.ts';

const MINUTE_MS = 60_000;

/** So long after a test sounded somebody can still say for sure whether they heard it; screens ask no longer. */
export const ANSWER_WITHIN_MS = 60 * MINUTE_MS;
/** A test that was heard longer ago says nothing of today. */
export const HEARD_HOLDS_MS = 24 * 60 * MINUTE_MS;
/** While the next day's test is being asked about, yesterday's holds so much longer: nobody can answer before it has sounded. */
const ANSWERING_MS = 30 * MINUTE_MS;

/** Whether a test has been asked for that has not sounded. */
export function testIsUnderWay(test: SoundTest | null): boolean {
  return test !== null && test.soundedMs === null;
}

/** Whether a test has sounded that nobody has answered yet, and somebody still could for sure. */
export function testWantsAnswer(test: SoundTest | null, nowMs: number): test is SoundTest & { readonly soundedMs: number } {
  return test !== null && test.soundedMs !== null && test.answeredMs === null && nowMs - test.soundedMs < ANSWER_WITHIN_MS;
}

/** A workpiece whose loss has been called and that nobody has dealt with; null where nothing is being lost. */
export function workpieceBeingLost(state: FloorState): Workpiece | null {
  return Object.values(state.workpieces).find(({ call, finishedMs }) => finishedMs === null && call?.level === 'lost') ?? null;
}

/**
 * When the day's test is due, given that a device can sound: an instant that may have passed, or null while there is no
 * house, or one is under way, or something is being lost. Never in quiet hours.
 */
export function dailyTestMs(state: FloorState, hours: SoundHours, nowMs: number): number | null {
  const { soundTest } = state;
  if (state.house === null || testIsUnderWay(soundTest) || workpieceBeingLost(state) !== null) return null;
  const isDue = soundTest === null || soundTest.askedMs < hours.lastTestMs(nowMs);
  const wantedMs = isDue ? nowMs : hours.nextTestMs(nowMs);
  return hours.quietEndMs(wantedMs) ?? wantedMs;
}

/**
 * When the test that is under way may sound: now, or at the end of quiet hours unless it was asked for by hand in them;
 * null where none is, or something is being lost.
 */
export function waitingTestMs(state: FloorState, hours: SoundHours, nowMs: number): number | null {
  const { soundTest } = state;
  if (soundTest === null || !testIsUnderWay(soundTest) || workpieceBeingLost(state) !== null) return null;
  const quietEndMs = hours.quietEndMs(nowMs);
  const isWantedNow = soundTest.why === 'hand' && hours.quietEndMs(soundTest.askedMs) === quietEndMs;
  return quietEndMs === null || isWantedNow ? nowMs : quietEndMs;
}

/** How sure the house may be that a call would be heard. */
export type SoundTrust =
  | { readonly kind: 'ok'; readonly heardMs: number }
  | { readonly kind: 'notHeard'; readonly soundedMs: number }
  | { readonly kind: 'old'; readonly heardMs: number }
  | { readonly kind: 'never' };

/** What the last test and the last one that was heard say of now. */
export function soundTrust(state: FloorState, nowMs: number): SoundTrust {
  const { soundTest, soundHeardMs, soundUnheardMs } = state;
  if (soundUnheardMs !== null) return { kind: 'notHeard', soundedMs: soundUnheardMs };
  if (soundHeardMs === null) return { kind: 'never' };
  const isBeingAnswered = soundTest !== null && soundTest.answeredMs === null && nowMs - soundTest.askedMs < ANSWERING_MS;
  const holdsMs = HEARD_HOLDS_MS + (isBeingAnswered ? ANSWERING_MS : 0);
  return { kind: nowMs - soundHeardMs > holdsMs ? 'old' : 'ok', heardMs: soundHeardMs };
}

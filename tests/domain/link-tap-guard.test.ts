import { describe, expect, test } from 'vitest';
import {
  judge,
  newGuard,
  NEWLY_MOVED_MS,
  NEWLY_SHOWN_MS,
  ONE_TAP_MS,
  pointerDown,
  pointerGone,
  shown,
  type TapGuard,
} from '../../display/phone/tap-guard.ts';

const LONG_AGO = newGuard(0);

/** A press of one instant, with one finger. */
function tap(guard: TapGuard, atMs: number, movedMs: number | null = null): ReturnType<typeof judge> {
  const judged = judge(pointerDown(guard, 1), { downMs: atMs, upMs: atMs, movedMs });
  return { ...judged, guard: pointerGone(judged.guard, 1) };
}

describe('the tap guard', () => {
  test('takes a tap', () => {
    expect(tap(LONG_AGO, 10_000).verdict).toBe('taken');
  });

  test('ignores what has only just been shown, until it has stood for 400 ms', () => {
    const guard = shown(LONG_AGO, 10_000);
    expect(tap(guard, 10_000 + NEWLY_SHOWN_MS - 1).verdict).toBe('newlyShown');
    expect(tap(guard, 10_000 + NEWLY_SHOWN_MS).verdict).toBe('taken');
  });

  test('judges by when the finger came down, not by when it went up', () => {
    const guard = shown(pointerDown(LONG_AGO, 1), 10_100);
    expect(judge(guard, { downMs: 10_000, upMs: 12_000, movedMs: null }).verdict).toBe('newlyShown');
  });

  test('ignores a row that has moved in the last 400 ms, also under the finger', () => {
    expect(tap(LONG_AGO, 10_000, 10_000 - NEWLY_MOVED_MS + 1).verdict).toBe('newlyMoved');
    expect(tap(LONG_AGO, 10_000, 10_000 - NEWLY_MOVED_MS).verdict).toBe('taken');
    expect(judge(LONG_AGO, { downMs: 10_000, upMs: 10_200, movedMs: 10_100 }).verdict).toBe('newlyMoved');
  });

  test('takes two taps within 600 ms for one', () => {
    const first = tap(LONG_AGO, 10_000);
    const second = tap(first.guard, 10_000 + ONE_TAP_MS - 1);
    expect(second.verdict).toBe('sameTap');
    expect(tap(second.guard, 10_000 + ONE_TAP_MS).verdict).toBe('taken');
  });

  test('one that was ignored does not swallow the next', () => {
    const early = tap(shown(LONG_AGO, 10_000), 10_100);
    expect(tap(early.guard, 10_400).verdict).toBe('taken');
  });

  test('ignores everything from the second finger on, until all are up', () => {
    let guard = pointerDown(pointerDown(LONG_AGO, 1), 2);
    const press = { downMs: 10_000, upMs: 10_050, movedMs: null };
    expect(judge(guard, press).verdict).toBe('crowded');
    guard = pointerGone(guard, 2);
    expect(judge(guard, press).verdict).toBe('crowded');
    guard = pointerGone(guard, 1);
    expect(tap(guard, 10_100).verdict).toBe('taken');
  });
});

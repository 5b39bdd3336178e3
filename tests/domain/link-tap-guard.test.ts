import { describe, expect, test } from 'vitest';
import {
  BROADEST_THUMB_PX,
  judge,
  newGuard,
  NEWLY_MOVED_MS,
  NEWLY_SHOWN_MS,
  ONE_TAP_MS,
  pointerDown,
  pointerGone,
  shown,
  STRAY_TOUCHES,
  STRAY_WITHIN_MS,
  strayed,
  type Press,
  type TapGuard,
} from '../../display/phone/tap-guard.ts';

const LONG_AGO = newGuard(0);

/** A press of one instant, of a thumb. */
const press = (atMs: number, more: Partial<Press> = {}): Press => ({
  downMs: atMs,
  upMs: atMs,
  movedMs: null,
  breadthPx: 0,
  goesOn: false,
  ...more,
});

/** A press of one instant, with one finger. */
function tap(guard: TapGuard, atMs: number, more: Partial<Press> = {}): ReturnType<typeof judge> {
  const judged = judge(pointerDown(guard, 1), press(atMs, more));
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
    expect(judge(guard, press(10_000, { upMs: 12_000 })).verdict).toBe('newlyShown');
  });

  test('ignores a row that has moved in the last 400 ms, also under the finger', () => {
    expect(tap(LONG_AGO, 10_000, { movedMs: 10_000 - NEWLY_MOVED_MS + 1 }).verdict).toBe('newlyMoved');
    expect(tap(LONG_AGO, 10_000, { movedMs: 10_000 - NEWLY_MOVED_MS }).verdict).toBe('taken');
    expect(judge(LONG_AGO, press(10_000, { upMs: 10_200, movedMs: 10_100 })).verdict).toBe('newlyMoved');
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
    expect(judge(guard, press(10_000)).verdict).toBe('crowded');
    guard = pointerGone(guard, 2);
    expect(judge(guard, press(10_000)).verdict).toBe('crowded');
    guard = pointerGone(guard, 1);
    expect(tap(guard, 10_100).verdict).toBe('taken');
  });
});

describe('P14 pockets and aprons', () => {
  test('a contact broader than a thumb does not count, one as broad does', () => {
    expect(tap(LONG_AGO, 10_000, { breadthPx: BROADEST_THUMB_PX + 1 }).verdict).toBe('tooBroad');
    expect(tap(LONG_AGO, 10_000, { breadthPx: BROADEST_THUMB_PX }).verdict).toBe('taken');
  });

  /** So many touches on nothing, so far apart, the first at 10 s. */
  const strays = (count: number, apartMs: number): TapGuard =>
    Array.from({ length: count }, (_, index) => 10_000 + index * apartMs).reduce(strayed, LONG_AGO);

  test('four touches on nothing within two seconds ask for one deliberate touch; then buttons act again', () => {
    const guard = strays(STRAY_TOUCHES, 600);
    expect(guard.isPocketed).toBe(true);
    const other = tap(guard, 20_000);
    expect(other.verdict).toBe('pocketed');
    expect(tap(other.guard, 30_000).verdict).toBe('pocketed');
    const meant = tap(other.guard, 31_000, { goesOn: true });
    expect(meant.verdict).toBe('taken');
    expect(tap(meant.guard, 32_000).verdict).toBe('taken');
  });

  test('fewer, or further apart, mean nothing', () => {
    expect(strays(STRAY_TOUCHES - 1, 0).isPocketed).toBe(false);
    expect(strays(40, Math.ceil(STRAY_WITHIN_MS / (STRAY_TOUCHES - 1))).isPocketed).toBe(false);
  });

  test('a tap that counts in between begins the counting anew', () => {
    const before = strays(STRAY_TOUCHES - 1, 10);
    const after = tap(before, 10_500).guard;
    expect(strayed(after, 10_600).isPocketed).toBe(false);
    expect(strayed(before, 10_600).isPocketed).toBe(true);
  });

  test('the deliberate touch obeys the other guards', () => {
    const guard = shown(strays(STRAY_TOUCHES, 10), 20_000);
    expect(tap(guard, 20_000 + NEWLY_SHOWN_MS - 1, { goesOn: true }).verdict).toBe('newlyShown');
    expect(tap(guard, 21_000, { goesOn: true, breadthPx: BROADEST_THUMB_PX + 1 }).verdict).toBe('tooBroad');
    expect(tap(guard, 21_000, { goesOn: true }).verdict).toBe('taken');
  });
});

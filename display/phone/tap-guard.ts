/** What has only just come into view is not tapped yet: the thumb meant what was there before. */
export const NEWLY_SHOWN_MS = 400;
/** The same for a row that has only just moved under the thumb. */
export const NEWLY_MOVED_MS = 400;
/** Two taps closer than this are one: a thumb bounces, and a phone repeats. */
export const ONE_TAP_MS = 600;

/** What decides whether a touch counts as a tap. Times are of one clock that only runs forward, in ms. */
export interface TapGuard {
  readonly shownMs: number;
  readonly takenMs: number | null;
  readonly pointers: readonly number[];
  /** Two pointers were down at once: nothing counts until all are up. */
  readonly isCrowded: boolean;
}

/** Why a touch does not count; `taken` where it does. */
export type TapVerdict = 'taken' | 'newlyShown' | 'newlyMoved' | 'crowded' | 'sameTap';

/** One press of something, from finger down to finger up. For a key both are the same instant. */
export interface Press {
  readonly downMs: number;
  readonly upMs: number;
  /** When what is under the finger last moved; null if it never did. */
  readonly movedMs: number | null;
}

/** A guard for a page that shows from `atMs` on. */
export function newGuard(atMs: number): TapGuard {
  return { shownMs: atMs, takenMs: null, pointers: [], isCrowded: false };
}

/** Something else is on the screen from now on. */
export function shown(guard: TapGuard, atMs: number): TapGuard {
  return { ...guard, shownMs: atMs };
}

export function pointerDown(guard: TapGuard, pointerId: number): TapGuard {
  const pointers = [...guard.pointers.filter((other) => other !== pointerId), pointerId];
  return { ...guard, pointers, isCrowded: guard.isCrowded || pointers.length > 1 };
}

/** The pointer is up, or was taken over by scrolling. Judge its press before. */
export function pointerGone(guard: TapGuard, pointerId: number): TapGuard {
  const pointers = guard.pointers.filter((other) => other !== pointerId);
  return { ...guard, pointers, isCrowded: pointers.length > 0 && guard.isCrowded };
}

/** Judges a press; one that is taken is remembered. What was shown or moved is judged by when the finger came down. */
export function judge(guard: TapGuard, press: Press): { readonly guard: TapGuard; readonly verdict: TapVerdict } {
  const verdict = verdictOn(guard, press);
  return { guard: verdict === 'taken' ? { ...guard, takenMs: press.upMs } : guard, verdict };
}

function verdictOn(guard: TapGuard, press: Press): TapVerdict {
  if (guard.isCrowded) return 'crowded';
  if (press.downMs - guard.shownMs < NEWLY_SHOWN_MS) return 'newlyShown';
  if (press.movedMs !== null && press.downMs - press.movedMs < NEWLY_MOVED_MS) return 'newlyMoved';
  if (guard.takenMs !== null && press.upMs - guard.takenMs < ONE_TAP_MS) return 'sameTap';
  return 'taken';
}

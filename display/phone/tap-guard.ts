/** What has only just come into view is not tapped yet: the thumb meant what was there before. */
export const NEWLY_SHOWN_MS = 400;
/** The same for a row that has only just moved under the thumb. */
export const NEWLY_MOVED_MS = 400;
/** Two taps closer than this are one: a thumb bounces, and a phone repeats. */
export const ONE_TAP_MS = 600;

/**
 * A contact broader than this, in CSS px, is no thumb: a flat hand, cloth, a hip. A thumb laid flat covers about 25 mm
 * (from memory), which is 100 px at the phone's 4 px to the millimetre.
 */
export const BROADEST_THUMB_PX = 120;
/** So many touches that meant nothing within this time, and the phone takes itself to be in a pocket. */
export const STRAY_TOUCHES = 4;
export const STRAY_WITHIN_MS = 2_000;

/** What decides whether a touch counts as a tap. Times are of one clock that only runs forward, in ms. */
export interface TapGuard {
  readonly shownMs: number;
  readonly takenMs: number | null;
  readonly pointers: readonly number[];
  /** Two pointers were down at once: nothing counts until all are up. */
  readonly isCrowded: boolean;
  /** When touches lately hit nothing, or were none of a thumb. */
  readonly strayMs: readonly number[];
  /** Too many of those: nothing counts until one deliberate touch. */
  readonly isPocketed: boolean;
}

/** Why a touch does not count; `taken` where it does. */
export type TapVerdict = 'taken' | 'newlyShown' | 'newlyMoved' | 'crowded' | 'sameTap' | 'tooBroad' | 'pocketed';

/** One press of something, from finger down to finger up. For a key both are the same instant. */
export interface Press {
  readonly downMs: number;
  readonly upMs: number;
  /** When what is under the finger last moved; null if it never did. */
  readonly movedMs: number | null;
  /** How broad the contact was at its broadest, in CSS px; 0 where the browser does not say, and for a key. */
  readonly breadthPx: number;
  /** The one touch that the page asks for when it has been in a pocket. */
  readonly goesOn: boolean;
}

/** A guard for a page that shows from `atMs` on. */
export function newGuard(atMs: number): TapGuard {
  return { shownMs: atMs, takenMs: null, pointers: [], isCrowded: false, strayMs: [], isPocketed: false };
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

/** A touch hit nothing that acts, or was none of a thumb. */
export function strayed(guard: TapGuard, atMs: number): TapGuard {
  const strayMs = [...guard.strayMs.filter((beforeMs) => atMs - beforeMs < STRAY_WITHIN_MS), atMs];
  return strayMs.length < STRAY_TOUCHES ? { ...guard, strayMs } : { ...guard, strayMs: [], isPocketed: true };
}

/** Whether a contact is too broad for a thumb. */
export function isTooBroad(breadthPx: number): boolean {
  return breadthPx > BROADEST_THUMB_PX;
}

/** Judges a press; one that is taken is remembered. What was shown or moved is judged by when the finger came down. */
export function judge(guard: TapGuard, press: Press): { readonly guard: TapGuard; readonly verdict: TapVerdict } {
  const verdict = verdictOn(guard, press);
  if (verdict !== 'taken') return { guard, verdict };
  return { guard: { ...guard, takenMs: press.upMs, strayMs: [], isPocketed: false }, verdict };
}

function verdictOn(guard: TapGuard, press: Press): TapVerdict {
  if (guard.isCrowded) return 'crowded';
  if (isTooBroad(press.breadthPx)) return 'tooBroad';
  if (guard.isPocketed && !press.goesOn) return 'pocketed';
  if (press.downMs - guard.shownMs < NEWLY_SHOWN_MS) return 'newlyShown';
  if (press.movedMs !== null && press.downMs - press.movedMs < NEWLY_MOVED_MS) return 'newlyMoved';
  if (guard.takenMs !== null && press.upMs - guard.takenMs < ONE_TAP_MS) return 'sameTap';
  return 'taken';
}

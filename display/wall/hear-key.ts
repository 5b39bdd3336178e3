/** A key as far as it matters here. */
export interface KeyPress {
  readonly key: string;
  readonly code: string;
  readonly repeat: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

/** Keys that foot pedals send, beside Enter, Space and the keypad. */
const PEDAL_KEYS = new Set(['PageUp', 'PageDown']);

/** What takes keys for itself: a press that reaches one of these is its business alone. */
const CONTROLS = 'button, a[href], input, select, textarea, summary, [contenteditable]';

/** Whether a key goes to a control that has the focus, and so means nothing else. */
export function isForControl(event: Event): boolean {
  return event.composedPath().some((target) => target instanceof Element && target.matches(CONTROLS));
}

/** Whether a key on the wall means "heard": Enter, Space, a foot pedal's, or any key of the keypad; not one held down. */
export function isHearKey(press: KeyPress): boolean {
  if (press.repeat || press.ctrlKey || press.altKey || press.metaKey) return false;
  return press.key === 'Enter' || press.key === ' ' || press.code.startsWith('Numpad') || PEDAL_KEYS.has(press.key);
}

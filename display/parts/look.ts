import { kept } from './kept.ts';

/** Light or dark paper. */
export const LOOKS = ['day', 'night'] as const;
export type Look = (typeof LOOKS)[number];

/** What somebody chose for a device: a look, or whatever its browser asks for. */
export const LOOK_CHOICES = ['day', 'night', 'browser'] as const;
export type LookChoice = (typeof LOOK_CHOICES)[number];

const KEY = 'ovenward.look';
const DARK = '(prefers-color-scheme: dark)';

/** The look that this page was last given on this device; `otherwise` where nobody chose. */
export function keptLookChoice(otherwise: LookChoice): LookChoice {
  const last = kept.read(KEY);
  return LOOK_CHOICES.find((choice) => choice === last) ?? otherwise;
}

/** Keeps the choice for this device's next load. */
export function keepLookChoice(choice: LookChoice): void {
  kept.write(KEY, choice);
}

/** The look that a choice comes to here and now. */
export function lookOf(choice: LookChoice): Look {
  if (choice !== 'browser') return choice;
  return matchMedia(DARK).matches ? 'night' : 'day';
}

/** Gives the page its look, and the colour that a phone's own frame takes from it. */
export function showLook(look: Look): void {
  const { documentElement } = document;
  if (documentElement.dataset['look'] === look) return;
  documentElement.dataset['look'] = look;
  const paper = getComputedStyle(documentElement).getPropertyValue('--paper').trim();
  document.querySelector('meta[name=theme-color]')?.setAttribute('content', paper);
}

/** Calls back whenever the browser asks for another look. Returns what ends it. */
export function onBrowserLook(changed: () => void): () => void {
  const query = matchMedia(DARK);
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

/** What a station's own screen says beside what phone and wall say. */
export const STATION = {
  pageTitle: 'Station',
  chooseTitle: 'Where is this screen?',
  chooseMore: 'It shows what that station has to do, and keeps it on this device.',
  gone: 'This kitchen has no such station.',
  backToWork: 'Back to work',
  otherDoughs: 'Then',
  emptyTitle: 'Nothing to do here',
  emptyMore: 'What comes to this station shows here by itself.',
  elsewhere: 'Elsewhere',
  machines: 'Machines',
  mixers: 'Mixers',
  ovens: 'Ovens',
  mixerEmpty: 'empty',
  deckFree: 'free',
  staysLit: 'The screen stays lit while this page is in front.',
  mayDim: 'This browser may dim the screen: set the device to stay lit.',
} as const;

/** Doughs that press elsewhere beside the one that is named. */
export function moreElsewhereWords(count: number): string {
  return `+${count} more`;
}

/** What goes into a slot next. */
export function nextLoadWords(tag: string, clock: string): string {
  return `next ${tag} ${clock}`;
}

/** A dough in the oven, and how long it is still in. */
export function inSlotWords(tag: string, countdown: string): string {
  return `${tag} ${countdown}`;
}

/** Why a machine cannot be had, and until when where somebody said. */
export function blockedTillWords(why: string, clock: string | null): string {
  return clock === null ? why : `${why} till ${clock}`;
}

/** What a station's own screen says beside what phone and wall say. */
export const STATION = {
  pageTitle: 'Posten',
  chooseTitle: 'Wo hängt dieser Bildschirm?',
  chooseMore: 'Er zeigt, was an diesem Posten zu tun ist. Die Wahl bleibt auf diesem Gerät.',
  gone: 'Diesen Posten gibt es in der Backstube nicht.',
  backToWork: 'Zurück zur Arbeit',
  otherDoughs: 'Danach',
  emptyTitle: 'Hier ist nichts zu tun',
  emptyMore: 'Was an diesen Posten kommt, erscheint hier von selbst.',
  elsewhere: 'Anderswo',
  machines: 'Geräte',
  mixers: 'Kneter',
  ovens: 'Öfen',
  mixerEmpty: 'leer',
  deckFree: 'frei',
  staysLit: 'Der Bildschirm bleibt an, solange diese Seite vorn ist.',
  mayDim: 'Dieser Browser kann den Bildschirm abdunkeln: das Gerät so einstellen, dass es an bleibt.',
} as const;

/** Doughs that press elsewhere beside the one that is named. */
export function moreElsewhereWords(count: number): string {
  return `+${count} weitere`;
}

/** What goes into a slot next. */
export function nextLoadWords(tag: string, clock: string): string {
  return `dann ${tag} ${clock}`;
}

/** A dough in the oven, and how long it is still in. */
export function inSlotWords(tag: string, countdown: string): string {
  return `${tag} ${countdown}`;
}

/** Why a machine cannot be had, and until when where somebody said. */
export function blockedTillWords(why: string, clock: string | null): string {
  return clock === null ? why : `${why} bis ${clock}`;
}

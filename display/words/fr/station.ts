/** What a station's own screen says beside what phone and wall say. */
export const STATION = {
  pageTitle: 'Poste',
  chooseTitle: 'Où est cet écran\u202f?',
  chooseMore: 'Il montre le travail de ce poste. Le choix reste sur cet appareil.',
  gone: 'Ce fournil n’a pas ce poste.',
  backToWork: 'Retour au travail',
  otherDoughs: 'Ensuite',
  emptyTitle: 'Rien à faire ici',
  emptyMore: 'Ce qui arrive à ce poste s’affiche ici tout seul.',
  elsewhere: 'Ailleurs',
  machines: 'Machines',
  mixers: 'Pétrins',
  ovens: 'Fours',
  mixerEmpty: 'vide',
  deckFree: 'libre',
  staysLit: 'L’écran reste allumé tant que cette page est devant.',
  mayDim: 'Ce navigateur peut baisser l’écran\u00a0: régler l’appareil pour qu’il reste allumé.',
} as const;

/** Doughs that press elsewhere beside the one that is named. */
export function moreElsewhereWords(count: number): string {
  return `+${count} de plus`;
}

/** What goes into a slot next. */
export function nextLoadWords(tag: string, clock: string): string {
  return `puis ${tag} ${clock}`;
}

/** A dough in the oven, and how long it is still in. */
export function inSlotWords(tag: string, countdown: string): string {
  return `${tag} ${countdown}`;
}

/** Why a machine cannot be had, and until when where somebody said. */
export function blockedTillWords(why: string, clock: string | null): string {
  return clock === null ? why : `${why} jusqu’à ${clock}`;
}

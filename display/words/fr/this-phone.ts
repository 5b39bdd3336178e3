/** What the phone says of itself: its settings, whose doughs it lists, what came of its taps. */
export const THIS_PHONE = {
  stationPage: 'Écran fixe pour un poste',
  // The list.
  whose: 'Les pâtes de qui\u202f?',
  all: 'Toutes',
  allShown: 'Toutes les pâtes',
  emptyAt: (station: string): string => `Rien pour ${station}`,
  emptyAtMore: 'Ce qu’ont les autres postes est sous Toutes.',
  showAll: 'tout montrer',
  // What came of taps.
  refusedTitle: (count: number): string => `${count} appuis restés sans effet`,
  putAway: 'Lu, à ranger',
  // Pockets.
  goOn: 'Toucher ici pour continuer',
  goOnMore: 'L’écran a été touché plusieurs fois à vide. Rien ne compte avant cela.',
  // The last of the ferment.
  lastOfIt: (seed: string): string => `laisse moins que le chef de ${seed}`,
  drawDespite: 'Prélever quand même',
} as const;

/** What waits at other stations. */
export function elsewhereWords(lost: number, late: number, calls: number): string {
  const parts = [
    ...(lost === 0 ? [] : [`${lost} ${lost === 1 ? 'se perd' : 'se perdent'}`]),
    ...(late === 0 ? [] : [`${late} en retard`]),
    ...(calls === 0 ? [] : [`${calls} à faire`]),
  ];
  return `Ailleurs\u00a0: ${parts.join(', ')}`;
}

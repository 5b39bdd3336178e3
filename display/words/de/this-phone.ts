/** What the phone says of itself: its settings, whose doughs it lists, what came of its taps. */
export const THIS_PHONE = {
  stationPage: 'Fester Bildschirm am Posten',
  // The list.
  whose: 'Wessen Teige?',
  all: 'Alle',
  allShown: 'Alle Teige',
  emptyAt: (station: string): string => `Nichts für ${station}`,
  emptyAtMore: 'Was andere Posten haben, steht unter Alle.',
  showAll: 'alle zeigen',
  // What came of taps.
  refusedTitle: (count: number): string => `Aus ${count} Eingaben wurde nichts`,
  putAway: 'Gelesen, weglegen',
  // Pockets.
  goOn: 'Zum Weitermachen hier tippen',
  goOnMore: 'Der Bildschirm wurde oft berührt, wo nichts ist. Vorher zählt nichts.',
  // The last of the ferment.
  lastOfIt: (seed: string): string => `lässt weniger als das Anstellgut von ${seed}`,
  drawDespite: 'Trotzdem entnehmen',
} as const;

/** What waits at other stations. */
export function elsewhereWords(lost: number, late: number, calls: number): string {
  const parts = [
    ...(lost === 0 ? [] : [`${lost} ${lost === 1 ? 'geht' : 'gehen'} verloren`]),
    ...(late === 0 ? [] : [`${late} verspätet`]),
    ...(calls === 0 ? [] : [`${calls} zu tun`]),
  ];
  return `Anderswo: ${parts.join(', ')}`;
}

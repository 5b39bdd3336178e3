/** What the phone says of itself: its settings, whose doughs it lists, what came of its taps. */
export const THIS_PHONE = {
  stationPage: 'Fixed screen for a station',
  // The list.
  whose: 'Whose doughs?',
  all: 'All',
  allShown: 'All doughs',
  emptyAt: (station: string): string => `Nothing for ${station}`,
  emptyAtMore: 'What other stations have shows under All.',
  showAll: 'show all',
  // What came of taps.
  refusedTitle: (count: number): string => `${count} taps came to nothing`,
  putAway: 'Read, put away',
  // Pockets.
  goOn: 'Touch here to go on',
  goOnMore: 'The screen was touched many times where nothing is. Nothing counts before this.',
  // The last of the ferment.
  lastOfIt: (seed: string): string => `leaves less than the seed of ${seed}`,
  drawDespite: 'Draw it all the same',
} as const;

/** What waits at other stations. */
export function elsewhereWords(lost: number, late: number, calls: number): string {
  const parts = [
    ...(lost === 0 ? [] : [`${lost} being lost`]),
    ...(late === 0 ? [] : [`${late} late`]),
    ...(calls === 0 ? [] : [`${calls} to do`]),
  ];
  return `${parts.join(', ')} elsewhere`;
}

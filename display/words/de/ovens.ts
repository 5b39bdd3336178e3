/** How hot the slots of an oven are, and the pieces that try it. */
export const OVENS = {
  quicker: (percent: number): string => `${percent} % schneller`,
  slower: (percent: number): string => `${percent} % langsamer`,
  asSet: 'wie eingestellt',
  unknown: 'Hitze noch nicht bekannt',
  sure: ['kaum bekannt', 'ziemlich sicher', 'sicher'],
  map: 'Von heiß nach kühl',
  mapMore: 'Nach Probestücken und danach, wie ausgebacken wurde.',
  testPiece: 'Probestück…',
  testPieceTitle: (slot: string): string => `${slot}: Ein Teigstück, das am Bezugsplatz wie viele Minuten braucht?`,
  testPieceIn: (minutes: string, of: string): string => `Probestück: ${minutes} von ${of} min`,
  asReference: 'Wie am Bezugsplatz: fertig',
  throwAway: 'Weggeworfen',
} as const;

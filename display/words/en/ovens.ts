/** How hot the slots of an oven are, and the pieces that try it. */
export const OVENS = {
  quicker: (percent: number): string => `${percent} % quicker`,
  slower: (percent: number): string => `${percent} % slower`,
  asSet: 'as the deck is set',
  unknown: 'heat not known yet',
  sure: ['hardly known', 'fairly sure', 'sure'],
  map: 'From hot to cool',
  mapMore: 'By test pieces and by bakes as they were taken out.',
  testPiece: 'Test piece…',
  testPieceTitle: (slot: string): string => `${slot}: a piece of dough that takes how many minutes at the reference?`,
  testPieceIn: (minutes: string, of: string): string => `Test piece: ${minutes} of ${of} min`,
  asReference: 'As the reference: done',
  throwAway: 'Thrown away',
} as const;

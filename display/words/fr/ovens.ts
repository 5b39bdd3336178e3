/** How hot the slots of an oven are, and the pieces that try it. */
export const OVENS = {
  quicker: (percent: number): string => `${percent} % plus vite`,
  slower: (percent: number): string => `${percent} % moins vite`,
  asSet: 'comme réglé',
  unknown: 'chaleur pas encore connue',
  sure: ['à peine connu', 'assez sûr', 'sûr'],
  map: 'Du plus chaud au moins chaud',
  mapMore: 'D’après les pâtons d’essai et les cuissons comme elles ont été sorties.',
  testPiece: 'Pâton d’essai…',
  testPieceTitle: (slot: string): string => `${slot}\u00a0: un pâton qui demande combien de minutes à la référence\u202f?`,
  testPieceIn: (minutes: string, of: string): string => `Pâton d’essai\u00a0: ${minutes} sur ${of} min`,
  asReference: 'Comme la référence\u00a0: fini',
  throwAway: 'Jeté',
} as const;

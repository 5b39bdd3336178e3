/** The drawing of where everything stands. */
export const PLACES = {
  title: 'Où tout se trouve',
  open: 'Places',
  ofDough: 'Où…',
  rest: 'Lieux de repos',
  mixers: 'Pétrins',
  ovens: 'Fours',
  empty: 'vide',
  free: 'libre',
  taken: (count: number, room: number): string => `${count} sur ${room}`,
  bowlUnsaid: 'cuve non dite',
  vesselUnsaid: 'contenant non dit',
  unplaced: 'Place non dite',
  unplacedMore: 'À dire sur sa fiche\u00a0: Autre…, Plus…, Déplacer…',
  freeBowls: (names: string): string => `Cuves libres\u00a0: ${names}`,
  held: (count: number, name: string): string => `${count} × ${name}`,
  nothing: 'Aucune pâte nulle part.',
} as const;

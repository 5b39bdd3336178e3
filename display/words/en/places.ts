/** The drawing of where everything stands. */
export const PLACES = {
  title: 'Where everything stands',
  open: 'Places',
  ofDough: 'Where…',
  rest: 'Rest places',
  mixers: 'Mixers',
  ovens: 'Ovens',
  empty: 'empty',
  free: 'free',
  taken: (count: number, room: number): string => `${count} of ${room}`,
  bowlUnsaid: 'bowl not said',
  vesselUnsaid: 'not said in what',
  unplaced: 'Nobody said where',
  unplacedMore: 'Its card says it: Other…, More…, Move…',
  freeBowls: (names: string): string => `Bowls free: ${names}`,
  held: (count: number, name: string): string => `${count} × ${name}`,
  nothing: 'No dough stands anywhere.',
} as const;

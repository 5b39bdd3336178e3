/** The drawing of where everything stands. */
export const PLACES = {
  title: 'Was wo steht',
  open: 'Plätze',
  ofDough: 'Wo…',
  rest: 'Ruheplätze',
  mixers: 'Kneter',
  ovens: 'Öfen',
  empty: 'leer',
  free: 'frei',
  taken: (count: number, room: number): string => `${count} von ${room}`,
  bowlUnsaid: 'Kessel nicht gesagt',
  vesselUnsaid: 'nicht gesagt, worin',
  unplaced: 'Niemand hat gesagt, wo',
  unplacedMore: 'Auf der Karte sagen: Anderes…, Mehr…, Umstellen…',
  freeBowls: (names: string): string => `Freie Kessel: ${names}`,
  held: (count: number, name: string): string => `${count} × ${name}`,
  nothing: 'Es steht nirgends Teig.',
} as const;

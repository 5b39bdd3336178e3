import type { ReadWhere } from './events.ts';

/** What can be read in a bakehouse at all, in °C: beyond it somebody misread or mistyped. Our choice, wide on purpose. */
const SANE_C: Readonly<Record<ReadWhere, readonly [number, number]>> = {
  dough: [-30, 45],
  core: [-30, 120],
  water: [-5, 100],
  filling: [-30, 200],
  room: [-30, 55],
  flour: [-30, 55],
  tap: [0, 80],
  preferment: [-30, 45],
};

/** The nearest temperature that a reading could be, in °C, where it cannot be what it says; null where it can. */
export function saneBound(where: ReadWhere, celsius: number): number | null {
  const [least, most] = SANE_C[where];
  if (celsius < least) return least;
  return celsius > most ? most : null;
}

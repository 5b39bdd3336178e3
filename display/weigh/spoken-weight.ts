import type { House } from '../../shared/documents/house.ts';
import { weightFigures } from '../parts/weight-text.ts';
import { WEIGH } from '../words/weigh.ts';

/** A weight in the house's unit in whole words, for who hears it: "3900 grams". `divisionG` as for `weightText`. */
export function weightSpoken(grams: number, units: House['units'], divisionG: number | null = null): string {
  return weightFigures(grams, units, divisionG)
    .map(({ figure, unit }) => `${figure.replaceAll('\u202f', '')} ${WEIGH.spoken[unit]}`)
    .join(' ');
}

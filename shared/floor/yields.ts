import type { Formula } from '../documents/formula.ts';
import { upToTenth } from './tenths.ts';

/** The share of what is weighed out that a prep makes, above 0 to 1: what its steps leave, less what sticks to pots and spoons. */
export function yieldShare({ method, handlingLossPct = 0 }: Formula): number {
  return method.reduce((share, { yieldPct = 100 }) => (share * yieldPct) / 100, 1 - handlingLossPct / 100);
}

/** Grams to be weighed out for so many grams of a prep as it is used. */
export function rawG(prep: Formula, wantedG: number): number {
  return upToTenth(wantedG / yieldShare(prep));
}

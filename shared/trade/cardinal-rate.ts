import type { Cardinals } from './rate-model.ts';

/**
 * Growth at a temperature as a share of that at the best, 0 to 1: the cardinal temperature model with inflection (CTMI), Rosso, Lobry &
 * Flandrois 1993, J. Theor. Biol. 162:447. 0 outside its range. Defined for `areCardinals` alone; where a document from elsewhere has
 * others, the share is kept between 0 and 1.
 */
export function cardinalShare(doughC: number, { minC, optC, maxC }: Cardinals): number {
  if (doughC <= minC || doughC >= maxC) return 0;
  const rising = optC - minC;
  const falling = maxC - optC;
  const denominator = rising * (rising * (doughC - optC) + falling * (optC + minC - 2 * doughC));
  const share = ((doughC - maxC) * (doughC - minC) ** 2) / denominator;
  return Math.min(1, Math.max(0, share));
}

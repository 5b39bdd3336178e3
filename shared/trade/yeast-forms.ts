/** How yeast is bought. */
export type YeastKind = 'fresh' | 'dry' | 'instant';

/**
 * How much of each raises alike: 3 of fresh, 1.2 of dry, 1 of instant. Common practice; what the packet says comes first, and the
 * water in fresh yeast is left out.
 */
const RAISES_ALIKE: Readonly<Record<YeastKind, number>> = { fresh: 3, dry: 1.2, instant: 1 };

/** Grams of yeast in one form for grams in another, by the customary ratios. */
export function convertedYeastG(g: number, from: YeastKind, to: YeastKind): number {
  return from === to ? g : (g * RAISES_ALIKE[to]) / RAISES_ALIKE[from];
}

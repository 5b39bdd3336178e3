/** A kind of change with how much of it: minutes, pieces, vessels. */
export interface Amounts {
  /** The least that anybody would say, the steps in which it is said, and the most that is thinkable. */
  readonly least: number;
  readonly step: number;
  readonly most: number;
  /** What it would take by rule of thumb. */
  readonly guess: number;
}

/** What came of a try: `fits`, the trouble is gone; `lessens`, clearly less is left of it: `left` of 1. */
export interface Outcome {
  readonly fits: boolean;
  readonly lessens: boolean;
  readonly left: number;
}

/** An amount is not narrowed down any further once it is known to so large a share of it. */
const NARROW = 0.1;
/** So often more is tried where the first guess was not enough. */
const MOST_RAISES = 2;

/**
 * The least amount that makes it fit, as far as tries tell: from a guess on, by as much more as what was left asks for or
 * twice as much, then narrowed down from both sides.
 * Where none does, the one that lessens it most. Null where none helps, or `tryIt` would not try any more (it gives null).
 */
export function leastThatHelps<Tried extends Outcome>(
  { least, step, most, guess }: Amounts,
  tryIt: (amount: number) => Tried | null,
): { readonly amount: number; readonly tried: Tried } | null {
  if (most < least) return null;
  const rounded = (amount: number): number => Math.min(most, Math.max(least, Math.ceil(amount / step) * step));
  let tooLittle = 0;
  let best: { amount: number; tried: Tried } | null = null;
  let amount = rounded(guess);
  for (let raise = 0; raise <= MOST_RAISES; raise += 1) {
    const tried = tryIt(amount);
    if (tried === null) return best;
    if (tried.fits || (tried.lessens && (best === null || tried.left < best.tried.left))) best = { amount, tried };
    if (tried.fits || amount === most) break;
    tooLittle = amount;
    // In proportion to what it has done so far; a little more than that, or it would come to the same amount again.
    amount = rounded(Math.max(amount + step, tried.lessens ? amount / (1 - tried.left) : amount * 2));
  }
  while (best?.tried.fits === true && best.amount - tooLittle > Math.max(step, NARROW * best.amount)) {
    const between = rounded((tooLittle + best.amount) / 2);
    if (between <= tooLittle || between >= best.amount) break;
    const tried = tryIt(between);
    if (tried === null) break;
    if (tried.fits) best = { amount: between, tried };
    else tooLittle = between;
  }
  return best;
}

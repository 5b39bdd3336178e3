import { PRICES, type DayProblem } from './problem.ts';

/** A move of what begins at once costs so many times the price of a move far off... */
const NEAR_FACTOR = 4;
/** ...and from so far off it costs the plain price. */
const NEAR_S = 2 * 3600;

/**
 * What a minute costs by which each activity is moved from where the plan had it: dearer the nearer to the present, dearest where people
 * were told. 0 for what stands already, and for what no plan had. The present is the earliest release of what has not begun.
 */
export function movedPrices(problem: DayProblem): Float64Array {
  const open = problem.activities.filter(({ fixedStartS }) => fixedStartS === null);
  const nowS = open.reduce((least, { releaseS }) => Math.min(least, releaseS), Infinity);
  return Float64Array.from(problem.activities, ({ fixedStartS, previousStartS, isToldAlready }) => {
    if (fixedStartS !== null || previousStartS === null) return 0;
    if (isToldAlready) return PRICES.toldMin;
    const nearness = Math.min(1, Math.max(0, 1 - (previousStartS - nowS) / NEAR_S));
    return PRICES.movedMin * (1 + (NEAR_FACTOR - 1) * nearness);
  });
}

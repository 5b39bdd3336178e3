import { PRICES } from '../../shared/plan/day/problem.ts';
import type { PlanFigures } from '../../shared/plan/plan-api.ts';

/** A plan is clearly better where it costs less by this share of what the plan in force costs... */
export const CLEARLY_BETTER_SHARE = 0.05;
/** ...and by what this many minutes of ripeness cost: nobody turns a day round for less. */
export const CLEARLY_BETTER_MIN = 15;

/** Whether a plan, its moves counted in, is worth being offered in the place of another. */
export function isClearlyBetter(before: Pick<PlanFigures, 'total'>, after: Pick<PlanFigures, 'total'>): boolean {
  const gain = before.total - after.total;
  return gain >= CLEARLY_BETTER_MIN * PRICES.ripenessMin && gain >= before.total * CLEARLY_BETTER_SHARE;
}

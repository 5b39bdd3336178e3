import { madeG, sharesOf } from '../../shared/documents/amounts.ts';
import { formulaOf, newestFormula } from '../../shared/floor/contents.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { zonedDate, zonedInstantMs } from '../parts/zoned-instant.ts';

/** What goes into a pot, in grams. */
export interface Feed {
  readonly seedG: number;
  readonly flourG: number;
  readonly waterG: number;
}

/** What the formula says of a feed up to so much as is planned; never more seed than the pot has once it was fed. Whole grams. */
export function usualFeed(state: FloorState, pot: Workpiece): Feed | null {
  const formula = formulaOf(state, pot);
  if (formula === null || pot.stock === null || madeG(formula) === 0) return null;
  const kinds = new Map((state.ingredients?.document ?? []).map((ingredient) => [ingredient.id, ingredient.kind]));
  const share = { flour: 0, water: 0, seed: 0 };
  for (const [id, part] of sharesOf(formula, newestFormula(state))) {
    const kind = kinds.get(id);
    share[kind === 'flour' || kind === 'water' ? kind : 'seed'] += part;
  }
  const wantedG = feedTargetG(pot);
  const seedG = Math.min(share.seed * wantedG, pot.stock.fedMs === null ? Infinity : pot.grams);
  const freshG = wantedG - seedG;
  const fresh = share.flour + share.water;
  const flourG = fresh === 0 ? 0 : Math.round((freshG * share.flour) / fresh);
  return { seedG: Math.round(seedG), flourG, waterG: fresh === 0 ? 0 : Math.round(freshG) - flourG };
}

/** Up to how much the pot is to be fed: what is planned, else what is in it. */
export function feedTargetG(pot: Workpiece): number {
  const stock = pot.stock;
  return stock !== null && stock.fedMs !== null ? (stock.plannedFeeds[0]?.grams ?? pot.grams) : pot.grams;
}

/** Minutes after midnight at which pots are commonly fed: before the night's mixing, in the early afternoon, at closing. Common practice. */
const FEED_MINUTES = [5 * 60, 13 * 60, 22 * 60] as const;
/** Clock times offered. */
const FEED_TIMES = 4;

export interface FeedTime {
  readonly feedMs: number;
  readonly date: string;
}

/** The next clock times at which the pot may be fed, in the house's zone. */
export function feedTimes(nowMs: number, zone: string): readonly FeedTime[] {
  const times = [0, 1, 2].flatMap((daysOn) => {
    const date = zonedDate(nowMs, zone, daysOn);
    return FEED_MINUTES.map((minutes) => ({ feedMs: zonedInstantMs(date, minutes, zone), date }));
  });
  return times.filter((time) => time.feedMs > nowMs).slice(0, FEED_TIMES);
}

import type { Ingredient } from '../../shared/documents/formula.ts';
import { daysOn } from './calendar.ts';
import type { Chance } from './chance.ts';

/** How many days a delivery lasts, by kind; flour comes about every eight days. */
const LASTS_DAYS: Readonly<Record<Ingredient['kind'], number>> = {
  flour: 8,
  water: 0,
  salt: 60,
  yeast: 10,
  fat: 14,
  sugar: 35,
  egg: 5,
  dairy: 4,
  seed: 21,
  other: 16,
};
/** Deliveries began so long before the first day. */
const BEFORE_DAYS = 14;
/** On the first day of a delivery the rest of the one before goes into so many lines along with it. */
const BOTH_SHARE = 0.4;

/** The deliveries of a house over a time: which lot number of an ingredient is open on which date. */
export class LotNumbers {
  readonly #chance: Chance;
  readonly #deliveries = new Map<string, readonly { readonly date: string; readonly lotNumber: string }[]>();

  constructor(ingredients: readonly Ingredient[], firstDate: string, lastDate: string, chance: Chance) {
    this.#chance = chance;
    for (const ingredient of ingredients) {
      const lasts = LASTS_DAYS[ingredient.kind];
      if (lasts > 0) this.#deliveries.set(ingredient.id, deliveriesOf(ingredient, lasts, firstDate, lastDate, chance));
    }
  }

  /** The lot numbers that go into a line on a date: one, or two where a sack ran out. None for what has none. */
  on(ingredientId: string, date: string): readonly string[] {
    const deliveries = this.#deliveries.get(ingredientId) ?? [];
    const index = deliveries.findLastIndex((delivery) => delivery.date <= date);
    const [before, open] = [deliveries[index - 1], deliveries[index]];
    if (open === undefined) return [];
    const isChange = open.date === date && before !== undefined;
    return isChange && this.#chance.is(BOTH_SHARE) ? [before.lotNumber, open.lotNumber] : [open.lotNumber];
  }
}

function deliveriesOf(
  { id }: Ingredient,
  lastsDays: number,
  firstDate: string,
  lastDate: string,
  chance: Chance,
): readonly { readonly date: string; readonly lotNumber: string }[] {
  const mill = id
    .split('-')
    .map((word) => word.charAt(0).toUpperCase())
    .join('')
    .padEnd(2, id.charAt(1).toUpperCase());
  const deliveries = [];
  // The first one is some way through already.
  let date = daysOn(firstDate, -chance.whole(1, Math.min(BEFORE_DAYS, lastsDays)));
  let number = chance.whole(100, 800);
  while (date <= lastDate) {
    deliveries.push({ date, lotNumber: `${mill}${date.slice(2, 4)}-${date.slice(5, 7)}${date.slice(8)}-${number}` });
    number += chance.whole(1, 9);
    date = daysOn(date, Math.max(1, Math.round(chance.near(lastsDays, lastsDays / 8))));
  }
  return deliveries;
}

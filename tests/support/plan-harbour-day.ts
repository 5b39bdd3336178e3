import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Order } from '../../shared/documents/order.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { demoFile, OPENING_MS, SERVICE_DATE } from '../domain/support/harbour.ts';
import { idOf } from '../domain/support/ids.ts';
import { Random } from '../simulation/support/random.ts';

const MINUTE_MS = 60_000;

/** Two hours after midnight on the market Saturday. */
export const NIGHT_MS = OPENING_MS - 60 * MINUTE_MS;

/** The harbour bakehouse with its books, nothing on the floor yet, and these orders. */
export function harbourState(orders: readonly Order[], kitchen: Kitchen = demoFile().kitchen): FloorState {
  const { house, ingredients, formulas, products } = demoFile();
  const first = (all: readonly { readonly id: string }[]): Record<string, number> => Object.fromEntries(all.map(({ id }) => [id, 1]));
  return {
    ...EMPTY_STATE,
    house: { version: 1, document: house },
    kitchen: { version: 1, document: kitchen },
    ingredients: { version: 1, document: ingredients },
    formulas: Object.fromEntries(formulas.map((one) => [`${one.id}@1`, one])),
    products: Object.fromEntries(products.map((one) => [`${one.id}@1`, one])),
    formulaVersions: first(formulas),
    productVersions: first(products),
    orders: Object.fromEntries(orders.map((order) => [order.id, order])),
  };
}

/** The same kitchen with all that it does not count: decks that take time to get hot, mixers and a bench of one that are cleaned of allergens. */
export function strictKitchen(): Kitchen {
  const { kitchen } = demoFile();
  return {
    ...kitchen,
    mixers: kitchen.mixers.map((mixer) => ({ ...mixer, changeOverMin: 10 })),
    ovens: kitchen.ovens.map((oven) => ({ ...oven, decks: oven.decks.map((deck) => ({ ...deck, heatKPerMin: 4, coolKPerMin: 2 })) })),
    bench: { room: 1, changeOverMin: 5 },
  };
}

/** Orders of some of the house's products, for the late morning and noon. The same seed, the same orders. */
export function harbourOrders(seed: number, count: number): Order[] {
  const random = new Random(seed, 'orders');
  return Array.from({ length: count }, (_, index) => ({
    id: idOf(index + 1),
    serviceDate: SERVICE_DATE,
    readyMs: NIGHT_MS + random.whole(540, 840) * MINUTE_MS,
    productId: random.pick(PRODUCTS),
    pieces: random.whole(6, 24),
    form: random.chance(0.2) ? 'hot' : 'cooled',
    weight: random.chance(0.2) ? 3 : 1,
  }));
}

const PRODUCTS = ['country-loaf', 'rye-tin', 'milk-bun', 'custard-bun', 'olive-flat', 'cheese-boat'] as const;

import { readFileSync } from 'node:fs';
import { readBakehouseFile, type BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Step } from '../../shared/documents/method.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { assert } from '../../shared/result.ts';
import { HARBOUR } from './places.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
/** What the orders are of; each is a batch of its own: nothing may be older than half an hour. */
const PRODUCTS = ['country-loaf', 'rye-tin', 'milk-bun', 'cheese-boat'] as const;
const FRESH_MIN = 30;
const PIECES = 12;
/** The first order is ready so long after now, the last so long. */
const FIRST_MS = 10 * HOUR_MS;
const LAST_MS = 24 * HOUR_MS;

/** A kitchen in numbers. */
export interface KitchenSize {
  /** How many there are of each of the harbour's two mixers. */
  readonly mixersOfEach: number;
  /** Deck ovens, beside the one that bakes on its hearth. */
  readonly deckOvens: number;
  /** People by station. */
  readonly hands: Readonly<Record<string, number>>;
  /** How many times the harbour's room and vessels. */
  readonly roomTimes: number;
}

/** A day of so many batches in a kitchen of its size, and how long it may take. */
export interface LiveDay {
  readonly batches: number;
  readonly kitchen: KitchenSize;
  readonly firstMs: number;
  readonly replanMs: number;
}

/** Two mixers, three ovens, five people. */
const OF_FIVE: KitchenSize = { mixersOfEach: 1, deckOvens: 2, hands: { mixer: 1, bench: 2, oven: 1, fillings: 1 }, roomTimes: 4 };
/** Ten mixers, ten ovens, twenty people. */
const OF_TWENTY: KitchenSize = { mixersOfEach: 5, deckOvens: 9, hands: { mixer: 5, bench: 9, oven: 5, fillings: 1 }, roomTimes: 20 };

export const LIVE_DAYS: readonly LiveDay[] = [
  { batches: 40, kitchen: OF_FIVE, firstMs: 2_000, replanMs: 50 },
  { batches: 200, kitchen: OF_TWENTY, firstMs: 20_000, replanMs: 300 },
];

/** The harbour's house and book in a kitchen of that size, with the harbour's own day or with nothing on its floor. */
export function houseOf(size: KitchenSize, floor: 'empty' | 'harbour'): BakehouseFile {
  const read = readBakehouseFile(JSON.parse(readFileSync(HARBOUR, 'utf8')));
  assert(read.ok, 'the harbour house is a bakehouse file');
  const { kitchen, formulas, products, ...rest } = read.value;
  const copies = new Map<string, readonly string[]>();
  return {
    ...rest,
    kitchen: widened(kitchen, size, copies),
    // What names mixers and decks names their copies, too.
    formulas: formulas.map((formula) => ({ ...formula, method: formula.method.map((step) => claimingCopies(step, copies)) })),
    products: products.map((product) => ({ ...product, way: product.way.map((step) => claimingCopies(step, copies)) })),
    day: { ...rest.day, batches: floor === 'empty' ? [] : rest.day.batches },
  };
}

function widened(
  kitchen: Kitchen,
  { mixersOfEach, deckOvens, hands, roomTimes }: KitchenSize,
  copies: Map<string, readonly string[]>,
): Kitchen {
  const several = <One extends { readonly id: string }>(one: One, count: number): readonly One[] => {
    const all = Array.from({ length: count }, (_, n) => (n === 0 ? one : { ...one, id: copyId(one.id, n) }));
    copies.set(
      one.id,
      all.map(({ id }) => id),
    );
    return all;
  };
  const [deckOven, ...others] = kitchen.ovens;
  assert(deckOven !== undefined, 'the harbour house has a deck oven');
  for (const deck of deckOven.decks) several(deck, deckOvens);
  return {
    ...kitchen,
    stations: kitchen.stations.map((station) => ({ ...station, hands: hands[station.id] ?? 1 })),
    mixers: kitchen.mixers.flatMap((mixer) => several(mixer, mixersOfEach)),
    bowls: kitchen.bowls.flatMap((bowl) =>
      several(bowl, mixersOfEach).map((one, n) => ({ ...one, fits: bowl.fits.map((id) => (n === 0 ? id : copyId(id, n))) })),
    ),
    restPlaces: kitchen.restPlaces.map((place) => (place.room === undefined ? place : { ...place, room: place.room * roomTimes })),
    vessels: kitchen.vessels.map((vessel) => ({ ...vessel, count: vessel.count * roomTimes })),
    ovens: [...several(deckOven, deckOvens).map((oven, n) => (n === 0 ? oven : withOwnIds(oven, n))), ...others],
  };
}

function withOwnIds(oven: Kitchen['ovens'][number], n: number): Kitchen['ovens'][number] {
  const decks = oven.decks.map((deck) => ({
    ...deck,
    id: copyId(deck.id, n),
    slots: deck.slots.map((slot) => ({ ...slot, id: copyId(slot.id, n) })),
  }));
  return { ...oven, decks };
}

function copyId(id: string, n: number): string {
  return `${id}-${n + 1}`;
}

function claimingCopies(step: Step, copies: ReadonlyMap<string, readonly string[]>): Step {
  return { ...step, claims: step.claims.map((claim) => ({ ...claim, ids: claim.ids.flatMap((id) => copies.get(id) ?? [id]) })) };
}

/** As many orders as there are to be batches, spread over the day, the products in turn. */
export function ordersOf({ batches }: LiveDay, nowMs: number): CommandOf<'placeOrders'>['orders'] {
  const apartMs = (LAST_MS - FIRST_MS) / Math.max(1, batches - 1);
  return Array.from({ length: batches }, (_, n) => ({
    productId: PRODUCTS[n % PRODUCTS.length] ?? '',
    pieces: PIECES,
    readyMs: Math.round((nowMs + FIRST_MS + n * apartMs) / MINUTE_MS) * MINUTE_MS,
    form: 'cooled',
    weight: 1,
    freshMin: FRESH_MIN,
  }));
}

import type { CommandOf } from '../../shared/floor/commands.ts';
import { instantOf } from '../main/planned-starts.ts';
import { weekdayOf } from './calendar.ts';
import type { Chance } from './chance.ts';

export type Wanted = CommandOf<'placeOrders'>['orders'][number];

/** What is ordered of a product on each weekday, Monday to Sunday, and how it is wanted. */
interface Pattern {
  readonly product: string;
  readonly pieces: readonly [number, number, number, number, number, number, number];
  /** So many in one go to the shop; the rest goes to the other. */
  readonly shopShare: number;
  readonly other: 'Van' | 'Market stall' | 'Quay kitchen';
  readonly shopAt: string;
  readonly otherAt: string;
  readonly form?: 'hot';
  readonly most: number;
  /** Orders come to whole dozens, boxes or boards. */
  readonly by: number;
}

const PATTERNS: readonly Pattern[] = [
  {
    product: 'country-loaf',
    pieces: [0, 12, 14, 14, 18, 20, 16],
    shopShare: 0.6,
    other: 'Van',
    shopAt: '07:30',
    otherAt: '08:30',
    most: 20,
    by: 1,
  },
  {
    product: 'country-loaf-cold',
    pieces: [0, 0, 0, 0, 8, 10, 6],
    shopShare: 0,
    other: 'Quay kitchen',
    shopAt: '17:30',
    otherAt: '17:30',
    most: 10,
    by: 1,
  },
  {
    product: 'rye-tin',
    pieces: [0, 0, 12, 10, 16, 16, 10],
    shopShare: 0.4,
    other: 'Van',
    shopAt: '08:00',
    otherAt: '09:00',
    most: 16,
    by: 1,
  },
  {
    product: 'milk-bun',
    pieces: [0, 30, 30, 30, 30, 30, 30],
    shopShare: 0.5,
    other: 'Van',
    shopAt: '07:30',
    otherAt: '08:00',
    most: 30,
    by: 2,
  },
  {
    product: 'custard-bun',
    pieces: [0, 12, 16, 18, 24, 30, 24],
    shopShare: 0.5,
    other: 'Market stall',
    shopAt: '09:00',
    otherAt: '09:30',
    most: 30,
    by: 2,
  },
  {
    product: 'cheese-boat',
    pieces: [0, 0, 0, 10, 12, 16, 12],
    shopShare: 0.4,
    other: 'Market stall',
    shopAt: '09:00',
    otherAt: '09:00',
    form: 'hot',
    most: 16,
    by: 1,
  },
  {
    product: 'olive-flat',
    pieces: [0, 5, 6, 6, 10, 12, 8],
    shopShare: 0.6,
    other: 'Market stall',
    shopAt: '10:30',
    otherAt: '11:00',
    most: 12,
    by: 1,
  },
];

/** How far a day's orders are from the weekday's pattern. */
const SPREAD = 0.13;
/** Fewer than so many of a product are not worth a dough. */
const LEAST_PIECES = 5;

/** The orders of a day: its weekday's pattern, spread, a little more as the season comes on. */
export function ordersOf(date: string, zone: string, growth: number, chance: Chance): readonly Wanted[] {
  return PATTERNS.flatMap((pattern): Wanted[] => {
    const usual = pattern.pieces[weekdayOf(date) - 1] ?? 0;
    const wanted = Math.round((usual * growth * chance.factor(SPREAD)) / pattern.by) * pattern.by;
    const pieces = Math.min(pattern.most, wanted);
    if (usual === 0 || pieces < LEAST_PIECES) return [];
    const shop = Math.round((pieces * pattern.shopShare) / pattern.by) * pattern.by;
    const form = pattern.form ?? 'cooled';
    const one = (count: number, at: string, label: string): Wanted[] =>
      count === 0 ? [] : [{ productId: pattern.product, pieces: count, readyMs: instantOf(zone, date, at), form, weight: 1, label }];
    return [...one(shop, pattern.shopAt, 'Shop'), ...one(pieces - shop, pattern.otherAt, pattern.other)];
  });
}

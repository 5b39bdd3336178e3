import type { CommandOf } from '../../shared/floor/commands.ts';
import type { BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { assert } from '../../shared/result.ts';
import { instantOf } from '../main/planned-starts.ts';
import { daysOn } from './calendar.ts';
import type { Wanted } from './orders-of-day.ts';

export type PlannedBatch = CommandOf<'planBatches'>['batches'][number];

/** The pot is fed at this time on the evening before. */
export const FEED_AT = '18:30';
const FIRST_DOUGH_AT = '22:40';
/** A country dough keeps the spiral for so long. */
const COUNTRY_MS = 65 * 60_000;
/** What of a dough's weight is levain, as the formulas have it. */
const LEVAIN_SHARE: Readonly<Record<string, number>> = { country: 1500 / 9200, rye: 2700 / 11_600 };
/** More is fed than is drawn: the seed, and what sticks to the pot. */
const POT_REST_G = 250;
/** More dough is mixed than the pieces weigh, so that the last one is not short. */
const OVER = 1.015;
/** Pieces that a dough is divided into at most: what one oven deck and the bench bear. */
const MOST_LOAVES = 10;
const MOST_FLATS = 6;

/** The batches for a day's orders, through the night before it: mixers one dough after another, ovens as each comes to them. */
export function batchesFor(date: string, file: BakehouseFile, orders: readonly Wanted[]): readonly PlannedBatch[] {
  const { house, products } = file;
  const eve = daysOn(date, -1);
  const at = (day: string, time: string): number => instantOf(house.zone, day, time);
  const pieces = (product: string): number => orders.reduce((sum, order) => sum + (order.productId === product ? order.pieces : 0), 0);
  const batch = (formulaId: string, plannedStartMs: number, wanted: Readonly<Partial<Record<string, number>>>): PlannedBatch[] => {
    const cuts = Object.entries(wanted)
      .filter((entry): entry is [string, number] => (entry[1] ?? 0) > 0)
      .map(([productId, count]) => {
        const product = products.find((candidate) => candidate.id === productId);
        assert(product !== undefined, `the house makes ${productId}`);
        return { productId, pieces: count, grams: count * product.pieceG };
      });
    const neededG = cuts.reduce((sum, cut) => sum + cut.grams, 0) * OVER;
    const grams = Math.ceil(Math.max(neededG, leastG(file, formulaId)) / 10) * 10;
    return cuts.length === 0 ? [] : [{ formulaId, plannedStartMs, grams, cuts }];
  };
  const colds = pieces('country-loaf-cold');
  const loaves = [
    ...(colds > 0 ? [{ 'country-loaf-cold': colds }] : []),
    ...split(pieces('country-loaf'), MOST_LOAVES).map((count) => ({ 'country-loaf': count })),
  ];
  const flats = split(pieces('olive-flat'), MOST_FLATS);
  // The spiral takes one after the other, what goes into the cold first; rye is mixed at once after them.
  const spiralMs = at(eve, FIRST_DOUGH_AT);
  const doughs = [
    ...loaves.flatMap((wanted, index) => batch('country', spiralMs + index * COUNTRY_MS, wanted)),
    ...batch('rye', spiralMs + loaves.length * COUNTRY_MS, { 'rye-tin': pieces('rye-tin') }),
    ...batch('milk-buns', at(date, '02:00'), { 'milk-bun': pieces('milk-bun'), 'custard-bun': pieces('custard-bun') }),
    ...batch('olive-flatbread', at(date, '03:00'), { 'olive-flat': flats[0] ?? 0 }),
    ...batch('cheese-boats', at(date, '03:45'), { 'cheese-boat': pieces('cheese-boat') }),
    ...batch('olive-flatbread', at(date, '05:15'), { 'olive-flat': flats[1] ?? 0 }),
  ];
  const levainG = doughs.reduce((sum, dough) => sum + dough.grams * (LEVAIN_SHARE[dough.formulaId] ?? 0), 0);
  const feed = { formulaId: 'levain', plannedStartMs: at(eve, FEED_AT), grams: Math.ceil((levainG + POT_REST_G) / 50) * 50, cuts: [] };
  return [feed, ...doughs];
}

/** The least that the mixer of a formula can mix. */
function leastG({ formulas, kitchen }: BakehouseFile, formulaId: string): number {
  const method = formulas.find((formula) => formula.id === formulaId)?.method ?? [];
  const mixerIds = method.flatMap((step) => step.claims.flatMap((claim) => (claim.kind === 'mixer' ? claim.ids : [])));
  return kitchen.mixers.find((mixer) => mixerIds.includes(mixer.id))?.leastG ?? 0;
}

/** A number of pieces in as few even doughs as may be. */
function split(pieces: number, most: number): readonly number[] {
  const count = Math.ceil(pieces / most);
  return Array.from({ length: count }, (_, index) => Math.floor((pieces + count - 1 - index) / count));
}

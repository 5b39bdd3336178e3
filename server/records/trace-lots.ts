import type { TraceLot } from '../../shared/records/trace-answer.ts';
import { number, numberOrNull, text, textOrNull, type RecordsReader } from './records-reader.ts';
import type { FoundLot } from './trace-back.ts';
import type { LotEntry } from './trace-onward.ts';

/** Lots of one answer, each summed by where it was weighed. */
const MOST_LOTS = 400;

/** Lots by number and by where they were weighed, as far as one answer goes, and how many there are beyond. */
export interface SummedLots {
  readonly lots: TraceLot[];
  readonly lotsLeftOut: number;
  readonly lotsG: number;
}

/** A lot where it was weighed, to be followed from there. */
export interface WeighedLot extends FoundLot, LotEntry {}

/** How much of each lot was weighed where, the fewest feeds between first, then as it was weighed. */
export function summedLots(reader: RecordsReader, found: readonly FoundLot[]): SummedLots {
  const summed = new Map<string, FoundLot & { readonly times: number; readonly lastMs: number }>();
  for (const lot of found) {
    const key = `${lot.workpiece} ${lot.isReplaced ? '-' : '+'} ${lot.ingredient} ${lot.lot}`;
    const known = summed.get(key);
    summed.set(key, {
      ...lot,
      grams: lot.grams + (known?.grams ?? 0),
      times: 1 + (known?.times ?? 0),
      feeds: Math.min(lot.feeds, known?.feeds ?? lot.feeds),
      sequence: Math.min(lot.sequence, known?.sequence ?? lot.sequence),
      atMs: Math.min(lot.atMs, known?.atMs ?? lot.atMs),
      lastMs: Math.max(lot.atMs, known?.lastMs ?? lot.atMs),
    });
  }
  const nearest = [...summed.values()].sort((a, b) => a.feeds - b.feeds || a.sequence - b.sequence);
  const lots = nearest.slice(0, MOST_LOTS).flatMap(({ workpiece, ingredient, lot, grams, times, atMs, lastMs, feeds, isReplaced }) => {
    const row = reader.row('SELECT id, tag, service_date, formula FROM workpieces WHERE number = ?', workpiece);
    if (row === undefined) return [];
    return {
      ingredient,
      lot,
      pieceId: text(row, 'id'),
      tag: text(row, 'tag'),
      serviceDate: text(row, 'service_date'),
      formula: text(row, 'formula'),
      grams,
      times,
      firstMs: atMs,
      lastMs,
      feeds,
      isReplaced,
    };
  });
  return { lots, lotsLeftOut: nearest.length - lots.length, lotsG: found.reduce((sum, { grams }) => sum + grams, 0) };
}

/**
 * Where a lot number was weighed or added, in the order of the journal. What was weighed into a workpiece that is no more, for what made it
 * was undone, is in nothing.
 */
export function weighedLots(reader: RecordsReader, lot: string, ingredient: string | undefined): readonly WeighedLot[] {
  const rows = reader.rows(
    `SELECT sequence, workpiece, ingredient, line, grams, at_ms, replaced_by FROM lots
     WHERE lot = ? AND (? IS NULL OR ingredient = ?) AND EXISTS (SELECT 1 FROM workpieces w WHERE w.number = lots.workpiece)
     ORDER BY sequence, item`,
    lot,
    ingredient ?? null,
    ingredient ?? null,
  );
  return rows.map((row) => ({
    sequence: number(row, 'sequence'),
    workpiece: number(row, 'workpiece'),
    ingredient: text(row, 'ingredient'),
    lot,
    grams: number(row, 'grams'),
    atMs: number(row, 'at_ms'),
    feeds: 0,
    isReplaced: numberOrNull(row, 'replaced_by') !== null,
    isLine: textOrNull(row, 'line') !== null,
    untilSequence: numberOrNull(row, 'replaced_by'),
  }));
}

import type { LotRow } from '../../shared/records/answers.ts';
import { text, type RecordsReader } from './records-reader.ts';
import { traceBack } from './trace-back.ts';

/**
 * Every lot number in some workpieces: weighed or added to them, or to whatever came into them, as far back as the records go (one step
 * back, and the ones before it: Regulation (EC) 178/2002 article 18 asks for the first).
 */
export function lotsInto(reader: RecordsReader, workpieces: readonly number[]): readonly LotRow[] {
  const lots = new Map<string, LotRow>();
  for (const { workpiece, ingredient, lot, grams, atMs } of traceBack(reader, workpieces).lots) {
    const row = reader.row('SELECT id, tag FROM workpieces WHERE number = ?', workpiece);
    if (row === undefined) continue;
    const weighedInto = text(row, 'id');
    const key = `${ingredient}\n${lot}\n${weighedInto}`;
    const known = lots.get(key);
    lots.set(key, {
      ingredient,
      lot,
      weighedInto,
      weighedTag: text(row, 'tag'),
      weighedMs: Math.min(atMs, known?.weighedMs ?? atMs),
      grams: grams + (known?.grams ?? 0),
    });
  }
  return [...lots.values()].sort((a, b) => a.ingredient.localeCompare(b.ingredient) || a.weighedMs - b.weighedMs);
}

import type { LotRow } from '../../shared/records/answers.ts';
import { number, text, type RecordsReader } from './records-reader.ts';

/**
 * Every lot number in some workpieces: weighed or added to them, or to whatever came into them, as far back as the records go (one step
 * back, and the ones before it: Regulation (EC) 178/2002 article 18 asks for the first). What was weighed into a pot after something
 * was drawn from it is not in what was drawn; the order of the journal's events decides.
 */
export function lotsInto(reader: RecordsReader, workpieces: readonly number[]): readonly LotRow[] {
  const lots = new Map<string, LotRow>();
  for (const [workpiece, before] of reachBack(reader, workpieces)) {
    const rows = reader.rows(
      `SELECT l.ingredient, l.lot, l.grams, l.at_ms, w.id, w.tag FROM lots l JOIN workpieces w ON w.number = l.workpiece
       WHERE l.workpiece = ? AND l.sequence < ? AND (l.replaced_by IS NULL OR l.replaced_by > ?)`,
      workpiece,
      before,
      before,
    );
    for (const row of rows) {
      const lot: LotRow = {
        ingredient: text(row, 'ingredient'),
        lot: text(row, 'lot'),
        weighedInto: text(row, 'id'),
        weighedTag: text(row, 'tag'),
        weighedMs: number(row, 'at_ms'),
        grams: number(row, 'grams'),
      };
      const key = `${lot.ingredient}\n${lot.lot}\n${lot.weighedInto}`;
      const known = lots.get(key);
      lots.set(
        key,
        known === undefined ? lot : { ...lot, grams: known.grams + lot.grams, weighedMs: Math.min(known.weighedMs, lot.weighedMs) },
      );
    }
  }
  return [...lots.values()].sort((a, b) => a.ingredient.localeCompare(b.ingredient) || a.weighedMs - b.weighedMs);
}

/** What some workpieces came of, each with the event before which it counts: what came into it later is not in them. */
export function reachBack(reader: RecordsReader, workpieces: readonly number[]): ReadonlyMap<number, number> {
  const reach = new Map<number, number>(workpieces.map((workpiece) => [workpiece, Number.MAX_SAFE_INTEGER]));
  const open = [...reach.keys()];
  for (let workpiece = open.pop(); workpiece !== undefined; workpiece = open.pop()) {
    const before = reach.get(workpiece) ?? 0;
    const edges = reader.rows(
      "SELECT source, max(sequence) AS sequence FROM edges WHERE target = ? AND sequence <= ? AND kind <> 'feed' GROUP BY source",
      workpiece,
      before,
    );
    for (const edge of edges) {
      const [source, sequence] = [number(edge, 'source'), number(edge, 'sequence')];
      if ((reach.get(source) ?? 0) >= sequence) continue;
      reach.set(source, sequence);
      open.push(source);
    }
  }
  return reach;
}

/** What some workpieces went into, each with the event after which it counts: what left it before that does not hold them. */
export function reachOnward(reader: RecordsReader, from: ReadonlyMap<number, number>): ReadonlyMap<number, number> {
  const reach = new Map<number, number>(from);
  const open = [...reach.keys()];
  for (let workpiece = open.pop(); workpiece !== undefined; workpiece = open.pop()) {
    const after = reach.get(workpiece) ?? 0;
    const edges = reader.rows(
      "SELECT target, min(sequence) AS sequence FROM edges WHERE source = ? AND sequence >= ? AND kind <> 'feed' GROUP BY target",
      workpiece,
      after,
    );
    for (const edge of edges) {
      const [target, sequence] = [number(edge, 'target'), number(edge, 'sequence')];
      if ((reach.get(target) ?? Number.MAX_SAFE_INTEGER) <= sequence) continue;
      reach.set(target, sequence);
      open.push(target);
    }
  }
  return reach;
}

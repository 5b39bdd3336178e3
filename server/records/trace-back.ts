import { number, numberOrNull, text, textOrNull, type RecordsReader } from './records-reader.ts';
import type { TraceEdgeKey, Traced } from './traced.ts';

/** What was asked about counts as it is now. */
const NOW = Number.MAX_SAFE_INTEGER;

/** Something of a workpiece was taken at an event; so many feeds of other pots lie between that and what was asked about. */
interface Taking {
  readonly sequence: number;
  readonly feeds: number;
}

/** A workpiece that is in what was asked about, by all that was taken of it. */
class Source {
  readonly takings: Taking[] = [];
  first: TraceEdgeKey | null = null;
  hops = Number.MAX_SAFE_INTEGER;
  /** The events at which it was fed, the oldest first. */
  readonly #feedings: readonly number[];

  constructor(feedings: readonly number[]) {
    this.#feedings = feedings;
  }

  take(taking: Taking, hops: number, by: TraceEdgeKey | null): void {
    if (this.takings.length === 0) this.first = by;
    this.takings.push(taking);
    this.hops = Math.min(this.hops, hops);
  }

  /**
   * The fewest feeds between what came in at an event, and was in it until another, and what was asked about; null where nothing was
   * taken in between. What was weighed for a feed is fed with it, and not by it.
   */
  feedsSince(sequence: number, until: number | null, isLine: boolean): number | null {
    let least: number | null = null;
    for (const taking of this.takings) {
      if (taking.sequence <= sequence || (until !== null && taking.sequence >= until)) continue;
      const fed = this.#fedBetween(sequence, taking.sequence);
      const feeds = taking.feeds + (isLine ? Math.max(0, fed - 1) : fed);
      least = Math.min(least ?? feeds, feeds);
    }
    return least;
  }

  get traced(): Traced {
    const feeds = this.takings.reduce((least, taking) => Math.min(least, taking.feeds), Number.MAX_SAFE_INTEGER);
    return { first: this.first, sequence: this.takings[0]?.sequence ?? NOW, hops: this.hops, feeds, fedSince: 0, isInIt: true };
  }

  #fedBetween(after: number, before: number): number {
    return Math.max(0, countBelow(this.#feedings, before) - countBelow(this.#feedings, after));
  }
}

/** How many of some sorted numbers are below one. A pot that is kept for years is fed a thousand times. */
function countBelow(sorted: readonly number[], limit: number): number {
  let [from, to] = [0, sorted.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((sorted[middle] ?? limit) < limit) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** A lot number that is in what was asked about, as it was weighed or added once. */
export interface FoundLot {
  readonly sequence: number;
  readonly workpiece: number;
  readonly ingredient: string;
  readonly lot: string;
  readonly grams: number;
  readonly atMs: number;
  readonly feeds: number;
  readonly isReplaced: boolean;
}

/** All that came into some workpieces, as far back as the records go. */
export interface Back {
  readonly workpieces: ReadonlyMap<number, Traced>;
  readonly edges: readonly TraceEdgeKey[];
  readonly lots: readonly FoundLot[];
}

/** An edge into a workpiece, or a lot that was weighed into it. */
type Entry = { readonly sequence: number } & ({ readonly edge: TraceEdgeKey } | { readonly lot: LotOfWorkpiece });

interface LotOfWorkpiece extends Omit<FoundLot, 'feeds' | 'isReplaced'> {
  readonly isLine: boolean;
  readonly replacedBy: number | null;
}

/**
 * Follows what is in some workpieces back to every lot number, in the order of the journal's events: what came into a pot after something
 * was drawn from it is not in what was drawn, and a line that was weighed anew after a draw counts in that draw as it was.
 */
export function traceBack(reader: RecordsReader, workpieces: readonly number[]): Back {
  const reach = reachBack(reader, workpieces);
  const sources = new Map<number, Source>();
  for (const workpiece of reach.keys()) sources.set(workpiece, new Source(feedingsOf(reader, workpiece)));
  for (const workpiece of workpieces) sources.get(workpiece)?.take({ sequence: NOW, feeds: 0 }, 0, null);
  const edges: TraceEdgeKey[] = [];
  const lots: FoundLot[] = [];
  // From the last event to the first: whatever was taken of a workpiece after an event is known when that event's turn comes.
  for (const entry of entriesOf(reader, reach)) {
    if ('lot' in entry) {
      const { isLine, replacedBy, ...lot } = entry.lot;
      const feeds = sources.get(lot.workpiece)?.feedsSince(lot.sequence, replacedBy, isLine) ?? null;
      if (feeds !== null) lots.push({ ...lot, feeds, isReplaced: replacedBy !== null });
      continue;
    }
    const { edge } = entry;
    const into = sources.get(edge.target);
    const feeds = into?.feedsSince(edge.sequence, null, false) ?? null;
    if (into === undefined || feeds === null) continue;
    edges.push(edge);
    sources.get(edge.source)?.take({ sequence: edge.sequence, feeds }, into.hops + 1, edge);
  }
  return { workpieces: new Map([...sources].map(([workpiece, { traced }]) => [workpiece, traced])), edges, lots };
}

/** What some workpieces came of, each with the last event at which something was taken of it: what came into it later is not in them. */
function reachBack(reader: RecordsReader, workpieces: readonly number[]): ReadonlyMap<number, number> {
  const reach = new Map<number, number>(workpieces.map((workpiece) => [workpiece, NOW]));
  const open = [...reach.keys()];
  for (let workpiece = open.pop(); workpiece !== undefined; workpiece = open.pop()) {
    const before = reach.get(workpiece) ?? 0;
    const edges = reader.rows(
      "SELECT source, max(sequence) AS sequence FROM edges WHERE target = ? AND sequence < ? AND kind <> 'feed' GROUP BY source",
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

function feedingsOf(reader: RecordsReader, workpiece: number): readonly number[] {
  const rows = reader.rows("SELECT sequence FROM edges WHERE source = ? AND kind = 'feed' ORDER BY sequence", workpiece);
  return rows.map((row) => number(row, 'sequence'));
}

/** Everything that came into workpieces before the last of them was taken, the last event first. */
function entriesOf(reader: RecordsReader, reach: ReadonlyMap<number, number>): readonly Entry[] {
  const entries: Entry[] = [];
  for (const [workpiece, before] of reach) {
    const edges = reader.rows(
      "SELECT sequence, item, source FROM edges WHERE target = ? AND sequence < ? AND kind <> 'feed'",
      workpiece,
      before,
    );
    for (const row of edges) {
      const sequence = number(row, 'sequence');
      entries.push({ sequence, edge: { sequence, item: number(row, 'item'), source: number(row, 'source'), target: workpiece } });
    }
    const lots = reader.rows(
      'SELECT sequence, ingredient, lot, line, grams, at_ms, replaced_by FROM lots WHERE workpiece = ? AND sequence < ?',
      workpiece,
      before,
    );
    for (const row of lots) {
      const sequence = number(row, 'sequence');
      const lot: LotOfWorkpiece = {
        sequence,
        workpiece,
        ingredient: text(row, 'ingredient'),
        lot: text(row, 'lot'),
        grams: number(row, 'grams'),
        atMs: number(row, 'at_ms'),
        isLine: textOrNull(row, 'line') !== null,
        replacedBy: numberOrNull(row, 'replaced_by'),
      };
      entries.push({ sequence, lot });
    }
  }
  return entries.sort((a, b) => b.sequence - a.sequence);
}

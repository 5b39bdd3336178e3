import { number, type RecordsReader } from './records-reader.ts';
import type { TraceEdgeKey, Traced } from './traced.ts';

/** A lot number weighed or added to a workpiece, and until which event it was in it by that. */
export interface LotEntry {
  readonly sequence: number;
  readonly workpiece: number;
  /** On a line of the weigh-out: it is in a pot's stock with the next feed, and not fed upon before that. */
  readonly isLine: boolean;
  readonly untilSequence: number | null;
}

/** How a workpiece has held a lot so far. */
class Holding {
  /** Lines that hold it now, by the event that weighed them; most workpieces of a long trace have none. */
  #lines: Set<number> | null = null;
  /** Feeds between the lot and what came in otherwise, the least; null: it came in only on lines. */
  #carriedFeeds: number | null = null;
  /** The least of what counted: when something was passed on, fed, or at the end. What was weighed anew before that counts for nothing. */
  #leastFeeds = Number.MAX_SAFE_INTEGER;
  #hops = Number.MAX_SAFE_INTEGER;
  #fedSince = 0;
  #hasPassed = false;
  /** By what it came in the first time, and when. */
  #first: TraceEdgeKey | null = null;
  #sequence = 0;

  /** Feeds between the lot and what is in it now, the least; null: it does not hold the lot now. */
  get feeds(): number | null {
    return this.#hasLines ? 0 : this.#carriedFeeds;
  }

  get #hasLines(): boolean {
    return this.#lines !== null && this.#lines.size > 0;
  }

  weigh({ sequence, isLine }: LotEntry): void {
    this.#begin(null, sequence);
    if (isLine) {
      this.#lines ??= new Set();
      this.#lines.add(sequence);
    } else {
      this.#carriedFeeds = 0;
      this.#count(0, 0);
    }
  }

  unweigh({ sequence }: LotEntry): void {
    this.#lines?.delete(sequence);
  }

  /** What is in it goes on; null where it does not hold the lot now. */
  pass(): { readonly feeds: number; readonly hops: number } | null {
    const { feeds } = this;
    if (feeds === null) return null;
    this.#countLines();
    this.#hasPassed = true;
    return { feeds, hops: this.#hops };
  }

  receive({ feeds, hops }: { readonly feeds: number; readonly hops: number }, by: TraceEdgeKey): void {
    this.#begin(by, by.sequence);
    this.#carriedFeeds = Math.min(this.#carriedFeeds ?? feeds, feeds);
    this.#count(feeds, hops + 1);
  }

  feed(): void {
    if (this.feeds === null) return;
    this.#countLines();
    // What was weighed for this feed is fed with it; what was in the pot is one feed older.
    if (this.#hasLines) this.#carriedFeeds = 0;
    else {
      this.#carriedFeeds = (this.#carriedFeeds ?? 0) + 1;
      this.#fedSince += 1;
    }
    this.#lines = null;
  }

  /** What an answer says of it; null where it neither holds the lot nor has passed it on. */
  traced(): Traced | null {
    const { feeds } = this;
    if (feeds === null && !this.#hasPassed) return null;
    this.#countLines();
    return {
      first: this.#first,
      sequence: this.#sequence,
      hops: this.#hops,
      feeds: feeds === null || this.#fedSince > 0 ? this.#leastFeeds : feeds,
      fedSince: this.#fedSince,
      isInIt: feeds !== null,
    };
  }

  #begin(by: TraceEdgeKey | null, sequence: number): void {
    if (this.feeds !== null || this.#hasPassed) return;
    this.#first = by;
    this.#sequence = sequence;
  }

  #countLines(): void {
    if (this.#hasLines) this.#count(0, 0);
  }

  #count(feeds: number, hops: number): void {
    this.#leastFeeds = Math.min(this.#leastFeeds, feeds);
    this.#hops = Math.min(this.#hops, hops);
  }
}

/** Every workpiece that a lot is in or went through, and every edge that carried it. */
export interface Onward {
  readonly workpieces: ReadonlyMap<number, Traced>;
  readonly edges: readonly TraceEdgeKey[];
}

/**
 * Follows lots onward through all edges since, in the order of the journal's events: what left a workpiece before the lot came in does not
 * hold it, and what left a line's workpiece before that line was weighed anew does. One walk over the edges is as quick as any index
 * where a pot has carried a lot through years, and short where the lot is new.
 */
export function traceOnward(reader: RecordsReader, rows: readonly LotEntry[]): Onward {
  const first = rows[0];
  const held = new Map<number, Holding>();
  const carried: TraceEdgeKey[] = [];
  if (first === undefined) return { workpieces: new Map(), edges: carried };
  const changes = changesOf(rows);
  let next = 0;
  const changeUntil = (sequence: number): void => {
    for (let change = changes[next]; change !== undefined && change.sequence < sequence; change = changes[next]) {
      next += 1;
      const { row, isIn } = change;
      const holding = held.get(row.workpiece) ?? new Holding();
      held.set(row.workpiece, holding);
      if (isIn) holding.weigh(row);
      else holding.unweigh(row);
    }
  };
  const edges = reader.rows('SELECT sequence, item, source, target FROM edges WHERE sequence > ? ORDER BY sequence, item', first.sequence);
  for (const row of edges) {
    const sequence = number(row, 'sequence');
    if (changes[next] !== undefined) changeUntil(sequence);
    const source = number(row, 'source');
    const holding = held.get(source);
    if (holding === undefined) continue;
    const target = number(row, 'target');
    if (source === target) {
      holding.feed();
      continue;
    }
    const passed = holding.pass();
    if (passed === null) continue;
    const edge = { sequence, item: number(row, 'item'), source, target };
    carried.push(edge);
    let into = held.get(target);
    if (into === undefined) {
      into = new Holding();
      held.set(target, into);
    }
    into.receive(passed, edge);
  }
  changeUntil(Number.POSITIVE_INFINITY);
  const workpieces = new Map<number, Traced>();
  for (const [workpiece, holding] of held) {
    const traced = holding.traced();
    if (traced !== null) workpieces.set(workpiece, traced);
  }
  return { workpieces, edges: carried };
}

interface Change {
  readonly sequence: number;
  readonly row: LotEntry;
  readonly isIn: boolean;
}

/** Lots coming in and being weighed anew, in the order of the journal. */
function changesOf(rows: readonly LotEntry[]): readonly Change[] {
  const into = rows.map((row) => ({ sequence: row.sequence, row, isIn: true }));
  const out = rows.flatMap((row) => (row.untilSequence === null ? [] : [{ sequence: row.untilSequence, row, isIn: false }]));
  // What is weighed anew goes out before what is weighed in its stead comes in.
  return [...out, ...into].sort((a, b) => a.sequence - b.sequence);
}

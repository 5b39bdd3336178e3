import { assert } from '../../shared/result.ts';
import { numbersIn, type RecordsReader } from './records-reader.ts';
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
class Holding implements Traced {
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

  get first(): TraceEdgeKey | null {
    return this.#first;
  }

  get sequence(): number {
    return this.#sequence;
  }

  get hops(): number {
    return this.#hops;
  }

  get feeds(): number {
    const now = this.#feedsNow;
    return now === null || this.#fedSince > 0 ? this.#leastFeeds : now;
  }

  get fedSince(): number {
    return this.#fedSince;
  }

  get isInIt(): boolean {
    return this.#feedsNow !== null;
  }

  /** Feeds between the lot and what is in it now, the least; null: it does not hold the lot now. */
  get #feedsNow(): number | null {
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
    const feeds = this.#feedsNow;
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
    if (!this.isInIt) return;
    this.#countLines();
    // What was weighed for this feed is fed with it; what was in the pot is one feed older.
    if (this.#hasLines) this.#carriedFeeds = 0;
    else {
      this.#carriedFeeds = (this.#carriedFeeds ?? 0) + 1;
      this.#fedSince += 1;
    }
    this.#lines = null;
  }

  /** At the end of the walk: whether it holds the lot or has passed it on. */
  end(): boolean {
    this.#countLines();
    return this.isInIt || this.#hasPassed;
  }

  #begin(by: TraceEdgeKey | null, sequence: number): void {
    if (this.isInIt || this.#hasPassed) return;
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
  for (const [sequence, item, source, target] of edgesAfter(reader, first.sequence)) {
    if (changes[next] !== undefined) changeUntil(sequence);
    const holding = held.get(source);
    if (holding === undefined) continue;
    if (source === target) {
      holding.feed();
      continue;
    }
    const passed = holding.pass();
    if (passed === null) continue;
    const edge = { sequence, item, source, target };
    carried.push(edge);
    let into = held.get(target);
    if (into === undefined) {
      into = new Holding();
      held.set(target, into);
    }
    into.receive(passed, edge);
  }
  changeUntil(Number.POSITIVE_INFINITY);
  for (const [workpiece, holding] of held) if (!holding.end()) held.delete(workpiece);
  return { workpieces: held, edges: carried };
}

/**
 * Every edge after an event, in the order of the journal: sequence, item, source, target. A hundred thousand of them come as one text, which is
 * made and read several times faster than so many rows.
 */
function* edgesAfter(reader: RecordsReader, after: number): Iterable<readonly [number, number, number, number]> {
  const row = reader.row(
    `SELECT '[' || group_concat(sequence || ',' || item || ',' || source || ',' || target) || ']' AS edges
     FROM (SELECT sequence, item, source, target FROM edges WHERE sequence > ? ORDER BY sequence, item)`,
    after,
  );
  const flat = numbersIn(row, 'edges');
  let before = 0;
  for (let at = 0; at + 3 < flat.length; at += 4) {
    const [sequence = 0, item = 0, source = 0, target = 0] = [flat[at], flat[at + 1], flat[at + 2], flat[at + 3]];
    assert(sequence >= before, 'edges come in the order of the journal');
    before = sequence;
    yield [sequence, item, source, target];
  }
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

import type { TraceOrder, TraceProduct } from '../../shared/records/trace-answer.ts';
import { number, numbersIn, text, textOrNull, type RecordsReader, type Row } from './records-reader.ts';
import type { Traced } from './traced.ts';

/** Fewer workpieces than these are looked up one by one; of more, all since the oldest of them are read. */
const LOOKED_UP = 2_000;
/** Batches, cuts and loads named with one product of a day. */
const MOST_PIECES = 60;
/** Orders of one product on one day. */
const MOST_ORDERS = 60;

/** A product of a day, before its orders are looked up. */
export interface ProductDay {
  readonly product: string;
  readonly serviceDate: string;
  readonly numbers: readonly number[];
  readonly finished: number;
  readonly discarded: number;
  readonly here: number;
  readonly feeds: number;
  readonly hops: number;
}

/** One that is still being summed. */
type Summing = { -readonly [Key in keyof ProductDay]: ProductDay[Key] } & { numbers: number[] };

/**
 * The products among what was traced, summed by product and service date, the fewest feeds between first. What was divided or loaded counts
 * in its parts.
 */
export function productDays(reader: RecordsReader, workpieces: ReadonlyMap<number, Traced>): readonly ProductDay[] {
  const days = new Map<string, Summing>();
  for (const { product, serviceDate, ending, made } of madeOf(reader, workpieces)) {
    const key = `${serviceDate} ${product}`;
    let day = days.get(key);
    for (let at = 0; at + 1 < made.length; at += 2) {
      const [workpiece, pieces] = [made[at] ?? 0, made[at + 1] ?? 0];
      const traced = workpieces.get(workpiece);
      if (traced === undefined || !traced.isInIt) continue;
      if (day === undefined) {
        day = { product, serviceDate, numbers: [], finished: 0, discarded: 0, here: 0, feeds: traced.feeds, hops: traced.hops };
        days.set(key, day);
      }
      day.numbers.push(workpiece);
      if (ending === 'finished') day.finished += pieces;
      else if (ending === 'discarded') day.discarded += pieces;
      else day.here += pieces;
      day.feeds = Math.min(day.feeds, traced.feeds);
      day.hops = Math.min(day.hops, traced.hops);
    }
  }
  return [...days.values()].sort((a, b) => a.feeds - b.feeds || inOrder(a.serviceDate, b.serviceDate) || inOrder(a.product, b.product));
}

/** Dates and keys are plain letters: no language has a say in their order. */
function inOrder(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

/** What was made of a product on a day and ended alike: numbers of workpieces, each with its pieces after it. */
interface Made {
  readonly product: string;
  readonly serviceDate: string;
  readonly ending: string | null;
  readonly made: readonly number[];
}

/** What counts as a product: not what was divided or loaded, which counts in its parts. */
const MADE = `SELECT product, service_date, ending, '[' || group_concat(number || ',' || coalesce(pieces, planned_pieces, 0)) || ']' AS made
  FROM workpieces WHERE product IS NOT NULL AND ending IS NOT 'divided'`;

function* madeOf(reader: RecordsReader, workpieces: ReadonlyMap<number, Traced>): Iterable<Made> {
  if (workpieces.size <= LOOKED_UP) {
    for (const workpiece of workpieces.keys()) yield* reader.rows(`${MADE} AND number = ? GROUP BY number`, workpiece).map(madeRow);
    return;
  }
  let first = Number.MAX_SAFE_INTEGER;
  for (const workpiece of workpieces.keys()) first = Math.min(first, workpiece);
  yield* reader.rows(`${MADE} AND number >= ? GROUP BY product, service_date, ending`, first).map(madeRow);
}

function madeRow(row: Row): Made {
  return {
    product: text(row, 'product'),
    serviceDate: text(row, 'service_date'),
    ending: textOrNull(row, 'ending'),
    made: numbersIn(row, 'made'),
  };
}

/** A product of a day with the ids of what it is, and the orders that it was for: the step forward. */
export function withOrders(reader: RecordsReader, { numbers, ...day }: ProductDay): TraceProduct {
  const pieceIds = numbers.slice(0, MOST_PIECES).flatMap((piece) => {
    const row = reader.row('SELECT id FROM workpieces WHERE number = ?', piece);
    return row === undefined ? [] : text(row, 'id');
  });
  return { ...day, pieceIds, orders: ordersOf(reader, day) };
}

/** Where a product of a day was to go. Orders that were withdrawn went nowhere. */
function ordersOf(reader: RecordsReader, { product, serviceDate }: Pick<ProductDay, 'product' | 'serviceDate'>): TraceOrder[] {
  const rows = reader.rows(
    'SELECT label, pieces, ready_ms FROM orders WHERE service_date = ? AND product = ? AND is_withdrawn = 0 ORDER BY ready_ms LIMIT ?',
    serviceDate,
    product,
    MOST_ORDERS,
  );
  return rows.map((row) => ({ label: textOrNull(row, 'label'), pieces: number(row, 'pieces'), readyMs: number(row, 'ready_ms') }));
}

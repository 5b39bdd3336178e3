import type { QuestionOf } from '../../shared/records/questions.ts';
import type { TraceAnswer, TraceNode } from '../../shared/records/trace-answer.ts';
import { number, type RecordsReader } from './records-reader.ts';
import { traceBack } from './trace-back.ts';
import { summedLots, weighedLots } from './trace-lots.ts';
import { traceOnward } from './trace-onward.ts';
import { productDays, withOrders, type ProductDay } from './trace-products.ts';
import { nodeOf, shownOf } from './trace-shown.ts';
import type { Traced } from './traced.ts';

/** Products by day of one answer; those after them are asked for from where it ended. */
const PRODUCTS_AT_ONCE = 200;
/** Pots, doughs and fillings on the floor that hold a lot. */
const MOST_STILL_HERE = 100;

/**
 * One step back and one step forward, as Regulation (EC) 178/2002 article 18 asks of every food business, and whatever lies between: from
 * a lot number to the products that hold it, or from products to every lot number in them. Null where there is no such thing.
 */
export function askTrace(reader: RecordsReader, asked: QuestionOf<'trace'>): TraceAnswer | null {
  if ('lot' in asked) return onward(reader, asked);
  const workpieces = 'id' in asked ? partsOf(reader, asked.id) : ofProduct(reader, asked.product, asked.date);
  return workpieces.length === 0 ? null : back(reader, workpieces);
}

function onward(reader: RecordsReader, { lot, ingredient, after }: Extract<QuestionOf<'trace'>, { lot: string }>): TraceAnswer | null {
  const weighed = weighedLots(reader, lot, ingredient);
  if (weighed.length === 0) return null;
  const { workpieces, edges } = traceOnward(reader, weighed);
  const days = productDays(reader, workpieces);
  const from = after === undefined ? 0 : 1 + days.findIndex((day) => cursorOf(day) === after);
  const page = days.slice(from, from + PRODUCTS_AT_ONCE);
  const last = page.at(-1);
  return {
    direction: 'onward',
    ...summedLots(reader, weighed),
    ...shownOf(reader, workpieces, edges, 'weighed'),
    products: page.map((day) => withOrders(reader, day)),
    total: totalOf(days),
    stillHere: stillHere(reader, workpieces),
    after: last !== undefined && from + page.length < days.length ? cursorOf(last) : null,
  };
}

function back(reader: RecordsReader, asked: readonly number[]): TraceAnswer {
  const { workpieces, edges, lots } = traceBack(reader, asked);
  const days = productDays(reader, new Map([...workpieces].filter(([, { hops }]) => hops === 0)));
  return {
    direction: 'back',
    ...summedLots(reader, lots),
    ...shownOf(reader, workpieces, edges, null),
    products: days.slice(0, PRODUCTS_AT_ONCE).map((day) => withOrders(reader, day)),
    total: totalOf(days),
    stillHere: [],
    after: null,
  };
}

/** A workpiece with what it was divided and loaded into: what is in any part of it is asked about. */
function partsOf(reader: RecordsReader, id: string): readonly number[] {
  const named = reader.row('SELECT number FROM workpieces WHERE id = ?', id);
  if (named === undefined) return [];
  const parts = [number(named, 'number')];
  for (const part of parts) {
    const edges = reader.rows("SELECT target FROM edges WHERE source = ? AND kind IN ('divide', 'load')", part);
    parts.push(...edges.map((edge) => number(edge, 'target')));
  }
  return parts;
}

function ofProduct(reader: RecordsReader, product: string, date: string): readonly number[] {
  const rows = reader.rows('SELECT number FROM workpieces WHERE product = ? AND service_date = ?', product, date);
  return rows.map((row) => number(row, 'number'));
}

function cursorOf({ feeds, serviceDate, product }: ProductDay): string {
  return `${feeds} ${serviceDate} ${product}`;
}

function totalOf(days: readonly ProductDay[]): TraceAnswer['total'] {
  const sum = (of: (day: ProductDay) => number): number => days.reduce((so, day) => so + of(day), 0);
  return {
    products: new Set(days.map(({ product }) => product)).size,
    days: new Set(days.map(({ serviceDate }) => serviceDate)).size,
    finished: sum(({ finished }) => finished),
    discarded: sum(({ discarded }) => discarded),
    here: sum(({ here }) => here),
    carried: sum((day) => (day.feeds > 0 ? day.finished + day.discarded + day.here : 0)),
  };
}

/** What is on the floor now and holds the lot, but what is a product already. */
function stillHere(reader: RecordsReader, workpieces: ReadonlyMap<number, Traced>): TraceNode[] {
  const open = reader.rows('SELECT number FROM workpieces WHERE ending IS NULL AND product IS NULL ORDER BY service_date, number');
  const holding = open.flatMap((row) => {
    const workpiece = number(row, 'number');
    const traced = workpieces.get(workpiece);
    return traced?.isInIt === true ? [[workpiece, traced] as const] : [];
  });
  return holding.slice(0, MOST_STILL_HERE).flatMap(([workpiece, traced]) => nodeOf(reader, workpiece, traced, 'weighed') ?? []);
}

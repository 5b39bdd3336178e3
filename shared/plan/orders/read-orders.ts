import { folded } from '../../book/folded.ts';
import { nameSchema } from '../../documents/names.ts';
import { MOST_ORDERS, type Order } from '../../documents/order.ts';
import { delimitedRows, type DelimitedRow } from './delimited-rows.ts';
import { clockTimeIn, dateIn, lengthMinIn, minuteOfDay, orderFormIn, piecesIn, weightIn } from './order-cells.ts';
import { headingsIn, NEEDED_FIELDS, ORDER_FIELDS, type OrderField } from './order-columns.ts';

/** A product as orders name it: by its name, or by its key in the book. */
export interface OrderedProduct {
  readonly id: string;
  readonly name: string;
}

/** What a text of orders is read against. */
export interface OrdersContext {
  readonly products: readonly OrderedProduct[];
  /** The date of rows that name none. */
  readonly serviceDate: string;
  /** Nothing is ordered for a date before it. */
  readonly firstDate: string;
  /** The instant at which the house's clocks read so many minutes after midnight of a date. */
  readonly instantMs: (date: string, minuteOfDay: number) => number;
}

export type WantedOrder = Omit<Order, 'id' | 'serviceDate'>;

/** An order and the line that it stood on. */
export interface ReadOrder {
  readonly line: number;
  readonly serviceDate: string;
  readonly order: WantedOrder;
}

export const LINE_FAULTS = [
  'quote',
  'columnMissing',
  'columnTwice',
  'extraCell',
  'missing',
  'productUnknown',
  'productTwice',
  'notPieces',
  'notClockTime',
  'notForm',
  'notMinutes',
  'notWeight',
  'labelTooLong',
  'notDate',
  'dateOver',
  'tooMany',
] as const;

/** What keeps a line from being an order: where, and what stands there. */
export interface LineFault {
  readonly code: (typeof LINE_FAULTS)[number];
  /** Line and column of the text, from 1; null: the whole line. */
  readonly line: number;
  readonly column: number | null;
  readonly field: OrderField | null;
  readonly text: string;
  /** A product that could be meant, or a few. */
  readonly near: string | null;
}

export interface ReadOrders {
  readonly orders: readonly ReadOrder[];
  readonly faults: readonly LineFault[];
  /** Headings of columns that were not read. */
  readonly unread: readonly string[];
  /** The lines with faults as they stood, under their headings: what is still to be put right. Empty where there is none. */
  readonly faultyText: string;
}

type Columns = readonly (OrderField | null)[];
type Cells = ReadonlyMap<OrderField, { readonly text: string; readonly column: number }>;

/**
 * Orders in a text: rows with tabs (from a spreadsheet), commas or semicolons (RFC 4180), with headings in English, German or
 * French, or without. A row with a fault is no order, and all its faults are told.
 */
export function readOrders(text: string, context: OrdersContext): ReadOrders {
  const rows = delimitedRows(text);
  const [first] = rows;
  if (first === undefined) return { orders: [], faults: [], unread: [], faultyText: '' };
  const headings = headingsIn(first.cells);
  const columns = headings ?? ORDER_FIELDS;
  const columnFaults = headings === null ? [] : headingFaults(first, headings);
  if (columnFaults.length > 0) return { orders: [], faults: columnFaults, unread: [], faultyText: text };
  const read = (headings === null ? rows : rows.slice(1)).map((row) => readRow(row, columns, context));
  const counted = withinLimit(read);
  const faulty = counted.filter(({ faults }) => faults.length > 0).map(({ row }) => row.raw);
  return {
    orders: counted.flatMap(({ order }) => (order === null ? [] : [order])),
    faults: counted.flatMap(({ faults }) => faults),
    unread: headings === null ? [] : first.cells.filter((cell, index) => headings[index] === null && cell.trim() !== ''),
    faultyText: faulty.length === 0 ? '' : [...(headings === null ? [] : [first.raw]), ...faulty].join('\n'),
  };
}

function headingFaults(row: DelimitedRow, headings: Columns): LineFault[] {
  const missing = NEEDED_FIELDS.filter((field) => !headings.includes(field));
  const twice = headings.flatMap((field, index) => (field !== null && headings.indexOf(field) < index ? [{ field, index }] : []));
  return [
    ...missing.map((field) => faultAt(row, 'columnMissing', null, field, '')),
    ...twice.map(({ field, index }) => faultAt(row, 'columnTwice', index + 1, field, row.cells[index] ?? '')),
  ];
}

interface RowRead {
  readonly row: DelimitedRow;
  readonly order: ReadOrder | null;
  readonly faults: readonly LineFault[];
}

/** A day has no more orders than it may: what is over is told, not left out. */
function withinLimit(read: readonly RowRead[]): readonly RowRead[] {
  const counts = new Map<string, number>();
  return read.map((each) => {
    if (each.order === null) return each;
    const count = (counts.get(each.order.serviceDate) ?? 0) + 1;
    counts.set(each.order.serviceDate, count);
    if (count <= MOST_ORDERS) return each;
    return { row: each.row, order: null, faults: [faultAt(each.row, 'tooMany', null, null, String(MOST_ORDERS))] };
  });
}

function readRow(row: DelimitedRow, columns: Columns, context: OrdersContext): RowRead {
  if (row.badQuoteColumn !== null) {
    const text = row.cells[row.badQuoteColumn - 1] ?? '';
    return { row, order: null, faults: [faultAt(row, 'quote', row.badQuoteColumn, columns[row.badQuoteColumn - 1] ?? null, text)] };
  }
  const faults: LineFault[] = [];
  const cells: Cells = cellsOf(row, columns, faults);
  const tell: Tell = (field, code, near = null) => {
    const cell = cells.get(field);
    faults.push({ ...faultAt(row, code, cell?.column ?? null, field, cell?.text ?? ''), near });
    return null;
  };
  const order = orderOf(cells, row.line, context, tell);
  return faults.length > 0 || order === null ? { row, order: null, faults } : { row, order, faults: [] };
}

type Tell = (field: OrderField, code: LineFault['code'], near?: string | null) => null;

/** The cells by what they say; what stands beyond the columns is a fault, or it would be lost. */
function cellsOf(row: DelimitedRow, columns: Columns, faults: LineFault[]): Cells {
  const cells = new Map<OrderField, { readonly text: string; readonly column: number }>();
  row.cells.forEach((cell, index) => {
    const text = cell.trim();
    const field = columns[index];
    if (text === '') return;
    if (field === undefined) faults.push(faultAt(row, 'extraCell', index + 1, null, text));
    else if (field !== null) cells.set(field, { text, column: index + 1 });
  });
  return cells;
}

function orderOf(cells: Cells, line: number, context: OrdersContext, tell: Tell): ReadOrder | null {
  /** What a cell says; undefined where there is none, null where it cannot be read. */
  const value = <Value>(field: OrderField, read: (text: string) => Value | null, code: LineFault['code']): Value | null | undefined => {
    const cell = cells.get(field);
    return cell === undefined ? undefined : (read(cell.text) ?? tell(field, code));
  };
  for (const field of NEEDED_FIELDS) if (!cells.has(field)) tell(field, 'missing');
  const productId = productIdIn(cells.get('product')?.text, context.products, tell);
  const pieces = value('pieces', piecesIn, 'notPieces');
  const readyAt = value('readyAt', clockTimeIn, 'notClockTime');
  const form = value('form', orderFormIn, 'notForm');
  const freshMin = value('freshMin', lengthMinIn, 'notMinutes');
  const loadingMin = value('loadingMin', lengthMinIn, 'notMinutes');
  const label = value('label', labelIn, 'labelTooLong');
  const weight = value('weight', weightIn, 'notWeight');
  const date = value('date', dateIn, 'notDate');
  const serviceDate = date ?? context.serviceDate;
  if (date !== null && serviceDate < context.firstDate) tell('date', 'dateOver');
  if (productId === null || typeof pieces !== 'number' || typeof readyAt !== 'string') return null;
  return {
    line,
    serviceDate,
    order: {
      productId,
      pieces,
      readyMs: context.instantMs(serviceDate, minuteOfDay(readyAt)),
      form: form ?? 'cooled',
      weight: weight ?? 1,
      ...(typeof freshMin === 'number' ? { freshMin } : {}),
      ...(typeof loadingMin === 'number' ? { loadingMin } : {}),
      ...(typeof label === 'string' ? { label } : {}),
    },
  };
}

function labelIn(text: string): string | null {
  const label = nameSchema.safeParse(text);
  return label.success ? label.data : null;
}

function productIdIn(text: string | undefined, products: readonly OrderedProduct[], tell: Tell): string | null {
  if (text === undefined) return null;
  const found = productsNamed(text, products);
  if (found.length === 1) return found[0]?.id ?? null;
  return found.length > 1 ? tell('product', 'productTwice') : tell('product', 'productUnknown', productNear(text, products));
}

/** Products of a key, else of a name, whatever its accents and capitals. */
export function productsNamed(text: string, products: readonly OrderedProduct[]): readonly OrderedProduct[] {
  const wanted = folded(text);
  const byId = products.filter(({ id }) => id === text.trim());
  return byId.length > 0 ? byId : products.filter(({ name }) => folded(name) === wanted);
}

/** So many products are named to whoever wrote none rightly. */
const MOST_NEAR = 3;

/** Products whose names have in them the beginnings of all words that were written; null where those are none or many. */
function productNear(text: string, products: readonly OrderedProduct[]): string | null {
  const words = folded(text).split(' ');
  const near = products.filter(({ name }) => {
    const has = folded(name).split(' ');
    return words.every((word) => has.some((other) => other.startsWith(word)));
  });
  return near.length === 0 || near.length > MOST_NEAR ? null : near.map(({ name }) => name).join(' / ');
}

function faultAt(row: DelimitedRow, code: LineFault['code'], column: number | null, field: OrderField | null, text: string): LineFault {
  return { code, line: row.line, column, field, text, near: null };
}

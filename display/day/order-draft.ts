import type { Order, OrderForm, StandingOrder } from '../../shared/documents/order.ts';
import { minutesSchema, NAME_CHARACTERS, piecesSchema } from '../../shared/documents/names.ts';
import { clockTimeIn } from '../../shared/plan/orders/order-cells.ts';
import { productsNamed, type OrderedProduct } from '../../shared/plan/orders/read-orders.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import { ORDER_COLUMNS, ORDER_FORMS, ORDERS, STANDING } from '../words/day.ts';
import { NUMBER_NEEDED } from '../words/fields.ts';
import { UNITS } from '../words/unit-symbols.ts';

/** An order as it is being typed: texts and numbers that may not be right yet. */
export interface OrderDraft {
  readonly product: string;
  readonly pieces?: number | undefined;
  readonly readyAt: string;
  readonly form: OrderForm;
  readonly freshMin?: number | undefined;
  readonly loadingMin?: number | undefined;
  readonly label?: string | undefined;
  readonly weight?: number | undefined;
  /** For a standing order: its days, Monday 1. */
  readonly weekdays: readonly number[];
}

/** An order that was typed rightly, by clock time. */
export type TypedOrder = Omit<StandingOrder, 'id'>;

export const EMPTY_DRAFT: OrderDraft = { product: '', readyAt: '', form: 'cooled', weekdays: [] };

/** An order as its form shows it. */
export function draftOf(order: Order | StandingOrder, readyAt: string, nameOf: (productId: string) => string): OrderDraft {
  const { productId, pieces, form, freshMin, loadingMin, label, weight } = order;
  const weekdays = 'weekdays' in order ? order.weekdays : [];
  return { product: nameOf(productId), pieces, readyAt, form, freshMin, loadingMin, label, weight, weekdays };
}

/** What everybody says of an order. */
export function mainFields(products: readonly OrderedProduct[]): readonly Field[] {
  return [
    { key: 'product', label: ORDER_COLUMNS.product, kind: 'text', most: NAME_CHARACTERS, list: products.map(({ name }) => name) },
    numberField('pieces', ORDER_COLUMNS.pieces, plainMeasure(), 1, piecesSchema.maxValue ?? Infinity, 'whole'),
    { key: 'readyAt', label: ORDER_COLUMNS.readyAt, kind: 'text', most: 12, hint: ORDERS.readyHint },
    { key: 'form', label: ORDER_COLUMNS.form, kind: 'one', options: ORDER_FORMS },
  ];
}

/** What may be said beside it. */
export function moreFields(): readonly Field[] {
  const mostMin = minutesSchema.maxValue ?? Infinity;
  return [
    { key: 'label', label: ORDER_COLUMNS.label, kind: 'text', most: NAME_CHARACTERS, hint: ORDERS.labelHint },
    numberField('freshMin', `${ORDER_COLUMNS.freshMin}: ${ORDERS.freshHint}`, plainMeasure(UNITS.minutes), 0, mostMin, 'optional'),
    numberField('loadingMin', `${ORDER_COLUMNS.loadingMin}: ${ORDERS.loadingHint}`, plainMeasure(UNITS.minutes), 0, mostMin, 'optional'),
    numberField('weight', `${ORDER_COLUMNS.weight}: ${ORDERS.weightHint}`, plainMeasure(), 1, 9, 'optional'),
  ];
}

/** What is wrong with a draft, by its fields. */
export type DraftFaults = Readonly<Partial<Record<keyof OrderDraft, string>>>;

/** What was typed as an order, or what is wrong with it at which field. */
export function typedIn(
  draft: OrderDraft,
  products: readonly OrderedProduct[],
  isStanding: boolean,
): { readonly ok: true; readonly value: TypedOrder } | { readonly ok: false; readonly faults: DraftFaults } {
  const found = productsNamed(draft.product, products);
  const readyAt = clockTimeIn(draft.readyAt);
  const productId = found.length === 1 ? found[0]?.id : undefined;
  const { pieces, freshMin, loadingMin, weight, label } = draft;
  const faults: DraftFaults = {
    ...(productId === undefined ? { product: ORDERS.needProduct } : {}),
    ...(piecesSchema.safeParse(pieces).success ? {} : { pieces: NUMBER_NEEDED }),
    ...(readyAt === null ? { readyAt: ORDERS.needClock } : {}),
    ...(isMinutes(freshMin) ? {} : { freshMin: NUMBER_NEEDED }),
    ...(isMinutes(loadingMin) ? {} : { loadingMin: NUMBER_NEEDED }),
    ...(weight === undefined || (Number.isInteger(weight) && weight >= 1 && weight <= 9) ? {} : { weight: NUMBER_NEEDED }),
    ...(isStanding && draft.weekdays.length === 0 ? { weekdays: STANDING.needDays } : {}),
  };
  if (productId === undefined || pieces === undefined || readyAt === null || Object.keys(faults).length > 0) return { ok: false, faults };
  return {
    ok: true,
    value: {
      weekdays: [...draft.weekdays].sort((a, b) => a - b),
      readyAt,
      productId,
      pieces,
      form: draft.form,
      weight: weight ?? 1,
      ...(freshMin === undefined ? {} : { freshMin }),
      ...(loadingMin === undefined ? {} : { loadingMin }),
      ...(label === undefined || label.trim() === '' ? {} : { label: label.trim() }),
    },
  };
}

function isMinutes(min: number | undefined): boolean {
  return min === undefined || minutesSchema.safeParse(min).success;
}

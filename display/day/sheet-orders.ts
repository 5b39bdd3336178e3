import type { Order } from '../../shared/documents/order.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { versionKey } from '../../shared/floor/state.ts';
import type { SheetProposal } from './sheet-places.ts';

/** An order as the sheet marks it. */
export interface MarkedOrder {
  readonly order: Order;
  readonly productName: string;
  /** By how many minutes it will be late, as the day stands; null: in time as far as anybody knows. */
  readonly lateMin: number | null;
  /** Pieces that it will be short of. */
  readonly shortPieces: number | null;
  /** The pin by which it comes before all others; null where it does not, '' where only the day that is tried has it so. */
  readonly firstPinId: string | null;
}

/** Orders that are wanted at the same instant. */
export interface OrderMark {
  readonly readyMs: number;
  readonly orders: readonly MarkedOrder[];
  readonly isLate: boolean;
}

/** The orders of a service date (null: of all) by the instants at which they are wanted, late ones marked. */
export function orderMarks(state: FloorState, proposal: SheetProposal | null, serviceDate: string | null): readonly OrderMark[] {
  const orders = Object.values(state.orders).filter((order) => serviceDate === null || order.serviceDate === serviceDate);
  const marked = orders.map((order) => markedOrder(state, proposal, order)).sort((a, b) => a.order.readyMs - b.order.readyMs);
  return [...new Set(marked.map(({ order }) => order.readyMs))].map((readyMs) => {
    const together = marked.filter(({ order }) => order.readyMs === readyMs);
    return { readyMs, orders: together, isLate: together.some((one) => one.lateMin !== null || one.shortPieces !== null) };
  });
}

function markedOrder(state: FloorState, proposal: SheetProposal | null, order: Order): MarkedOrder {
  const warnings = proposal?.warnings ?? state.plan?.warnings ?? [];
  const late = warnings.find((warning) => warning.kind === 'late' && warning.orderId === order.id);
  const short = warnings.find((warning) => warning.kind === 'short' && warning.orderId === order.id);
  const pin = Object.values(state.pins).find((candidate) => candidate.kind === 'first' && candidate.orderId === order.id);
  const isTriedFirst = proposal?.ask.firstOrderIds.includes(order.id) === true;
  return {
    order,
    productName: state.products[versionKey(order.productId, state.productVersions[order.productId] ?? 0)]?.name ?? order.productId,
    lateMin: late?.kind === 'late' ? Math.max(1, Math.round(late.byMin)) : null,
    shortPieces: short?.kind === 'short' ? short.pieces : null,
    firstPinId: pin?.id ?? (isTriedFirst ? '' : null),
  };
}

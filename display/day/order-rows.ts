import type { Order } from '../../shared/documents/order.ts';
import type { FloorState, Plan } from '../../shared/floor/state.ts';

/** How an order stands by the plan in force. */
export type OrderStanding =
  | { readonly kind: 'notPlanned' }
  | { readonly kind: 'onTime' }
  | { readonly kind: 'late'; readonly byMin: number }
  | { readonly kind: 'short'; readonly pieces: number };

/** Orders of a date, the earliest first. */
export function ordersOf(state: FloorState, serviceDate: string): readonly Order[] {
  return Object.values(state.orders)
    .filter((order) => order.serviceDate === serviceDate)
    .sort((a, b) => a.readyMs - b.readyMs || a.productId.localeCompare(b.productId) || (a.label ?? '').localeCompare(b.label ?? ''));
}

/** What the plan in force foresees. Of days that nobody has planned yet everything is short, which is no news. */
export function warningsAhead(floor: FloorState): Plan['warnings'] {
  const planned = new Set(Object.values(floor.workpieces).map(({ serviceDate }) => serviceDate));
  return (floor.plan?.warnings ?? []).filter(
    (warning) => warning.kind !== 'short' || planned.has(floor.orders[warning.orderId]?.serviceDate ?? ''),
  );
}

/** How an order stands by the plan in force: short before late, since what is missing is never there. Null where there is no plan. */
export function standingOf(floor: FloorState, order: Order): OrderStanding | null {
  const { plan, workpieces } = floor;
  if (plan === null) return null;
  const warnings = warningsAhead(floor);
  for (const warning of warnings)
    if (warning.kind === 'short' && warning.orderId === order.id) return { kind: 'short', pieces: warning.pieces };
  for (const warning of warnings)
    if (warning.kind === 'late' && warning.orderId === order.id) return { kind: 'late', byMin: warning.byMin };
  const isMade = Object.values(workpieces).some(
    ({ serviceDate, productId, cuts, ending }) =>
      serviceDate === order.serviceDate &&
      ending !== 'discarded' &&
      (productId === order.productId || cuts.some((cut) => cut.productId === order.productId)),
  );
  return { kind: isMade ? 'onTime' : 'notPlanned' };
}

/** Pieces of each product that are ordered, the most first. */
export function piecesByProduct(orders: readonly Order[]): readonly (readonly [productId: string, pieces: number])[] {
  const sums = new Map<string, number>();
  for (const { productId, pieces } of orders) sums.set(productId, (sums.get(productId) ?? 0) + pieces);
  return [...sums].sort(([, a], [, b]) => b - a);
}

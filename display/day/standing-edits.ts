import { keyOfName } from '../../shared/book/key-of-name.ts';
import type { Order, StandingOrder } from '../../shared/documents/order.ts';
import { minuteOfDay } from '../../shared/plan/orders/order-cells.ts';
import type { WantedOrder } from '../../shared/plan/orders/read-orders.ts';
import { weekdayOf } from './day-address.ts';
import type { TypedOrder } from './order-draft.ts';

/** The standing orders with one more, or with another in the place of one. */
export function withStanding(standing: readonly StandingOrder[], typed: TypedOrder, beforeId: string | null): readonly StandingOrder[] {
  if (beforeId !== null) return standing.map((order) => (order.id === beforeId ? { id: beforeId, ...typed } : order));
  const id = keyOfName(typed.productId, 'standing', (key) => standing.some((order) => order.id === key));
  return [...standing, { id, ...typed }];
}

/** By the first day of the week on which they come, then by time. */
export function inWeekOrder(standing: readonly StandingOrder[]): readonly StandingOrder[] {
  return [...standing].sort(
    (a, b) =>
      b.weekdays.length - a.weekdays.length || Math.min(...a.weekdays) - Math.min(...b.weekdays) || a.readyAt.localeCompare(b.readyAt),
  );
}

/** The standing orders of a date's weekday. */
export function standingOn(standing: readonly StandingOrder[], serviceDate: string): readonly StandingOrder[] {
  return standing.filter(({ weekdays }) => weekdays.includes(weekdayOf(serviceDate)));
}

/** What of the standing orders of a date is not among its orders yet, as orders. One that was withdrawn is so again. */
export function standingToTake(
  standing: readonly StandingOrder[],
  orders: readonly Order[],
  serviceDate: string,
  instantMs: (date: string, minuteOfDay: number) => number,
): readonly WantedOrder[] {
  const taken = new Set(orders.filter((order) => order.serviceDate === serviceDate).map(({ standingId }) => standingId));
  return standingOn(standing, serviceDate)
    .filter(({ id }) => !taken.has(id))
    .map(({ id, weekdays: _weekdays, readyAt, ...wanted }) => ({
      ...wanted,
      readyMs: instantMs(serviceDate, minuteOfDay(readyAt)),
      standingId: id,
    }));
}

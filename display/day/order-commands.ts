import type { CommandOf } from '../../shared/floor/commands.ts';
import type { Order } from '../../shared/documents/order.ts';
import { minuteOfDay } from '../../shared/plan/orders/order-cells.ts';
import type { ReadOrder, WantedOrder } from '../../shared/plan/orders/read-orders.ts';
import { zonedDate, zonedInstantMs } from '../parts/zoned-instant.ts';
import type { TypedOrder } from './order-draft.ts';

type PlaceOrders = CommandOf<'placeOrders'>;

/** Takes what was typed as an order of a date, in the place of another where there is one. */
export function placeTyped(typed: TypedOrder, before: Order | null, serviceDate: string, zone: string): PlaceOrders {
  const { weekdays: _weekdays, readyAt, ...wanted } = typed;
  // An order that is wanted the morning after stays so.
  const date = before === null ? serviceDate : zonedDate(before.readyMs, zone);
  const kept = before === null ? {} : { id: before.id, ...(before.standingId === undefined ? {} : { standingId: before.standingId }) };
  return { type: 'placeOrders', serviceDate, orders: [{ ...wanted, readyMs: zonedInstantMs(date, minuteOfDay(readyAt), zone), ...kept }] };
}

/** Takes orders of one date. */
export function placeWanted(orders: readonly WantedOrder[], serviceDate: string): PlaceOrders {
  return { type: 'placeOrders', serviceDate, orders: [...orders] };
}

/** Takes what was read, each date by itself. */
export function placeRead(read: readonly ReadOrder[]): readonly PlaceOrders[] {
  const dates = [...new Set(read.map(({ serviceDate }) => serviceDate))];
  return dates.map((date) =>
    placeWanted(
      read.filter(({ serviceDate }) => serviceDate === date).map(({ order }) => order),
      date,
    ),
  );
}

/** Takes an order anew that was withdrawn. */
export function placeAgain({ id: _gone, serviceDate, ...wanted }: Order): PlaceOrders {
  return placeWanted([wanted], serviceDate);
}

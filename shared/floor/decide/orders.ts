import { MOST_ORDERS, type Order } from '../../documents/order.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import { derivedId } from '../../ids.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { versionKey, type FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/** Orders of a day that is not over, of products that the house makes. Those with a known id take the place of what they were. */
export function decidePlaceOrders(state: FloorState, command: CommandOf<'placeOrders'>, context: CommandContext): Decision {
  const { serviceDate } = command;
  if (state.closedDates.includes(serviceDate)) return refused({ code: 'dayNotOpen', serviceDate });
  const events: FloorEvent[] = [];
  for (const [index, { id, ...wanted }] of command.orders.entries()) {
    if (id !== undefined && state.orders[id] === undefined) return refused({ code: 'orderUnknown', orderId: id });
    const missing = missingFor(state, wanted.productId);
    if (missing !== null) return refused(missing);
    const order: Order = { id: id ?? derivedId(context.commandId, index), serviceDate, ...wanted };
    if (!isSameDocument(state.orders[order.id], order)) events.push({ type: 'orderPlaced', order, atMs: context.tapMs });
  }
  const ids = new Set(
    Object.values(state.orders)
      .filter((order) => order.serviceDate === serviceDate)
      .map((order) => order.id),
  );
  for (const event of events) if (event.type === 'orderPlaced') ids.add(event.order.id);
  if (ids.size > MOST_ORDERS) return refused({ code: 'tooManyOrders', most: MOST_ORDERS });
  return events.length === 0 ? refused({ code: 'nothingChanges' }) : accepted(events);
}

/** Orders that are no longer wanted. What was planned for them stays until the day is planned anew. */
export function decideWithdrawOrders(state: FloorState, command: CommandOf<'withdrawOrders'>, context: CommandContext): Decision {
  const unknown = command.orderIds.find((id) => state.orders[id] === undefined);
  if (unknown !== undefined) return refused({ code: 'orderUnknown', orderId: unknown });
  return accepted([...new Set(command.orderIds)].map((orderId) => ({ type: 'orderWithdrawn', orderId, atMs: context.tapMs })));
}

/** The standing orders become their next version, where nobody else has changed them meanwhile. */
export function decideAdoptStanding(state: FloorState, command: CommandOf<'adoptStanding'>, context: CommandContext): Decision {
  const version = state.standing?.version ?? 0;
  if (command.fromVersion !== version) return refused({ code: 'documentChanged', version });
  for (const { productId } of command.standing) {
    if (state.productVersions[productId] === undefined) return refused({ code: 'productUnknown', productId });
  }
  if (isSameDocument(state.standing?.document ?? [], command.standing)) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'standingAdopted', version: version + 1, standing: command.standing, atMs: context.tapMs }]);
}

/** Why a product cannot be ordered: the house has none of that key, or its formula is out of the way in the book. */
function missingFor(
  state: FloorState,
  productId: string,
): { code: 'productUnknown'; productId: string } | { code: 'documentMissing'; kind: 'formula'; id: string } | null {
  const product = state.products[versionKey(productId, state.productVersions[productId] ?? 0)];
  if (product === undefined) return { code: 'productUnknown', productId };
  return state.archivedFormulas.includes(product.formula) ? { code: 'documentMissing', kind: 'formula', id: product.formula } : null;
}

import { MOST_ORDERS } from '../../documents/order.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import { derivedId } from '../../ids.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/** Ids of a file's orders are derived from here on; those of its batches and preps from 0. */
const ORDERS_FROM = 0x8000;

/**
 * What a bakehouse file says of orders: the day's own beside those that the house has for it already, and the standing
 * ones, which become the next version where they differ. Refused where a product is neither in the file nor in the
 * house, or where the day would have more than `MOST_ORDERS`.
 */
export function broughtOrders(
  state: FloorState,
  { products, serviceDate, orders = [], standing }: CommandOf<'bringInDay'>,
  context: CommandContext,
): Decision {
  const known = new Set(products.map((product) => product.id));
  const unknown = [...orders, ...(standing ?? [])].find(
    ({ productId }) => !known.has(productId) && state.productVersions[productId] === undefined,
  );
  if (unknown !== undefined) return refused({ code: 'productUnknown', productId: unknown.productId });
  const before = Object.values(state.orders).filter((order) => order.serviceDate === serviceDate).length;
  if (before + orders.length > MOST_ORDERS) return refused({ code: 'tooManyOrders', most: MOST_ORDERS });
  const events: FloorEvent[] = orders.map((wanted, index) => ({
    type: 'orderPlaced',
    order: { id: derivedId(context.commandId, ORDERS_FROM + index), serviceDate, ...wanted },
    atMs: context.nowMs,
  }));
  if (standing !== undefined && !isSameDocument(state.standing?.document ?? [], standing))
    events.push({ type: 'standingAdopted', version: (state.standing?.version ?? 0) + 1, standing, atMs: context.nowMs });
  return accepted(events);
}

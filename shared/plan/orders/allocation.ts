import type { Order } from '../../documents/order.ts';
import type { FloorState, Workpiece } from '../../floor/state.ts';
import { groupedBy } from '../build/grouped.ts';

/** Pieces of one product that become ready together. */
export interface Supply {
  /** What names it: the key of a cut or load in a plan, or a workpiece's id. */
  readonly key: string;
  readonly productId: string;
  readonly pieces: number;
  /** When they are, or are expected to be, ready; null where that is still to be planned, and can be as early as is wanted. */
  readonly readyMs: number | null;
  /** The day that they are made for; null where any will do. */
  readonly serviceDate: string | null;
}

/** So many pieces of a supply for an order. */
export interface Share {
  readonly orderId: string;
  readonly key: string;
  readonly pieces: number;
}

/** Who gets what. */
export interface Allocation {
  readonly shares: readonly Share[];
  /** Orders with pieces that nothing covers. */
  readonly short: readonly { readonly orderId: string; readonly pieces: number }[];
  /** Pieces that nobody has ordered. */
  readonly spare: readonly { readonly key: string; readonly pieces: number }[];
}

interface Open {
  readonly supply: Supply;
  left: number;
}

/** What would be ready so long after an order is wanted still is for it: it can be made to hurry. */
export const SLACK_MS = 60 * 60_000;

/**
 * Which pieces serve which order: what is ready first goes to the order that is wanted first, orders that come before all
 * others first. What is packed already, as the floor knows it, goes before `ends`, and what has no time yet comes last, as
 * it stands there. Pieces made for a day serve that day. While there are, or can be, pieces that have no time yet, what would
 * be much too late for an order is left to a later one, and serves it only where nothing else does.
 */
export function allocationOf(
  state: FloorState,
  orders: readonly Order[],
  ends: readonly Supply[],
  {
    firstOrderIds = new Set(),
    moreCanBeMade = false,
  }: { readonly firstOrderIds?: ReadonlySet<string>; readonly moreCanBeMade?: boolean } = {},
): Allocation {
  const timed = ends.filter(({ readyMs }) => readyMs !== null).sort(byReadiness);
  const inOrder = [...packedSupplies(state), ...timed, ...ends.filter(({ readyMs }) => readyMs === null)];
  const open = inOrder.map((supply): Open => ({ supply, left: supply.pieces }));
  const byProduct = groupedBy(open, ({ supply }) => supply.productId);
  const isFirst = (order: Order): number => (firstOrderIds.has(order.id) ? 0 : 1);
  const inTurn = [...orders].sort((a, b) => isFirst(a) - isFirst(b) || a.readyMs - b.readyMs || compare(a.id, b.id));
  const shares: Share[] = [];
  const wanted = new Map(inTurn.map((order) => [order, order.pieces]));
  for (const latestMs of [SLACK_MS, Infinity]) {
    for (const order of inTurn) {
      const supplies = byProduct.get(order.productId) ?? [];
      const canWait = moreCanBeMade || supplies.some(({ supply }) => supply.readyMs === null);
      const served = serve(order, wanted.get(order) ?? 0, supplies, canWait ? order.readyMs + latestMs : Infinity);
      shares.push(...served.shares);
      wanted.set(order, served.missing);
    }
  }
  return {
    shares,
    short: [...wanted].filter(([, pieces]) => pieces > 0).map(([order, pieces]) => ({ orderId: order.id, pieces })),
    spare: open.filter(({ left }) => left > 0).map(({ supply, left }) => ({ key: supply.key, pieces: left })),
  };
}

function serve(order: Order, pieces: number, supplies: readonly Open[], latestMs: number): { shares: Share[]; missing: number } {
  const shares: Share[] = [];
  let missing = pieces;
  for (const entry of supplies) {
    if (missing === 0) break;
    const { readyMs, serviceDate, key } = entry.supply;
    if (entry.left === 0 || (serviceDate !== null && serviceDate !== order.serviceDate)) continue;
    if (readyMs !== null && readyMs > latestMs) continue;
    const given = Math.min(missing, entry.left);
    entry.left -= given;
    missing -= given;
    shares.push({ orderId: order.id, key, pieces: given });
  }
  return { shares, missing };
}

/** Pieces that have gone through their whole way and left the floor as ready. */
export function packedSupplies(state: FloorState): readonly Supply[] {
  return Object.values(state.workpieces)
    .filter((workpiece) => workpiece.ending === 'finished')
    .flatMap((workpiece) => packedSupply(workpiece))
    .sort(byReadiness);
}

function packedSupply({ id, productId, pieces, finishedMs, serviceDate }: Workpiece): readonly Supply[] {
  if (productId === null || pieces === null || finishedMs === null) return [];
  return [{ key: id, productId, pieces, readyMs: finishedMs, serviceDate }];
}

function byReadiness(a: Supply, b: Supply): number {
  return (a.readyMs ?? 0) - (b.readyMs ?? 0) || compare(a.key, b.key);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

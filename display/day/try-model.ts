import type { FloorState } from '../../shared/floor/state.ts';
import type { TryResult } from '../../shared/plan/try/try-result.ts';
import { orderMarks, type MarkedOrder } from './sheet-orders.ts';

/** How one order fared on the days that were played. */
export interface TriedOrder {
  readonly marked: MarkedOrder;
  /** Share of the days on which it was late. */
  readonly lateShare: number;
  readonly lateRuns: number;
  readonly medianLateMin: number;
  readonly p90LateMin: number;
}

/** Less than this of all lateness is not worth a line. */
const LEAST_SHARE = 0.005;

/** The orders of a result that the floor still knows, those that are late most often first. */
export function triedOrders(state: FloorState, { orders, runs }: TryResult): readonly TriedOrder[] {
  const known = new Map(orderMarks(state, null, null).flatMap((mark) => mark.orders.map((marked) => [marked.order.id, marked] as const)));
  return orders
    .flatMap(({ orderId, lateShare, medianLateMin, p90LateMin }) => {
      const marked = known.get(orderId);
      return marked === undefined ? [] : [{ marked, lateShare, lateRuns: Math.round(lateShare * runs), medianLateMin, p90LateMin }];
    })
    .sort((a, b) => b.lateRuns - a.lateRuns || a.marked.order.readyMs - b.marked.order.readyMs);
}

/** What holds the day back, the greatest share first; what hardly counts is left off. */
export function heldBackBy({ resources }: TryResult): TryResult['resources'] {
  return resources.filter(({ share }) => share >= LEAST_SHARE).sort((a, b) => b.share - a.share);
}

/** A share in whole per cent; neither nothing nor all unless it is. */
export function percentText(share: number): string {
  if (share <= 0) return '0';
  if (share >= 1) return '100';
  const whole = Math.round(share * 100);
  return whole < 1 ? '<1' : whole > 99 ? '>99' : String(whole);
}

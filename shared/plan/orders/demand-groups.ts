import type { Formula, Product } from '../../documents/formula.ts';
import { targetMin, type Step } from '../../documents/method.ts';
import type { Order } from '../../documents/order.ts';

const MINUTE_MS = 60_000;

/** How long something that is wanted hot is thought to stay so, in minutes, where its order does not say how fresh. An assumption. */
export const HOT_MIN = 30;

/** How much earlier than wanted, in minutes, anything may be ready of which nobody said how long it keeps. An assumption. */
export const EARLY_MIN = 120;

/** Pieces that an order still needs. */
export interface Demand {
  readonly order: Order;
  readonly product: Product;
  readonly formula: Formula;
  readonly pieces: number;
}

/** What is made of one dough at the same time. */
export interface DemandGroup {
  readonly formula: Formula;
  readonly demands: readonly Demand[];
}

/** A demand with the instant at which its dough would be divided, so that every step could take its target. */
interface Timed extends Demand {
  readonly dueMs: number;
  readonly divideMs: number;
}

/**
 * The same dough made once for orders and products that can be made together: all are divided when the first of them has to
 * be, where they keep and may be as old by then. What goes through a cold night is another dough's time than what is baked
 * on the same morning. In the order of time.
 */
export function demandGroups(demands: readonly Demand[]): readonly DemandGroup[] {
  const timed = demands.map(withTimes).sort((a, b) => a.divideMs - b.divideMs || a.dueMs - b.dueMs || (a.order.id < b.order.id ? -1 : 1));
  const dayBegins = new Map<string, number>();
  for (const { order, dueMs } of timed) dayBegins.set(order.serviceDate, Math.min(dueMs, dayBegins.get(order.serviceDate) ?? Infinity));
  const groups: { formula: Formula; demands: Timed[] }[] = [];
  for (const demand of timed) {
    const group = groups.findLast(({ formula }) => formula.id === demand.formula.id);
    const first = group?.demands[0];
    const earlyMs = first === undefined ? Infinity : demand.divideMs - first.divideMs;
    if (group !== undefined && earlyMs <= mayBeEarlyMs(demand, dayBegins.get(demand.order.serviceDate) ?? 0)) group.demands.push(demand);
    else groups.push({ formula: demand.formula, demands: [demand] });
  }
  return groups;
}

function withTimes(demand: Demand): Timed {
  const { order, product, pieces } = demand;
  const dueMs = order.readyMs - (order.loadingMin ?? 0) * MINUTE_MS;
  const wholeMs = minutesOf(product.way, pieces) - (order.form === 'hot' ? minutesOf(afterOven(product), pieces) : 0);
  return { ...demand, dueMs, divideMs: dueMs - wholeMs * MINUTE_MS };
}

/**
 * How much earlier than wanted it may be ready. What nobody says keeps, keeps for a while, and from when the first order of
 * its day is wanted.
 */
function mayBeEarlyMs({ order, product, pieces, dueMs }: Timed, dayBeginsMs: number): number {
  const keepsMs = product.keepsMin === undefined ? Math.max(EARLY_MIN * MINUTE_MS, dueMs - dayBeginsMs) : product.keepsMin * MINUTE_MS;
  const afterMin = order.form === 'hot' ? 0 : minutesOf(afterOven(product), pieces);
  const freshMin = order.freshMin === undefined ? (order.form === 'hot' ? HOT_MIN : Infinity) : order.freshMin - afterMin;
  return Math.min(keepsMs, freshMin * MINUTE_MS);
}

function afterOven({ way }: Product): readonly Step[] {
  return way.slice(way.findLastIndex((step) => step.verb === 'takeOut') + 1);
}

function minutesOf(steps: readonly Step[], pieces: number): number {
  return steps.reduce((sum, step) => sum + targetMin(step, pieces), 0);
}

import type { Order } from '../../documents/order.ts';
import type { Step } from '../../documents/method.ts';
import { targetMin } from '../../documents/method.ts';
import { allocationOf, type Allocation, type Supply } from '../orders/allocation.ts';
import { PRICES, type Goal } from '../day/problem.ts';
import type { DayDraft } from './day-draft.ts';
import type { Estimates } from './estimates.ts';
import type { Chain, Thread } from './thread.ts';
import { threadKey } from './thread.ts';
import { secondsOf } from './windows.ts';
import type { Point } from './problem-draft.ts';

const MINUTE_MS = 60_000;

/** A minute for which something is older than it keeps weighs so much more than one for which it is less fresh than wanted. */
const STALE_FACTOR = 10;

/** The orders of the house with what is to serve them. */
export interface Served {
  readonly allocation: Allocation;
  readonly orders: ReadonlyMap<string, Order>;
  readonly firstOrderIds: ReadonlySet<string>;
}

/** Gives every order its pieces, and tells the estimates by when the doughs are wanted. */
export function serveOrders(day: DayDraft, leaves: readonly Thread[], estimates: Estimates, firstOrderIds: ReadonlySet<string>): Served {
  const { state } = day.context;
  const orders = new Map(Object.entries(state.orders));
  const byKey = new Map(leaves.map((leaf) => [threadKey(leaf.place), leaf]));
  const allocation = allocationOf(
    state,
    [...orders.values()],
    leaves.flatMap((leaf) => supplyOf(leaf, estimates)),
    { firstOrderIds },
  );
  for (const { orderId, key } of allocation.shares) {
    const order = orders.get(orderId);
    const leaf = byKey.get(key);
    if (order !== undefined && leaf !== undefined)
      estimates.wanted(leaf, dueMsOf(order) + (order.form === 'hot' ? afterOvenMin(leaf) * MINUTE_MS : 0));
  }
  return { allocation, orders, firstOrderIds };
}

/** The pieces of a leaf; none where it has none, or is no product. */
export function supplyOf(leaf: Thread, estimates: Estimates): readonly Supply[] {
  const { kind, product, pieces, place, serviceDate } = leaf;
  if (kind !== 'dough' || product === null || pieces === null || pieces === 0) return [];
  const readyMs = place.workpieceId === null ? null : estimates.endMs(leaf);
  return [{ key: threadKey(place), productId: product.id, pieces, readyMs, serviceDate }];
}

/** The goals of all orders in the problem. Returns the order of each. */
export function addGoals(day: DayDraft, { allocation, orders, firstOrderIds }: Served, chains: readonly Chain[]): readonly string[] {
  const byKey = new Map(chains.map((chain) => [threadKey(chain.thread.place), chain]));
  return allocation.shares.flatMap(({ orderId, key }) => {
    const order = orders.get(orderId);
    const chain = byKey.get(key);
    if (order === undefined || chain === undefined) return [];
    const goals = goalsOf(day, order, chain, firstOrderIds.has(orderId));
    day.context.draft.goals.push(...goals);
    return goals.map(() => orderId);
  });
}

function goalsOf(day: DayDraft, order: Order, chain: Chain, isFirst: boolean): readonly Goal[] {
  const out = outOfOven(chain);
  const ready = order.form === 'hot' ? (out ?? chain.end) : chain.end;
  if (ready === null) return [];
  const { product } = chain.thread;
  const goal: Goal = {
    key: `${order.id}|${threadKey(chain.thread.place)}`,
    activity: ready.activity,
    edge: ready.edge,
    dueS: day.context.secondOf(dueMsOf(order)),
    latePrice: PRICES.lateMin * order.weight,
    fresh: order.freshMin === undefined || out === null ? null : youngerThan(out, order.freshMin, PRICES.freshMin),
    earlyPrice: PRICES.earlyMin,
    isFirst,
  };
  if (product?.keepsMin === undefined) return [goal];
  const keeps = youngerThan(ready, product.keepsMin, PRICES.freshMin * STALE_FACTOR);
  if (goal.fresh === null) return [{ ...goal, fresh: keeps }];
  return [goal, { ...goal, key: `${goal.key}|keeps`, latePrice: 0, earlyPrice: 0, fresh: keeps }];
}

function youngerThan({ activity, edge }: Point, minutes: number, price: number): NonNullable<Goal['fresh']> {
  return { activity, edge, mostS: secondsOf(minutes), price };
}

/** When it has to be ready to be loaded in time. */
export function dueMsOf({ readyMs, loadingMin }: Order): number {
  return readyMs - (loadingMin ?? 0) * MINUTE_MS;
}

/** The end of the last taking out, where it is still ahead or has just begun. */
function outOfOven({ thread, nodes }: Chain): Point | null {
  const step = lastOut(thread.steps);
  const found = step === undefined ? undefined : nodes.get(step.id);
  return found === undefined || thread.lives[found.step.id]?.endedMs ? null : found.end;
}

function lastOut(steps: readonly Step[]): Step | undefined {
  return steps.findLast((step) => step.verb === 'takeOut');
}

function afterOvenMin({ steps, pieces }: Thread): number {
  const out = lastOut(steps);
  return out === undefined ? 0 : steps.slice(steps.indexOf(out) + 1).reduce((sum, step) => sum + targetMin(step, pieces), 0);
}

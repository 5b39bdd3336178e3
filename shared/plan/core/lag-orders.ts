import { LagGeneration } from './lag-generation.ts';
import type { LagSearchState } from './lag-search-state.ts';
import type { TemporalClosure } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** How many orders are kept at once. */
const POPULATION = 24;

/** By how much ranks are blurred when an order is drawn: one of so many steps, each so large. The very first is not blurred. */
const BLURS = 4;
const BLUR = 0.05;

/** How much a window of ranks that a child takes from its second parent spans, at least and at most. */
const NARROWEST = 0.2;
const WIDEST = 0.6;

/** How often an activity's rank is moved in a child, and how far at most, either way. */
const MUTATION = 0.04;
const FARTHEST = 0.3;

/** How much of its old rank an activity keeps beside its start, in units of time: it decides between equal starts. */
const MEMORY = 0.5;

interface Order {
  readonly ranks: Float64Array;
  readonly starts: Int32Array;
  cost: number;
}

/**
 * A genetic search over the orders in which activities are put: ranks by activity, from 0 to 1. What an order is worth is when its
 * schedule ends, and without one, more than any. Keeps working memory: one for each search.
 */
export class LagOrders {
  readonly #state: LagSearchState;
  readonly #generation: LagGeneration;
  readonly #orders: Order[] = [];
  /** What was known at the beginning; what only better schedules keep would let nearly every child fail. */
  readonly #closure: TemporalClosure;

  constructor(state: LagSearchState, closure: TemporalClosure) {
    this.#state = state;
    this.#generation = new LagGeneration(state.problem);
    this.#closure = closure;
  }

  /** Makes so many attempts, as long as the search is not over. */
  run(attempts: number): void {
    for (let attempt = 0; attempt < attempts && !this.#state.isOver; attempt += 1) {
      const isFull = this.#orders.length >= POPULATION;
      const order: Order = { ranks: isFull ? this.#child() : this.#drawn(), starts: new Int32Array(this.#state.problem.size), cost: 0 };
      this.#evaluate(order);
      if (!isFull) this.#orders.push(order);
      else this.#replace(order);
    }
  }

  /** Lets a schedule that was found elsewhere take part. */
  welcome(starts: Int32Array): void {
    const ranks = new Float64Array(this.#state.problem.size);
    const end = Math.max(1, starts[this.#state.problem.last] as number);
    for (let activity = 0; activity < starts.length; activity += 1) ranks[activity] = (starts[activity] as number) / end;
    const order = { ranks, starts, cost: starts[this.#state.problem.last] as number };
    if (this.#orders.length < POPULATION) this.#orders.push(order);
    else this.#replace(order);
  }

  /** One of the schedules that are kept; null where there is none yet. */
  some(): Int32Array | null {
    const order = this.#orders.length === 0 ? null : this.#pick();
    return order === null || order.cost === Number.MAX_SAFE_INTEGER ? null : order.starts;
  }

  #evaluate(order: Order): void {
    const { problem } = this.#state;
    this.#state.spend(1);
    if (!this.#generation.attempt(this.#closure, order.ranks, order.starts)) {
      order.cost = Number.MAX_SAFE_INTEGER;
      return;
    }
    const end = order.starts[problem.last] as number;
    order.cost = end;
    for (let activity = 0; activity < problem.size; activity += 1) {
      order.ranks[activity] = ((order.starts[activity] as number) + (order.ranks[activity] as number) * MEMORY) / Math.max(1, end);
    }
    this.#state.offer(order.starts);
  }

  /** Those that have to start soonest first, what can start sooner weighing more or less; blurred by chance. */
  #drawn(): Float64Array {
    const { problem, random } = this.#state;
    const { size, lengths } = this.#closure;
    const ranks = new Float64Array(size);
    const blur = this.#orders.length === 0 ? 0 : BLUR * (1 + random.below(BLURS));
    const earliness = random.share();
    for (let activity = 0; activity < size; activity += 1) {
      const latest = -(lengths[activity * size] as number);
      const earliest = lengths[activity] as number;
      ranks[activity] = (latest + earliness * earliest) / Math.max(1, 2 * problem.horizon) + blur * random.share();
    }
    return ranks;
  }

  /** One parent's ranks, in a window of time the other's, and a few moved by chance. */
  #child(): Float64Array {
    const { random } = this.#state;
    const [mother, father] = [this.#pick(), this.#pick()];
    const ranks = mother.ranks.slice();
    const from = random.share() * (1 - NARROWEST);
    const to = from + NARROWEST + random.share() * (WIDEST - NARROWEST);
    for (let activity = 0; activity < ranks.length; activity += 1) {
      const rank = father.ranks[activity] as number;
      if (rank >= from && rank < to) ranks[activity] = rank;
      if (random.share() < MUTATION) ranks[activity] = (ranks[activity] as number) + (2 * random.share() - 1) * FARTHEST;
    }
    return ranks;
  }

  /** The better of two. */
  #pick(): Order {
    const { random } = this.#state;
    const one = this.#orders[random.below(this.#orders.length)] as Order;
    const other = this.#orders[random.below(this.#orders.length)] as Order;
    return one.cost <= other.cost ? one : other;
  }

  /** Takes the place of the worst, unless it is worse itself or there already. */
  #replace(order: Order): void {
    if (this.#orders.some((other) => isSame(order, other, this.#state.problem.last))) return;
    let worst = 0;
    for (let index = 1; index < this.#orders.length; index += 1) {
      if ((this.#orders[index] as Order).cost >= (this.#orders[worst] as Order).cost) worst = index;
    }
    if (order.cost <= (this.#orders[worst] as Order).cost) this.#orders[worst] = order;
  }
}

function isSame(one: Order, other: Order, last: number): boolean {
  if (one.cost !== other.cost) return false;
  for (let activity = 0; activity <= last; activity += 1) {
    if (one.starts[activity] !== other.starts[activity]) return false;
  }
  return true;
}

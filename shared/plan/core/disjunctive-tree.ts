import type { DisjunctiveGraph } from './disjunctive-graph.ts';
import { DisjunctivePropagation, type MachineOrders } from './disjunctive-propagation.ts';
import type { ScheduleMaker } from './schedule-maker.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Above so many activities, a tree comes to no end that would be worth its time. */
const MOST_ACTIVITIES = 300;

interface Decision {
  readonly first: number;
  readonly second: number;
}

/**
 * Depth first over which of two comes first on a machine: on the one with the least time to spare, the two of which either order
 * takes longest. Nothing between is left out, so that a tree that comes to its end proves the best schedule least. Each node counts as
 * a schedule.
 */
export class DisjunctiveTree {
  readonly #graph: DisjunctiveGraph;
  readonly #maker: ScheduleMaker;
  readonly #propagation: DisjunctivePropagation;
  /** What is known at each depth. */
  readonly #levels: MachineOrders[] = [];
  readonly #latestEnds: number[] = [];
  #until = 0;

  constructor(graph: DisjunctiveGraph, maker: ScheduleMaker) {
    this.#graph = graph;
    this.#maker = maker;
    this.#propagation = new DisjunctivePropagation(graph);
  }

  /** Looks for what is better than the maker's best until that has counted `schedules` in all; it has a best already. */
  search(schedules: number): void {
    const { count, heads, tails } = this.#graph.precedence;
    if (count > MOST_ACTIVITIES || this.#maker.isOver) return;
    this.#until = schedules;
    this.#levels[0] = { heads: heads.slice(), tails: tails.slice(), isBefore: new Uint8Array(count * count) };
    this.#propagation.latestEnd = this.#maker.bestMakespan - 1;
    this.#propagation.begin(true);
    if (this.#explore(0)) this.#maker.raiseLowerBound(this.#maker.bestMakespan);
  }

  /** Looks at a node and all below it; false where the schedules ran out before. */
  #explore(depth: number): boolean {
    if (this.#maker.isOver || this.#maker.count >= this.#until) return false;
    this.#maker.spend();
    const orders = this.#levels[depth] as MachineOrders;
    this.#latestEnds[depth] = this.#propagation.latestEnd;
    if (!this.#propagation.propagate(orders)) return true;
    const next = this.#choose(orders);
    if (next === null) {
      this.#maker.offer(orders.heads);
      return true;
    }
    return this.#branch(depth, next.first, next.second) && this.#branch(depth, next.second, next.first);
  }

  #branch(depth: number, first: number, second: number): boolean {
    const latestEnd = this.#maker.bestMakespan - 1;
    // What was drawn at the node for a later end is looked at anew.
    this.#propagation.begin(latestEnd < (this.#latestEnds[depth] as number));
    this.#propagation.latestEnd = latestEnd;
    const copy = this.#copyTo(depth + 1, this.#levels[depth] as MachineOrders);
    return !this.#propagation.decide(copy, first, second) || this.#explore(depth + 1);
  }

  #copyTo(depth: number, { heads, tails, isBefore }: MachineOrders): MachineOrders {
    const level = this.#levels[depth];
    if (level === undefined) return (this.#levels[depth] = { heads: heads.slice(), tails: tails.slice(), isBefore: isBefore.slice() });
    level.heads.set(heads);
    level.tails.set(tails);
    level.isBefore.set(isBefore);
    return level;
  }

  #choose(orders: MachineOrders): Decision | null {
    let tightest: Int32Array | null = null;
    let least = Infinity;
    for (const users of this.#graph.machines) {
      const spare = this.#spareOf(orders, users);
      if (spare < least) [least, tightest] = [spare, users];
    }
    return tightest === null ? null : this.#hardest(orders, tightest);
  }

  /** The time that is left over between those that are not in order yet; Infinity where all are. */
  #spareOf(orders: MachineOrders, users: Int32Array): number {
    let [head, tail, work] = [Infinity, Infinity, 0];
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      if (!this.#hasOpen(orders, users, user)) continue;
      head = Math.min(head, orders.heads[user] as number);
      tail = Math.min(tail, orders.tails[user] as number);
      work += this.#graph.precedence.durations[user] as number;
    }
    return work === 0 ? Infinity : -head - tail - work;
  }

  #hasOpen(orders: MachineOrders, users: Int32Array, user: number): boolean {
    for (let index = 0; index < users.length; index += 1) {
      const other = users[index] as number;
      if (other !== user && this.#propagation.isOpen(orders, user, other)) return true;
    }
    return false;
  }

  #hardest(orders: MachineOrders, users: Int32Array): Decision | null {
    let hardest: Decision | null = null;
    let most = -1;
    for (let index = 0; index < users.length; index += 1) {
      for (let next = index + 1; next < users.length; next += 1) {
        const [one, other] = [users[index] as number, users[next] as number];
        if (!this.#propagation.isOpen(orders, one, other)) continue;
        const length = this.#propagation.lengthOf(orders, one, other);
        const turned = this.#propagation.lengthOf(orders, other, one);
        if (Math.min(length, turned) <= most) continue;
        most = Math.min(length, turned);
        hardest = length <= turned ? { first: one, second: other } : { first: other, second: one };
      }
    }
    return hardest;
  }
}

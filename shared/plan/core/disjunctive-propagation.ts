import type { DisjunctiveGraph } from './disjunctive-graph.ts';
import { EdgeFinding } from './edge-finding.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

const CONTRADICTED = -1;

/** What is decided and known at a node. */
export interface MachineOrders {
  /** No earlier start, and no less from an activity's end to the end of everything. */
  readonly heads: Int32Array;
  readonly tails: Int32Array;
  /** `isBefore[one * count + other]`: whether `one`, of the same machine, comes first. */
  readonly isBefore: Uint8Array;
}

/**
 * Draws what follows for machines if all is to be over by `latestEnd`: of two of which one order takes too long, the other is decided,
 * and edge-finding raises heads and tails. Keeps working memory: one for each search.
 */
export class DisjunctivePropagation {
  readonly #graph: DisjunctiveGraph;
  readonly #edges: EdgeFinding;
  /** Machines at which something has changed that has not been looked at. */
  readonly #isTouched: Uint8Array;
  latestEnd = 0;

  constructor(graph: DisjunctiveGraph) {
    this.#graph = graph;
    this.#edges = new EdgeFinding(graph.precedence.durations);
    this.#isTouched = new Uint8Array(graph.machines.length);
  }

  /** Forgets what has changed: it looks at everything, or at what is decided from here on. */
  begin(isAllNew: boolean): void {
    this.#isTouched.fill(isAllNew ? 1 : 0);
  }

  /** Decides an order. False where it contradicts what is there. */
  decide(orders: MachineOrders, first: number, second: number): boolean {
    const { count, durations } = this.#graph.precedence;
    if (orders.isBefore[first * count + second] === 1) return true;
    if (orders.isBefore[second * count + first] === 1) return false;
    orders.isBefore[first * count + second] = 1;
    this.#touch(first);
    return (
      this.raiseHead(orders, second, (orders.heads[first] as number) + (durations[first] as number)) &&
      this.raiseTail(orders, first, (orders.tails[second] as number) + (durations[second] as number))
    );
  }

  /** Until nothing more follows. False where not all can be over by then; true is no promise that it can. */
  propagate(orders: MachineOrders): boolean {
    for (let machine = this.#isTouched.indexOf(1); machine >= 0; machine = this.#isTouched.indexOf(1)) {
      this.#isTouched[machine] = 0;
      const open = this.#decidePairs(orders, machine);
      if (open === CONTRADICTED || (open > 0 && !this.#pushUsers(orders, machine))) return false;
    }
    return true;
  }

  raiseHead(orders: MachineOrders, place: number, head: number): boolean {
    const { heads, tails, isBefore } = orders;
    if (head <= (heads[place] as number)) return true;
    const { count, durations, successors } = this.#graph.precedence;
    heads[place] = head;
    this.#touch(place);
    const end = head + (durations[place] as number);
    if (end + (tails[place] as number) > this.latestEnd) return false;
    for (let at = successors.offsets[place] as number; at < (successors.offsets[place + 1] as number); at += 1) {
      if (!this.raiseHead(orders, successors.items[at] as number, end)) return false;
    }
    const { machines, machinesOf } = this.#graph;
    for (let at = machinesOf.offsets[place] as number; at < (machinesOf.offsets[place + 1] as number); at += 1) {
      const users = machines[machinesOf.items[at] as number] as Int32Array;
      for (let index = 0; index < users.length; index += 1) {
        const other = users[index] as number;
        if (isBefore[place * count + other] === 1 && !this.raiseHead(orders, other, end)) return false;
      }
    }
    return true;
  }

  raiseTail(orders: MachineOrders, place: number, tail: number): boolean {
    const { heads, tails, isBefore } = orders;
    if (tail <= (tails[place] as number)) return true;
    const { count, durations, predecessors } = this.#graph.precedence;
    tails[place] = tail;
    this.#touch(place);
    const length = tail + (durations[place] as number);
    if (length + (heads[place] as number) > this.latestEnd) return false;
    for (let at = predecessors.offsets[place] as number; at < (predecessors.offsets[place + 1] as number); at += 1) {
      if (!this.raiseTail(orders, predecessors.items[at] as number, length)) return false;
    }
    const { machines, machinesOf } = this.#graph;
    for (let at = machinesOf.offsets[place] as number; at < (machinesOf.offsets[place + 1] as number); at += 1) {
      const users = machines[machinesOf.items[at] as number] as Int32Array;
      for (let index = 0; index < users.length; index += 1) {
        const other = users[index] as number;
        if (isBefore[other * count + place] === 1 && !this.raiseTail(orders, other, length)) return false;
      }
    }
    return true;
  }

  #touch(place: number): void {
    const { offsets, items } = this.#graph.machinesOf;
    for (let at = offsets[place] as number; at < (offsets[place + 1] as number); at += 1) this.#isTouched[items[at] as number] = 1;
  }

  /** Says how many pairs are open still. */
  #decidePairs(orders: MachineOrders, machine: number): number {
    const users = this.#graph.machines[machine] as Int32Array;
    let open = 0;
    for (let index = 0; index < users.length; index += 1) {
      for (let next = index + 1; next < users.length; next += 1) {
        const [one, other] = [users[index] as number, users[next] as number];
        if (!this.isOpen(orders, one, other)) continue;
        const isOneFirst = this.lengthOf(orders, one, other) <= this.latestEnd;
        const isOtherFirst = this.lengthOf(orders, other, one) <= this.latestEnd;
        if (isOneFirst && isOtherFirst) open += 1;
        else if (!(isOneFirst ? this.decide(orders, one, other) : isOtherFirst && this.decide(orders, other, one))) return CONTRADICTED;
      }
    }
    return open;
  }

  /** Whether it is not decided which comes first. */
  isOpen({ isBefore }: MachineOrders, one: number, other: number): boolean {
    const { count } = this.#graph.precedence;
    return isBefore[one * count + other] === 0 && isBefore[other * count + one] === 0;
  }

  /** The longest chain that is known, were the first right before the second. */
  lengthOf({ heads, tails }: MachineOrders, first: number, second: number): number {
    const { durations } = this.#graph.precedence;
    return (heads[first] as number) + (durations[first] as number) + (durations[second] as number) + (tails[second] as number);
  }

  #pushUsers(orders: MachineOrders, machine: number): boolean {
    const users = this.#graph.machines[machine] as Int32Array;
    const { heads, tails } = orders;
    if (!this.#edges.run(users, heads, tails, this.latestEnd)) return false;
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      if (!this.raiseHead(orders, user, this.#edges.startOf(user))) return false;
    }
    if (!this.#edges.run(users, tails, heads, this.latestEnd)) return false;
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      if (!this.raiseTail(orders, user, this.#edges.startOf(user))) return false;
    }
    return true;
  }
}

import type { PrecedenceGraph } from './precedence-graph.ts';
import type { Random } from './random.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** How strongly what leaves most to do after it comes first: 0 is chance alone. */
const BIAS = 0.8;

/**
 * Draws orders by chance, biased by regret (Drexl 1991): of the activities whose predecessors are in, each is the likelier the more
 * is to follow it. Resources play no part, so that here begin schedules which dense packing never finds.
 */
export class OrderSampler {
  readonly #graph: PrecedenceGraph;
  readonly #random: Random;
  readonly #missing: Int32Array;
  readonly #ready: Int32Array;
  readonly #weights: Float64Array;
  #readyCount = 0;

  constructor(graph: PrecedenceGraph, random: Random) {
    this.#graph = graph;
    this.#random = random;
    this.#missing = new Int32Array(graph.count);
    this.#ready = new Int32Array(graph.count);
    this.#weights = new Float64Array(graph.count);
  }

  /** Fills `order` with all activities, each after its predecessors. */
  draw(order: Int32Array): void {
    const { count, predecessors } = this.#graph;
    this.#readyCount = 0;
    for (let place = 0; place < count; place += 1) {
      const before = (predecessors.offsets[place + 1] as number) - (predecessors.offsets[place] as number);
      this.#missing[place] = before;
      if (before === 0) this.#add(place);
    }
    for (let index = 0; index < count; index += 1) {
      const chosen = this.#choose();
      const place = this.#ready[chosen] as number;
      order[index] = place;
      this.#readyCount -= 1;
      this.#ready[chosen] = this.#ready[this.#readyCount] as number;
      this.#release(place);
    }
  }

  #choose(): number {
    const tails = this.#graph.tails;
    const ready = this.#ready;
    const count = this.#readyCount;
    let least = Infinity;
    for (let index = 0; index < count; index += 1) least = Math.min(least, tails[ready[index] as number] as number);
    let sum = 0;
    for (let index = 0; index < count; index += 1) {
      const regret = (tails[ready[index] as number] as number) - least + 1;
      const weight = regret ** BIAS;
      this.#weights[index] = weight;
      sum += weight;
    }
    let left = this.#random.share() * sum;
    for (let index = 0; index < count - 1; index += 1) {
      left -= this.#weights[index] as number;
      if (left < 0) return index;
    }
    return count - 1;
  }

  #release(place: number): void {
    const { offsets, items } = this.#graph.successors;
    for (let at = offsets[place] as number; at < (offsets[place + 1] as number); at += 1) {
      const after = items[at] as number;
      this.#missing[after] = (this.#missing[after] as number) - 1;
      if (this.#missing[after] === 0) this.#add(after);
    }
  }

  #add(place: number): void {
    this.#ready[this.#readyCount] = place;
    this.#readyCount += 1;
  }
}

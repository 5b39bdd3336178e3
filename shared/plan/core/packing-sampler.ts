import type { PrecedenceGraph } from './precedence-graph.ts';
import type { Profile } from './profile.ts';
import type { Random } from './random.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** How strongly what leaves most to do after it comes first: 0 is chance alone. */
const TAIL_BIAS = 0.8;
/** How strongly what takes most of the resources comes first. */
const LOAD_BIAS = 2;
/** What is added to a load, so that what needs nothing has its chance. */
const LEAST_LOAD = 0.3;

/**
 * Draws schedules by chance, packed densely: again and again the first instant at which anything can start is looked for, and one of
 * those that can start there does, the likelier the more is to follow it (regret-biased sampling, Drexl 1991) and the more it takes of
 * the resources.
 */
export class PackingSampler {
  readonly #graph: PrecedenceGraph;
  readonly #profile: Profile;
  readonly #random: Random;
  readonly #loadWeights: Float64Array;
  readonly #missing: Int32Array;
  /** Activities whose predecessors are all placed, and the earliest that each can start. */
  readonly #ready: Int32Array;
  readonly #earliest: Int32Array;
  readonly #weights: Float64Array;
  #readyCount = 0;

  /** `loads` is the part of the resources that each activity takes. */
  constructor(graph: PrecedenceGraph, profile: Profile, loads: Float64Array, random: Random) {
    this.#graph = graph;
    this.#profile = profile;
    this.#random = random;
    this.#loadWeights = loads.map((load) => (LEAST_LOAD + load) ** LOAD_BIAS);
    this.#missing = new Int32Array(graph.count);
    this.#ready = new Int32Array(graph.count);
    this.#earliest = new Int32Array(graph.count);
    this.#weights = new Float64Array(graph.count);
  }

  /** Fills `starts`; false where an activity has no room within the horizon. */
  draw(starts: Int32Array): boolean {
    const { count, durations, predecessors } = this.#graph;
    this.#profile.clear();
    this.#readyCount = 0;
    for (let place = 0; place < count; place += 1) {
      const before = (predecessors.offsets[place + 1] as number) - (predecessors.offsets[place] as number);
      this.#missing[place] = before;
      this.#earliest[place] = 0;
      if (before === 0) this.#add(place);
    }
    for (let placed = 0; placed < count; placed += 1) {
      const instant = this.#firstInstant();
      if (instant < 0) return false;
      const place = this.#takeOne(instant);
      const duration = durations[place] as number;
      if (duration > 0) this.#profile.take(place, duration, instant);
      starts[place] = instant;
      this.#release(place, instant + duration);
    }
    return true;
  }

  /** The first instant at which something can start; -1 where something never can. */
  #firstInstant(): number {
    let first = Infinity;
    for (let index = 0; index < this.#readyCount; index += 1) {
      const place = this.#ready[index] as number;
      const duration = this.#graph.durations[place] as number;
      const from = this.#earliest[place] as number;
      const earliest = duration > 0 ? this.#profile.earliest(place, duration, from) : from;
      if (earliest < 0) return -1;
      this.#earliest[place] = earliest;
      if (earliest < first) first = earliest;
    }
    return first;
  }

  /** Takes one of those that can start at the instant out of the ready ones. */
  #takeOne(instant: number): number {
    const index = this.#choose(instant);
    const place = this.#ready[index] as number;
    this.#readyCount -= 1;
    this.#ready[index] = this.#ready[this.#readyCount] as number;
    return place;
  }

  #choose(instant: number): number {
    let left = this.#random.share() * this.#weigh(instant);
    let chosen = 0;
    for (let index = 0; index < this.#readyCount; index += 1) {
      const weight = this.#weights[index] as number;
      if (weight === 0) continue;
      chosen = index;
      left -= weight;
      if (left < 0) break;
    }
    return chosen;
  }

  /** Weighs the ready ones, 0 for those that cannot start at the instant. The sum of the weights. */
  #weigh(instant: number): number {
    const tails = this.#graph.tails;
    let least = Infinity;
    for (let index = 0; index < this.#readyCount; index += 1) {
      const place = this.#ready[index] as number;
      if (this.#earliest[place] === instant) least = Math.min(least, tails[place] as number);
    }
    let sum = 0;
    for (let index = 0; index < this.#readyCount; index += 1) {
      const place = this.#ready[index] as number;
      const regret = (tails[place] as number) - least + 1;
      const weight = this.#earliest[place] === instant ? regret ** TAIL_BIAS * (this.#loadWeights[place] as number) : 0;
      this.#weights[index] = weight;
      sum += weight;
    }
    return sum;
  }

  #release(place: number, end: number): void {
    const { offsets, items } = this.#graph.successors;
    for (let at = offsets[place] as number; at < (offsets[place + 1] as number); at += 1) {
      const after = items[at] as number;
      if (end > (this.#earliest[after] as number)) this.#earliest[after] = end;
      this.#missing[after] = (this.#missing[after] as number) - 1;
      if (this.#missing[after] === 0) this.#add(after);
    }
  }

  #add(place: number): void {
    this.#ready[this.#readyCount] = place;
    this.#readyCount += 1;
  }
}

import type { PackingSampler } from './packing-sampler.ts';
import type { PrecedenceGraph } from './precedence-graph.ts';
import type { Profile } from './profile.ts';
import { generateEarly, generateLate } from './serial-generation.ts';
import { TimeOrder } from './time-order.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** What a search may use and must keep to. */
export interface Limits {
  /** The most schedules that may be generated. */
  readonly schedules: number;
  /** Nothing ends later than this. */
  readonly horizon: number;
  /** Whether there is as much of everything at any time, so that a schedule stays one when all of it is moved. */
  readonly isSteady: boolean;
}

/** Makes schedules from orders, counts each, and keeps the best. */
export class ScheduleMaker {
  readonly graph: PrecedenceGraph;
  /** Where schedules are made: what it holds between two of them means nothing. */
  readonly profile: Profile;
  readonly limits: Limits;
  readonly #byTime: TimeOrder;
  readonly #order: Int32Array;
  readonly #finishes: Int32Array;
  readonly #late: Int32Array;
  readonly #best: Int32Array;
  #count = 0;
  #bestMakespan = Infinity;
  #lowerBound = 0;

  constructor(graph: PrecedenceGraph, profile: Profile, limits: Limits) {
    this.graph = graph;
    this.limits = limits;
    this.profile = profile;
    this.#byTime = new TimeOrder(graph.count);
    this.#order = new Int32Array(graph.count);
    this.#finishes = new Int32Array(graph.count);
    this.#late = new Int32Array(graph.count);
    this.#best = new Int32Array(graph.count);
  }

  /** How many schedules were begun. */
  get count(): number {
    return this.#count;
  }

  /** The least makespan so far; Infinity before the first schedule. */
  get bestMakespan(): number {
    return this.#bestMakespan;
  }

  /** The best schedule's starts by the graph's numbers; null before the first schedule. */
  get best(): Int32Array | null {
    return this.#bestMakespan === Infinity ? null : this.#best.slice();
  }

  /** Whether no schedule can be better than the best. */
  get isProvedOptimal(): boolean {
    return this.#bestMakespan <= this.#lowerBound;
  }

  /** Takes note of a makespan that no schedule can be below: once it is reached, the search is over. */
  raiseLowerBound(makespan: number): void {
    this.#lowerBound = Math.max(this.#lowerBound, makespan);
  }

  /** Whether no schedule may be made any more, or a better one cannot be. */
  get isOver(): boolean {
    return this.#count >= this.limits.schedules || this.isProvedOptimal;
  }

  /** Makes the earliest schedule of an order into `starts`; false where the search is over, or where it does not fit. */
  make(order: Int32Array, starts: Int32Array): boolean {
    if (this.isOver) return false;
    this.#count += 1;
    return generateEarly(this.graph, this.profile, order, starts) && this.#keep(starts);
  }

  /** Makes a schedule by a sampler that works on the maker's profile; false as in `make`. */
  draw(sampler: Pick<PackingSampler, 'draw'>, starts: Int32Array): boolean {
    if (this.isOver) return false;
    this.#count += 1;
    return sampler.draw(starts) && this.#keep(starts);
  }

  /** Counts a node of a tree, as a schedule. */
  spend(): void {
    this.#count += 1;
  }

  /** Keeps a schedule that a tree came to, if it is the best. */
  offer(starts: Int32Array): void {
    this.#keep(starts);
  }

  /**
   * Moves a schedule as late as it goes and then as early: two schedules more. It never gets longer. Leaves it as it is where the
   * search is over before.
   */
  improve(starts: Int32Array): void {
    const { durations, count } = this.graph;
    for (let place = 0; place < count; place += 1) this.#finishes[place] = (starts[place] as number) + (durations[place] as number);
    this.makeFromBehind(this.#finishes, starts[count - 1] as number, starts);
  }

  /**
   * Makes the latest schedule of activities from the greatest finish key down, then from it the earliest one: two schedules. No
   * key is below a predecessor's. `makespan` is by when it has to fit where it cannot simply begin sooner; where it does not, the
   * earliest one is made right from the keys. False where neither fits, or, with `starts` as it was, where the search is over before.
   */
  makeFromBehind(finishKeys: ArrayLike<number>, makespan: number, starts: Int32Array): boolean {
    if (this.isOver) return false;
    this.#count += 1;
    const order = this.#order;
    this.#byTime.falling(finishKeys, order);
    const deadline = this.limits.isSteady ? this.limits.horizon : makespan;
    const fits = generateLate(this.graph, this.profile, order, deadline, this.#late);
    if (this.isOver) return false;
    if (fits) this.#byTime.rising(this.#late, order);
    else order.reverse();
    return this.make(order, starts);
  }

  #keep(starts: Int32Array): true {
    const makespan = starts[starts.length - 1] as number;
    if (makespan < this.#bestMakespan) {
      this.#bestMakespan = makespan;
      this.#best.set(starts);
    }
    return true;
  }
}

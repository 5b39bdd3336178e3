import { Crossover } from './crossover.ts';
import type { Instance } from './instance.ts';
import { OrderSampler } from './order-sampler.ts';
import { PackingSampler } from './packing-sampler.ts';
import { loadsOf, PeakWindow } from './peak-window.ts';
import { Population, type Member } from './population.ts';
import type { Random } from './random.ts';
import type { ScheduleMaker } from './schedule-maker.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** The part of the samples that are packed densely; the others are not, so that there is more to choose from. */
const PACKED = 0.7;

/** Starts populations of schedules and breeds them; every schedule comes from a maker, which counts them. */
export class Breeding {
  readonly #maker: ScheduleMaker;
  readonly #random: Random;
  readonly #orders: OrderSampler;
  readonly #packing: PackingSampler;
  readonly #crossover: Crossover;
  readonly #order: Int32Array;
  readonly #child: Int32Array;

  constructor(instance: Instance, maker: ScheduleMaker, random: Random) {
    const { graph, limits, profile } = maker;
    const loads = loadsOf(instance, graph);
    this.#maker = maker;
    this.#random = random;
    this.#orders = new OrderSampler(graph, random);
    this.#packing = new PackingSampler(graph, profile, loads, random);
    const peaks = new PeakWindow(loads, graph.durations, limits.horizon);
    this.#crossover = new Crossover(graph, random, peaks, limits.horizon);
    this.#order = new Int32Array(graph.count);
    this.#child = new Int32Array(graph.count);
  }

  /** A population of sampled and improved schedules; fewer where the search is over before it is full. */
  sampled(size: number, isQuick: boolean): Population {
    const population = new Population(size, isQuick);
    while (population.members.length < size && !this.#maker.isOver) {
      if (!this.#sample()) continue;
      this.#maker.improve(this.#child);
      population.add(this.#member());
    }
    return population;
  }

  #sample(): boolean {
    if (this.#random.share() < PACKED) return this.#maker.draw(this.#packing, this.#child);
    this.#orders.draw(this.#order);
    return this.#maker.make(this.#order, this.#child);
  }

  /** Breeds until the maker has made `schedules` in all, or the search is over. */
  breed(population: Population, schedules: number): void {
    const { members } = population;
    if (members.length < 2) return;
    while (!this.#maker.isOver && this.#maker.count < schedules) {
      const mother = population.draw(this.#random);
      const drawn = population.draw(this.#random);
      const father = drawn === mother ? (drawn + 1) % members.length : drawn;
      if (this.#bear((members[mother] as Member).starts, (members[father] as Member).starts)) {
        population.replace(mother, father, this.#child, this.#score());
      }
    }
  }

  #bear(mother: Int32Array, father: Int32Array): boolean {
    this.#crossover.mix(mother, father);
    const makespan = Math.max(mother[mother.length - 1] as number, father[father.length - 1] as number);
    return this.#maker.makeFromBehind(this.#crossover.keys, makespan, this.#child);
  }

  #member(): Member {
    return { starts: this.#child.slice(), score: this.#score() };
  }

  #score(): number {
    const child = this.#child;
    let sum = 0;
    for (let place = 0; place < child.length; place += 1) sum += child[place] as number;
    return (child[child.length - 1] as number) + sum / (child.length * (this.#maker.limits.horizon + 1));
  }
}

import type { PeakWindow } from './peak-window.ts';
import type { PrecedenceGraph } from './precedence-graph.ts';
import type { Random } from './random.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** The part of the father's time that is handed down, least and most. */
const LEAST_WINDOW = 0.25;
const MOST_WINDOW = 0.75;
/** How often it is the father's fullest time and not any. */
const PEAK_CHANCE = 0.5;
/** How many activities of a child change their place by chance, on average. */
const MUTATIONS = 2.5;
/** How far they go at most, as a part of the makespan. */
const MUTATION_REACH = 0.8;

/**
 * Mixes two schedules into keys for a third: within a window of the father's time his activities keep their places, all others keep
 * the mother's order before, within and after it. A few then change their place.
 */
export class Crossover {
  readonly #graph: PrecedenceGraph;
  readonly #random: Random;
  readonly #peaks: PeakWindow;
  readonly #apart: number;
  /** The child's keys, in the order of finishes, none below a predecessor's. Overwritten by the next child. */
  readonly keys: Float64Array;

  /** `horizon` is the longest makespan that there can be. */
  constructor(graph: PrecedenceGraph, random: Random, peaks: PeakWindow, horizon: number) {
    this.#graph = graph;
    this.#random = random;
    this.#peaks = peaks;
    this.#apart = 2 * horizon;
    this.keys = new Float64Array(graph.count);
  }

  /** Fills the keys of a child of two schedules, given by their starts. */
  mix(mother: Int32Array, father: Int32Array): void {
    this.#cross(mother, father);
    this.#mutate(mother[mother.length - 1] as number);
    this.#lift();
  }

  #cross(mother: Int32Array, father: Int32Array): void {
    const { count, durations } = this.#graph;
    const makespan = father[count - 1] as number;
    const part = LEAST_WINDOW + this.#random.share() * (MOST_WINDOW - LEAST_WINDOW);
    const length = Math.max(1, Math.floor(makespan * part));
    const isPeak = this.#random.share() < PEAK_CHANCE;
    const from = isPeak ? this.#peaks.from(father, length) : this.#random.below(makespan - length + 1);
    const to = from + length;
    for (let place = 0; place < count; place += 1) {
      const duration = durations[place] as number;
      const ofFather = father[place] as number;
      const ofMother = mother[place] as number;
      if (ofFather >= from && ofFather + duration <= to) this.keys[place] = ofFather + duration;
      else if (ofMother + duration <= from) this.keys[place] = ofMother + duration - this.#apart;
      else if (ofMother >= to) this.keys[place] = ofMother + duration + this.#apart;
      else this.keys[place] = ofMother + duration;
    }
  }

  #mutate(makespan: number): void {
    const last = this.keys.length - 1;
    const chance = MUTATIONS / this.keys.length;
    const reach = MUTATION_REACH * makespan;
    for (let place = 1; place < last; place += 1) {
      if (this.#random.share() >= chance) continue;
      this.keys[place] = Math.round((this.keys[place] as number) + (this.#random.share() * 2 - 1) * reach);
    }
  }

  /** Lifts keys to their predecessors', so that the order of the keys is one in which things can be done. */
  #lift(): void {
    const { offsets, items } = this.#graph.predecessors;
    const keys = this.keys;
    for (let place = 0; place < keys.length; place += 1) {
      let key = keys[place] as number;
      const end = offsets[place + 1] as number;
      for (let at = offsets[place] as number; at < end; at += 1) {
        const before = keys[items[at] as number] as number;
        if (before > key) key = before;
      }
      keys[place] = key;
    }
  }
}

import type { Instance } from './instance.ts';
import type { PrecedenceGraph } from './precedence-graph.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** The part of the resources that each activity takes while it lasts, summed over them, by the graph's numbers. */
export function loadsOf({ demands, capacities }: Instance, { originals }: PrecedenceGraph): Float64Array {
  return Float64Array.from(originals, (activity) =>
    demands.reduce((sum, needs, resource) => sum + (needs[activity] as number) / Math.max(1, capacities[resource] as number), 0),
  );
}

/** Finds where a schedule uses the resources best: there its order is worth handing down (Valls, Ballestín and Quintanilla 2008). */
export class PeakWindow {
  readonly #loads: Float64Array;
  readonly #durations: Int32Array;
  readonly #sums: Float64Array;

  /** `horizon` is the longest makespan that there can be. */
  constructor(loads: Float64Array, durations: Int32Array, horizon: number) {
    this.#loads = loads;
    this.#durations = durations;
    this.#sums = new Float64Array(horizon + 2);
  }

  /** The instant from which on the `length` units of time are together the fullest; `length` is at most the makespan. */
  from(starts: Int32Array, length: number): number {
    const makespan = starts[starts.length - 1] as number;
    this.#sumUp(starts, makespan);
    const sums = this.#sums;
    let best = 0;
    let most = -1;
    for (let from = 0; from + length <= makespan; from += 1) {
      const load = (sums[from + length] as number) - (sums[from] as number);
      if (load <= most) continue;
      most = load;
      best = from;
    }
    return best;
  }

  /** Fills in the load of all the time before each instant. */
  #sumUp(starts: Int32Array, makespan: number): void {
    const sums = this.#sums;
    sums.fill(0, 0, makespan + 2);
    for (let place = 0; place < starts.length; place += 1) {
      const start = starts[place] as number;
      const end = start + (this.#durations[place] as number);
      const load = this.#loads[place] as number;
      sums[start + 1] = (sums[start + 1] as number) + load;
      sums[end + 1] = (sums[end + 1] as number) - load;
    }
    let level = 0;
    let sum = 0;
    for (let instant = 1; instant <= makespan; instant += 1) {
      level += sums[instant] as number;
      sum += level;
      sums[instant] = sum;
    }
  }
}

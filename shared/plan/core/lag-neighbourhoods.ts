import type { LagSearchState } from './lag-search-state.ts';
import type { LagTree } from './lag-tree.ts';
import { CONTRADICTION, copyInto, copyOf, tighten, type TemporalClosure } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** Most nodes of one look at a neighbourhood. */
const NODES = 40;

/** How many activities are let loose at least, at first, and how many more or fewer after one that was too small or too large. */
const FEWEST = 4;
const AT_FIRST = 6;
const CHANGE = 0.25;

/** How often the best is taken, and not another schedule. */
const BEST_SHARE = 0.5;
/** How often those that are let loose are drawn from all, and not near each other in time. */
const ANYWHERE_SHARE = 0.35;
/** By how much the distance in time and the cost of an order are blurred, in units of time. */
const DISTANCE_BLUR = 3;
const ORDER_BLUR = 2;

/**
 * Lets some activities of a schedule loose, keeps the order of the others where they share a resource, and searches what is left for
 * one better than the best with a small tree. Keeps working memory: one for each search.
 */
export class LagNeighbourhoods {
  readonly #state: LagSearchState;
  readonly #tree: LagTree;
  readonly #closure: TemporalClosure;
  readonly #isLoose: Uint8Array;
  #loose = AT_FIRST;

  constructor(state: LagSearchState, tree: LagTree) {
    this.#state = state;
    this.#tree = tree;
    this.#closure = copyOf(state.root);
    this.#isLoose = new Uint8Array(state.problem.size);
  }

  /** Looks at neighbourhoods for so many nodes, as long as the search is not over. `some` gives a schedule to start from. */
  run(nodes: number, some: () => Int32Array | null): void {
    const until = Math.max(0, this.#state.left - nodes);
    while (!this.#state.isOver && this.#state.left > until) {
      const base = this.#state.random.share() < BEST_SHARE ? this.#state.best : (some() ?? this.#state.best);
      if (base === null) return;
      this.#look(base);
    }
  }

  #look(base: Int32Array): void {
    const state = this.#state;
    this.#letLoose(base);
    state.spend(1);
    if (!this.#keepOrders(base) || !state.propagation.propagate(this.#closure)) {
      this.#loose = Math.min(state.problem.last, this.#loose + CHANGE);
      return;
    }
    const limits = { nodes: Math.min(NODES, state.left), latestEnd: state.latestEnd };
    const before = limits.nodes;
    const isDone = this.#tree.search(
      this.#closure,
      limits,
      () => state.random.share() * ORDER_BLUR,
      (starts) => {
        state.offer(starts);
        limits.latestEnd = state.latestEnd;
      },
    );
    state.spend(before - limits.nodes);
    this.#loose = isDone ? Math.min(state.problem.last, this.#loose + CHANGE) : Math.max(FEWEST, this.#loose - CHANGE);
  }

  /** Either those near in time to one, or any. */
  #letLoose(base: Int32Array): void {
    const { random, problem } = this.#state;
    this.#isLoose.fill(0);
    const count = Math.min(problem.last, Math.round(this.#loose));
    if (random.share() < ANYWHERE_SHARE) {
      for (let index = 0; index < count; index += 1) this.#isLoose[1 + random.below(problem.last)] = 1;
      return;
    }
    const instant = random.share() * (base[problem.last] as number);
    const near = Array.from({ length: problem.last + 1 }, (_, activity) => {
      const middle = (base[activity] as number) + (problem.durations[activity] as number) / 2;
      return { activity, distance: Math.abs(middle - instant) + random.share() * DISTANCE_BLUR };
    });
    near.sort((one, other) => one.distance - other.distance);
    for (const { activity } of near.slice(0, count)) this.#isLoose[activity] = 1;
  }

  #keepOrders(base: Int32Array): boolean {
    const { problem, root } = this.#state;
    copyInto(root, this.#closure);
    for (const users of problem.users) {
      for (const first of users) {
        if (this.#isLoose[first] === 1 || first > problem.last) continue;
        const end = (base[first] as number) + (problem.durations[first] as number);
        for (const second of users) {
          if (this.#isLoose[second] === 1 || second > problem.last || (base[second] as number) < end) continue;
          if (tighten(this.#closure, first, second, problem.durations[first] as number) === CONTRADICTION) return false;
        }
      }
    }
    return true;
  }
}

import { LagBranching, type Ordering } from './lag-branching.ts';
import type { LagProblem } from './lag-problem.ts';
import type { LagPropagation } from './lag-propagation.ts';
import { CONTRADICTION, copyInto, copyOf, tighten, type TemporalClosure } from './temporal-closure.ts';

/** Most entries that the closures of all depths together may have; a tree goes no deeper. */
const MOST_ENTRIES = 2 ** 24;

/** What the tree works against: how many nodes are left, and by when the end has to come. */
export interface TreeLimits {
  nodes: number;
  latestEnd: number;
}

/** An order that is tried first, and then denied. */
interface Decision extends Ordering {
  isDenied: boolean;
}

/**
 * Depth first over orders of two activities that would run together where a resource is short: first the one before the other, then
 * never so. Between them nothing is left out, so that a tree that is searched to its end proves that there is no (better) schedule.
 * Keeps working memory: one for each search.
 */
export class LagTree {
  readonly #problem: LagProblem;
  readonly #propagation: LagPropagation;
  readonly #branching: LagBranching;
  /** The closure at each depth. */
  readonly #levels: TemporalClosure[] = [];

  constructor(problem: LagProblem, propagation: LagPropagation) {
    this.#problem = problem;
    this.#propagation = propagation;
    this.#branching = new LagBranching(problem);
  }

  /**
   * Searches below `root`, which is propagated. Each schedule is handed to `found`, which lowers `limits.latestEnd` to what is still
   * wanted; each node takes one of `limits.nodes`. True where the tree was searched to its end, and
   * nowhere cut off for its depth.
   */
  search(root: TemporalClosure, limits: TreeLimits, jitter: () => number, found: (starts: Int32Array) => void): boolean {
    const path: Decision[] = [];
    copyInto(root, this.#levelAt(0, root));
    const deepest = Math.floor(MOST_ENTRIES / root.lengths.length);
    let isWhole = true;
    let isOpen = true;
    for (;;) {
      const level = this.#levelAt(path.length, root);
      const next = isOpen ? this.#branching.choose(level, jitter) : 'deadEnd';
      if (next === 'schedule') found(level.lengths.subarray(0, this.#problem.last + 1));
      const isTooDeep = path.length >= deepest;
      if (typeof next !== 'string' && isTooDeep) isWhole = false;
      if (typeof next !== 'string' && !isTooDeep) path.push({ ...next, isDenied: false });
      else if (!turn(path)) return isWhole;
      if (limits.nodes <= 0) return false;
      limits.nodes -= 1;
      isOpen = this.#open(path, root, limits.latestEnd);
    }
  }

  /** Makes the closure of the last decision out of the one before it; false where it holds a contradiction. */
  #open(path: readonly Decision[], root: TemporalClosure, latestEnd: number): boolean {
    const decision = path.at(-1);
    if (decision === undefined) return false;
    const level = this.#levelAt(path.length, root);
    copyInto(this.#levelAt(path.length - 1, root), level);
    if (tighten(level, this.#problem.last, 0, -latestEnd) === CONTRADICTION) return false;
    const { first, second, isDenied } = decision;
    const duration = this.#problem.durations[first] ?? 0;
    const done = isDenied ? tighten(level, second, first, 1 - duration) : tighten(level, first, second, duration);
    return done !== CONTRADICTION && this.#propagation.propagate(level);
  }

  #levelAt(depth: number, root: TemporalClosure): TemporalClosure {
    const level = this.#levels[depth] ?? copyOf(root);
    this.#levels[depth] = level;
    return level;
  }
}

/** Goes on to the next decision that has not been denied yet; false where there is none. */
function turn(path: Decision[]): boolean {
  while (path.at(-1)?.isDenied === true) path.pop();
  const decision = path.at(-1);
  if (decision === undefined) return false;
  decision.isDenied = true;
  return true;
}

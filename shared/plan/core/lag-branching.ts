import type { LagProblem } from './lag-problem.ts';
import { canPrecede, hasToPrecede } from './ordering-propagation.ts';
import type { TemporalClosure } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** Two activities, the first of which could end before the second begins. */
export interface Ordering {
  readonly first: number;
  readonly second: number;
}

/** What comes next at a node: nothing, as its earliest starts are a schedule; nothing, as it holds none; or an order to try. */
export type Branch = 'schedule' | 'deadEnd' | Ordering;

/** Picks what a tree decides next. Keeps working memory: one for each search. */
export class LagBranching {
  readonly #problem: LagProblem;
  readonly #running: Int32Array;
  #count = 0;

  constructor(problem: LagProblem) {
    this.#problem = problem;
    this.#running = new Int32Array(problem.size);
  }

  /**
   * With everything as early as the lags let it, the first instant at which a resource is short, and of the orders of two that run
   * then the one that leaves the most slack. Where nothing is short, these starts are a schedule; where no two of those that run can
   * be ordered, there is none. `jitter` gives a number by which an order is made to look worse, 0 for none.
   */
  choose(closure: TemporalClosure, jitter: () => number): Branch {
    const { needs } = this.#problem;
    let [instant, short] = [Number.POSITIVE_INFINITY, -1];
    for (let resource = 0; resource < needs.length; resource += 1) {
      const found = this.#firstShortage(closure, resource, instant);
      if (found < instant) [instant, short] = [found, resource];
    }
    if (short < 0) return 'schedule';
    this.#collect(closure, short, instant);
    return this.#easiest(closure, jitter) ?? 'deadEnd';
  }

  #firstShortage({ lengths }: TemporalClosure, resource: number, before: number): number {
    const users = this.#problem.users[resource] as Int32Array;
    const most = this.#problem.most[resource] as number;
    let first = before;
    for (let index = 0; index < users.length; index += 1) {
      const instant = lengths[users[index] as number] as number;
      if (instant < first && this.#used(lengths, resource, users, instant) > most) first = instant;
    }
    return first;
  }

  #used(lengths: Int32Array, resource: number, users: Int32Array, instant: number): number {
    const need = this.#problem.needs[resource] as Int32Array;
    const { durations } = this.#problem;
    let used = 0;
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      const start = lengths[user] as number;
      if (start <= instant && instant < start + (durations[user] as number)) used += need[user] as number;
    }
    return used;
  }

  #collect({ lengths }: TemporalClosure, resource: number, instant: number): void {
    const { users, durations } = this.#problem;
    this.#count = 0;
    for (const user of users[resource] as Int32Array) {
      const start = lengths[user] as number;
      if (start > instant || instant >= start + (durations[user] as number)) continue;
      this.#running[this.#count] = user;
      this.#count += 1;
    }
  }

  #easiest(closure: TemporalClosure, jitter: () => number): Ordering | null {
    let best: Ordering | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (let one = 0; one < this.#count; one += 1) {
      for (let other = 0; other < this.#count; other += 1) {
        const [first, second] = [this.#running[one] as number, this.#running[other] as number];
        if (one === other || !this.#isOpen(closure, first, second)) continue;
        const cost = this.#cost(closure, first, second) + jitter();
        if (cost < least) [best, least] = [{ first, second }, cost];
      }
    }
    return best;
  }

  #isOpen(closure: TemporalClosure, first: number, second: number): boolean {
    const { durations } = this.#problem;
    return canPrecede(closure, durations, first, second) && !hasToPrecede(closure, durations, first, second);
  }

  /** The less slack would be left, for the second as a whole or between the two, the more it costs. */
  #cost({ size, lengths }: TemporalClosure, first: number, second: number): number {
    const duration = this.#problem.durations[first] as number;
    const after = (lengths[first] as number) + duration;
    const slack = -(lengths[second * size] as number) - after;
    const pair = -(lengths[second * size + first] as number) - duration;
    return -Math.min(slack, pair);
  }
}

import type { Budget } from './instance.ts';
import type { LagProblem } from './lag-problem.ts';
import type { LagPropagation } from './lag-propagation.ts';
import { Random } from './random.ts';
import { CONTRADICTION, tighten, type TemporalClosure } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** What the parts of one search share: the best so far, what is left to spend, and what holds for everything better. */
export class LagSearchState {
  readonly problem: LagProblem;
  readonly propagation: LagPropagation;
  /** What every schedule that is still wanted keeps. */
  readonly root: TemporalClosure;
  readonly random: Random;
  readonly #budget: number;
  #spent = 0;
  #best: Int32Array | null = null;
  #isClosed = false;

  /** `root` is closed; it becomes the state's own. */
  constructor(problem: LagProblem, propagation: LagPropagation, root: TemporalClosure, { schedules, seed }: Budget) {
    this.problem = problem;
    this.propagation = propagation;
    this.root = root;
    this.random = new Random(seed);
    this.#budget = schedules;
    this.#narrow(problem.horizon);
  }

  get best(): Int32Array | null {
    return this.#best;
  }

  get spent(): number {
    return this.#spent;
  }

  get left(): number {
    return this.#budget - this.#spent;
  }

  /** By when a schedule has to end to be better than the best. */
  get latestEnd(): number {
    return this.#best === null ? this.problem.horizon : (this.#best[this.problem.last] as number) - 1;
  }

  /** Whether it is proved that there is nothing (better) to find. */
  get isClosed(): boolean {
    return this.#isClosed;
  }

  get isOver(): boolean {
    return this.#isClosed || this.left <= 0;
  }

  /** Counts attempts. */
  spend(schedules: number): void {
    this.#spent += schedules;
  }

  /** A schedule: kept if it is better, and the root is narrowed to what would be better still. */
  offer(starts: Int32Array): void {
    if ((starts[this.problem.last] as number) > this.latestEnd) return;
    this.#best = starts.slice(0, this.problem.last + 1);
    this.#narrow(this.latestEnd);
  }

  /** A tree over everything that is wanted has been searched to its end. */
  close(): void {
    this.#isClosed = true;
  }

  #narrow(latestEnd: number): void {
    const done = tighten(this.root, this.problem.last, 0, -latestEnd);
    if (done === CONTRADICTION || !this.propagation.propagate(this.root)) this.#isClosed = true;
  }
}

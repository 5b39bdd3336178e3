import { FramePropagation } from './frame-propagation.ts';
import { machinesOf } from './lag-machines.ts';
import type { LagProblem } from './lag-problem.ts';
import { orderConflicts, orderTriples } from './ordering-propagation.ts';
import { CONTRADICTION, HELD, TIGHTENED, type TemporalClosure, type Tightening } from './temporal-closure.ts';
import { WorkPropagation } from './work-propagation.ts';

/** Draws what the resources imply for the lags until nothing more follows. Keeps working memory: one for each search. */
export class LagPropagation {
  readonly #problem: LagProblem;
  readonly #frames: FramePropagation;
  readonly #work: WorkPropagation;

  constructor(problem: LagProblem) {
    this.#problem = problem;
    this.#frames = new FramePropagation(problem);
    this.#work = new WorkPropagation(machinesOf(problem), problem.durations);
  }

  /**
   * Tightens the closure by orders that are forced and by what certainly runs when. False where the lags cannot be kept with these
   * resources; true is no promise that they can. What every schedule within the closure keeps is all that is added.
   */
  propagate(closure: TemporalClosure): boolean {
    let done: Tightening = TIGHTENED;
    while (done === TIGHTENED) done = this.#step(closure);
    return done === HELD;
  }

  /** The cheapest that finds anything. */
  #step(closure: TemporalClosure): Tightening {
    const problem = this.#problem;
    let done = orderConflicts(closure, problem);
    if (done === HELD) done = this.#frames.propagate(closure, 0);
    if (done === HELD) done = orderTriples(closure, problem);
    if (done === HELD) done = this.#work.propagate(closure, 0);
    if (done === HELD) done = this.#propagateTouched(closure);
    return done;
  }

  #propagateTouched(closure: TemporalClosure): Tightening {
    const { touched } = closure;
    let result: Tightening = HELD;
    for (let origin = 1; origin < this.#problem.last; origin += 1) {
      if (touched[origin] === 0) continue;
      touched[origin] = 0;
      const done = this.#frames.propagate(closure, origin);
      if (done === CONTRADICTION) return CONTRADICTION;
      if (done === TIGHTENED) result = TIGHTENED;
    }
    return result;
  }
}

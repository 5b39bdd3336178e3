import type { LagProblem } from './lag-problem.ts';
import { RoomOverTime } from './room-over-time.ts';
import type { TemporalClosure } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** How often one attempt may take activities out again, by activity: beyond it the attempt has failed. */
const REPAIRS_PER_ACTIVITY = 1;

/**
 * Puts activity after activity at its earliest place with room. Where a maximum lag leaves none, those that it hangs on have been put
 * too early: their lower bounds are raised by just so much, and they are taken out again with all that was put after them. Bounds
 * only rise, so that an attempt ends. Keeps working memory: one for each search.
 */
export class LagGeneration {
  readonly #problem: LagProblem;
  readonly #room: RoomOverTime;
  /** No earlier start, as learned within the attempt. */
  readonly #lower: Int32Array;
  readonly #earliest: Int32Array;
  readonly #latest: Int32Array;
  /** The activities in the order in which they were put. */
  readonly #sequence: Int32Array;
  readonly #isPut: Uint8Array;
  #count = 0;

  constructor(problem: LagProblem) {
    this.#problem = problem;
    this.#room = new RoomOverTime(problem);
    this.#lower = new Int32Array(problem.size);
    this.#earliest = new Int32Array(problem.size);
    this.#latest = new Int32Array(problem.size);
    this.#sequence = new Int32Array(problem.size);
    this.#isPut = new Uint8Array(problem.size);
  }

  /**
   * One attempt: of the activities whose predecessors are put, the one with the lowest rank comes next. True where `starts` then
   * holds a schedule that keeps the closure and the resources.
   */
  attempt(closure: TemporalClosure, ranks: Float64Array, starts: Int32Array): boolean {
    const { size, last } = this.#problem;
    for (let activity = 0; activity < size; activity += 1) this.#lower[activity] = closure.lengths[activity] as number;
    this.#restart(closure, starts, 0);
    // What the calendars have taken is there before anything else.
    for (let piece = last + 1; piece < size; piece += 1) this.#put(closure, starts, piece, this.#lower[piece] as number);
    let repairs = REPAIRS_PER_ACTIVITY * size;
    while (this.#count < size) {
      const next = this.#next(closure, ranks);
      const start = this.#room.earliest(next, this.#earliest[next] as number);
      if (start <= (this.#latest[next] as number)) {
        this.#put(closure, starts, next, start);
        continue;
      }
      repairs -= 1;
      if (repairs < 0 || start > -(closure.lengths[next * size] as number)) return false;
      if (!this.#raise(closure, starts, next, start)) return false;
      this.#restart(closure, starts, this.#firstTooEarly(starts));
    }
    return (starts[last] as number) <= -(closure.lengths[last * size] as number);
  }

  #next({ size, lengths }: TemporalClosure, ranks: Float64Array): number {
    const isPut = this.#isPut;
    let best = -1;
    for (let activity = 0; activity < size; activity += 1) {
      if (isPut[activity] === 1 || (best >= 0 && (ranks[activity] as number) >= (ranks[best] as number))) continue;
      let isFree = true;
      for (let other = 0; isFree && other < size; other += 1) {
        isFree = isPut[other] === 1 || (lengths[other * size + activity] as number) <= 0;
      }
      if (isFree) best = activity;
    }
    return best;
  }

  #put({ size, lengths }: TemporalClosure, starts: Int32Array, activity: number, start: number): void {
    starts[activity] = start;
    this.#isPut[activity] = 1;
    this.#sequence[this.#count] = activity;
    this.#count += 1;
    this.#room.take(activity, start);
    for (let other = 0; other < size; other += 1) {
      const after = start + (lengths[activity * size + other] as number);
      if (after > (this.#earliest[other] as number)) this.#earliest[other] = after;
      const before = start - (lengths[other * size + activity] as number);
      if (before < (this.#latest[other] as number)) this.#latest[other] = before;
    }
  }

  /** If `next` can only start then, those that it must follow closely start later too. False where one cannot. */
  #raise({ size, lengths }: TemporalClosure, starts: Int32Array, next: number, start: number): boolean {
    for (let other = 0; other < size; other += 1) {
      const bound = start + (lengths[next * size + other] as number);
      if (bound > (this.#lower[other] as number)) this.#lower[other] = bound;
      if ((this.#lower[other] as number) > -(lengths[other * size] as number)) return false;
    }
    return this.#firstTooEarly(starts) < this.#count;
  }

  /** Where in the sequence the first stands that starts before its lower bound. */
  #firstTooEarly(starts: Int32Array): number {
    for (let place = 0; place < this.#count; place += 1) {
      const activity = this.#sequence[place] as number;
      if ((starts[activity] as number) < (this.#lower[activity] as number)) return place;
    }
    return this.#count;
  }

  /** Keeps the first of the sequence and takes out the others. */
  #restart(closure: TemporalClosure, starts: Int32Array, kept: number): void {
    const { size, lengths } = closure;
    this.#room.clear();
    this.#isPut.fill(0);
    this.#earliest.set(this.#lower);
    for (let activity = 0; activity < size; activity += 1) this.#latest[activity] = -(lengths[activity * size] as number);
    this.#count = 0;
    for (let place = 0; place < kept; place += 1) {
      const activity = this.#sequence[place] as number;
      this.#put(closure, starts, activity, starts[activity] as number);
    }
  }
}

import type { Machine } from './lag-machines.ts';
import { CONTRADICTION, HELD, TIGHTENED, tighten, type TemporalClosure, type Tightening } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/**
 * What follows from how long the work takes, seen from the start of one activity: what has to be done between two instants must fit
 * between them, and what has to be done before an activity pushes it back. Keeps working memory: one for each search.
 */
export class WorkPropagation {
  readonly #machines: readonly Machine[];
  readonly #durations: Int32Array;
  /** Of a machine's users, ordered by earliest start, and by latest end. */
  readonly #byStart: Int32Array;
  readonly #byEnd: Int32Array;
  readonly #starts: Int32Array;
  readonly #ends: Int32Array;

  constructor(machines: readonly Machine[], durations: Int32Array) {
    this.#machines = machines;
    this.#durations = durations;
    this.#byStart = new Int32Array(durations.length);
    this.#byEnd = new Int32Array(durations.length);
    this.#starts = new Int32Array(durations.length);
    this.#ends = new Int32Array(durations.length);
  }

  /** Tightens the closure by what the work implies as seen from `origin`. */
  propagate(closure: TemporalClosure, origin: number): Tightening {
    let result: Tightening = HELD;
    for (const machine of this.#machines) {
      this.#order(closure, origin, machine);
      if (this.#isOverloaded(machine)) return CONTRADICTION;
      const done = this.#pushAll(closure, origin, machine);
      if (done === CONTRADICTION) return CONTRADICTION;
      if (done === TIGHTENED) result = TIGHTENED;
    }
    return result;
  }

  #order({ size, lengths }: TemporalClosure, origin: number, { users }: Machine): void {
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      const start = lengths[origin * size + user] as number;
      const end = (this.#durations[user] as number) - (lengths[user * size + origin] as number);
      this.#starts[user] = start;
      this.#ends[user] = end;
      let place = index;
      for (; place > 0 && (this.#starts[this.#byStart[place - 1] as number] as number) > start; place -= 1) {
        this.#byStart[place] = this.#byStart[place - 1] as number;
      }
      this.#byStart[place] = user;
      place = index;
      for (; place > 0 && (this.#ends[this.#byEnd[place - 1] as number] as number) > end; place -= 1) {
        this.#byEnd[place] = this.#byEnd[place - 1] as number;
      }
      this.#byEnd[place] = user;
    }
  }

  /** Whether there is more to do between two instants than gets done. */
  #isOverloaded({ users, work, capacity }: Machine): boolean {
    const count = users.length;
    for (let last = 0; last < count; last += 1) {
      const end = this.#ends[this.#byEnd[last] as number] as number;
      let inside = 0;
      for (let first = count - 1; first >= 0; first -= 1) {
        const user = this.#byStart[first] as number;
        if ((this.#ends[user] as number) > end) continue;
        inside += work[user] as number;
        if (inside > capacity * (end - (this.#starts[user] as number))) return true;
      }
    }
    return false;
  }

  #pushAll(closure: TemporalClosure, origin: number, machine: Machine): Tightening {
    let result: Tightening = HELD;
    for (let index = 0; index < machine.users.length; index += 1) {
      const user = machine.users[index] as number;
      const later = tighten(closure, origin, user, this.#earliestAfter(closure, user, machine));
      if (later === CONTRADICTION) return CONTRADICTION;
      const sooner = tighten(closure, user, origin, (this.#durations[user] as number) - this.#latestBefore(closure, user, machine));
      if (sooner === CONTRADICTION) return CONTRADICTION;
      if (later === TIGHTENED || sooner === TIGHTENED) result = TIGHTENED;
    }
    return result;
  }

  /** When what has to end before the user begins can be done at the earliest. */
  #earliestAfter({ size, lengths }: TemporalClosure, user: number, { users, work, capacity }: Machine): number {
    let earliest = this.#starts[user] as number;
    let before = 0;
    for (let place = users.length - 1; place >= 0; place -= 1) {
      const other = this.#byStart[place] as number;
      if ((lengths[other * size + user] as number) < (this.#durations[other] as number)) continue;
      before += work[other] as number;
      const done = (this.#starts[other] as number) + Math.ceil(before / capacity);
      if (done > earliest) earliest = done;
    }
    return earliest;
  }

  /** When the user has to end so that there is time for what has to come after it. */
  #latestBefore({ size, lengths }: TemporalClosure, user: number, { users, work, capacity }: Machine): number {
    const duration = this.#durations[user] as number;
    let latest = this.#ends[user] as number;
    let after = 0;
    for (let place = 0; place < users.length; place += 1) {
      const other = this.#byEnd[place] as number;
      if ((lengths[user * size + other] as number) < duration) continue;
      after += work[other] as number;
      const begin = (this.#ends[other] as number) - Math.ceil(after / capacity);
      if (begin < latest) latest = begin;
    }
    return latest;
  }
}

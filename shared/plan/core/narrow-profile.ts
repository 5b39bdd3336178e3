import type { Profile } from './profile.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** A profile whose demands fit one word: the case of nearly every problem, and the fast one. */
export class NarrowProfile implements Profile {
  readonly #free: Int32Array;
  readonly #left: Int32Array;
  readonly #needs: Int32Array;
  readonly #guard: number;
  #dirtyFrom = 0;
  #dirtyTo = 0;

  /** `free` is what there is at each instant of the horizon, guard bits set; `needs` the demand of each activity. */
  constructor(free: Int32Array, needs: Int32Array, guard: number) {
    this.#free = free;
    this.#left = free.slice();
    this.#needs = needs;
    this.#guard = guard;
  }

  earliest(activity: number, duration: number, from: number): number {
    const left = this.#left;
    const guard = this.#guard;
    const need = this.#needs[activity] as number;
    const end = left.length;
    let start = from;
    // Looked at from behind, so that one instant without room rules out all starts up to it. Instants before `unknown` have room.
    let unknown = from;
    for (;;) {
      const top = start + duration - 1;
      if (top >= end) return -1;
      let at = top;
      while (at >= unknown && (((left[at] as number) - need) & guard) === guard) at -= 1;
      if (at < unknown) return start;
      start = at + 1;
      unknown = top + 1;
    }
  }

  latest(activity: number, duration: number, to: number): number {
    const left = this.#left;
    const guard = this.#guard;
    const need = this.#needs[activity] as number;
    let start = to - duration;
    // Instants from `unknown` on have room.
    let unknown = to;
    for (;;) {
      if (start < 0) return -1;
      let at = start;
      while (at < unknown && (((left[at] as number) - need) & guard) === guard) at += 1;
      if (at >= unknown) return start;
      unknown = start;
      start = at - duration;
    }
  }

  take(activity: number, duration: number, start: number): void {
    const left = this.#left;
    const need = this.#needs[activity] as number;
    const end = start + duration;
    for (let at = start; at < end; at += 1) left[at] = (left[at] as number) - need;
    if (start < this.#dirtyFrom) this.#dirtyFrom = start;
    if (end > this.#dirtyTo) this.#dirtyTo = end;
  }

  clear(): void {
    const left = this.#left;
    const free = this.#free;
    for (let at = this.#dirtyFrom; at < this.#dirtyTo; at += 1) left[at] = free[at] as number;
    this.#dirtyFrom = left.length;
    this.#dirtyTo = 0;
  }
}

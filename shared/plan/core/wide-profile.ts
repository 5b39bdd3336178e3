import type { Profile } from './profile.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** A profile whose demands take several words an instant. */
export class WideProfile implements Profile {
  readonly #free: Int32Array;
  readonly #left: Int32Array;
  readonly #needs: Int32Array;
  readonly #guards: Int32Array;
  readonly #words: number;
  readonly #horizon: number;

  /** As for NarrowProfile, but with as many words an instant, and an activity, as there are guards. */
  constructor(free: Int32Array, needs: Int32Array, guards: Int32Array) {
    this.#free = free;
    this.#left = free.slice();
    this.#needs = needs;
    this.#guards = guards;
    this.#words = guards.length;
    this.#horizon = free.length / guards.length;
  }

  earliest(activity: number, duration: number, from: number): number {
    let start = from;
    let unknown = from;
    for (;;) {
      const top = start + duration - 1;
      if (top >= this.#horizon) return -1;
      let at = top;
      while (at >= unknown && this.#hasRoom(activity, at)) at -= 1;
      if (at < unknown) return start;
      start = at + 1;
      unknown = top + 1;
    }
  }

  latest(activity: number, duration: number, to: number): number {
    let start = to - duration;
    let unknown = to;
    for (;;) {
      if (start < 0) return -1;
      let at = start;
      while (at < unknown && this.#hasRoom(activity, at)) at += 1;
      if (at >= unknown) return start;
      unknown = start;
      start = at - duration;
    }
  }

  take(activity: number, duration: number, start: number): void {
    const words = this.#words;
    for (let at = start * words; at < (start + duration) * words; at += 1) {
      this.#left[at] = (this.#left[at] as number) - (this.#needs[activity * words + (at % words)] as number);
    }
  }

  clear(): void {
    this.#left.set(this.#free);
  }

  #hasRoom(activity: number, instant: number): boolean {
    const words = this.#words;
    for (let word = 0; word < words; word += 1) {
      const guard = this.#guards[word] as number;
      const left = this.#left[instant * words + word] as number;
      if (((left - (this.#needs[activity * words + word] as number)) & guard) !== guard) return false;
    }
    return true;
  }
}

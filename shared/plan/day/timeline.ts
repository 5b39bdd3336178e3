// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Before everything. */
export const LONG_AGO_S = -(2 ** 30);
const STEPS_AT_FIRST = 64;

/** What is free of one resource over time, as steps: each lasts until the next begins, the last for ever. It may be less than nothing. */
export class Timeline {
  #fromS: Int32Array = new Int32Array(STEPS_AT_FIRST);
  #free: Int32Array = new Int32Array(STEPS_AT_FIRST);
  #count = 1;

  /** @param steps what there is from an instant on, in order; before the first of them `capacity`. */
  constructor(capacity: number, steps: readonly { readonly fromS: number; readonly capacity: number }[]) {
    this.#fromS[0] = LONG_AGO_S;
    this.#free[0] = capacity;
    for (const step of steps) {
      const index = this.#split(step.fromS);
      for (let after = index; after < this.#count; after += 1) this.#free[after] = step.capacity;
    }
  }

  /** Takes so much from an instant to another; less than nothing gives it back. */
  take(fromS: number, toS: number, amount: number): void {
    const first = this.#split(fromS);
    const last = this.#split(toS);
    for (let index = first; index < last; index += 1) this.#free[index] = (this.#free[index] as number) - amount;
    this.#mend(last);
    this.#mend(first);
  }

  /**
   * Whether there is so much over the whole stay: `fromS` if so. Otherwise the instant before which no stay that is as long can begin, if
   * it begins at `fromS` or after; Infinity where there never is so much again.
   */
  blockedUntil(fromS: number, toS: number, amount: number): number {
    for (let index = this.#indexAt(toS - 1); index >= 0; index -= 1) {
      if ((this.#free[index] as number) < amount) return this.#freeAgain(index, amount);
      if ((this.#fromS[index] as number) <= fromS) return fromS;
    }
    return fromS;
  }

  /** The mirror of blockedUntil: `toS` if there is room, or the instant after which no stay can end that ends at `toS` or before. */
  blockedFrom(fromS: number, toS: number, amount: number): number {
    for (let index = this.#indexAt(fromS); index < this.#count && (this.#fromS[index] as number) < toS; index += 1) {
      if ((this.#free[index] as number) >= amount) continue;
      let first = index;
      while (first > 0 && (this.#free[first - 1] as number) < amount) first -= 1;
      return first === 0 ? -Infinity : (this.#fromS[first] as number);
    }
    return toS;
  }

  #freeAgain(index: number, amount: number): number {
    let next = index + 1;
    while (next < this.#count && (this.#free[next] as number) < amount) next += 1;
    return next < this.#count ? (this.#fromS[next] as number) : Infinity;
  }

  /** The step in which an instant lies. */
  #indexAt(atS: number): number {
    let low = 0;
    let high = this.#count - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#fromS[middle] as number) <= atS) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** The step that begins at an instant, made if there is none. */
  #split(atS: number): number {
    const index = this.#indexAt(atS);
    if (this.#fromS[index] === atS) return index;
    if (this.#count === this.#fromS.length) this.#grow();
    this.#fromS.copyWithin(index + 2, index + 1, this.#count);
    this.#free.copyWithin(index + 2, index + 1, this.#count);
    this.#fromS[index + 1] = atS;
    this.#free[index + 1] = this.#free[index] as number;
    this.#count += 1;
    return index + 1;
  }

  /** Takes a step away that is as the one before. */
  #mend(index: number): void {
    if (index === 0 || this.#free[index] !== this.#free[index - 1]) return;
    this.#fromS.copyWithin(index, index + 1, this.#count);
    this.#free.copyWithin(index, index + 1, this.#count);
    this.#count -= 1;
  }

  #grow(): void {
    this.#fromS = grown(this.#fromS);
    this.#free = grown(this.#free);
  }
}

function grown(array: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(2 * array.length);
  larger.set(array);
  return larger;
}

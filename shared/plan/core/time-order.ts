// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Up to so many activities, what is half in order already is put in order the quicker by insertion. */
const MOST_FOR_INSERTION = 120;

/**
 * Puts activities in the order of their keys, equal ones by their number: so that, where no key is below a predecessor's, the order
 * has each activity after its predecessors. Keys are whole numbers.
 */
export class TimeOrder {
  readonly #packed: Float64Array;

  constructor(count: number) {
    this.#packed = new Float64Array(count);
  }

  /** Fills `order` from the least key up. */
  rising(keys: ArrayLike<number>, order: Int32Array): void {
    const packed = this.#packed;
    const count = packed.length;
    for (let place = 0; place < count; place += 1) packed[place] = (keys[place] as number) * count + place;
    if (count <= MOST_FOR_INSERTION) sortByInsertion(packed);
    else packed.sort();
    for (let index = 0; index < count; index += 1) order[index] = this.#placeOf(packed[index] as number);
  }

  /** Fills `order` from the greatest key down. */
  falling(keys: ArrayLike<number>, order: Int32Array): void {
    this.rising(keys, order);
    order.reverse();
  }

  #placeOf(packed: number): number {
    // The remainder as the language has it is slow for numbers that are not small.
    return packed - Math.floor(packed / this.#packed.length) * this.#packed.length;
  }
}

function sortByInsertion(values: Float64Array): void {
  for (let index = 1; index < values.length; index += 1) {
    const value = values[index] as number;
    let at = index - 1;
    while (at >= 0 && (values[at] as number) > value) {
      values[at + 1] = values[at] as number;
      at -= 1;
    }
    values[at + 1] = value;
  }
}

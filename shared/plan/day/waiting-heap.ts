// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** Blocks that wait to be put down, the one with the least key first; each at most once. */
export class WaitingHeap {
  readonly #heap: number[] = [];
  readonly #isIn: Uint8Array;
  #keys: Int32Array;

  constructor(count: number) {
    this.#isIn = new Uint8Array(count);
    this.#keys = new Int32Array(count);
  }

  get isEmpty(): boolean {
    return this.#heap.length === 0;
  }

  /** By which order they wait from now on. None may wait just then. */
  orderBy(keys: Int32Array): void {
    this.#keys = keys;
  }

  push(block: number): void {
    if (this.#isIn[block] === 1) return;
    this.#isIn[block] = 1;
    let at = this.#heap.push(block) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (this.#isBefore(this.#heap[parent] as number, block)) break;
      this.#heap[at] = this.#heap[parent] as number;
      at = parent;
    }
    this.#heap[at] = block;
  }

  /** Takes the first out. There is one. */
  pop(): number {
    const first = this.#heap[0] as number;
    const last = this.#heap.pop() as number;
    this.#isIn[first] = 0;
    if (this.#heap.length > 0) this.#sink(last);
    return first;
  }

  clear(): void {
    for (const block of this.#heap) this.#isIn[block] = 0;
    this.#heap.length = 0;
  }

  #sink(block: number): void {
    const count = this.#heap.length;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= count) break;
      if (child + 1 < count && this.#isBefore(this.#heap[child + 1] as number, this.#heap[child] as number)) child += 1;
      if (this.#isBefore(block, this.#heap[child] as number)) break;
      this.#heap[at] = this.#heap[child] as number;
      at = child;
    }
    this.#heap[at] = block;
  }

  #isBefore(one: number, other: number): boolean {
    const difference = (this.#keys[one] as number) - (this.#keys[other] as number);
    return difference < 0 || (difference === 0 && one < other);
  }
}

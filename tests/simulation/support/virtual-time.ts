import { assert } from '../../../shared/result.ts';

interface Entry {
  readonly atMs: number;
  /** Of two at the same instant, the one that was asked for first comes first. */
  readonly order: number;
  run: (() => void | Promise<void>) | null;
}

/**
 * True time, which nobody in the simulation but the simulation knows. It stands still while anything runs, and goes on to
 * the next thing once all that follows from the last has been done.
 */
export class VirtualTime {
  #nowMs: number;
  #heap: Entry[] = [];
  #asked = 0;
  #hasFollowing = false;
  steps = 0;

  constructor(startMs: number) {
    this.#nowMs = startMs;
  }

  get nowMs(): number {
    return this.#nowMs;
  }

  /** Runs something at an instant that is not past. What it promises is waited for. Returns what cancels it. */
  at(atMs: number, run: () => void | Promise<void>): () => void {
    assert(atMs >= this.#nowMs, 'true time does not run backwards');
    const entry: Entry = { atMs, order: this.#asked, run };
    this.#asked += 1;
    this.#push(entry);
    return () => {
      entry.run = null;
    };
  }

  after(delayMs: number, run: () => void | Promise<void>): () => void {
    return this.at(this.#nowMs + Math.max(0, delayMs), run);
  }

  /** Says that what runs now leaves promises behind: pages do not, and need not be waited for. */
  leavesPromises(): void {
    this.#hasFollowing = true;
  }

  /** Lets time pass until an instant, or until `isOver` says so after a step. */
  async runUntil(untilMs: number, isOver: () => boolean): Promise<void> {
    for (let next = this.#heap[0]; next !== undefined && next.atMs <= untilMs; next = this.#heap[0]) {
      this.#pop();
      const { run } = next;
      if (run === null) continue;
      this.#nowMs = next.atMs;
      this.steps += 1;
      this.#hasFollowing = false;
      const promised = run();
      if (promised !== undefined || this.#hasFollowing) {
        await promised;
        await allThatFollows();
      }
      if (isOver()) return;
    }
    this.#nowMs = Math.max(this.#nowMs, untilMs);
  }

  #push(entry: Entry): void {
    const heap = this.#heap;
    let index = heap.push(entry) - 1;
    while (index > 0) {
      const parent = (index - 1) >> 1;
      const above = heap[parent];
      if (above === undefined || isBefore(above, entry)) break;
      heap[index] = above;
      index = parent;
    }
    heap[index] = entry;
  }

  #pop(): void {
    const heap = this.#heap;
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return;
    let index = 0;
    for (;;) {
      let child = 2 * index + 1;
      const left = heap[child];
      if (left === undefined) break;
      const right = heap[child + 1];
      let smaller = left;
      if (right !== undefined && isBefore(right, left)) {
        child += 1;
        smaller = right;
      }
      if (isBefore(last, smaller)) break;
      heap[index] = smaller;
      index = child;
    }
    heap[index] = last;
  }
}

function isBefore(a: Entry, b: Entry): boolean {
  return a.atMs < b.atMs || (a.atMs === b.atMs && a.order < b.order);
}

/** Every promise that can settle without time going on has settled when this has: microtasks run before it. */
function allThatFollows(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

import type { LagProblem } from './lag-problem.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/**
 * How much of each resource is free, as pieces of time between instants at which that changes; the last piece never ends. Where an
 * activity goes is found in time that grows with the number of pieces, however long they are.
 */
export class RoomOverTime {
  readonly #problem: LagProblem;
  readonly #resources: number;
  /** By activity, the resources that it needs, end to end. */
  readonly #needed: readonly Int32Array[];
  readonly #begins: Int32Array;
  /** `#free[piece * resources + resource]`. */
  readonly #free: Int32Array;
  #pieces = 0;

  constructor(problem: LagProblem) {
    this.#problem = problem;
    this.#resources = problem.needs.length;
    this.#needed = Array.from({ length: problem.size }, (_, activity) =>
      Int32Array.from(problem.needs.keys()).filter((resource) => (problem.needs[resource]?.[activity] ?? 0) > 0),
    );
    this.#begins = new Int32Array(2 * problem.size + 1);
    this.#free = new Int32Array((2 * problem.size + 1) * this.#resources);
    this.clear();
  }

  /** Everything is free again. */
  clear(): void {
    this.#pieces = 1;
    this.#begins[0] = 0;
    this.#free.set(this.#problem.most);
  }

  /** The earliest start from `from` on, 0 at least, with room for the activity. It needs no more than there is of anything. */
  earliest(activity: number, from: number): number {
    const needed = this.#needed[activity] as Int32Array;
    if (needed.length === 0) return from;
    const duration = this.#problem.durations[activity] as number;
    let start = from;
    for (let piece = this.#pieceAt(from); piece < this.#pieces && (this.#begins[piece] as number) < start + duration; piece += 1) {
      if (!this.#hasRoom(piece, activity, needed)) start = this.#begins[piece + 1] as number;
    }
    return start;
  }

  /** Takes what the activity needs from `start` on. Each activity is taken once between two calls of `clear`. */
  take(activity: number, start: number): void {
    const needed = this.#needed[activity] as Int32Array;
    if (needed.length === 0) return;
    const first = this.#cutAt(start);
    const end = this.#cutAt(start + (this.#problem.durations[activity] as number));
    for (let piece = first; piece < end; piece += 1) {
      for (let index = 0; index < needed.length; index += 1) {
        const resource = needed[index] as number;
        const place = piece * this.#resources + resource;
        this.#free[place] = (this.#free[place] as number) - this.#need(resource, activity);
      }
    }
  }

  #hasRoom(piece: number, activity: number, needed: Int32Array): boolean {
    for (let index = 0; index < needed.length; index += 1) {
      const resource = needed[index] as number;
      if ((this.#free[piece * this.#resources + resource] as number) < this.#need(resource, activity)) return false;
    }
    return true;
  }

  #need(resource: number, activity: number): number {
    return (this.#problem.needs[resource] as Int32Array)[activity] as number;
  }

  #pieceAt(instant: number): number {
    let [low, high] = [0, this.#pieces - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.#begins[middle] as number) <= instant) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Makes a piece begin at the instant and gives its number. */
  #cutAt(instant: number): number {
    const piece = this.#pieceAt(instant);
    if (this.#begins[piece] === instant) return piece;
    const resources = this.#resources;
    this.#begins.copyWithin(piece + 1, piece, this.#pieces);
    this.#free.copyWithin((piece + 1) * resources, piece * resources, this.#pieces * resources);
    this.#begins[piece + 1] = instant;
    this.#pieces += 1;
    return piece + 1;
  }
}

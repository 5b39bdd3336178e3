// Indexes stay within their arrays by construction; `as number` only tells the type check so.

const NEVER = -1;

/**
 * Edge finding on one machine (Carlier and Pinson 1989; in the form of Baptiste, Le Pape and Nuijten 2001): of activities that have
 * to leave at least so much after them, some other may not fit before or among them, so that it comes after them all and starts no
 * sooner than they can be done. Seen from the end, with heads and tails changed over, it finds what comes before. Keeps working
 * memory: one for each search.
 */
export class EdgeFinding {
  readonly #durations: Int32Array;
  readonly #byHead: Int32Array;
  /** By place in `#byHead`: the work of the set from there on, and when it is done at the earliest. */
  readonly #work: Int32Array;
  readonly #done: Int32Array;
  /** By activity, the latest of the starts that were found. */
  readonly #starts: Int32Array;

  constructor(durations: Int32Array) {
    this.#durations = durations;
    this.#byHead = new Int32Array(durations.length);
    this.#work = new Int32Array(durations.length);
    this.#done = new Int32Array(durations.length);
    this.#starts = new Int32Array(durations.length);
  }

  /**
   * Looks at the users of a machine, everything to be over by `latestEnd`; `startOf` then says what was found. False where the work
   * does not fit between heads and tails.
   */
  run(users: Int32Array, heads: Int32Array, tails: Int32Array, latestEnd: number): boolean {
    this.#sort(users, heads);
    for (let index = 0; index < users.length; index += 1) this.#starts[users[index] as number] = heads[users[index] as number] as number;
    for (let index = 0; index < users.length; index += 1) {
      const tail = tails[users[index] as number] as number;
      if (this.#sumUp(users.length, heads, tails, tail) + tail > latestEnd) return false;
      this.#push(users.length, heads, tails, tail, latestEnd);
    }
    return true;
  }

  /** No earlier start of one of the users of the last run. */
  startOf(place: number): number {
    return this.#starts[place] as number;
  }

  #sort(users: Int32Array, heads: Int32Array): void {
    const sorted = this.#byHead;
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      let at = index;
      for (; at > 0 && (heads[sorted[at - 1] as number] as number) > (heads[user] as number); at -= 1)
        sorted[at] = sorted[at - 1] as number;
      sorted[at] = user;
    }
  }

  /** Sums up the set of those with such a tail or a longer one; when all of it is done at the earliest. */
  #sumUp(count: number, heads: Int32Array, tails: Int32Array, tail: number): number {
    let [work, done] = [0, NEVER];
    for (let index = count - 1; index >= 0; index -= 1) {
      const place = this.#byHead[index] as number;
      if ((tails[place] as number) >= tail) {
        work += this.#durations[place] as number;
        done = Math.max(done, (heads[place] as number) + work);
      }
      this.#work[index] = work;
      this.#done[index] = done;
    }
    return done;
  }

  /** Each that is not in the set: too long before those that start no sooner than itself, or among those that start sooner? */
  #push(count: number, heads: Int32Array, tails: Int32Array, tail: number, latestEnd: number): void {
    let sooner = NEVER;
    for (let index = 0; index < count; index += 1) {
      const place = this.#byHead[index] as number;
      const head = heads[place] as number;
      const work = this.#work[index] as number;
      if ((tails[place] as number) >= tail) {
        sooner = Math.max(sooner, head + work);
        continue;
      }
      const duration = this.#durations[place] as number;
      let start = this.#starts[place] as number;
      if (work > 0 && head + duration + work + tail > latestEnd) start = Math.max(start, this.#done[index] as number);
      if (sooner !== NEVER && sooner + duration + tail > latestEnd) start = Math.max(start, this.#done[0] as number);
      this.#starts[place] = start;
    }
  }
}

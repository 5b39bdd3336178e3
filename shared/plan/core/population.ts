import type { Random } from './random.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** A schedule in a population. */
export interface Member {
  readonly starts: Int32Array;
  /** The makespan, and below the point how early everything is: less is better. */
  readonly score: number;
}

/** Schedules that breed: at most so many, no two alike. */
export class Population {
  readonly size: number;
  readonly #isQuick: boolean;
  #members: Member[] = [];

  /** At most `size` members. One that is quick comes near an end in few schedules, and to a better one never. */
  constructor(size: number, isQuick: boolean) {
    this.size = size;
    this.#isQuick = isQuick;
  }

  get members(): readonly Member[] {
    return this.#members;
  }

  /** Adds one while there is room, even one that is there already: a start has to come to its end. */
  add(member: Member): void {
    if (this.#members.length < this.size) this.#members.push(member);
  }

  /** The best ones, at most `count`. */
  best(count: number): readonly Member[] {
    return this.#members.toSorted((one, other) => one.score - other.score).slice(0, count);
  }

  /** Which of two drawn by chance is the better. There is one member at least. */
  draw(random: Random): number {
    const one = random.below(this.#members.length);
    const other = random.below(this.#members.length);
    return this.scoreOf(one) <= this.scoreOf(other) ? one : other;
  }

  scoreOf(index: number): number {
    return this.#members[index]?.score ?? Infinity;
  }

  /**
   * Lets a child take a place, if it is no worse than who has it and unlike all others: the place of the worse of its parents, so that
   * what differs stays different for long; or, for a quick end, that of the worst of all.
   */
  replace(mother: number, father: number, starts: Int32Array, score: number): void {
    const worseParent = this.scoreOf(mother) >= this.scoreOf(father) ? mother : father;
    const replaced = this.#isQuick ? this.#worst() : worseParent;
    if (score > this.scoreOf(replaced) || this.#has(starts, score)) return;
    this.#members[replaced] = { starts: starts.slice(), score };
  }

  #worst(): number {
    let worst = 0;
    for (let index = 1; index < this.#members.length; index += 1) if (this.scoreOf(index) > this.scoreOf(worst)) worst = index;
    return worst;
  }

  #has(starts: Int32Array, score: number): boolean {
    return this.#members.some((member) => member.score === score && isSame(member.starts, starts));
  }
}

function isSame(one: Int32Array, other: Int32Array): boolean {
  for (let place = 0; place < one.length; place += 1) if (one[place] !== other[place]) return false;
  return true;
}

import { idFromBytes, ID_BYTES } from '../../shared/ids.ts';
import { Random } from '../../shared/plan/core/random.ts';

/** Chance of an invented history, all of it from one seed. */
export class Chance {
  readonly #random: Random;

  constructor(seed: number) {
    this.#random = new Random(seed);
  }

  /** True so many times in one, on average. */
  is(share: number): boolean {
    return this.#random.share() < share;
  }

  /** Evenly between two numbers. */
  between(least: number, most: number): number {
    return least + (most - least) * this.#random.share();
  }

  /** A whole number, both ends included. */
  whole(least: number, most: number): number {
    return least + this.#random.below(most - least + 1);
  }

  /** Near a number: bell-shaped by four even draws, never farther from it than 3.5 spreads. */
  near(middle: number, spread: number): number {
    const draws = this.#random.share() + this.#random.share() + this.#random.share() + this.#random.share();
    // Four even draws have a variance of a third.
    return middle + spread * (draws - 2) * Math.sqrt(3);
  }

  /** Longer or shorter by a factor near 1, as minutes of work are. */
  factor(spread: number): number {
    return Math.exp(this.near(0, spread));
  }

  pick<Item>(items: readonly [Item, ...Item[]]): Item {
    return items[this.#random.below(items.length)] ?? items[0];
  }

  bytes(length: number): Uint8Array {
    return Uint8Array.from({ length }, () => this.#random.below(256));
  }

  id(): string {
    return idFromBytes(this.bytes(ID_BYTES));
  }
}

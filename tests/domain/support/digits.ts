import { assert } from '../../../shared/result.ts';

/** A whole number as a row of digits, each read to the base that is asked for: choices that can be had again, and shrunk. */
export class Digits {
  private rest: number;

  constructor(n: number) {
    this.rest = n;
  }

  /** From 0 to one less than `base`. */
  below(base: number): number {
    assert(base >= 1, 'a digit has a base');
    const digit = this.rest % base;
    this.rest = Math.floor(this.rest / base);
    return digit;
  }

  /** True once in so many times. */
  onceIn(times: number): boolean {
    return this.below(times) === times - 1;
  }

  /** One of several, or undefined where there is none. */
  among<Item>(items: readonly Item[]): Item | undefined {
    return items.length === 0 ? undefined : items[this.below(items.length)];
  }

  /** One of several, or what stands for none. */
  amongOr<Item>(items: readonly Item[], none: Item): Item {
    return this.among(items) ?? none;
  }
}

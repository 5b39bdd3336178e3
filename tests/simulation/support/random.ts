import { assert } from '../../../shared/result.ts';

const MASK_64 = (1n << 64n) - 1n;

/**
 * Splitmix64 (Steele, Lea, Flood 2014; the constants as published by Sebastiano Vigna, public domain): one 64-bit number after
 * another from a 64-bit seed. Here it only fills the state of the generator below.
 */
export function splitmix64(seed: bigint): () => bigint {
  let state = seed & MASK_64;
  return () => {
    state = (state + 0x9e3779b97f4a7c15n) & MASK_64;
    let z = state;
    z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & MASK_64;
    z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & MASK_64;
    return z ^ (z >> 31n);
  };
}

type State = [number, number, number, number];

/** xoshiro128** 1.1 (Blackman and Vigna 2018, public domain): 32 bits at a time, all of them good. */
export function xoshiro128(state: State): () => number {
  let [a, b, c, d] = state;
  return () => {
    const scrambled = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return scrambled;
  };
}

function rotate(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

/** Chance that can be had again: the same seed and name, the same numbers. */
export class Random {
  readonly #next: () => number;

  /** `name` sets apart what is drawn for different ends, so that one more draw here changes nothing there. */
  constructor(seed: number, name: string) {
    const fill = splitmix64((BigInt(seed) << 32n) ^ BigInt(hashOf(name)));
    const words = [fill(), fill()].flatMap((word) => [Number(word & 0xffffffffn) | 0, Number(word >> 32n) | 0]);
    this.#next = xoshiro128([words[0] ?? 1, words[1] ?? 0, words[2] ?? 0, words[3] ?? 0]);
  }

  /** In [0, 1). */
  share(): number {
    return this.#next() / 2 ** 32;
  }

  chance(probability: number): boolean {
    return this.share() < probability;
  }

  /** A whole number from `from` to `to`, both included. */
  whole(from: number, to: number): number {
    return from + Math.floor(this.share() * (to - from + 1));
  }

  between(from: number, to: number): number {
    return from + this.share() * (to - from);
  }

  /** Exponentially distributed: how long until something that happens every `mean` on average. */
  wait(mean: number): number {
    return -Math.log(1 - this.share()) * mean;
  }

  /** One of several. Throws where there is none. */
  pick<Item>(items: readonly Item[]): Item {
    const item = items[Math.floor(this.share() * items.length)];
    assert(item !== undefined, 'nothing to pick from');
    return item;
  }

  /** One of several by their weights. */
  weighted<Item>(items: readonly (readonly [Item, number])[]): Item {
    let left = this.share() * items.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [item, weight] of items) {
      left -= weight;
      if (left < 0) return item;
    }
    return this.pick(items)[0];
  }

  bytes(count: number): Uint8Array {
    return new Uint8Array(count).map(() => this.#next() >>> 24);
  }
}

/** FNV-1a, 32 bits. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  return hash >>> 0;
}

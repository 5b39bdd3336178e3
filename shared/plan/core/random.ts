const MASK_64 = (1n << 64n) - 1n;
const WORD = 2 ** 32;

/** Chance that can be had again: the same seed, the same numbers. xoshiro128** 1.1 (Blackman and Vigna 2018, public domain). */
export class Random {
  #a: number;
  #b: number;
  #c: number;
  #d: number;

  /** Any whole number is a seed. */
  constructor(seed: number) {
    const fill = splitmix64(BigInt(seed));
    const [first, second] = [fill(), fill()];
    // Never all zero: splitmix64 does not give 0 twice in a row.
    this.#a = Number(first & 0xffffffffn) | 0;
    this.#b = Number(first >> 32n) | 0;
    this.#c = Number(second & 0xffffffffn) | 0;
    this.#d = Number(second >> 32n) | 0;
  }

  /** In [0, 1). */
  share(): number {
    const scrambled = Math.imul(rotate(Math.imul(this.#b, 5), 7), 9) >>> 0;
    const shifted = this.#b << 9;
    this.#c ^= this.#a;
    this.#d ^= this.#b;
    this.#b ^= this.#c;
    this.#a ^= this.#d;
    this.#c ^= shifted;
    this.#d = rotate(this.#d, 11);
    return scrambled / WORD;
  }

  /** A whole number from 0 to `limit` - 1; `limit` is 1 at least. */
  below(limit: number): number {
    return (this.share() * limit) | 0;
  }
}

/**
 * Splitmix64 (Steele, Lea, Flood 2014; the constants as published by Sebastiano Vigna, public domain): it only fills the state of
 * the generator above.
 */
function splitmix64(seed: bigint): () => bigint {
  let state = seed & MASK_64;
  return () => {
    state = (state + 0x9e3779b97f4a7c15n) & MASK_64;
    let z = state;
    z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & MASK_64;
    z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & MASK_64;
    return z ^ (z >> 31n);
  };
}

function rotate(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

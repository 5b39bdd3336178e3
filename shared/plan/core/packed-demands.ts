// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/**
 * Amounts of all resources in few words, so that one subtraction compares several of them: each resource has a field wide enough for
 * its capacity and above it one guard bit, which stays set as long as no amount falls below nothing.
 */
export interface PackedDemands {
  /** How many words an amount of everything takes. */
  readonly words: number;
  /** The guard bits of each word. */
  readonly guards: Int32Array;
  /** `needs[activity * words + word]`. */
  readonly needs: Int32Array;
  /** Packs an amount of each resource, guard bits set, into `target` from `at` on. */
  readonly pack: (amounts: ArrayLike<number>, target: Int32Array, at: number) => void;
}

const WORD_BITS = 32;
/** A field with its guard has to fit a word, so this is the most of a resource. */
export const MOST_CAPACITY = 2 ** 30;

/**
 * Lays out the fields and packs the demands. `most[resource]` is the most that there ever is of it, MOST_CAPACITY at most; the
 * demands are no more than that.
 */
export function packDemands(most: ArrayLike<number>, demands: readonly ArrayLike<number>[], count: number): PackedDemands {
  const { places, words } = layOut(most);
  const guards = new Int32Array(words);
  for (const { word, shift, bits } of places) guards[word] = (guards[word] as number) | (1 << (shift + bits));
  const add = (amounts: (resource: number) => number, target: Int32Array, at: number): void => {
    for (const [resource, { word, shift }] of places.entries()) {
      target[at + word] = (target[at + word] as number) | (amounts(resource) << shift);
    }
  };
  const needs = new Int32Array(count * words);
  for (let activity = 0; activity < count; activity += 1) {
    add((resource) => demands[resource]?.[activity] ?? 0, needs, activity * words);
  }
  const pack = (amounts: ArrayLike<number>, target: Int32Array, at: number): void => {
    target.set(guards, at);
    add((resource) => amounts[resource] ?? 0, target, at);
  };
  return { words, guards, needs, pack };
}

interface Place {
  readonly word: number;
  readonly shift: number;
  readonly bits: number;
}

/** Fields by the first word that has room; there is always one word, even for no resources. */
function layOut(most: ArrayLike<number>): { readonly places: readonly Place[]; readonly words: number } {
  const used: number[] = [0];
  const places = Array.from(most, (amount) => {
    const bits = WORD_BITS - Math.clz32(amount);
    let word = used.findIndex((taken) => taken + bits + 1 <= WORD_BITS);
    if (word < 0) word = used.push(0) - 1;
    const shift = used[word] as number;
    used[word] = shift + bits + 1;
    return { word, shift, bits };
  });
  return { places, words: used.length };
}

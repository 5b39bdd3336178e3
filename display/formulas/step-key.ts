import type { Verb } from '../../shared/documents/method.ts';

/** A step's key, made of its verb: `first-speed`, and `first-speed-2` where the first is taken. Once made it stays. */
export function stepKey(verb: Verb, taken: ReadonlySet<string>): string {
  const stem = verb.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  for (let number = 1; ; number += 1) {
    const key = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.has(key)) return key;
  }
}

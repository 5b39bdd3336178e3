import { parse } from 'secure-json-parse';

/** What every object is asked for, and no data of ours is called. */
const METHODS = ['toString', 'valueOf', 'toJSON', 'hasOwnProperty'] as const;
/** A text in which such a key may stand, written out or with escapes. */
const SUSPECT = /"(?:toString|valueOf|toJSON|hasOwnProperty)"|\\u/;

/**
 * Reads JSON that anybody may have sent. Throws a SyntaxError on what is none, on keys that reach for the prototype of objects, and on those
 * that would stand in the way of an object's own methods: a library that compares or joins such a value throws where it should refuse it.
 */
export function parseSafely(text: string): unknown {
  const value: unknown = parse(text);
  if (SUSPECT.test(text) && standsInTheWay(value)) throw new SyntaxError('a key that every object has for a method is no data');
  return value;
}

function standsInTheWay(value: unknown): boolean {
  const waiting = [value];
  while (waiting.length > 0) {
    const next = waiting.pop();
    if (typeof next !== 'object' || next === null) continue;
    if (METHODS.some((name) => Object.hasOwn(next, name))) return true;
    for (const part of Object.values(next) as unknown[]) waiting.push(part);
  }
  return false;
}

import { Decoder, Encoder } from '@msgpack/msgpack';
import { assert } from '../../shared/result.ts';
import { definedKeys } from './canonical-json.ts';
import type { InternedNames } from './interned-names.ts';

// How a JSON value becomes MessagePack (https://github.com/msgpack/msgpack/blob/master/spec.md):
//
//   null, true, 12.5   itself
//   "short text", id   [number of the name]
//   "a longer text"    itself, and so is one too short to gain by a name
//   half a surrogate   a binary: its UTF-16 code units, little-endian, for UTF-8 has no bytes for it
//   [a, b]             [0, a, b]
//   {x: a, y: b}       [number of the list of keys x, y; a, b]
//
// Every array begins with a number that says what it is, and no number stands anywhere else but for itself: the two
// cannot be taken for one another. An object's properties are kept sorted, so that one set of keys is one list.

/** The number at the head of a list; names are numbered from 1. */
const LIST = 0;
/** Texts of this many UTF-16 code units are kept once and referred to: shorter gains nothing, longer hardly ever recurs. */
const INTERNED_CHARACTERS = { least: 4, most: 40 } as const;
/** A surrogate without its other half. */
const HALF_PAIR = /\p{Surrogate}/u;

type Packed = null | boolean | number | string | Uint8Array | readonly Packed[];

const encoder = new Encoder();
const decoder = new Decoder();

/** A JSON value as bytes; names that are new are kept in `names`. Throws on what JSON cannot say. */
export function encodeBody(value: unknown, names: InternedNames): Uint8Array {
  return encoder.encode(pack(value, names));
}

/** The JSON value that `encodeBody` was given, properties sorted. Throws on bytes that it did not make. */
export function decodeBody(bytes: Uint8Array, names: InternedNames): unknown {
  return unpack(decoder.decode(bytes), names);
}

function pack(value: unknown, names: InternedNames): Packed {
  if (value === null || typeof value === 'boolean') return value;
  if (typeof value === 'string') return packText(value, names);
  if (Array.isArray(value)) return packList(value, names);
  if (typeof value === 'object') {
    const keys = definedKeys(value);
    assert(!keys.includes('__proto__'), 'no property is called __proto__');
    const packed: Packed[] = [names.numberOfKeys(keys)];
    for (const key of keys) packed.push(pack((value as Readonly<Record<string, unknown>>)[key], names));
    return packed;
  }
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  assert(false, `JSON cannot say a ${typeof value}, or not this one`);
}

function packList(list: readonly unknown[], names: InternedNames): Packed {
  const packed: Packed[] = [LIST];
  for (const part of list) packed.push(pack(part, names));
  return packed;
}

function packText(text: string, names: InternedNames): Packed {
  if (HALF_PAIR.test(text)) return Buffer.from(text, 'utf16le');
  const { least, most } = INTERNED_CHARACTERS;
  return text.length >= least && text.length <= most ? [names.numberOfText(text)] : text;
}

function unpack(packed: unknown, names: InternedNames): unknown {
  if (typeof packed !== 'object' || packed === null) return packed;
  if (packed instanceof Uint8Array) return Buffer.from(packed).toString('utf16le');
  assert(Array.isArray(packed), 'a body of arrays, texts and numbers');
  const head: unknown = packed[0];
  assert(typeof head === 'number', 'an array that begins with a number');
  if (head === LIST) return packed.slice(1).map((part) => unpack(part, names));
  const name = names.at(head);
  if (typeof name === 'string') {
    assert(packed.length === 1, 'a name stands alone');
    return name;
  }
  assert(packed.length === name.length + 1, 'as many values as keys');
  const object: Record<string, unknown> = {};
  let index = 0;
  for (const key of name) object[key] = unpack(packed[(index += 1)], names);
  return object;
}

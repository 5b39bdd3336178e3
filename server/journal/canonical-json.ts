import { assert } from '../../shared/result.ts';

/** A text of which nothing has to be escaped (RFC 8259 section 7). */
const PLAIN_TEXT = /^[ !#-[\]-~]*$/;

/**
 * A value as JSON text in its one canonical spelling: properties sorted by their UTF-16 code units, no white space, numbers
 * and texts as ECMAScript writes them; properties that are undefined are left out. It is the form of RFC 8785, but for texts
 * with half a surrogate pair, which are escaped and not refused. Throws on what JSON cannot say.
 */
export function canonicalJson(value: unknown): string {
  if (typeof value === 'string') return canonicalText(value);
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? canonicalList(value) : canonicalObject(value);
  if (value === null || typeof value === 'boolean' || Number.isFinite(value)) return JSON.stringify(value);
  // The words are only put together where they are wanted: a day's plan has thousands of numbers.
  assert(false, `JSON cannot say ${typeof value}${typeof value === 'number' ? ` ${value}` : ''}`);
}

function canonicalText(text: string): string {
  return PLAIN_TEXT.test(text) ? `"${text}"` : JSON.stringify(text);
}

function canonicalList(list: readonly unknown[]): string {
  let text = '';
  for (const part of list) text += `${text === '' ? '' : ','}${canonicalJson(part)}`;
  return `[${text}]`;
}

function canonicalObject(value: object): string {
  let text = '';
  for (const key of definedKeys(value))
    text += `${text === '' ? '' : ','}${canonicalText(key)}:${canonicalJson((value as Readonly<Record<string, unknown>>)[key])}`;
  return `{${text}}`;
}

/** The keys of an object's properties that are not undefined, sorted by their UTF-16 code units. */
export function definedKeys(value: object): readonly string[] {
  const keys: string[] = [];
  let isSorted = true;
  for (const [key, part] of Object.entries(value)) {
    if (part === undefined) continue;
    isSorted &&= keys.length === 0 || (keys.at(-1) ?? '') < key;
    keys.push(key);
  }
  // Without a comparison of its own, sort goes by code units.
  return isSorted ? keys : keys.sort();
}

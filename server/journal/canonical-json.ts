import { assert } from '../../shared/result.ts';

/**
 * A value as JSON text in its one canonical spelling: properties sorted by their UTF-16 code units, no white space, numbers
 * and texts as ECMAScript writes them; properties that are undefined are left out. It is the form of RFC 8785, but for texts
 * with half a surrogate pair, which are escaped and not refused. Throws on what JSON cannot say.
 */
export function canonicalJson(value: unknown): string {
  if (typeof value === 'object' && value !== null) {
    return Array.isArray(value) ? `[${value.map(canonicalJson).join(',')}]` : canonicalObject(value);
  }
  assert(
    value === null || typeof value === 'boolean' || typeof value === 'string' || Number.isFinite(value),
    `JSON cannot say ${typeof value} ${String(value)}`,
  );
  return JSON.stringify(value);
}

function canonicalObject(value: object): string {
  let text = '';
  for (const [key, part] of definedEntries(value)) text += `${text === '' ? '' : ','}${JSON.stringify(key)}:${canonicalJson(part)}`;
  return `{${text}}`;
}

/** The properties of an object that are not undefined, sorted by the UTF-16 code units of their keys. */
export function definedEntries(value: object): [string, unknown][] {
  // Keys of one object differ, so that the comparison never has to answer 0.
  return Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .toSorted(([a], [b]) => (a < b ? -1 : 1));
}

import { isSameDocument } from '../../shared/documents/same-document.ts';

type Inner = Readonly<Record<string, unknown>>;

/**
 * What one has made of a document, put on top of what another has made of it meanwhile: whatever `mine` changed against
 * `base` is as in mine, everything else as in `theirs`. Lists of things that can be told apart are taken thing by thing: what one
 * added or took out is in or out, but what both have touched is as in mine.
 */
export function rebased<Document>(base: Document, mine: Document, theirs: Document): Document {
  return merged(base, mine, theirs) as Document;
}

function merged(base: unknown, mine: unknown, theirs: unknown): unknown {
  if (isSame(base, mine)) return theirs;
  if (isSame(base, theirs)) return mine;
  if (isThings(base) && isThings(mine) && isThings(theirs)) return mergedThings(base, mine, theirs);
  if (isInner(base) && isInner(mine) && isInner(theirs)) {
    const keys = [...new Set([...Object.keys(theirs), ...Object.keys(mine)])];
    const entries = keys.map((key) => [key, merged(base[key], mine[key], theirs[key])] as const);
    return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
  }
  return mine;
}

type Things = readonly Inner[];

function mergedThings(base: Things, mine: Things, theirs: Things): readonly unknown[] {
  const find = (things: Things, key: string): Inner | undefined => things.find((thing) => keyOf(thing) === key);
  const keys = inOrder(base.map(keyOf), mine.map(keyOf), theirs.map(keyOf));
  return keys.flatMap((key) => {
    const value = merged(find(base, key), find(mine, key), find(theirs, key));
    return value === undefined ? [] : [value];
  });
}

/** The order of whoever changed it, mine where both did; what only the other has stands behind what it stood behind there. */
function inOrder(base: readonly string[], mine: readonly string[], theirs: readonly string[]): readonly string[] {
  const [first, second] = isSame(base, mine) ? [theirs, mine] : [mine, theirs];
  const keys = [...first];
  second.forEach((key, index) => {
    if (!keys.includes(key)) keys.splice(keys.indexOf(second[index - 1] ?? '') + 1, 0, key);
  });
  return keys;
}

/** By what a thing of a list is told from its like: its id, else what a formula's line is of, or a part's name. */
const KEYS = ['id', 'item', 'part', 'formula', 'seed', 'name'] as const;

function keyOf(thing: Inner): string {
  const key = KEYS.find((known) => thing[known] !== undefined);
  return key === undefined ? '' : `${key} ${String(thing[key])}`;
}

/** A list of things that can be told apart. One in which something stands twice is taken as a whole. */
function isThings(value: unknown): value is Things {
  if (!Array.isArray(value) || !value.every((item: unknown) => isInner(item))) return false;
  const keys = (value as Things).map(keyOf);
  return !keys.includes('') && new Set(keys).size === keys.length;
}

function isInner(value: unknown): value is Inner {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isSame(a: unknown, b: unknown): boolean {
  return a === b || isSameDocument(a, b);
}

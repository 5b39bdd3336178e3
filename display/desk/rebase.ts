import { isSameDocument } from '../../shared/documents/same-document.ts';

type Inner = Readonly<Record<string, unknown>>;

/**
 * What one has made of a document, put on top of what another has made of it meanwhile: whatever `mine` changed against
 * `base` is as in mine, everything else as in `theirs`. Lists of things with ids are taken thing by thing: what one
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

function mergedThings(base: readonly Thing[], mine: readonly Thing[], theirs: readonly Thing[]): readonly unknown[] {
  const find = (things: readonly Thing[], id: string): Thing | undefined => things.find((thing) => thing.id === id);
  const ids = [...new Set([...theirs, ...mine].map((thing) => thing.id))];
  return ids.flatMap((id) => {
    const value = merged(find(base, id), find(mine, id), find(theirs, id));
    return value === undefined ? [] : [value];
  });
}

interface Thing extends Inner {
  readonly id: string;
}

function isThings(value: unknown): value is readonly Thing[] {
  return Array.isArray(value) && value.every((item: unknown) => isInner(item) && typeof item['id'] === 'string');
}

function isInner(value: unknown): value is Inner {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isSame(a: unknown, b: unknown): boolean {
  return a === b || isSameDocument(a, b);
}

/** Where something stands in a document: keys and indexes from the outside in. */
export type Inwards = readonly (string | number)[];

/** Where the field of a key stands: `minutes.target`, `hours.3.from`. */
export function inwardsOf(key: string): Inwards {
  return key.split('.').map((part) => (/^\d+$/.test(part) ? Number(part) : part));
}

type Inner = Readonly<Record<string | number, unknown>>;

/** What stands there; undefined where nothing does. */
export function valueAt(document: unknown, path: Inwards): unknown {
  let value = document;
  for (const part of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Inner)[part];
  }
  return value;
}

/** The document with something else there; undefined takes a key away. The document given stays as it is. */
export function withValueAt<Document>(document: Document, path: Inwards, value: unknown): Document {
  const [part, ...rest] = path;
  if (part === undefined) return value as Document;
  const inner = withValueAt(valueAt(document, [part]), rest, value);
  if (Array.isArray(document)) return document.map((item: unknown, index) => (index === part ? inner : item)) as Document;
  const { [part]: _before, ...others } = document as Inner;
  if (inner === undefined) return others as Document;
  // In its old place among the keys, so that a document reads in its order.
  return (part in (document as object) ? { ...(document as Inner), [part]: inner } : { ...others, [part]: inner }) as Document;
}

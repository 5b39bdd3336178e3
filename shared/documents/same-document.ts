/** Whether two documents say the same; the order of their keys says nothing. No document is the same as none. */
export function isSameDocument(a: unknown, b: unknown): boolean {
  return a !== undefined && b !== undefined && canonical(a) === canonical(b);
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

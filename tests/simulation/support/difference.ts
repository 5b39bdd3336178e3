/** Where two values first differ, for a message; null where they say the same. Properties that are undefined count as missing. */
export function differenceOf(a: unknown, b: unknown, path = ''): string | null {
  if (Object.is(a, b)) return null;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return `${path || 'the whole'}: ${text(a)} and ${text(b)}`;
  const left = new Map<string, unknown>(Object.entries(a));
  const right = new Map<string, unknown>(Object.entries(b));
  for (const key of new Set([...left.keys(), ...right.keys()])) {
    const difference = differenceOf(left.get(key), right.get(key), path === '' ? key : `${path}.${key}`);
    if (difference !== null) return difference;
  }
  return null;
}

function text(value: unknown): string {
  return value === undefined ? 'nothing' : JSON.stringify(value).slice(0, 200);
}

/** Where a key leads in a list of `count` rows from row `at`; null where it leads nowhere. */
export function listKey(key: string, at: number, count: number, page: number): number | null {
  const to = target(key, at, count, page);
  return to === null || count === 0 ? null : Math.max(0, Math.min(to, count - 1));
}

function target(key: string, at: number, count: number, page: number): number | null {
  switch (key) {
    case 'ArrowDown':
      return at + 1;
    case 'ArrowUp':
      return at - 1;
    case 'PageDown':
      return at + page;
    case 'PageUp':
      return at - page;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}

/** One row of two lists laid side by side. */
export interface MergedRow<Item> {
  readonly key: string;
  readonly left: Item | null;
  readonly right: Item | null;
  /** In both, but elsewhere among the others. */
  readonly isMoved: boolean;
}

interface Keyed<Item> {
  readonly key: string;
  readonly item: Item;
}

/**
 * Two lists laid side by side, each item beside the one of the same key. The right list's order is kept; what only the left
 * one has stands where it stood. The longest run in common stays in place, the rest counts as moved. A key that comes
 * several times is matched in order.
 */
export function merged<Item>(left: readonly Item[], right: readonly Item[], keyOf: (item: Item) => string): readonly MergedRow<Item>[] {
  const before = keyed(left, keyOf);
  const after = keyed(right, keyOf);
  const inPlace = longestInCommon(
    before.map(({ key }) => key),
    after.map(({ key }) => key),
  );
  const leftOf = new Map(before.map(({ key, item }) => [key, item]));
  const rightKeys = new Set(after.map(({ key }) => key));
  const rows: MergedRow<Item>[] = [];
  let next = 0;
  const takeGone = (until: string | null): void => {
    for (; next < before.length && before[next]?.key !== until; next += 1) {
      const gone = before[next];
      if (gone !== undefined && !rightKeys.has(gone.key)) rows.push({ key: gone.key, left: gone.item, right: null, isMoved: false });
    }
  };
  for (const { key, item } of after) {
    const stays = inPlace.has(key);
    if (stays) takeGone(key);
    if (stays) next += 1;
    const was = leftOf.get(key);
    rows.push({ key, left: was ?? null, right: item, isMoved: was !== undefined && !stays });
  }
  takeGone(null);
  return rows;
}

function keyed<Item>(items: readonly Item[], keyOf: (item: Item) => string): readonly Keyed<Item>[] {
  const counts = new Map<string, number>();
  return items.map((item) => {
    const key = keyOf(item);
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return { key: count === 1 ? key : `${key} ${count}`, item };
  });
}

/** Keys of the longest common subsequence (the textbook table of lengths, walked from its end). */
function longestInCommon(before: readonly string[], after: readonly string[]): ReadonlySet<string> {
  const width = after.length + 1;
  const lengths = new Uint16Array((before.length + 1) * width);
  const at = (row: number, column: number): number => lengths[row * width + column] ?? 0;
  for (let row = before.length - 1; row >= 0; row -= 1)
    for (let column = after.length - 1; column >= 0; column -= 1)
      lengths[row * width + column] =
        before[row] === after[column] ? at(row + 1, column + 1) + 1 : Math.max(at(row + 1, column), at(row, column + 1));
  const common = new Set<string>();
  for (let row = 0, column = 0; row < before.length && column < after.length;) {
    const key = before[row];
    if (key !== undefined && key === after[column]) {
      common.add(key);
      row += 1;
      column += 1;
    } else if (at(row + 1, column) >= at(row, column + 1)) row += 1;
    else column += 1;
  }
  return common;
}

/** Lists of whole numbers, one a row, end to end: row `i` is `items[offsets[i]]` up to before `items[offsets[i + 1]]`. */
export interface Rows {
  readonly offsets: Int32Array;
  readonly items: Int32Array;
}

/** Packs lists into rows. */
export function rowsOf(lists: readonly (readonly number[])[]): Rows {
  const offsets = new Int32Array(lists.length + 1);
  for (const [index, list] of lists.entries()) offsets[index + 1] = (offsets[index] as number) + list.length;
  return { offsets, items: Int32Array.from(lists.flat()) };
}

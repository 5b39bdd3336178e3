import type { SheetRow } from './sheet-rows.ts';

/** What has the keyboard in the sheet: a row's head (''), or a step by its key. */
export interface SheetPlace {
  readonly rowKey: string;
  readonly barKey: string;
}

/**
 * Where an arrow key, Home or End leads from a place: along a row from its head to its last step, and to the step of
 * another row that is nearest in time. Null for any other key, and where the place is no longer there.
 */
export function placeByKey(rows: readonly SheetRow[], from: SheetPlace, key: string): SheetPlace | null {
  const index = rows.findIndex((row) => row.key === from.rowKey);
  const row = rows[index];
  if (row === undefined) return null;
  const keys = ['', ...row.placed.map(({ bar }) => bar.key)];
  const at = keys.indexOf(from.barKey);
  const within = (position: number): SheetPlace => ({
    rowKey: row.key,
    barKey: keys[Math.min(Math.max(position, 0), keys.length - 1)] ?? '',
  });
  switch (key) {
    case 'ArrowRight':
      return within(at + 1);
    case 'ArrowLeft':
      return within(at - 1);
    case 'Home':
      return within(0);
    case 'End':
      return within(keys.length - 1);
    case 'ArrowDown':
      return inRow(row, from.barKey, rows[index + 1]);
    case 'ArrowUp':
      return inRow(row, from.barKey, rows[index - 1]);
    default:
      return null;
  }
}

function inRow(row: SheetRow, barKey: string, other: SheetRow | undefined): SheetPlace {
  if (other === undefined) return { rowKey: row.key, barKey };
  const bar = row.placed.find((placed) => placed.bar.key === barKey)?.bar;
  if (bar === undefined) return { rowKey: other.key, barKey: '' };
  const middleMs = (bar.fromMs + bar.toMs) / 2;
  const away = (candidate: typeof bar): number => Math.max(candidate.fromMs - middleMs, middleMs - candidate.toMs, 0);
  const nearest = other.placed
    .map((placed) => placed.bar)
    .reduce<typeof bar | null>((best, next) => (best === null || away(next) < away(best) ? next : best), null);
  return { rowKey: other.key, barKey: nearest?.key ?? '' };
}

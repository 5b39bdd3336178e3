import type { Row } from '../../shared/floor/board.ts';
import { isStronger, type Role } from '../../shared/floor/role.ts';

/** One line of the wall: a dough, or several whose call is the same. The most pressing one stands first. */
export type Entry = readonly [Row, ...Row[]];

/** What is due so close together makes one sound, and one row. */
export const SAME_CALL_MS = 90_000;

/** The strongest role of several rows. */
export function strongestRole(rows: readonly Row[]): Role {
  return rows.reduce<Role>((strongest, row) => (isStronger(row.role, strongest) ? row.role : strongest), 'running');
}

/** The key by which a line is known from one drawing to the next. */
export function entryKey(entry: Entry): string {
  return entry[0].workpieceId;
}

/**
 * Joins calls of the same verb and role that are due within `withinMs` of the first of them. Rows come in order of
 * pressure, and so do the entries. Running rows stay by themselves.
 */
export function mergeCalls(rows: readonly Row[], withinMs: number): Entry[] {
  const entries: [Row, ...Row[]][] = [];
  for (const row of rows) {
    const same = entries.find(([first]) => isSameCall(first, row) && Math.abs(row.dueMs - first.dueMs) <= withinMs);
    if (same === undefined) entries.push([row]);
    else same.push(row);
  }
  return entries;
}

function isSameCall(a: Row, b: Row): boolean {
  return (
    a.role !== 'running' &&
    a.role === b.role &&
    a.verb === b.verb &&
    a.prompt?.asks.join() === b.prompt?.asks.join() &&
    a.prompt?.setC === b.prompt?.setC &&
    a.isCheck === b.isCheck &&
    a.holding?.isPast === b.holding?.isPast
  );
}

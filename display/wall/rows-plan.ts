import type { Row } from '../../shared/floor/board.ts';
import type { Role } from '../../shared/floor/role.ts';
import type { Stage } from '../../shared/floor/stage.ts';
import { mergeCalls, SAME_CALL_MS, strongestRole, type Entry } from '../parts/entry.ts';

/** At least so many rows are full, or the room does not do. */
export const LEAST_FULL = 2;
/** At most so many group rows. */
export const MOST_GROUPS = 3;

/** Doughs of one stage as one line. */
export interface Group {
  /** null where several stages had to share a line. */
  readonly stage: Stage | null;
  /** The earliest due first. */
  readonly rows: readonly Row[];
}

/** Calls that found no row. */
export interface More {
  readonly role: Role;
  readonly rows: readonly Row[];
}

/** How much of the floor has a row of its own. */
export interface RowsPlan {
  /** How many lines each full row has below it, for what to look for. */
  readonly detailLines: 0 | 1 | 2;
  readonly full: readonly Entry[];
  readonly more: More | null;
  readonly groups: readonly Group[];
}

/** Heights in px that rows need. */
export interface RowHeights {
  readonly fullPx: number;
  /** What one more line below a full row takes. */
  readonly detailPx: number;
  readonly groupPx: number;
}

/**
 * Which doughs get full rows in `roomPx`: all of them where they fit; otherwise at least two full rows, the most
 * pressing ones, then one line for the calls left over and up to three for the stages of the rest. null where not even
 * that fits. Rows come in order of pressure.
 */
export function planRows(rows: readonly Row[], roomPx: number, heights: RowHeights): RowsPlan | null {
  const loose = mergeCalls(rows, SAME_CALL_MS);
  const all = { more: null, groups: [] };
  for (const detailLines of [2, 1, 0] as const) {
    if (loose.length * (heights.fullPx + detailLines * heights.detailPx) <= roomPx) return { detailLines, full: loose, ...all };
  }
  const tight = mergeCalls(rows, Number.POSITIVE_INFINITY);
  if (tight.length * heights.fullPx <= roomPx) return { detailLines: 0, full: tight, ...all };
  for (let mostGroups = MOST_GROUPS; mostGroups >= 1; mostGroups -= 1) {
    for (let fullCount = Math.floor(roomPx / heights.fullPx); fullCount >= LEAST_FULL; fullCount -= 1) {
      const plan: RowsPlan = { detailLines: 0, ...split(tight, fullCount, mostGroups) };
      const neededPx = plan.full.length * heights.fullPx + (plan.groups.length + (plan.more === null ? 0 : 1)) * heights.groupPx;
      if (neededPx <= roomPx) return plan;
    }
  }
  return null;
}

function split(entries: readonly Entry[], fullCount: number, mostGroups: number): Omit<RowsPlan, 'detailLines'> {
  const rest = entries.slice(fullCount).flat();
  const pressing = rest.filter((row) => row.role !== 'running');
  return {
    full: entries.slice(0, fullCount),
    more: pressing.length === 0 ? null : { role: strongestRole(pressing), rows: pressing },
    groups: groupByStage(
      rest.filter((row) => row.role === 'running'),
      mostGroups,
    ),
  };
}

/**
 * One group for each stage, in order of what is due first; where there are more than `most`, the fullest stages have
 * their own and one line takes the rest.
 */
export function groupByStage(rows: readonly Row[], most: number): Group[] {
  const stages = [...new Set(rows.map((row) => row.stage))];
  const countOf = (stage: Stage): number => rows.filter((row) => row.stage === stage).length;
  const own = stages.length <= most ? stages : fullest(stages, countOf).slice(0, most - 1);
  const groups = stages
    .filter((stage) => own.includes(stage))
    .map((stage): Group => ({ stage, rows: rows.filter((row) => row.stage === stage) }));
  const rest = rows.filter((row) => !own.includes(row.stage));
  if (rest.length > 0) groups.push({ stage: null, rows: rest });
  return groups.sort((a, b) => (a.rows[0]?.dueMs ?? 0) - (b.rows[0]?.dueMs ?? 0));
}

function fullest(stages: readonly Stage[], countOf: (stage: Stage) => number): Stage[] {
  return stages.toSorted((a, b) => countOf(b) - countOf(a));
}

import type { Row } from '../../shared/floor/board.ts';
import { isStronger } from '../../shared/floor/role.ts';
import { entryKey, strongestRole, type Entry } from '../parts/entry.ts';
import { isSteady, steadyOrder } from '../parts/order.ts';
import { groupByStage, type RowsPlan } from './rows-plan.ts';

/**
 * The rows of a new plan as they may stand after those that stood before: a line within 60 s of due that had a row of its
 * own keeps it and its place, though something more pressing came; what is being lost alone may take it. No more lines
 * come of it, so that everything still fits: where one line has to do for all the rest, calls go before places.
 */
export function keptRows(plan: RowsPlan, previousKeys: readonly string[], nowMs: number): RowsPlan {
  const mayStay = (entry: Entry): boolean => previousKeys.includes(entryKey(entry)) && isSteady(entry, nowMs);
  const full = [...plan.full];
  const rest = [...(plan.more?.rows ?? []), ...plan.groups.flatMap((group) => group.rows)];
  for (const row of rest.filter((candidate) => mayStay([candidate]))) {
    const index = full.findLastIndex((entry) => entry[0].role !== 'lost' && !mayStay(entry));
    const gone = full[index];
    if (gone === undefined) break;
    full[index] = [row];
    rest.splice(rest.indexOf(row), 1, ...gone);
  }
  const kept = rest.length === 0 ? plan : withRest(plan, full, rest);
  return { ...kept, full: steadyOrder(previousKeys, kept.full, nowMs) };
}

/** The same lines with other rows in them; the plan as it was where they would need more lines. */
function withRest(plan: RowsPlan, full: readonly Entry[], rest: readonly Row[]): RowsPlan {
  const lines = plan.groups.length + (plan.more === null ? 0 : 1);
  const pressing = rest.filter((row) => row.role !== 'running').sort(byPressure);
  const running = rest.filter((row) => row.role === 'running').sort(byPressure);
  const groupLines = lines - (pressing.length > 0 ? 1 : 0);
  if (running.length > 0 && groupLines < 1) return plan;
  return {
    ...plan,
    full,
    more: pressing.length === 0 ? null : { role: strongestRole(pressing), rows: pressing },
    groups: running.length === 0 ? [] : groupByStage(running, Math.min(groupLines, Math.max(plan.groups.length, 1))),
  };
}

function byPressure(a: Row, b: Row): number {
  if (a.role !== b.role) return isStronger(a.role, b.role) ? -1 : 1;
  return a.dueMs - b.dueMs;
}

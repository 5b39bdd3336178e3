import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryKey, type Entry } from '../../display/parts/entry.ts';
import { isSteady } from '../../display/parts/order.ts';
import { arrange, refreshRows, type Arrangement } from '../../display/wall/arrangement.ts';
import { keptRows } from '../../display/wall/kept-rows.ts';
import { planRows, type RowsPlan } from '../../display/wall/rows-plan.ts';
import type { Screen } from '../../display/wall/type-sizes.ts';
import type { Row } from '../../shared/floor/board.ts';
import { isStronger, type Role } from '../../shared/floor/role.ts';
import { dayOf, workedFloor } from '../browser/harness/staged-wall.ts';
import { boardRow } from './support/board-row.ts';

const MINUTE_MS = 60_000;
const NOW_MS = 100 * MINUTE_MS;
const HEIGHTS = { fullPx: 130, detailPx: 50, groupPx: 72 };
const SCREEN: Screen = { diagonalInch: 43, widthPx: 1920, heightPx: 1080, distanceM: 5, arcmin: 20 };
const VERBS = ['fold', 'divide', 'shape', 'load', 'takeOut', 'round', 'tin', 'seed', 'score', 'pack'] as const;
const STAGES = ['bulk', 'proving', 'makeUp', 'cold', 'oven'] as const;

/** A dough as it was a moment before an event, and as it is after it. */
const dough = fc.record({
  stage: fc.constantFrom(...STAGES),
  dueInS: fc.oneof(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -900, max: 1800 })),
  lateAfterS: fc.constantFrom(0, 120, 300),
  lostAfterS: fc.constantFrom(600, 3_600),
  isMoved: fc.boolean(),
});

function roleOf(dueInS: number, lateAfterS: number, lostAfterS: number): Role {
  if (-dueInS >= lostAfterS) return 'lost';
  if (-dueInS > lateAfterS) return 'late';
  return dueInS <= 0 ? 'call' : 'running';
}

/** In order of pressure; with verbs of their own, so that none merge. */
function rowsOf(doughs: readonly (typeof dough extends fc.Arbitrary<infer One> ? One : never)[], isAfter: boolean): Row[] {
  return doughs
    .map((one, index) => {
      // An event brings a dough to its next step, or lets it be.
      const dueInS = isAfter && one.isMoved ? -one.dueInS - 60 : one.dueInS;
      const role = roleOf(dueInS, one.lateAfterS, one.lostAfterS);
      return boardRow(index, { stage: one.stage, role, verb: VERBS[index % VERBS.length] ?? 'fold', dueMs: NOW_MS + dueInS * 1000 });
    })
    .sort((a, b) => (a.role === b.role ? a.dueMs - b.dueMs : isStronger(a.role, b.role) ? -1 : 1));
}

function planOf(rows: readonly Row[], roomPx: number): RowsPlan {
  const plan = planRows(rows, roomPx, HEIGHTS);
  if (plan === null) throw new Error('no plan fits');
  return plan;
}

function allRows({ full, more, groups }: RowsPlan): string[] {
  return [...full.flat(), ...(more?.rows ?? []), ...groups.flatMap((group) => group.rows)].map((row) => row.workpieceId).sort();
}

function heightOf({ full, more, groups, detailLines }: RowsPlan): number {
  return full.length * (HEIGHTS.fullPx + detailLines * HEIGHTS.detailPx) + (groups.length + (more === null ? 0 : 1)) * HEIGHTS.groupPx;
}

describe('W-G3 the order of the wall', () => {
  test('after an event a row within 60 s of due has its row still, and its place; only what is being lost may take it', () => {
    fc.assert(
      fc.property(fc.array(dough, { minLength: 1, maxLength: 10 }), fc.integer({ min: 560, max: 800 }), (doughs, roomPx) => {
        const before = keptRows(planOf(rowsOf(doughs, false), roomPx), [], NOW_MS);
        const keys = before.full.map(entryKey);
        const after = keptRows(planOf(rowsOf(doughs, true), roomPx), keys, NOW_MS);
        expect(allRows(after)).toEqual(allRows(before));
        expect(heightOf(after)).toBeLessThanOrEqual(roomPx);
        const lost = after.full.filter(([row]) => row.role === 'lost').length;
        const steady = rowsOf(doughs, true).filter((row) => keys.includes(row.workpieceId) && isSteady([row], NOW_MS));
        // Where there are rows enough for all of them beside what is being lost.
        if (steady.length + lost > after.full.length) return;
        // One line for all the rest cannot hold calls and what runs.
        if (after.groups.length + (after.more === null ? 0 : 1) === 1) return;
        for (const row of steady) {
          const was = keys.indexOf(row.workpieceId);
          const is = after.full.map(entryKey).indexOf(row.workpieceId);
          expect(is).toBeGreaterThanOrEqual(0);
          if (was < after.full.length) expect(is).toBe(was);
        }
      }),
    );
  });

  test('without an event nothing changes its place, however long the clock runs', () => {
    const floor = workedFloor(dayOf(12, 7), { untilMin: 150 });
    const arranged = arrange(floor.state, floor.nowMs, SCREEN, false, null);
    const placesOf = (rows: RowsPlan): unknown => [
      rows.full.map((entry: Entry) => entry.map((row) => row.workpieceId)),
      rows.more?.rows.map((row) => row.workpieceId) ?? null,
      rows.groups.map((group) => [group.stage, group.rows.map((row) => row.workpieceId)]),
    ];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3 * 60 * MINUTE_MS }), (laterMs) => {
        expect(placesOf(refreshRows(arranged.plan.rows, floor.state, floor.nowMs + laterMs))).toEqual(placesOf(arranged.plan.rows));
      }),
      { numRuns: 60 },
    );
  });

  test('a morning, event after event: no row within 60 s of due moves while it is there', () => {
    const moved: string[] = [];
    let previous: Arrangement | null = null;
    let places = new Map<string, number>();
    for (let minute = 100; minute < 170; minute += 1) {
      const floor = workedFloor(dayOf(12, 7), { untilMin: minute });
      const arranged: Arrangement = arrange(floor.state, floor.nowMs, SCREEN, false, previous);
      const { full } = arranged.plan.rows;
      full.forEach((entry, index) => {
        const was = places.get(entryKey(entry));
        if (was !== undefined && was !== index && was < full.length && isSteady(entry, floor.nowMs))
          moved.push(`${minute}: ${entry[0].tag}`);
      });
      places = new Map(full.map((entry, index) => [entryKey(entry), index]));
      previous = arranged;
    }
    expect(moved).toEqual([]);
  });
});

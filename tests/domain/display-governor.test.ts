import { describe, expect, test } from 'vitest';
import { govern, ScreenTooSmall, type WallDemand, type WallPlan } from '../../display/wall/governor.ts';
import { leftColumns } from '../../display/wall/left-columns.ts';
import { LEAST_FULL, MOST_GROUPS } from '../../display/wall/rows-plan.ts';
import { arcminOf, fontSizePx, LEAST_ARCMIN, NEAR_M, type Screen } from '../../display/wall/type-sizes.ts';
import type { Row } from '../../shared/floor/board.ts';
import { isStronger } from '../../shared/floor/role.ts';
import { boardRow } from './support/board-row.ts';

const FULL_HD = { widthPx: 1920, heightPx: 1080 };
const STAGES = ['bulk', 'proving', 'cold', 'mixing', 'oven'] as const;
const VERBS = ['fold', 'divide', 'shape', 'load', 'takeOut'] as const;

const CONTENT = {
  tags: ['C1', 'Ch12b', 'M1a'],
  calls: ['FOLD', 'DIVIDE', 'TURN OUT', 'CHECK', '2nd SPEED'],
  running: ['2nd speed', 'bench rest', 'part-bake'],
  stages: ['in the oven', 'proving', 'others'],
  decks: [
    { name: 'Top', temperature: '235 °C' },
    { name: 'Bottom', temperature: '245 °C' },
    { name: 'Hearth', temperature: '390 °C' },
  ],
};

/** `pressing` of the rows call, a third of those late; the first is being lost where there are more than four. */
function rowsOf(count: number, pressing: number): Row[] {
  return Array.from({ length: count }, (_, index) => {
    const stage = STAGES[index % STAGES.length] ?? 'bulk';
    const verb = VERBS[index % VERBS.length] ?? 'fold';
    if (index >= pressing) return boardRow(index, { stage, verb, dueMs: (index + 1) * 600_000 });
    const role = index === 0 && pressing > 4 ? 'lost' : index < pressing / 3 ? 'late' : 'call';
    return boardRow(index, { stage, verb, role, dueMs: -(pressing - index) * 200_000 });
  });
}

function demandOf(rows: readonly Row[], lanes = 2): WallDemand {
  return {
    rows,
    decks: CONTENT.decks.map(() => ({ lanes, use: 'booked' as const })),
    isPaced: false,
    leftNeedPx: (sizes) => leftColumns(CONTENT, sizes),
  };
}

function heightOf(plan: WallPlan): number {
  const lines = plan.rows.groups.length + (plan.rows.more === null ? 0 : 1);
  const decks = plan.decks.reduce((sum, deck) => sum + deck.heightPx, 0) + plan.hiddenDecksPx + plan.blockedMixersPx;
  return plan.bandPx + plan.headerPx + plan.rows.full.length * plan.rowPx + lines * plan.groupPx + decks;
}

/** What a plan does wrong. */
function faultsOf(screen: Screen, rows: readonly Row[], plan: WallPlan): string[] {
  const { sizes } = plan;
  const shown = [...plan.rows.full.flat(), ...(plan.rows.more?.rows ?? []), ...plan.rows.groups.flatMap((group) => group.rows)];
  const ids = (some: readonly Row[]): string =>
    some
      .map((row) => row.workpieceId)
      .sort()
      .join();
  const least = LEAST_ARCMIN - 1e-9;
  const checks: readonly (readonly [string, boolean])[] = [
    ['runs off the screen', heightOf(plan) > screen.heightPx],
    ['glance text too small from afar', arcminOf(screen, Math.min(sizes.glancePx, sizes.verbPx, sizes.secondPx), screen.distanceM) < least],
    ['near text too small', arcminOf(screen, sizes.nearPx, NEAR_M) < least],
    ['rows narrower than their texts', plan.leftPx < Math.min(leftColumns(CONTENT, sizes).leastPx, screen.widthPx)],
    ['a dough is missing or shown twice', ids(shown) !== ids(rows)],
    ['too many groups', plan.rows.groups.length > MOST_GROUPS],
    ['too few full rows', plan.rows.groups.length > 0 && plan.rows.full.length < LEAST_FULL],
  ];
  return checks.filter(([, isFault]) => isFault).map(([fault]) => fault);
}

describe('font sizes follow from distance and screen', () => {
  // Worked by hand from 2·D·tan(arcmin/2) ÷ 0.668, for 16:9 screens of 1920 px.
  test.each([
    [43, 5, 20, 88],
    [43, 3, 20, 53],
    [32, 5, 20, 118],
  ])('%i inch from %i m at %i minutes of arc: %i px', (diagonalInch, distanceM, arcmin, sizePx) => {
    const screen: Screen = { diagonalInch, distanceM, arcmin, ...FULL_HD };
    expect(Math.round(fontSizePx(screen, arcmin, distanceM))).toBe(sizePx);
    expect(arcminOf(screen, fontSizePx(screen, arcmin, distanceM), distanceM)).toBeCloseTo(arcmin, 9);
  });
});

describe('the governor', () => {
  const screens = [FULL_HD, { widthPx: 1366, heightPx: 768 }].flatMap((size) =>
    [32, 43, 55].flatMap((diagonalInch) =>
      [3, 4, 5, 6].flatMap((distanceM) => [20, 26].map((arcmin): Screen => ({ ...size, diagonalInch, distanceM, arcmin }))),
    ),
  );

  test.each(screens)(
    '$diagonalInch inch, $widthPx px, $distanceM m, $arcmin minutes of arc: all of 1 to 30 rows fit and can be read',
    (screen) => {
      const faults: string[] = [];
      for (let count = 1; count <= 30; count += 1) {
        for (const pressing of new Set([0, Math.min(3, count), count])) {
          const rows = rowsOf(count, pressing);
          faults.push(
            ...faultsOf(screen, rows, govern(screen, demandOf(rows))).map((fault) => `${count} rows, ${pressing} pressing: ${fault}`),
          );
        }
      }
      expect(faults).toEqual([]);
    },
  );

  test('what presses most has the full rows, and a line for the rest carries the strongest role among them', () => {
    const rows = rowsOf(20, 12).map((row, index) => ({
      ...row,
      verb: 'fold' as const,
      isCheck: false,
      stepId: `s${index}`,
      dueMs: row.dueMs,
    }));
    // Verbs of their own, so that nothing merges.
    const verbs = ['weigh', 'add', 'turnOut', 'fold', 'divide', 'round', 'shape', 'tin', 'fill', 'load', 'takeOut', 'pack'] as const;
    const apart = rows.map((row, index) => ({ ...row, verb: verbs[index % verbs.length] ?? 'fold' }));
    const { rows: plan } = govern({ ...FULL_HD, diagonalInch: 43, distanceM: 5, arcmin: 20 }, demandOf(apart));
    expect(plan.full.flat().map((row) => row.role)).toEqual(apart.slice(0, plan.full.length).map((row) => row.role));
    expect(plan.more?.rows.length).toBe(12 - plan.full.length);
    for (const row of plan.more?.rows ?? []) expect(isStronger(row.role, plan.more?.role ?? 'running')).toBe(false);
    expect(plan.groups.flatMap((group) => group.rows).every((row) => row.role === 'running')).toBe(true);
  });

  test('few doughs get lines for what to look for, many do not', () => {
    const screen: Screen = { ...FULL_HD, diagonalInch: 43, distanceM: 5, arcmin: 20 };
    expect(govern(screen, demandOf(rowsOf(1, 0))).rows.detailLines).toBe(2);
    expect(govern(screen, demandOf(rowsOf(20, 0))).rows.detailLines).toBe(0);
  });

  test('a house of many decks keeps its two rows: lanes go first, then the decks least in use', () => {
    const screen: Screen = { ...FULL_HD, diagonalInch: 43, distanceM: 5, arcmin: 20 };
    const decks = Array.from({ length: 12 }, (_, index) => ({
      lanes: 6,
      use: (['loaded', 'quiet', 'booked'] as const)[index % 3] ?? 'quiet',
    }));
    const plan = govern(screen, { ...demandOf(rowsOf(9, 2)), decks });
    expect(plan.rows.full.length).toBeGreaterThanOrEqual(2);
    expect(plan.decks.every((deck) => deck.lanes === 1)).toBe(true);
    expect(plan.hiddenDecks).toBeGreaterThan(0);
    const shown = plan.decks.map((deck) => decks[deck.index]?.use);
    const hidden = decks.filter((_, index) => !plan.decks.some((deck) => deck.index === index)).map((deck) => deck.use);
    expect(shown.includes('quiet') && hidden.includes('booked')).toBe(false);
    expect(hidden.includes('loaded') && shown.some((use) => use !== 'loaded')).toBe(false);
    expect(plan.decks.length + plan.hiddenDecks).toBe(12);
    expect(heightOf(plan)).toBeLessThanOrEqual(1080);
  });

  test('where the rows want nearly the whole width, the axis goes and the rows stay', () => {
    const plan = govern({ ...FULL_HD, diagonalInch: 32, distanceM: 6, arcmin: 20 }, demandOf(rowsOf(9, 2)));
    expect(plan.showsAxis).toBe(false);
    expect(plan.leftPx).toBe(1920);
  });

  test('a screen on which no two rows can be read is refused by name', () => {
    const screen: Screen = { widthPx: 1920, heightPx: 200, diagonalInch: 20, distanceM: 12, arcmin: 20 };
    expect(() => govern(screen, demandOf(rowsOf(9, 2)))).toThrow(ScreenTooSmall);
  });
});

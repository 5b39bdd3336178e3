import { describe, expect, test } from 'vitest';
import { dueOf } from '../../shared/floor/due.ts';
import { prepTimes } from '../../shared/floor/prep-due.ts';
import { bringInCommand, OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { drawn, edgesG, levainFile, levainFloor, MINUTE_MS, tell, type Listed } from './support/levain-house.ts';
import type { Floor } from './support/floor.ts';

/** Weigh 5, add 5, mix 6, bulk 60, divide 10: the cuts are there after so many minutes. */
const CUTS_MIN = 86;
const BOTH: Listed = {
  formula: 'buns',
  min: 60,
  cuts: [
    { product: 'bun', pieces: 60 },
    { product: 'roll', pieces: 40 },
  ],
};

function minutesOf(floor: Floor, atMs: number | null | undefined): number {
  return ((atMs ?? Number.NaN) - floor.piece('B1').plannedStartMs) / MINUTE_MS;
}

describe('D32 side preps are planned with the dough that they go into', () => {
  test('one for each dough and each prep, with the amounts of the cuts that take it', () => {
    const floor = levainFloor(BOTH);
    expect(Object.values(floor.state.workpieces).map((workpiece) => workpiece.tag)).toEqual(['B1', 'S1', 'F1']);
    // 60 buns of 20 g and 40 rolls of 10 g; 300 g of soaker in 10 000 g of a dough of 60 · 80 g + 40 · 60 g.
    expect([floor.piece('F1').grams, floor.piece('S1').grams]).toEqual([1600, 216]);
    expect(floor.piece('F1')).toMatchObject({
      kind: 'prep',
      serviceDate: floor.piece('B1').serviceDate,
      serves: { workpieceId: floor.id('B1'), stepId: 'bun-fill', readyMin: 5, notBeforeStepId: 'first-speed', withinMin: 90 },
    });
  });

  test('begun so long before it joins as it takes until it can be kept and should be ready', () => {
    const floor = levainFloor(BOTH);
    expect(minutesOf(floor, floor.piece('F1').plannedStartMs)).toBe(CUTS_MIN - 20 - 5);
    expect(minutesOf(floor, floor.piece('S1').plannedStartMs), 'a soaker before the dough is begun').toBe(5 - 2 - 30);
  });

  test('numbered in the order of their starts, for each dough its own', () => {
    const floor = levainFloor({ ...BOTH, min: 200 }, BOTH);
    expect(floor.piece('F1').serves?.workpieceId).toBe(floor.id('B1'));
    expect(floor.piece('F2').serves?.workpieceId).toBe(floor.id('B2'));
    expect(floor.piece('F1').plannedStartMs).toBeLessThan(floor.piece('F2').plannedStartMs);
  });

  test('not where the day lists a batch of the prep itself', () => {
    const floor = levainFloor(BOTH, { formula: 'filling', min: 0, doughG: 2000 });
    expect(Object.values(floor.state.workpieces).map((workpiece) => workpiece.tag)).toEqual(['F1', 'B1', 'S1']);
    expect(floor.piece('F1').serves).toBeNull();
  });

  test('only the cuts that take it count, and none is planned where none does', () => {
    const floor = levainFloor({ formula: 'buns', min: 0, cuts: [{ product: 'roll', pieces: 25 }] });
    expect(floor.piece('F1')).toMatchObject({ grams: 250, serves: { stepId: 'roll-fill' } });
    expect(levainFloor({ formula: 'plain', min: 0, cuts: [{ product: 'plain-loaf', pieces: 5 }] }).state.workpieces).toSatisfy(
      (workpieces: object) => Object.keys(workpieces).length === 1,
    );
  });

  test('a tag that is on the floor for that day is not given twice', () => {
    const floor = levainFloor(BOTH);
    // After many days the state has forgotten that this one was opened; what stands on the floor is still there.
    floor.state = { ...floor.state, openDates: [] };
    floor.ok(bringInCommand(levainFile([BOTH]), OPENING_MS), { deviceId: SERVER_DEVICE });
    expect(
      Object.values(floor.state.workpieces)
        .map((workpiece) => workpiece.tag)
        .sort(),
    ).toEqual(['B1', 'B2', 'F1', 'F2', 'S1', 'S2']);
  });

  test('a prep that no document makes is refused', () => {
    const command = bringInCommand(levainFile([BOTH]), OPENING_MS);
    const floor = levainFloor();
    const formulas = command.formulas.filter((formula) => formula.id !== 'filling');
    const fresh = bringInCommand(levainFile([]), OPENING_MS, '2026-03-09');
    expect(floor.give({ ...fresh, formulas, batches: command.batches }).decision.ok, 'an older version still makes it').toBe(true);
    const empty = levainFloor();
    const { decision } = empty.give({
      ...fresh,
      serviceDate: '2026-03-10',
      products: command.products.map((product) => ({
        ...product,
        sidePreps: product.sidePreps.map((prep) => ({ ...prep, formula: 'ghost' })),
      })),
      batches: command.batches,
    });
    expect(decision).toEqual({ ok: false, fault: { code: 'documentMissing', kind: 'formula', id: 'ghost' } });
  });
});

describe('D32 a side prep follows the dough that it joins', () => {
  test('due by its dough as that stands: a dough that is late pulls its prep along', () => {
    const floor = levainFloor(BOTH);
    expect(minutesOf(floor, floor.due('F1').dueMs)).toBe(61);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('B1'), stepId: 'weigh', minutes: 20 });
    expect(minutesOf(floor, floor.due('F1').dueMs)).toBe(81);
  });

  test('not before its order rules: last minute, and not before a step has begun', () => {
    const floor = levainFloor(BOTH);
    const times = prepTimes(floor.state, floor.piece('F1'));
    expect([minutesOf(floor, times?.joinsMs), minutesOf(floor, times?.notBeforeMs)]).toEqual([CUTS_MIN, 10]);
    const hurried = levainFloor(BOTH);
    hurried.record({
      type: 'workpiecePlanned',
      workpieceId: 'AAAAAAAAAAAAAAAAAAAAAQ',
      kind: 'prep',
      tag: 'F9',
      serviceDate: '2026-03-07',
      formulaId: 'filling',
      formulaVersion: 1,
      plannedStartMs: OPENING_MS,
      grams: 100,
      cuts: [],
      serves: { workpieceId: hurried.id('B1'), stepId: 'bun-fill', readyMin: 60, withinMin: 30 },
    });
    expect(minutesOf(hurried, hurried.due('F9').dueMs), 'wanted after 6 min, allowed after 56').toBe(CUTS_MIN - 30);
  });

  test('once its dough is past the step it goes by its own plan', () => {
    const floor = levainFloor(BOTH);
    const plannedStartMs = floor.piece('F1').plannedStartMs;
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('B1'), reason: 'salt forgotten' });
    expect(dueOf(floor.state, floor.piece('F1'))?.dueMs).toBe(plannedStartMs);
  });

  test('both cuts draw their pieces’ worth of it, on top of their weight, and nothing is left', () => {
    const floor = levainFloor(BOTH);
    const workpieceId = floor.id('B1');
    for (const [index, productId, pieces, grams] of [
      [1, 'bun', 60, 4800],
      [2, 'roll', 40, 2400],
    ] as const) {
      floor.record({
        type: 'workpieceDivided',
        workpieceId,
        stepId: 'divide',
        atMs: floor.nowMs,
        lossG: 0,
        children: [
          { workpieceId: `AAAAAAAAAAAAAAAAAAAA${index}A`, tag: `B1${'ab'[index - 1]}`, productId, productVersion: 1, pieces, grams },
        ],
      });
    }
    floor.finish('F1', 'cook');
    tell(floor, drawn(floor, 'B1a', 'bun-fill'));
    expect([floor.piece('F1').grams, floor.piece('B1a').grams]).toEqual([400, 6000]);
    tell(floor, drawn(floor, 'B1b', 'roll-fill'));
    expect([floor.piece('F1').grams, floor.piece('F1').ending, floor.piece('B1b').grams]).toEqual([0, 'finished', 2800]);
    expect(edgesG(floor, 'draw', { from: 'F1' })).toBe(1600);
    expect(floor.piece('B1b').broughtIn.allergens).toEqual(['milk']);
  });
});

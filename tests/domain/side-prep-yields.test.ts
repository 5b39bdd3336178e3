import { describe, expect, test } from 'vitest';
import { readBakehouseFile, type BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { formulaSchema } from '../../shared/documents/formula.ts';
import { prepTimes } from '../../shared/floor/prep-due.ts';
import { obstacleOf } from '../../shared/floor/ways-out.ts';
import { rawG, yieldShare } from '../../shared/floor/yields.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { levainFile, MINUTE_MS, type Listed } from './support/levain-house.ts';

const BUNS: Listed = { formula: 'buns', min: 200, cuts: [{ product: 'bun', pieces: 60 }] };
const COOL = { id: 'cool', verb: 'cool', kind: 'timed', minutes: { earliest: 40, target: 60 } };

/** The house, its filling cooked down to a share of its weight, cooled after it where that is asked for. */
function house(yieldPct: number, more: { readonly handlingLossPct?: number; readonly isCooled?: boolean } = {}): BakehouseFile {
  const file = JSON.parse(JSON.stringify(levainFile([BUNS]))) as { formulas: { id: string; method: Record<string, unknown>[] }[] };
  const filling = file.formulas.find(({ id }) => id === 'filling');
  assert(filling !== undefined, 'the house makes a filling');
  const [cook, hold] = filling.method;
  filling.method = [{ ...cook, yieldPct }, ...(more.isCooled === true ? [COOL] : []), ...(hold === undefined ? [] : [hold])];
  if (more.handlingLossPct !== undefined) Object.assign(filling, { handlingLossPct: more.handlingLossPct });
  const read = readBakehouseFile(file);
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault));
  return read.value;
}

function floorOf(file: BakehouseFile): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(file, OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

describe('SP1 a prep is weighed out for what is left of it', () => {
  test('60 buns of 20 g from a filling that cooks down to 60 %, and of which a twentieth sticks to the pot', () => {
    // 1200 g ÷ 0.6 = 2000 g; with a loss of 5 %, 1200 ÷ (0.6 · 0.95) = 2105.3 g (the trade's scaling: wanted ÷ yield).
    expect(floorOf(house(100)).piece('F1').grams).toBe(1200);
    expect(floorOf(house(60)).piece('F1').grams).toBe(2000);
    expect(floorOf(house(60, { handlingLossPct: 5 })).piece('F1').grams).toBe(2105.3);
  });

  test('yields of several steps multiply; there is never less than is wanted', () => {
    const prep = formulaSchema.parse({
      ...levainFile([]).formulas.find(({ id }) => id === 'filling'),
      method: [
        { id: 'a', verb: 'cook', kind: 'hands', minutes: { target: 5 }, yieldPct: 70 },
        { id: 'b', verb: 'cook', kind: 'hands', minutes: { target: 5 }, yieldPct: 90 },
      ],
    });
    expect(yieldShare(prep)).toBeCloseTo(0.63, 12);
    expect(rawG(prep, 1000) * yieldShare(prep)).toBeGreaterThanOrEqual(1000);
    expect(rawG(prep, 1000)).toBe(1587.4);
  });

  test('one egg and 100 g of cream for a thin topped flatbread, as one house has it: 24 of them (common practice)', () => {
    const topping = { item: 'cheese', gPerPiece: 100 };
    const egg = { item: 'egg', gPerPiece: 55 };
    expect([topping, egg].map(({ gPerPiece }) => gPerPiece * 24)).toEqual([2400, 1320]);
    const file = house(100);
    const bun = file.products.find(({ id }) => id === 'bun');
    assert(bun !== undefined, 'the house makes buns');
    const flat = {
      ...bun,
      way: bun.way.map((step) =>
        step.id === 'bun-fill' ? { ...step, additions: [{ formula: 'filling', gPerPiece: 100, heldBack: false }] } : step,
      ),
    };
    const floor = floorOf({ ...file, products: file.products.map((product) => (product.id === 'bun' ? flat : product)) });
    expect(floor.piece('F1').grams).toBe(6000);
  });

  test('only a prep loses weight by its yield', () => {
    const file = JSON.parse(JSON.stringify(levainFile([BUNS]))) as { formulas: { id: string; method: Record<string, unknown>[] }[] };
    const buns = file.formulas.findIndex(({ id }) => id === 'buns');
    Object.assign(file.formulas[buns]?.method[0] ?? {}, { yieldPct: 90 });
    const read = readBakehouseFile(file);
    expect(read.ok ? null : read.fault).toContainEqual(
      expect.objectContaining({ path: `formulas[${buns}].method[0].yieldPct`, facts: { code: 'yieldOfOther' } }),
    );
  });
});

describe('SP2 what is cooked away is named', () => {
  test('when the step is done the prep weighs what is left, and what is gone is a loss; undone it is back', () => {
    const floor = floorOf(house(60));
    const commandId = floor.finish('F1', 'cook');
    expect(floor.piece('F1').grams).toBe(1200);
    expect(floor.recorded.map(({ event }) => event)).toContainEqual(
      expect.objectContaining({ type: 'lossNamed', workpieceId: floor.id('F1'), what: 'cooking', grams: 800 }),
    );
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece('F1').grams).toBe(2000);
  });
});

describe('SP3 a prep cools before it is used', () => {
  function toFilling(floor: Floor): Floor {
    return floor.bringTo('B1', 'bun-fill');
  }

  test('taken too soon it is refused with when it will have cooled; a touch says that it has since', () => {
    const floor = toFilling(floorOf(house(100, { isCooled: true })));
    floor.finish('F1', 'cook');
    const cooledMs = floor.nowMs + 40 * MINUTE_MS;
    const fill = { type: 'finishStep', workpieceId: floor.id('B1'), stepId: 'bun-fill' } as const;
    expect(floor.give(fill).decision).toMatchObject({ fault: { code: 'notCooled', tag: 'B1', fromTag: 'F1', cooledMs } });
    const way = obstacleOf(floor.state, floor.id('B1'), floor.nowMs)?.waysOut.find(({ kind }) => kind === 'goOn');
    expect(way?.command).toMatchObject({ type: 'finishStep', despite: ['notCooled'] });
    floor.ok({ ...fill, despite: ['notCooled'] });
    expect(floor.piece('F1').grams).toBeLessThan(1);
  });

  test('after its least minutes, or read hand-warm, it is taken', () => {
    const waited = toFilling(floorOf(house(100, { isCooled: true })));
    waited.finish('F1', 'cook');
    waited.wait(40).finish('B1', 'bun-fill');
    const read = toFilling(floorOf(house(100, { isCooled: true })));
    read.finish('F1', 'cook');
    read.wait(5).ok({ type: 'readTemperature', workpieceId: read.id('F1'), where: 'filling', celsius: 28 });
    read.finish('B1', 'bun-fill');
    expect([waited, read].map((floor) => floor.due('B1').action.id)).not.toContain('bun-fill');
  });

  test('one without cooling in its method, and one of which nobody has tapped anything, is taken as it is', () => {
    const hot = toFilling(floorOf(house(100)));
    hot.finish('F1', 'cook');
    hot.finish('B1', 'bun-fill');
    const untapped = toFilling(floorOf(house(100, { isCooled: true })));
    untapped.finish('B1', 'bun-fill');
    expect([hot, untapped].map((floor) => floor.due('B1').action.id)).not.toContain('bun-fill');
  });
});

describe('SP4 preps are cooked in their order', () => {
  test('what has to be first waits for its step, what has to be fresh is not begun before its last minutes, and cooling is counted in', () => {
    const floor = floorOf(house(100, { isCooled: true }));
    const { serves } = floor.piece('F1');
    expect(serves).toMatchObject({ notBeforeStepId: 'first-speed', withinMin: 90, readyMin: 5 });
    const times = prepTimes(floor.state, floor.piece('F1'));
    assert(times !== null && times.notBeforeMs !== null, 'it joins');
    // Cooked 20 min and cooled 60, ready 5 min before it joins: wanted 85 min before; but not before the first speed, 76 min before.
    const beforeMin = (atMs: number): number => (times.joinsMs - atMs) / MINUTE_MS;
    expect(floor.piece('F1').plannedStartMs).toBe(times.joinsMs - 85 * MINUTE_MS);
    expect([floor.due('F1').dueMs, times.notBeforeMs].map(beforeMin)).toEqual([76, 76]);
    // Without cooling it is wanted 25 min before, well within its last 90.
    const fresh = floorOf(house(100));
    expect(beforeMin(fresh.due('F1').dueMs)).toBe(25);
  });
});

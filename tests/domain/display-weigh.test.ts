import { describe, expect, test } from 'vitest';
import { lotFor, pieceOf } from '../../display/weigh/piece-model.ts';
import { amountField, gramsSaid, shortOutcome } from '../../display/weigh/short-model.ts';
import { waitingOf } from '../../display/weigh/waiting-model.ts';
import { takeWaterCommand, waterOf } from '../../display/weigh/water-model.ts';
import { allLines, atStartG, nextOpenId, scaleShowsG } from '../../display/weigh/weigh-model.ts';
import { weighOutOf, type WeighOut } from '../../shared/floor/weigh-out.ts';
import { assert } from '../../shared/result.ts';
import { firstOf, halfIn, weighFirst, weighFloor } from '../browser/harness-weigh/weigh-stage.ts';
import { phoneView } from '../browser/harness-phone/phone-stage.ts';
import type { Floor } from './support/floor.ts';

function outOf(floor: Floor, workpieceId: string): WeighOut {
  const workpiece = floor.state.workpieces[workpieceId];
  const out = workpiece === undefined ? null : weighOutOf(floor.state, workpiece);
  assert(out !== null, 'there is nothing to weigh');
  return out;
}

describe('G9 what the scale shows without taring', () => {
  test('it grows by every line that goes in at the start, to the whole bowl without what is kept back', () => {
    const floor = weighFloor();
    const { id } = firstOf(floor, 'country');
    let shownG = 0;
    for (let count = 0; count < allLines(outOf(floor, id)).length; count += 1) {
      const placed = allLines(outOf(floor, id))[count];
      assert(placed !== undefined, 'a line is missing');
      const nextG = scaleShowsG(placed);
      if (nextG !== null) {
        expect(nextG).toBeCloseTo(shownG + atStartG(placed.line), 6);
        shownG = nextG;
      }
      weighFirst(floor, id, count + 1, 'WF-1');
    }
    const dough = outOf(floor, id).parts.at(-1);
    const laterG = (dough?.lines ?? [])
      .flatMap((line) => line.portions)
      .reduce((sum, one) => sum + (one.stepId === null ? 0 : one.grams), 0);
    expect(laterG).toBeGreaterThan(0);
    expect(shownG).toBeCloseTo((dough?.totalG ?? 0) - laterG, 6);
  });

  test('after the last line there is no next one', () => {
    const floor = weighFloor();
    const { id } = firstOf(floor, 'milk-buns');
    const lines = allLines(outOf(floor, id));
    expect(nextOpenId(outOf(floor, id), lines[0]?.line.id ?? null)).toBe(lines[1]?.line.id);
    weighFirst(floor, id, lines.length, 'WF-1');
    expect(nextOpenId(outOf(floor, id), null)).toBeNull();
  });
});

describe('G10 what waits', () => {
  test('stands by planned start, with what is in, and goes once it is mixed', () => {
    const floor = weighFloor();
    const before = waitingOf(floor.state);
    expect(before.map((one) => one.plannedStartMs)).toEqual(before.map((one) => one.plannedStartMs).toSorted((a, b) => a - b));
    const { id, tag } = firstOf(floor, 'olive-flatbread');
    weighFirst(floor, id, 2, 'WF-1');
    expect(waitingOf(floor.state).find((one) => one.workpieceId === id)).toMatchObject({ inCount: 2, lineCount: 6 });
    while (!outOf(floor, id).isMixed) floor.finishWhenDue(tag);
    expect(waitingOf(floor.state).some((one) => one.workpieceId === id)).toBe(false);
  });
});

describe('G11 lots, amounts and water', () => {
  test('a line takes the lot that was used last, unless another was chosen; water has none', () => {
    const { floor, workpieceId } = halfIn(weighFloor());
    const other = firstOf(floor, 'milk-buns').id;
    const piece = pieceOf(phoneView(floor.state), floor.state, other, null, floor.nowMs);
    assert(piece !== null, 'there is nothing to weigh');
    expect(lotFor(floor.state, piece, '0-0', new Map())).toBe('WF-2231');
    expect(lotFor(floor.state, piece, '0-0', new Map([['0-0', 'WF-2300']]))).toBe('WF-2300');
    expect(lotFor(floor.state, piece, '0-0', new Map([['0-0', null]]))).toBeNull();
    const own = pieceOf(phoneView(floor.state), floor.state, workpieceId, null, floor.nowMs);
    const waterId = own?.out.parts.flatMap((part) => part.lines).find((line) => line.ingredientId === 'water')?.id ?? '';
    expect(own === null ? '' : lotFor(floor.state, own, waterId, new Map())).toBeNull();
  });

  test('amounts of a line that is short lie on the scale’s divisions, in pounds where the house says so', () => {
    const grams = amountField({ grams: 3900, divisionG: 5 }, { temperature: 'C', weight: 'g' });
    expect(grams.values.every((value) => value % 5 === 0 && value < 3900)).toBe(true);
    const pounds = amountField({ grams: 3900, divisionG: 5 }, { temperature: 'F', weight: 'lb' });
    expect(pounds).toMatchObject({ unit: 'lb', most: 8.6 });
    // The avoirdupois pound is 453.59237 g (international yard and pound agreement, 1959).
    expect(gramsSaid(2, pounds)).toBeCloseTo(2 * 453.59237, 2);
    expect(amountField({ grams: 105, divisionG: 0.1 }, { temperature: 'F', weight: 'lb' }).unit).toBe('oz');
  });

  test('what scaling means is told without anything happening: four fifths of the flour, eight of ten loaves', () => {
    const floor = weighFloor();
    const { id } = firstOf(floor, 'country');
    const before = JSON.stringify(floor.state);
    const workpiece = floor.state.workpieces[id];
    const line = allLines(outOf(floor, id))[0]?.line;
    assert(workpiece !== undefined && line !== undefined, 'there is nothing to weigh');
    const outcome = shortOutcome(floor.state, workpiece, line, 0.8 * line.grams, floor.nowMs);
    expect(outcome).toMatchObject({ ok: true, fromG: 9200, cuts: [{ before: 10, after: 8 }] });
    expect(JSON.stringify(floor.state)).toBe(before);
    expect(shortOutcome(floor.state, workpiece, line, 2 * line.grams, floor.nowMs).ok).toBe(false);
  });

  test('water with ice goes in at the tap’s temperature, all of it; without ice at its own', () => {
    const { floor, workpieceId } = halfIn(weighFloor());
    const workpiece = floor.state.workpieces[workpieceId];
    assert(workpiece !== undefined, 'there is nothing to weigh');
    const model = waterOf(floor.state, workpiece, floor.nowMs);
    assert(model !== null && model.plan !== null && model.plan.ice !== null, 'there is no plan');
    expect(model.plan.ice.iceG).toBeGreaterThan(0);
    expect(takeWaterCommand(workpieceId, model)).toMatchObject({ waterC: 18, waterG: model.plan.liquid.grams, iceG: model.plan.ice.iceG });
    expect(takeWaterCommand(workpieceId, model, 12)?.waterC).toBe(12);
    const noTap = { ...model, plan: { ...model.plan, ice: null, requiredC: -3 }, inputs: { ...model.inputs, tap: null } };
    expect(takeWaterCommand(workpieceId, noTap)).toBeNull();
  });
});

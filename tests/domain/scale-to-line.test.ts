import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FloorCommand } from '../../shared/floor/commands.ts';
import type { Floor } from './support/floor.ts';
import { impossible } from './support/floor-balance.ts';
import { Scales } from './support/invariants.ts';
import { asShown, LEVAIN_POT, line, mixingFloor, POOLISH_5, RICH_10, STARTER_1, weighOut } from './support/mixing-house.ts';

function scale(floor: Floor, tag: string, lineId: string, grams: number): FloorCommand {
  return { type: 'scaleToLine', workpieceId: floor.id(tag), lineId, grams };
}

function refusalOf(floor: Floor, command: FloorCommand): unknown {
  const { decision } = floor.give(command);
  return decision.ok ? 'accepted' : decision.fault;
}

describe('Q6 what is short scales everything else to it', () => {
  test('given half of the flour, when the batch is scaled, then the dough, its parts and its pieces are half', () => {
    const floor = mixingFloor(POOLISH_5);
    expect(floor.give(scale(floor, 'P1', '1-0', 2250)).decision).toEqual({
      ok: true,
      value: [
        {
          type: 'batchRescaled',
          workpieceId: floor.id('P1'),
          fromG: 11_701.5,
          toG: 5850.75,
          cuts: [
            { productId: 'loaf', productVersion: 1, pieces: 12, grams: 4200 },
            { productId: 'round', productVersion: 1, pieces: 15, grams: 1350 },
          ],
          atMs: floor.nowMs,
        },
      ],
    });
    expect(floor.piece('P1')).toMatchObject({ grams: 5850.75, scaledToG: 5850.75, pieces: null });
    expect(weighOut(floor, 'P1').parts.map((part) => part.lines.map((one) => one.grams))).toEqual([
      [1170, 1170, 0.8],
      [2250, 1170, 22.5, 67.5, 2340],
    ]);
  });

  test('1400, 840, 140 and 28 g down to 1000 of flour: 600, 100 and 20 (Kleinwächter, The Sourdough Framework, as in trade.md, the other way round)', () => {
    const floor = mixingFloor(STARTER_1);
    expect(asShown(weighOut(floor, 'S1'))).toEqual([['Wheat flour 1400', 'Water 840', 'Levain 140', 'Salt 28']]);
    floor.ok(scale(floor, 'S1', '0-0', 1000));
    expect(asShown(weighOut(floor, 'S1'))).toEqual([['Wheat flour 1000', 'Water 600', 'Levain 100', 'Salt 20']]);
  });

  test('whatever is short, the proportions stay, pieces never weigh more than their share, and no amount comes from nothing', () => {
    fc.assert(
      fc.property(fc.constantFrom('0-0', '0-1', '1-0', '1-1', '1-3', '1-4'), fc.integer({ min: 100, max: 995 }), (lineId, perMille) => {
        const floor = mixingFloor(POOLISH_5);
        const neededG = line(floor, 'P1', lineId).grams;
        const before = floor.piece('P1');
        floor.ok(scale(floor, 'P1', lineId, (neededG * perMille) / 1000));
        const after = floor.piece('P1');
        const factor = after.grams / before.grams;
        // A line is shown rounded: half a division of its 135 g or more, and the dough's tenth.
        expect(Math.abs(factor - perMille / 1000)).toBeLessThan(0.002);
        for (const [index, part] of weighOut(floor, 'P1').parts.entries())
          expect(Math.abs(part.totalG - (index === 0 ? 4681.5 : 11_701.5) * factor)).toBeLessThanOrEqual(5);
        const cutsG = after.cuts.reduce((sum, cut) => sum + cut.grams, 0);
        expect(cutsG).toBeLessThanOrEqual(11_100 * factor + 1e-6);
        expect(cutsG).toBeGreaterThan(11_100 * factor - 350);
        expect(new Scales().weigh(floor.recorded).complaints(floor.state)).toEqual([]);
        expect(impossible(floor.state, floor.recorded, floor.nowMs)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('what is in the bowl already says how much to take out', () => {
    const floor = mixingFloor(POOLISH_5);
    floor.ok({ type: 'weighIngredient', workpieceId: floor.id('P1'), lineId: '1-0', grams: 4500, lotNumbers: [] });
    floor.ok(scale(floor, 'P1', '1-3', 108));
    expect(line(floor, 'P1', '1-0')).toMatchObject({ grams: 3600, takeOutG: 900, weighed: { grams: 4500 } });
  });

  test('undo brings the whole batch back', () => {
    const floor = mixingFloor(POOLISH_5);
    const before = floor.piece('P1');
    const commandId = floor.ok(scale(floor, 'P1', '1-0', 2250));
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece('P1')).toEqual(before);
  });

  test('never upwards, never of a line that is not there, never once it is mixed', () => {
    const floor = mixingFloor(POOLISH_5);
    expect(refusalOf(floor, scale(floor, 'P1', '1-0', 4500))).toEqual({ code: 'nothingChanges', tag: 'P1' });
    expect(refusalOf(floor, scale(floor, 'P1', '1-0', 9000))).toEqual({ code: 'nothingChanges', tag: 'P1' });
    expect(refusalOf(floor, scale(floor, 'P1', '0-9', 1))).toEqual({ code: 'lineUnknown', tag: 'P1', lineId: '0-9' });
    expect(refusalOf(floor, scale(floor, 'P1', '1-0', 30))).toEqual({ code: 'cutsTooHeavy', tag: 'P1', neededG: 90, hasG: 78.01 });
    floor.bringTo('P1', 'first-speed');
    expect(refusalOf(floor, scale(floor, 'P1', '1-0', 2250))).toEqual({ code: 'alreadyMixed', tag: 'P1' });
  });

  test('no more than the pots have can be said to be there of what is drawn', () => {
    const floor = mixingFloor({ ...LEVAIN_POT, doughG: 1000 }, RICH_10);
    floor.finish('L1', 'feed');
    const of = line(floor, 'R1', '1-2').grams;
    expect(of).toBe(2000);
    expect(refusalOf(floor, scale(floor, 'R1', '1-2', 1500))).toEqual({
      code: 'notEnoughToDraw',
      tag: 'R1',
      formulaId: 'levain',
      neededG: 1500,
      hasG: 900,
    });
    floor.ok(scale(floor, 'R1', '1-2', 900));
    expect(floor.piece('R1').grams).toBeCloseTo(21_760 * 0.45, 0);
    floor.wait(120);
    floor.bringTo('R1', 'first-speed');
    expect(floor.piece('L1').grams).toBeCloseTo(100, 0);
  });

  test('less was spilt than is left: a batch is never scaled below nothing', () => {
    const floor = mixingFloor(POOLISH_5);
    floor.ok({ type: 'nameLoss', workpieceId: floor.id('P1'), what: 'spill', grams: 9000 });
    expect(refusalOf(floor, scale(floor, 'P1', '1-0', 2250))).toEqual({
      code: 'moreThanThere',
      tag: 'P1',
      fromTag: 'P1',
      neededG: 5850.75,
      hasG: 2701.5,
    });
  });

  test('a first feed is scaled like a dough, a pot that stands is not: what is fed is said when it is', () => {
    const floor = mixingFloor(LEVAIN_POT);
    floor.ok(scale(floor, 'L1', '0-0', 1000));
    expect(weighOut(floor, 'L1').parts[0]?.lines.map((one) => one.grams)).toEqual([1000, 1250, 250]);
    floor.finish('L1', 'feed');
    expect(floor.piece('L1').grams).toBe(2500);
    expect(refusalOf(floor, scale(floor, 'L1', '0-0', 100))).toEqual({ code: 'alreadyMixed', tag: 'L1' });
  });
});

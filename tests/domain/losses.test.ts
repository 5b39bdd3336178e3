import { describe, expect, test } from 'vitest';
import type { FloorEvent } from '../../shared/floor/events.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { harbourFile } from './support/harbour.ts';
import { idOf } from './support/ids.ts';
import { expectUndone } from './support/undone.ts';

function lastEvents(floor: Floor): readonly FloorEvent[] {
  const commandId = floor.recorded.at(-1)?.commandId;
  return floor.recorded.filter((recorded) => recorded.commandId === commandId).map((recorded) => recorded.event);
}

describe('D29 losses are named', () => {
  test('so much is gone, and why', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1');
    floor.ok({ type: 'nameLoss', workpieceId: floor.id('C1'), what: 'spill', grams: 350 });
    expect(lastEvents(floor)).toEqual([{ type: 'lossNamed', workpieceId: floor.id('C1'), what: 'spill', grams: 350, atMs: floor.nowMs }]);
    expect(floor.piece('C1')).toMatchObject({ grams: 8850, pieces: 10, scrapG: 0 });
  });

  test('trimmings are still dough, and lie beside it', () => {
    const floor = Floor.harbour().bringTo('O1', 'sheet');
    const { grams, scrapG } = floor.piece('O1');
    floor.ok({ type: 'nameLoss', workpieceId: floor.id('O1'), what: 'trim', grams: 120 });
    expect(floor.piece('O1')).toMatchObject({ grams: grams - 120, scrapG: scrapG + 120 });
  });

  test('pieces that are gone are off the count too', () => {
    const floor = Floor.harbour().bringTo('R1', 'pack');
    floor.ok({ type: 'nameLoss', workpieceId: floor.id('R1'), what: 'pieces', grams: 700, pieces: 1 });
    const fact = { workpieceId: floor.id('R1'), atMs: floor.nowMs };
    expect(lastEvents(floor)).toEqual([
      { type: 'lossNamed', ...fact, what: 'pieces', grams: 700, pieces: 1 },
      { type: 'countCorrected', ...fact, fromPieces: 8, toPieces: 7 },
    ]);
    expect(floor.piece('R1')).toMatchObject({ pieces: 7, plannedPieces: 8 });
  });

  test('what the oven takes of the demo’s loaves lies where the trade’s rule has it, and count and weight agree with it', () => {
    // Gisslen’s rule for loaves: 10 to 13 % of the dough’s weight is lost in the oven.
    for (const [tag, productId] of [
      ['C1', 'country-loaf'],
      ['R1', 'rye-tin'],
    ] as const) {
      const product = harbourFile().products.find((candidate) => candidate.id === productId);
      assert(product !== undefined, `no product ${productId}`);
      const floor = Floor.harbour().bringTo(tag, 'pack');
      const { pieces, grams } = floor.piece(tag);
      // Whatever lay beside the pieces stays beside them: the loaves are what was scaled.
      const scaledG = (pieces ?? 0) * product.pieceG;
      const lostG = (scaledG * product.bakeLossPct) / 100;
      floor.ok({ type: 'nameLoss', workpieceId: floor.id(tag), what: 'bake', grams: lostG });
      const loafG = (floor.piece(tag).grams - (grams - scaledG)) / (pieces ?? 0);
      expect(loafG / product.pieceG, productId).toBeGreaterThanOrEqual(0.87);
      expect(loafG / product.pieceG, productId).toBeLessThanOrEqual(0.9);
    }
  });

  test('not more than there is, in weight or in pieces', () => {
    given((floor) => floor.bringTo('C1', 'bulk-1'))
      .when((floor) => ({ type: 'nameLoss', workpieceId: floor.id('C1'), what: 'spill', grams: 9201 }))
      .thenRefusal<'moreThanThere'>({ code: 'moreThanThere', tag: 'C1', fromTag: 'C1', neededG: 9201, hasG: 9200 });
    given((floor) => floor.bringTo('C1', 'bulk-1'))
      .when((floor) => ({ type: 'nameLoss', workpieceId: floor.id('C1'), what: 'pieces', grams: 900, pieces: 11 }))
      .thenRefusal<'morePiecesThanThere'>({ code: 'morePiecesThanThere', tag: 'C1', wanted: 11, has: 10 });
  });

  test('nothing is no loss, and what has no pieces loses none', () => {
    given()
      .when((floor) => ({ type: 'nameLoss', workpieceId: floor.id('C1'), what: 'spill', grams: 0 }))
      .thenRefusal<'nothingChanges'>({ code: 'nothingChanges', tag: 'C1' });
    given()
      .when((floor) => ({ type: 'nameLoss', workpieceId: floor.id('M1'), what: 'pieces', grams: 60, pieces: 1 }))
      .thenRefusal<'noPieces'>({ code: 'noPieces', tag: 'M1' });
  });

  test('what loses its last piece, or all its weight, is off the floor with what it held', () => {
    const pieces = Floor.harbour().bringTo('R1', 'bake');
    const { vessels, grams } = pieces.piece('R1');
    pieces.ok({ type: 'nameLoss', workpieceId: pieces.id('R1'), what: 'pieces', grams, pieces: 8 });
    expect(lastEvents(pieces).map((event) => event.type)).toEqual([
      'lossNamed',
      'countCorrected',
      'ovenUnloaded',
      ...vessels.map(() => 'vesselsReturned'),
      'workpieceDiscarded',
    ]);
    const spilt = Floor.harbour().bringTo('M1', 'bulk');
    spilt.ok({ type: 'nameLoss', workpieceId: spilt.id('M1'), what: 'spill', grams: spilt.piece('M1').grams });
    expect(spilt.piece('M1')).toMatchObject({ ending: 'discarded', grams: 0 });
  });

  test('undo brings the weight, the count and the place back', () => {
    const floor = Floor.harbour().bringTo('R1', 'bake');
    expectUndone(floor, { type: 'nameLoss', workpieceId: floor.id('R1'), what: 'trim', grams: 30 });
    expectUndone(floor, { type: 'nameLoss', workpieceId: floor.id('R1'), what: 'pieces', grams: 750, pieces: 1 });
    expectUndone(floor, { type: 'nameLoss', workpieceId: floor.id('R1'), what: 'pieces', grams: 6000, pieces: 8 });
  });

  test('a dough that is not here, or no longer, loses nothing', () => {
    given()
      .when(() => ({ type: 'nameLoss', workpieceId: idOf(88_888), what: 'spill', grams: 1 }))
      .thenRefusal<'workpieceUnknown'>({ code: 'workpieceUnknown', workpieceId: idOf(88_888) });
  });
});

describe('D29 what went in beside the way', () => {
  test('is on top of the weight, with its lot and its allergens', () => {
    const floor = Floor.harbour().bringTo('C1', 'turn-out');
    floor.ok({
      type: 'addIngredient',
      workpieceId: floor.id('C1'),
      stepId: 'turn-out',
      ingredientId: 'milk',
      grams: 150,
      lotNumber: 'L-77',
    });
    expect(lastEvents(floor)).toEqual([
      {
        type: 'ingredientAdded',
        workpieceId: floor.id('C1'),
        stepId: 'turn-out',
        atMs: floor.nowMs,
        ingredientId: 'milk',
        grams: 150,
        lotNumber: 'L-77',
        isExtra: true,
      },
    ]);
    expect(floor.piece('C1')).toMatchObject({
      grams: 9350,
      broughtIn: { allergens: ['milk'], lotNumbers: [{ ingredientId: 'milk', lotNumber: 'L-77' }] },
    });
  });

  test('a lot number alone adds no weight', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'addIngredient', workpieceId: floor.id('C1'), stepId: 'weigh', ingredientId: 'salt', grams: 0, lotNumber: 'S 4' });
    expect(lastEvents(floor)).toEqual([
      {
        type: 'ingredientAdded',
        workpieceId: floor.id('C1'),
        stepId: 'weigh',
        atMs: floor.nowMs,
        ingredientId: 'salt',
        grams: 0,
        lotNumber: 'S 4',
      },
    ]);
    expect(floor.piece('C1')).toMatchObject({ grams: 9200, broughtIn: { lotNumbers: [{ ingredientId: 'salt', lotNumber: 'S 4' }] } });
  });

  test('something that the house has, and some of it', () => {
    given()
      .when((floor) => ({ type: 'addIngredient', workpieceId: floor.id('C1'), stepId: 'weigh', ingredientId: 'gravel', grams: 5 }))
      .thenRefusal<'ingredientUnknown'>({ code: 'ingredientUnknown', tag: 'C1', stepId: 'weigh', ingredientId: 'gravel' });
    given()
      .when((floor) => ({ type: 'addIngredient', workpieceId: floor.id('C1'), stepId: 'weigh', ingredientId: 'salt', grams: 0 }))
      .thenRefusal<'nothingChanges'>({ code: 'nothingChanges', tag: 'C1', stepId: 'weigh' });
  });

  test('at the step where it stands', () => {
    given()
      .when((floor) => ({ type: 'addIngredient', workpieceId: floor.id('C1'), stepId: 'divide', ingredientId: 'salt', grams: 5 }))
      .thenRefusal<'stepNotReached'>({ code: 'stepNotReached', tag: 'C1', stepId: 'divide', currentStepId: 'weigh' });
  });

  test('undo takes weight, lot and allergens out again', () => {
    const floor = Floor.harbour().bringTo('C1', 'turn-out');
    expectUndone(floor, {
      type: 'addIngredient',
      workpieceId: floor.id('C1'),
      stepId: 'turn-out',
      ingredientId: 'milk',
      grams: 150,
      lotNumber: 'L-77',
    });
  });
});

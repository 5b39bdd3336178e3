import { describe, expect, test } from 'vitest';
import { loadEvents } from '../../shared/floor/decide/loads.ts';
import { idOf, OTHER_PHONE } from './support/ids.ts';
import { edgesG, lasting, levainFloor, PLAIN_20, POT, type Listed } from './support/levain-house.ts';
import type { Floor } from './support/floor.ts';

const TWO: Listed = {
  formula: 'plain',
  min: 0,
  doughG: 18_000,
  cuts: [
    { product: 'plain-loaf', pieces: 12 },
    { product: 'plain-round', pieces: 8 },
  ],
};

/** A dough divided into 12 loaves, P1a, and 8 rounds, P1b, of 880 g each. */
function divided(): Floor {
  const floor = levainFloor(TWO).bringTo('P1', 'divide');
  floor.finish('P1', 'divide');
  return floor;
}

function load(floor: Floor, tag: string, ...pieces: number[]): string {
  return floor.ok({ type: 'makeLoads', workpieceId: floor.id(tag), pieces });
}

function fault(floor: Floor, tag: string, ...pieces: number[]): object {
  const { decision } = floor.give({ type: 'makeLoads', workpieceId: floor.id(tag), pieces });
  return decision.ok ? {} : decision.fault;
}

/** Takes so many tins, as a step that claims them would. */
function inTins(floor: Floor, tag: string, count: number): void {
  floor.record(
    { type: 'vesselsTaken', workpieceId: floor.id(tag), vesselId: 'tin', count, atMs: floor.nowMs },
    idOf(6_000_000),
    0,
    OTHER_PHONE,
  );
}

const tins = (floor: Floor, tag: string): number => floor.piece(tag).vessels.find((held) => held.vesselId === 'tin')?.count ?? 0;

describe('D33 a cut goes on in loads', () => {
  test('each with its own count, weight and tag, standing where the cut stood', () => {
    const floor = divided();
    floor.finish('P1a', 'plain-loaf-shape');
    const { readyMs, steps } = floor.piece('P1a');
    load(floor, 'P1a', 6, 6);
    expect(floor.piece('P1a')).toMatchObject({ ending: 'divided' });
    for (const tag of ['P1a·1', 'P1a·2']) {
      expect(floor.piece(tag)).toMatchObject({ kind: 'load', pieces: 6, grams: 5280, parentId: floor.id('P1a'), readyMs, steps });
      expect(floor.due(tag).step.id).toBe('plain-loaf-prove');
    }
    expect(edgesG(floor, 'load', { from: 'P1a' })).toBe(12 * 880);
  });

  test('what is left over stays the cut, and later loads count on', () => {
    const floor = divided();
    load(floor, 'P1a', 5);
    expect(floor.piece('P1a')).toMatchObject({ pieces: 7, grams: 7 * 880, finishedMs: null });
    load(floor, 'P1a', 3, 4);
    expect([floor.piece('P1a·2').pieces, floor.piece('P1a·3').pieces, floor.piece('P1a').ending]).toEqual([3, 4, 'divided']);
    expect(edgesG(floor, 'load', { from: 'P1a' })).toBe(12 * 880);
  });

  test('a dough that becomes one product too, once it is on that product’s way', () => {
    const floor = levainFloor(PLAIN_20);
    expect(fault(floor, 'P1', 10)).toEqual({ code: 'stepNotReached', tag: 'P1', stepId: 'plain-loaf-shape', currentStepId: 'weigh' });
    floor.bringTo('P1', 'plain-loaf-shape');
    const { grams } = floor.piece('P1');
    load(floor, 'P1', 7, 7, 6);
    const loads = ['P1·1', 'P1·2', 'P1·3'].map((tag) => floor.piece(tag));
    expect(loads.map((one) => one.pieces)).toEqual([7, 7, 6]);
    expect(loads.reduce((sum, one) => sum + one.grams, 0)).toBeCloseTo(grams, 6);
  });

  test('tenths of a gram that do not go up are not lost', () => {
    const floor = divided();
    floor.record({ type: 'lossNamed', workpieceId: floor.id('P1a'), what: 'spill', grams: 0.7, atMs: floor.nowMs });
    const { grams } = floor.piece('P1a');
    load(floor, 'P1a', 5, 5);
    const partsG = ['P1a', 'P1a·1', 'P1a·2'].map((tag) => floor.piece(tag).grams);
    expect(partsG.reduce((sum, one) => sum + one, 0)).toBeCloseTo(grams, 9);
  });

  test('vessels go along with the pieces, whole ones, none twice and none lost', () => {
    const floor = divided();
    inTins(floor, 'P1a', 7);
    load(floor, 'P1a', 5, 4);
    expect([tins(floor, 'P1a·1'), tins(floor, 'P1a·2'), tins(floor, 'P1a')]).toEqual([3, 2, 2]);
  });
});

describe('D33 a product that goes on in loads makes them where it says', () => {
  test('as even as they come, and undone with the tap', () => {
    const floor = divided();
    const before = floor.state;
    const commandId = floor.finish('P1b', 'plain-round-shape');
    expect(['P1b·1', 'P1b·2', 'P1b·3'].map((tag) => floor.piece(tag).pieces)).toEqual([3, 3, 2]);
    expect(floor.due('P1b·3').step.id).toBe('plain-round-prove');
    expect(edgesG(floor, 'load', { from: 'P1b' })).toBe(8 * 880);
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });
});

describe('D33 what cannot go on in loads', () => {
  test('more pieces than there are, all of them as one, a load again, what has no pieces', () => {
    const floor = divided();
    const at = { tag: 'P1a', stepId: 'plain-loaf-shape' };
    expect(fault(floor, 'P1a', 7, 6)).toEqual({ code: 'morePiecesThanThere', ...at, wanted: 13, has: 12 });
    expect(fault(floor, 'P1a', 12)).toEqual({ code: 'nothingChanges', ...at });
    load(floor, 'P1a', 6, 6);
    expect(fault(floor, 'P1a·1', 3)).toEqual({ code: 'nothingChanges', tag: 'P1a·1', stepId: 'plain-loaf-shape' });
    const pot = levainFloor(POT);
    expect(fault(pot, 'L1', 3)).toEqual({ code: 'noPieces', tag: 'L1', stepId: 'feed' });
    const context = { commandId: idOf(1), deviceId: idOf(2), stationId: null, nowMs: 0, tapMs: 0, tapUncertain: false };
    expect(loadEvents(pot.state, pot.piece('L1'), 'feed', [1], 0, context)).toEqual({
      ok: false,
      fault: { code: 'noPieces', tag: 'L1', stepId: 'feed' },
    });
  });

  test('what is in the oven comes out together', () => {
    const floor = divided().bringTo('P1a', 'plain-loaf-load');
    floor.finish('P1a', 'plain-loaf-load');
    expect(fault(floor, 'P1a', 6)).toEqual({ code: 'workRestsOnIt', tag: 'P1a', stepId: 'plain-loaf-bake' });
  });
});

describe('D33 loads are undone to exactly what was', () => {
  test.each([[[6, 6]], [[5]]])('%j', (pieces) => {
    const floor = divided();
    inTins(floor, 'P1a', 12);
    const before = floor.state;
    floor.ok({ type: 'undoCommand', commandId: load(floor, 'P1a', ...pieces) });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });

  test('but not once one of them has had something come of it', () => {
    const floor = levainFloor(TWO, { ...PLAIN_20, min: 5 }).bringTo('P1', 'divide');
    const commandId = floor.finish('P1', 'divide');
    floor.ok({ type: 'makeLoads', workpieceId: floor.id('P1a'), pieces: [5] }, { deviceId: OTHER_PHONE });
    expect(floor.give({ type: 'undoCommand', commandId }).decision).toEqual({ ok: false, fault: { code: 'workRestsOnIt', tag: 'P1a' } });
  });

  test('nor once others have taken the vessels that it gave free', () => {
    const floor = divided();
    inTins(floor, 'P1a', 30);
    const commandId = idOf(6_000_001);
    floor.record(
      { type: 'vesselsReturned', workpieceId: floor.id('P1a'), vesselId: 'tin', count: 30, freeMs: floor.nowMs, atMs: floor.nowMs },
      commandId,
    );
    inTins(floor, 'P1b', 10);
    const free = floor.state;
    inTins(floor, 'P1b', 1);
    expect(floor.give({ type: 'undoCommand', commandId }).decision).toEqual({ ok: false, fault: { code: 'workRestsOnIt', tag: 'P1a' } });
    floor.state = free;
    floor.ok({ type: 'undoCommand', commandId });
    expect(tins(floor, 'P1a')).toBe(30);
  });
});

describe('D33 weights through divide, loads and bake', () => {
  /**
   * W. Gisslen, Professional Baking: loaves lose 10 to 13 % of the dough’s weight in the oven, so a piece is scaled at the
   * baked weight through 0.87 to 0.90. 780 g of bread is 867 to 897 g of dough, within which the house’s 880 g lie.
   */
  test('agree with the trade’s 10 to 13 % for loaves', () => {
    const floor = divided();
    load(floor, 'P1a', 6, 6);
    const lossPct = floor.state.products['plain-loaf@1']?.bakeLossPct ?? 0;
    let breadG = 0;
    for (const tag of ['P1a·1', 'P1a·2']) {
      const { id, grams } = floor.piece(tag);
      floor.record({ type: 'lossNamed', workpieceId: id, what: 'bake', grams: (grams * lossPct) / 100, atMs: floor.nowMs });
      breadG += floor.piece(tag).grams;
    }
    const perLoafG = breadG / 12;
    expect(perLoafG / 0.9).toBeLessThan(880);
    expect(perLoafG / 0.87).toBeGreaterThan(880);
    expect([780 / 0.9, 780 / 0.87].map(Math.round)).toEqual([867, 897]);
    const scaledG = edgesG(floor, 'divide', { from: 'P1' });
    expect(scaledG + floor.piece('P1').scrapG, 'what was divided and what was left is what was mixed').toBe(18_000);
    expect(edgesG(floor, 'load', { from: 'P1a' })).toBe(edgesG(floor, 'divide', { to: 'P1a' }));
  });
});

import { describe, expect, test } from 'vitest';
import { freeVessels, heldVessels } from '../../shared/floor/vessels.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, harbourFile, OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const MINUTE_MS = 60_000;

/** The demo day in a kitchen with so many rye tins, one for each loaf. */
function withTins(count: number): Floor {
  const file = harbourFile();
  const products = file.products.map((product) =>
    product.id !== 'rye-tin'
      ? product
      : { ...product, way: product.way.map((step) => ({ ...step, claims: step.claims.map((claim) => ({ ...claim, perPieces: 1 })) })) },
  );
  const vessels = file.kitchen.vessels.map((vessel) => (vessel.id === 'tin' ? { ...vessel, count } : vessel));
  const floor = new Floor();
  floor.ok(bringInCommand({ ...file, products, kitchen: { ...file.kitchen, vessels } }, OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

describe('D40 counted vessels are taken, held and given back after their turn-round', () => {
  test('tins are taken when the rye is tinned and given back when it is depanned', () => {
    const floor = Floor.harbour().bringTo('R1', 'prove');
    expect(floor.piece('R1').vessels).toEqual([{ vesselId: 'tin', count: 8 }]);
    expect(freeVessels(floor.state, 'tin', floor.nowMs)).toBe(8);
    floor.bringTo('R1', 'depan');
    expect(heldVessels(floor.state, 'tin')).toBe(8);
    floor.finish('R1', 'depan');
    expect(heldVessels(floor.state, 'tin')).toBe(0);
  });

  test('they can be taken again once their turn-round is over, not before', () => {
    const floor = Floor.harbour().bringTo('R1', 'depan');
    floor.finish('R1', 'depan');
    expect(freeVessels(floor.state, 'tin', floor.nowMs)).toBe(8);
    floor.wait(19);
    expect(freeVessels(floor.state, 'tin', floor.nowMs)).toBe(8);
    floor.wait(1);
    expect(freeVessels(floor.state, 'tin', floor.nowMs)).toBe(16);
  });

  test('bannetons are empty once the loaves are on the deck', () => {
    const floor = Floor.harbour().bringTo('C1', 'load');
    expect(heldVessels(floor.state, 'banneton')).toBe(10);
    floor.finish('C1', 'load');
    expect(heldVessels(floor.state, 'banneton')).toBe(0);
  });

  test('too few are told with how many there are and when the others come back', () => {
    const floor = withTins(10).bringTo('R1', 'depan').bringTo('R2', 'tin');
    const short = { type: 'finishStep' as const, workpieceId: floor.id('R2'), stepId: 'tin' };
    expect(floor.give(short).decision).toEqual({
      ok: false,
      fault: { code: 'vesselsShort', tag: 'R2', stepId: 'tin', vesselId: 'tin', needed: 8, free: 2 },
    });
    floor.finish('R1', 'depan');
    const freeMs = floor.nowMs + 20 * MINUTE_MS;
    expect(floor.give(short).decision).toMatchObject({ ok: false, fault: { code: 'vesselsShort', free: 2, freeMs } });
    floor.until(freeMs).finish('R2', 'tin');
    expect(heldVessels(floor.state, 'tin')).toBe(8);
  });

  test('knowingly it goes on with what there is', () => {
    const floor = withTins(10).bringTo('R1', 'prove').bringTo('R2', 'tin');
    floor.ok({ type: 'finishStep', workpieceId: floor.id('R2'), stepId: 'tin', despite: ['vesselsShort'] });
    expect(heldVessels(floor.state, 'tin')).toBe(10);
    expect(freeVessels(floor.state, 'tin', floor.nowMs)).toBe(0);
    expect(floor.piece('R2').steps['tin']?.despite).toEqual(['vesselsShort']);
  });

  test('what is given up gives back what it holds', () => {
    const floor = Floor.harbour().bringTo('R1', 'prove');
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('R1'), reason: 'fell' });
    expect([heldVessels(floor.state, 'tin'), floor.piece('R1').vessels]).toEqual([0, []]);
  });

  test('undo of the depanning has the tins in use again', () => {
    const floor = Floor.harbour().bringTo('R1', 'depan');
    const before = floor.state;
    const commandId = floor.finish('R1', 'depan');
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.state.vesselReturns).toEqual(before.vesselReturns);
    expect(floor.piece('R1').vessels).toEqual([{ vesselId: 'tin', count: 8 }]);
  });

  test('so many done go on as a load with their tins; the others are tinned after', () => {
    const floor = withTins(16).bringTo('R1', 'tin');
    floor.ok({ type: 'finishStep', workpieceId: floor.id('R1'), stepId: 'tin', loadPieces: 5 });
    expect(floor.piece('R1·1')).toMatchObject({ kind: 'load', pieces: 5, vessels: [{ vesselId: 'tin', count: 5 }] });
    expect(floor.due('R1·1')).toMatchObject({ phase: 'resting', step: { id: 'prove' } });
    expect(floor.piece('R1').pieces).toBe(3);
    expect(floor.due('R1')).toMatchObject({ phase: 'working', step: { id: 'tin' } });
    expect(floor.piece('R1').grams + floor.piece('R1·1').grams).toBe(8 * 750);
  });
});

import { describe, expect, test } from 'vitest';
import type { Mixer } from '../../shared/documents/kitchen.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, harbourFile, OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const MINUTE_MS = 60_000;

/** The demo day in a kitchen whose mixers differ by so much. */
function withMixers(change: (mixer: Mixer) => Mixer, standOff = false): Floor {
  const file = harbourFile();
  const floor = new Floor();
  const mixers = file.kitchen.mixers.map(change);
  const formulas = file.formulas.map((formula) =>
    standOff && formula.id === 'country'
      ? {
          ...formula,
          method: formula.method.map((step) => ({ ...step, claims: step.claims.map((claim) => ({ ...claim, ids: ['planetary'] })) })),
        }
      : formula,
  );
  floor.ok(bringInCommand({ ...file, formulas, kitchen: { ...file.kitchen, mixers } }, OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

describe('D39 mixers, bowls and what goes in late', () => {
  test('a dough that stands in a bowl that comes off leaves the mixer to another, and keeps the bowl', () => {
    const floor = withMixers((mixer) => mixer, true).bringTo('C1', 'stand');
    expect(floor.piece('C1')).toMatchObject({ mixerId: null, bowlId: 'bowl-1' });
    floor.bringTo('M1', 'first-speed');
    expect(floor.piece('M1')).toMatchObject({ mixerId: 'planetary', bowlId: 'bowl-2' });
  });

  test('it is told who has the mixer when its stand is over, and goes on once that one is free', () => {
    const floor = withMixers((mixer) => mixer, true).bringTo('C1', 'stand');
    floor.bringTo('M1', 'first-speed');
    const { decision } = floor.give({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'salt' });
    expect(decision).toMatchObject({ ok: false, fault: { code: 'mixerBusy', mixerId: 'planetary', busyWithTag: 'M1' } });
    floor.bringTo('M1', 'bulk');
    floor.finish('C1', 'salt');
    expect(floor.piece('C1')).toMatchObject({ mixerId: 'planetary', bowlId: 'bowl-1' });
  });

  test('a bowl that does not come off keeps its mixer through the stand', () => {
    const floor = Floor.harbour().bringTo('C1', 'stand');
    expect(floor.piece('C1')).toMatchObject({ mixerId: 'spiral', bowlId: 'spiral-bowl' });
  });

  test('mixer and bowl are free once the dough is turned out', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1');
    expect(floor.piece('C1')).toMatchObject({ mixerId: null, bowlId: null });
  });

  test('where every bowl that fits is in use, it says whose they are', () => {
    const floor = withMixers((mixer) => mixer, true)
      .bringTo('C1', 'stand')
      .bringTo('C2', 'stand')
      .bringTo('M1', 'fill-bowl');
    const { decision } = floor.give({ type: 'finishStep', workpieceId: floor.id('M1'), stepId: 'fill-bowl' });
    expect(decision).toEqual({
      ok: false,
      fault: { code: 'noFreeBowl', tag: 'M1', stepId: 'first-speed', mixerId: 'planetary', takenByTags: ['C1', 'C2'] },
    });
  });

  test('a mixer that is being cleaned is not to be had, and is again when the cleaning is over', () => {
    const floor = Floor.harbour().bringTo('C1', 'fill-bowl');
    const resource = { kind: 'mixer' as const, id: 'spiral' };
    const untilMs = floor.nowMs + 10 * MINUTE_MS;
    floor.ok({ type: 'blockResource', resource, why: 'cleaning', minutes: 10 });
    const { decision } = floor.give({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'fill-bowl' });
    expect(decision).toEqual({
      ok: false,
      fault: { code: 'resourceBlocked', tag: 'C1', stepId: 'first-speed', resource, why: 'cleaning', untilMs },
    });
    floor.wait(10).finish('C1', 'fill-bowl');
    expect(floor.piece('C1').mixerId).toBe('spiral');
  });

  test('a deck that is out of order takes no load', () => {
    const floor = Floor.harbour().bringTo('R1', 'load');
    for (const id of ['top', 'bottom']) floor.ok({ type: 'blockResource', resource: { kind: 'deck', id }, why: 'outOfOrder' });
    const { decision } = floor.give({ type: 'finishStep', workpieceId: floor.id('R1'), stepId: 'load' });
    expect(decision).toMatchObject({ ok: false, fault: { code: 'resourceBlocked', why: 'outOfOrder' } });
  });

  // EU 1169/2011 Annex II names the allergens; that a mixer is cleaned between them is common practice.
  test('after milk and egg a dough without them wants the mixer cleaned, or goes on knowingly, and the record says so', () => {
    const floor = withMixers((mixer) => (mixer.id === 'planetary' ? { ...mixer, changeOverMin: 10 } : mixer));
    floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'spiral' }, why: 'outOfOrder' });
    floor.bringTo('M1', 'bulk').bringTo('R1', 'fill-bowl');
    const finish = { type: 'finishStep' as const, workpieceId: floor.id('R1'), stepId: 'fill-bowl' };
    expect(floor.give(finish).decision).toEqual({
      ok: false,
      fault: {
        code: 'changeOverNeeded',
        tag: 'R1',
        stepId: 'first-speed',
        mixerId: 'planetary',
        allergens: ['egg', 'milk'],
        cleanMin: 10,
      },
    });
    const knowing = floor.ok({ ...finish, despite: ['changeOver'] });
    expect(floor.piece('R1').steps['first-speed']?.despite).toEqual(['changeOver']);
    floor.ok({ type: 'undoCommand', commandId: knowing });
    expect(floor.state.residues['planetary']?.allergens).toEqual(['egg', 'milk', 'wheat']);
    floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'planetary' }, why: 'allergenChangeOver' });
    floor.ok({ type: 'freeResource', resource: { kind: 'mixer', id: 'planetary' } });
    floor.ok(finish);
    expect(floor.piece('R1').mixerId).toBe('planetary');
  });

  test('water held back: all of it went in, or as much as somebody says; the rest is named and no longer weighed', () => {
    const all = Floor.harbour().bringTo('C1', 'salt');
    const before = all.piece('C1').grams;
    all.finish('C1', 'salt');
    expect(all.piece('C1').grams).toBe(before);

    const some = Floor.harbour().bringTo('C1', 'salt');
    some.ok({ type: 'finishStep', workpieceId: some.id('C1'), stepId: 'salt', usedHeldBackG: 100 });
    const used = some.recorded.map(({ event }) => event).find((event) => event.type === 'waterHeldBackUsed');
    // 3 % of the flour: 600 g in the levain and 4700 g in the dough of 9200 g that the formula makes.
    expect(used).toMatchObject({ usedG: 100, heldG: 159 });
    expect(some.piece('C1').grams).toBe(before - 59);
  });

  test('more than was held back cannot have been used of it', () => {
    const floor = Floor.harbour().bringTo('C1', 'salt');
    const { decision } = floor.give({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'salt', usedHeldBackG: 160 });
    expect(decision).toEqual({
      ok: false,
      fault: { code: 'moreThanThere', tag: 'C1', stepId: 'salt', fromTag: 'C1', neededG: 160, hasG: 159 },
    });
  });

  test('late salt is a fact of the batch with its weight', () => {
    const floor = Floor.harbour().bringTo('C1', 'salt');
    floor.finish('C1', 'salt');
    const salt = floor.recorded.map(({ event }) => event).filter((event) => event.type === 'ingredientAdded');
    expect(salt).toMatchObject([{ ingredientId: 'salt', grams: 106, stepId: 'salt' }]);
  });
});

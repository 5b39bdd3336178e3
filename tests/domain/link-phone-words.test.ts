import { describe, expect, test } from 'vitest';
import { cardOf, firstFreeSlots, toggled } from '../../display/phone/card-model.ts';
import { didWords } from '../../display/phone/did-words.ts';
import { factsOf } from '../../display/phone/floor-facts.ts';
import { refusalWords } from '../../display/words/en/refusals.ts';
import type { Refusal } from '../../shared/floor/refusals.ts';
import { Floor } from './support/floor.ts';
import { OTHER_PHONE, PHONE } from './support/ids.ts';

const DEVICES = [
  { id: PHONE, name: 'Bench phone', stationId: 'bench' },
  { id: OTHER_PHONE, name: 'Oven phone', stationId: null },
];

function told(floor: Floor, refusal: Refusal): string {
  return refusalWords(refusal, factsOf(floor.state, DEVICES, PHONE));
}

describe('refusals in words', () => {
  const floor = Floor.harbour();
  // Harbour time is London's, which is UTC in March.
  const atMs = Date.UTC(2026, 2, 7, 5, 42);
  const done = { code: 'stepAlreadyDone', tag: 'C1', stepId: 'fold-1', atMs, skipped: false } as const;

  test('say when and at which station; else on which device', () => {
    expect(told(floor, { ...done, stationId: 'bench', deviceId: OTHER_PHONE })).toBe('C1 fold: done 05:42 at the bench.');
    expect(told(floor, { ...done, deviceId: OTHER_PHONE })).toBe('C1 fold: done 05:42 on Oven phone.');
    expect(told(floor, { ...done, deviceId: PHONE })).toBe('C1 fold: done 05:42 on this phone.');
    expect(told(floor, { ...done, skipped: true })).toBe('C1 fold: skipped 05:42.');
  });

  test('name the slot that is taken and those that are free', () => {
    expect(
      told(floor, { code: 'slotTaken', tag: 'C1', slotId: 'top-left', takenByTag: 'R1', freeSlotIds: ['top-right', 'bottom-left'] }),
    ).toBe('C1: Top left has R1 in it. Free: Top right and Bottom left.');
    expect(told(floor, { code: 'noFreeSlot', tag: 'C1', deckIds: ['hearth'], takenByTags: ['O1', 'O2'] })).toBe(
      'C1: no room: Hearth taken by O1 and O2.',
    );
  });

  test('say that the phone keeps what the server could not', () => {
    expect(told(floor, { code: 'notKept', cause: 'diskFull' })).toMatch(/disk is full.*keeps the tap/);
  });

  test('begin with a capital where nothing stands before', () => {
    expect(told(floor, { code: 'nothingToUndo' })).toMatch(/^Nothing to undo/);
  });
});

describe('a dough’s card', () => {
  test('offers started for work that takes a while, done always', () => {
    const floor = Floor.harbour();
    const card = cardOf(floor.state, floor.id('C1'), floor.nowMs);
    expect(card).toMatchObject({ canStart: true, isJudging: false, action: { id: 'weigh' } });
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    expect(cardOf(floor.state, floor.id('C1'), floor.nowMs)?.canStart).toBe(false);
  });

  test('says what follows, with times', () => {
    const floor = Floor.harbour();
    const card = cardOf(floor.state, floor.id('C1'), floor.nowMs);
    expect(card?.ahead.map((step) => step.verb)).toEqual(['add', 'firstSpeed', 'stand', 'add', 'secondSpeed']);
    expect(card?.ahead[0]?.fromMs).toBe(floor.nowMs + 6 * 60_000);
  });

  test('lists the cuts of a divide', () => {
    const floor = Floor.harbour().bringTo('M1', 'bulk');
    const card = cardOf(floor.state, floor.id('M1'), floor.nowMs);
    expect(card?.becomes).toEqual([
      { tag: 'M1a', name: 'Milk buns, plain', pieces: 30 },
      { tag: 'M1b', name: 'Milk buns, custard', pieces: 30 },
    ]);
  });

  test('shows the slots as they stand, with the first free ones chosen', () => {
    const floor = Floor.harbour().bringTo('R1', 'load');
    const card = cardOf(floor.state, floor.id('R1'), floor.nowMs);
    expect(card?.load?.decks.map((choice) => choice.deck.id)).toEqual(['top', 'bottom']);
    const first = firstFreeSlots(floor.state, floor.id('R1'), card?.action ?? expect.fail('no card'), floor.nowMs);
    expect(first).toHaveLength(card?.load?.needed ?? 0);
    // The deck that suits rye best lies below.
    expect(first[0]).toBe('bottom-left');
    floor.finish('R1');
    const taken = floor.piece('R1').slotIds;
    expect(taken).toEqual(first);
  });

  test('a slot more than needed lets go of the one chosen longest', () => {
    expect(toggled(['a', 'b'], 'c', 2)).toEqual(['b', 'c']);
    expect(toggled(['a', 'b'], 'a', 2)).toEqual(['b']);
    expect(toggled([], 'a', 1)).toEqual(['a']);
  });

  test('is gone when the dough is off the floor', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    const id = floor.id('M1');
    floor.finish('M1');
    expect(cardOf(floor.state, id, floor.nowMs)).toBeNull();
    expect(didWords(floor.state, { type: 'finishStep', workpieceId: id, stepId: 'divide' })).toBe('M1 divided');
  });
});

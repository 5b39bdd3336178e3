import { describe, expect, test } from 'vitest';
import { Floor } from './support/floor.ts';
import { OPENING_MS } from './support/harbour.ts';

const MINUTE_MS = 60_000;

/** Finishes a dough's steps, each the moment it is due, to the end. Returns `step@minute` of every tap. */
function live(floor: Floor, tag: string): string[] {
  const taps: string[] = [];
  while (floor.piece(tag).finishedMs === null) {
    const { id } = floor.due(tag).action;
    floor.finishWhenDue(tag);
    taps.push(`${id}@${(floor.nowMs - OPENING_MS) / MINUTE_MS}`);
  }
  return taps;
}

/** A demo day of which only one dough is touched. */
function lifeOf(tag: string): { floor: Floor; taps: string[] } {
  const floor = Floor.harbour();
  return { floor, taps: live(floor, tag) };
}

describe('D1 D2 a dough goes its way, one tap for each thing that hands do', () => {
  test('C1: mixed, folded twice, shaped, proved, baked, packed, under one tag', () => {
    const { floor, taps } = lifeOf('C1');
    expect(taps).toEqual([
      'weigh@0',
      'fill-bowl@0',
      'first-speed@4',
      'salt@24',
      'second-speed@38',
      'turn-out@38',
      'fold-1@68',
      'fold-2@98',
      'divide@158',
      'round@158',
      'shape@178',
      'score@253',
      'load@253',
      'take-out@298',
      'pack@358',
    ]);
    expect(floor.piece('C1')).toMatchObject({
      ending: 'finished',
      slotIds: [],
      mixerId: null,
      placeId: null,
      call: null,
      productId: 'country-loaf',
      pieces: 10,
    });
    expect(Object.values(floor.piece('C1').steps).every((life) => life.status === 'done')).toBe(true);
  });

  test('C3 rests through a cold night and comes back to the bench', () => {
    const floor = Floor.harbour();
    floor.bringTo('C3', 'retard');
    expect(floor.piece('C3').placeId).toBe('cold-room');
    expect(floor.due('C3')).toMatchObject({ phase: 'resting', action: { id: 'out-of-cold' } });
    expect((floor.due('C3').dueMs - floor.nowMs) / MINUTE_MS).toBe(720);
    floor.finishWhenDue('C3');
    expect(floor.piece('C3').placeId).toBe('bench');
    expect(live(floor, 'C3').map((tap) => tap.split('@')[0])).toEqual(['score', 'load', 'take-out', 'pack']);
  });

  test('R1: in tins from the mixer on, out of them hot, cooled for two hours', () => {
    const { taps } = lifeOf('R1');
    expect(taps).toEqual([
      'weigh@5',
      'fill-bowl@5',
      'first-speed@9',
      'second-speed@11',
      'turn-out@11',
      'divide@56',
      'tin@56',
      'seed@116',
      'load@116',
      'take-out@171',
      'depan@171',
      'pack@291',
    ]);
  });

  test('M1 is divided into two cuts, each with its own way from there', () => {
    const { floor, taps } = lifeOf('M1');
    expect(taps).toEqual([
      'weigh@20',
      'fill-bowl@20',
      'first-speed@24',
      'second-speed@32',
      'butter@32',
      'second-speed-2@38',
      'turn-out@38',
      'divide@98',
    ]);
    expect(floor.piece('M1')).toMatchObject({ ending: 'divided', childIds: [floor.id('M1a'), floor.id('M1b')] });
    expect(floor.piece('M1a')).toMatchObject({
      kind: 'cut',
      productId: 'milk-bun',
      pieces: 30,
      grams: 1800,
      parentId: floor.id('M1'),
      steps: {},
    });
    expect(floor.piece('M1b')).toMatchObject({ kind: 'cut', productId: 'custard-bun', pieces: 30, grams: 1650 });
    const plain = new Floor(floor.state, floor.nowMs);
    expect(live(plain, 'M1a')).toEqual(['round@98', 'wash@148', 'load@148', 'take-out@162', 'pack@192']);
    const custard = new Floor(plain.state, floor.nowMs);
    expect(live(custard, 'M1b')).toEqual(['shape@98', 'wash@148', 'load@148', 'take-out@161', 'fill@201', 'pack@231']);
    expect(
      Object.values(custard.state.workpieces)
        .filter((workpiece) => workpiece.finishedMs !== null)
        .map((workpiece) => workpiece.tag)
        .sort(),
    ).toEqual(['M1', 'M1a', 'M1b']);
  });

  test('the two cuts lie side by side on the top deck', () => {
    const { floor } = lifeOf('M1');
    floor.bringTo('M1a', 'bake').bringTo('M1b', 'bake');
    expect([floor.piece('M1a').slotIds, floor.piece('M1b').slotIds]).toEqual([['top-left'], ['top-right']]);
  });

  test('O1 is part-baked, waits, and is baked off at the back of the hearth', () => {
    const floor = Floor.harbour();
    floor.bringTo('O1', 'part-bake');
    expect(floor.piece('O1').slotIds).toEqual(['bottom-left']);
    floor.finishWhenDue('O1');
    expect(floor.piece('O1')).toMatchObject({ slotIds: [], placeId: 'cooling-rack' });
    floor.bringTo('O1', 'bake-off');
    expect(floor.piece('O1').slotIds).toEqual(['back']);
    expect(floor.due('O1')).toMatchObject({ phase: 'resting', action: { id: 'take-out' } });
    expect(floor.due('O1').dueMs - floor.nowMs).toBe(5.5 * MINUTE_MS);
    expect(live(floor, 'O1').map((tap) => tap.split('@')[0])).toEqual(['take-out', 'pack']);
  });

  test('Ch1: the cold filling goes on last, just before the oven', () => {
    const { floor, taps } = lifeOf('Ch1');
    expect(taps.map((tap) => tap.split('@')[0]).slice(-6)).toEqual(['round', 'shape', 'top', 'load', 'take-out', 'pack']);
    expect(floor.piece('Ch1').ending).toBe('finished');
  });

  test('the whole day can be lived, dough after dough in order of what is due', () => {
    const floor = Floor.harbour();
    for (;;) {
      const open = Object.values(floor.state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
      if (open.length === 0) break;
      const next = open
        .map((workpiece) => floor.due(workpiece.tag))
        .sort((a, b) => a.dueMs - b.dueMs || (a.workpiece.tag < b.workpiece.tag ? -1 : 1))[0];
      floor.finishWhenDue(next?.workpiece.tag ?? '');
    }
    expect(
      Object.values(floor.state.workpieces)
        .map((workpiece) => workpiece.tag)
        .sort(),
    ).toEqual(['C1', 'C2', 'C3', 'Ch1', 'M1', 'M1a', 'M1b', 'O1', 'O2', 'R1', 'R2']);
  });
});

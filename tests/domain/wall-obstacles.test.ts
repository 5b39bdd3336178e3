import { describe, expect, test } from 'vitest';
import { blockedMixers } from '../../display/wall/blocks.ts';
import { deckModel, lanesWanted } from '../../display/wall/deck-model.ts';
import { placeLoadTexts, type NamedLoad } from '../../display/wall/load-texts.ts';
import { textWidthPx } from '../../display/parts/text-width.ts';
import { obstacleLine } from '../../display/wall/obstacle-texts.ts';
import { obstacleOfRow } from '../../display/wall/obstacles.ts';
import { rowModel, secondLine } from '../../display/wall/row-model.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import { ovenLanes } from '../../shared/floor/oven-lanes.ts';
import { axisX } from '../../display/wall/axis.ts';
import { Floor } from './support/floor.ts';

const MINUTE_MS = 60_000;
const PX = 42;

function rowNow(floor: Floor, tag: string): Row {
  const row = rowOf(floor.state, floor.id(tag), floor.nowMs);
  if (row === null) throw new Error(`${tag} is off the floor`);
  return row;
}

/** C1 is weighed and wants the spiral, which is being cleaned till 03:25. */
function blockedFloor(): Floor {
  const floor = Floor.harbour();
  floor.finishWhenDue('C1');
  floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'spiral' }, why: 'cleaning', minutes: 25 });
  return floor;
}

describe('what is in the way', () => {
  test('stands in the row’s second line with the mildest way out; the row keeps its role', () => {
    const floor = blockedFloor();
    const row = rowNow(floor, 'C1');
    const model = rowModel(floor.state, [row], floor.nowMs);
    expect(model.role).toBe(row.role);
    expect(model.obstacle).toMatchObject({ what: 'Spiral cleaning till 03:25', brief: 'Spiral cleaning' });
    expect(secondLine(model, PX, 5000)).toEqual({
      text: `Spiral cleaning till 03:25 · ${model.obstacle?.way ?? '?'}`,
      untold: null,
    });
    expect(model.obstacle?.way).toMatch(/^(Planetary free|free 03:25 \(\+\d+\))$/);
  });

  test('where the row is narrow, it says at least that something is, and the line beside it says the rest', () => {
    const floor = blockedFloor();
    const model = rowModel(floor.state, [rowNow(floor, 'C1')], floor.nowMs);
    expect(secondLine(model, PX, 340)).toEqual({ text: 'Spiral cleaning', untold: model.obstacle });
    const narrowPx = textWidthPx('blocked', PX);
    const long = { what: 'Planetary has Ch12b', brief: 'no planetary mixer', way: null };
    expect(secondLine({ ...model, obstacle: long }, PX, narrowPx)).toEqual({ text: 'blocked', untold: long });
    const texts = { what: 'Spiral cleaning till 03:25', brief: 'Spiral cleaning', way: 'free 03:25 (+9)' };
    expect(obstacleLine(texts, ['Country loaf'], PX, 5000)).toBe('Spiral cleaning till 03:25 · free 03:25 (+9) · Country loaf');
    expect(obstacleLine(texts, ['Country loaf'], PX, 720)).toBe('Spiral cleaning · free 03:25 (+9)');
    expect(obstacleLine(texts, ['Country loaf'], PX, 360)).toBe('free 03:25 (+9)');
  });

  test('where only what is in the way has room in the row, the line beside it says the way out', () => {
    const floor = blockedFloor();
    const model = rowModel(floor.state, [rowNow(floor, 'C1')], floor.nowMs);
    const way = model.obstacle?.way ?? '';
    const whatPx = textWidthPx('Spiral cleaning till 03:25', PX);
    expect(secondLine(model, PX, whatPx)).toEqual({ text: 'Spiral cleaning till 03:25', untold: { what: way, brief: way, way: null } });
  });

  test('the word of the role stays before it', () => {
    const floor = blockedFloor();
    const row: Row = { ...rowNow(floor, 'C1'), role: 'late' };
    expect(secondLine(rowModel(floor.state, [row], floor.nowMs), PX, 5000).text).toMatch(/^late · Spiral cleaning till 03:25 · /);
  });

  test('is worked out once for each state and minute', () => {
    const floor = blockedFloor();
    const row = rowNow(floor, 'C1');
    const first = obstacleOfRow(floor.state, row, floor.nowMs);
    expect(first).not.toBeNull();
    expect(obstacleOfRow(floor.state, row, floor.nowMs + 59_999)).toBe(first);
    expect(obstacleOfRow(floor.state, row, floor.nowMs + MINUTE_MS)).not.toBe(first);
    expect(obstacleOfRow({ ...floor.state }, row, floor.nowMs)).not.toBe(first);
  });

  test('is not looked for more than ten minutes before a row is due, nor where hands are on it', () => {
    const floor = blockedFloor();
    const row = rowNow(floor, 'C1');
    const away: Row = { ...row, role: 'running', dueMs: floor.nowMs + 10 * MINUTE_MS + 1 };
    expect(obstacleOfRow({ ...floor.state }, away, floor.nowMs)).toBeNull();
    expect(obstacleOfRow({ ...floor.state }, { ...row, phase: 'working' }, floor.nowMs)).toBeNull();
  });

  test('nothing is said where nothing is', () => {
    const floor = Floor.harbour();
    floor.finishWhenDue('C1');
    expect(rowModel(floor.state, [rowNow(floor, 'C1')], floor.nowMs).obstacle).toBeNull();
  });
});

describe('what cannot be used', () => {
  test('mixers by name, until when where somebody said, no longer than that', () => {
    const floor = blockedFloor();
    floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'planetary' }, why: 'outOfOrder' });
    expect(blockedMixers(floor.state, floor.nowMs)).toEqual(['Spiral cleaning till 03:25', 'Planetary out of order']);
    expect(blockedMixers(floor.state, floor.nowMs + 25 * MINUTE_MS)).toEqual(['Planetary out of order']);
  });

  test('a deck is hatched on all its lanes till it can be used again, a slot on its own', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'blockResource', resource: { kind: 'deck', id: 'top' }, why: 'cleaning', minutes: 60 });
    floor.ok({ type: 'blockResource', resource: { kind: 'slot', id: 'front' }, why: 'outOfOrder' });
    const models = ovenLanes(floor.state, floor.nowMs).map((deck) =>
      deckModel(floor.state, deck, floor.nowMs, lanesWanted(floor.state, deck, floor.nowMs), 1000, PX),
    );
    const blocked = Object.fromEntries(models.map((model) => [model.key, model.blocked]));
    expect(blocked['top']).toMatchObject([{ lane: 0, lanes: 2, text: 'cleaning till 04:00', toPx: axisX(60 * MINUTE_MS, 1000) }]);
    expect(blocked['hearth']).toMatchObject([{ lane: 1, lanes: 1, text: 'front out of order', toPx: 1000 }]);
    expect(blocked['bottom']).toEqual([]);
    expect(models.find((model) => model.key === 'top')?.states.map(({ state }) => state)).toEqual(['cleaning']);
  });

  test('a load’s text keeps away from the word', () => {
    const load: NamedLoad = { block: { key: 'a', fromPx: 0, toPx: 300, lane: 0, lanes: 1, look: 'booked' }, tag: 'C1', clock: '05:42' };
    expect(placeLoadTexts([load], 900, PX)).toMatchObject([{ where: 'inside', text: 'C1 05:42' }]);
    const beside = placeLoadTexts([load], 900, PX, [{ lane: 0, fromPx: 20, toPx: 320 }]);
    expect(beside.every((text) => text.where !== 'inside' && text.leftPx > 320)).toBe(true);
    expect(placeLoadTexts([load], 900, PX, [{ lane: 1, fromPx: 20, toPx: 320 }])).toMatchObject([{ where: 'inside', text: 'C1 05:42' }]);
  });
});

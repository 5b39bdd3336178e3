import { describe, expect, test } from 'vitest';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, demoFile, harbourFile, OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { complaints, Scales } from './support/invariants.ts';
import { COUNTRY_20, levainFloor, POT } from './support/levain-house.ts';

/** A day from its first weighing to the last pack: every dough is given hands when it wants them, the most pressing first. */
function livedThrough(floor: Floor): Floor {
  for (let tap = 0; tap < 1000; tap += 1) {
    const open = Object.values(floor.state.workpieces).filter((workpiece) => workpiece.finishedMs === null && workpiece.stock === null);
    const next = open.map((workpiece) => ({ workpiece, due: floor.due(workpiece.tag) })).sort((a, b) => a.due.dueMs - b.due.dueMs);
    const isTaken = next.some(({ workpiece, due }) => {
      if (due.dueMs > floor.nowMs) floor.until(due.dueMs);
      const finish = { type: 'finishStep' as const, workpieceId: workpiece.id, stepId: due.action.id, despite: ['withoutSource' as const] };
      return floor.give(finish).decision.ok;
    });
    if (!isTaken) break;
  }
  return floor;
}

/** What came of a batch, down to its last loads. */
function leaves(state: FloorState, workpiece: Workpiece): readonly Workpiece[] {
  const children = workpiece.childIds.flatMap((id) => state.workpieces[id] ?? []);
  if (workpiece.ending !== 'divided') return [workpiece, ...children.flatMap((child) => leaves(state, child))];
  return children.flatMap((child) => leaves(state, child));
}

/** What is gone. Trimmings lie beside the dough and are counted there. */
function lostG(floor: Floor, ids: ReadonlySet<string>): number {
  return floor.recorded.reduce(
    (sum, { event }) => sum + (event.type === 'lossNamed' && event.what !== 'trim' && ids.has(event.workpieceId) ? event.grams : 0),
    0,
  );
}

describe('D13 amounts balance over a whole day', () => {
  const floor = livedThrough(Floor.harbour());
  const batches = Object.values(floor.state.workpieces).filter((workpiece) => workpiece.kind === 'batch');

  test('every dough of the day is packed, and the scales agree with the floor', () => {
    expect(batches).toHaveLength(harbourFile().day.batches.length);
    const open = Object.values(floor.state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
    expect(open.map((workpiece) => workpiece.tag)).toEqual([]);
    expect(complaints(floor.state)).toEqual([]);
    expect(new Scales().weigh(floor.recorded).complaints(floor.state)).toEqual([]);
  });

  test('what was weighed is in the loaves, was named as lost, lies beside them, or went into them on top', () => {
    for (const batch of batches) {
      const ends = leaves(floor.state, batch);
      const ids = new Set(ends.map((end) => end.id));
      const grams = ends.reduce((sum, end) => sum + end.grams, 0);
      const besideG = batch.scrapG + ends.reduce((sum, end) => sum + (end === batch ? 0 : end.scrapG), 0);
      const extraG = floor.recorded.reduce(
        (sum, { event }) =>
          sum + (event.type === 'ingredientAdded' && event.isExtra === true && ids.has(event.workpieceId) ? event.grams : 0),
        0,
      );
      const plannedG = plannedOf(floor, batch.id);
      expect(grams + besideG + lostG(floor, ids), batch.tag).toBeCloseTo(plannedG + extraG, 0);
    }
  });

  test('a loaf weighs the scaled piece less its bake loss, within the trade’s 10 to 13 % (Gisslen’s rule for loaves)', () => {
    const loaves = ['country-loaf', 'rye-tin'];
    const baked = Object.values(floor.state.workpieces).filter(
      (workpiece) => workpiece.ending === 'finished' && workpiece.productId !== null && loaves.includes(workpiece.productId),
    );
    expect(baked.length).toBeGreaterThanOrEqual(4);
    for (const { tag, id, productId, pieces } of baked) {
      const product = harbourFile().products.find((candidate) => candidate.id === productId);
      assert(product !== undefined && pieces !== null, `${tag} is no loaf`);
      const scaledG = pieces * product.pieceG;
      const share = lostG(floor, new Set([id])) / scaledG;
      expect(share, tag).toBeGreaterThanOrEqual(0.1);
      expect(share, tag).toBeLessThanOrEqual(0.13);
      // Dough in one piece is baked weight ÷ (1 − bake loss): the trade's rule of scaling, read the other way.
      const bakedG = (scaledG - lostG(floor, new Set([id]))) / pieces;
      expect(bakedG / (1 - product.bakeLossPct / 100), tag).toBeCloseTo(product.pieceG, 0);
    }
  });
});

describe('D13 amounts balance through ferments and preps', () => {
  test('the demo day too, as far as one pair of hands that asks nothing comes', () => {
    const floor = new Floor();
    floor.ok(bringInCommand(demoFile(), OPENING_MS), { deviceId: SERVER_DEVICE });
    livedThrough(floor);
    expect(Object.values(floor.state.workpieces).filter((workpiece) => workpiece.ending !== null).length).toBeGreaterThan(10);
    expect(complaints(floor.state)).toEqual([]);
    expect(new Scales().weigh(floor.recorded).complaints(floor.state)).toEqual([]);
  });

  test('what a pot gives is what its doughs took, and the pot has the rest', () => {
    const floor = levainFloor(POT, COUNTRY_20, { ...COUNTRY_20, min: 500 });
    floor.finish('L1', 'feed');
    floor.bringTo('C1', 'first-speed');
    const drawnG = floor.state.edges.reduce((sum, edge) => sum + (edge.kind === 'draw' ? edge.grams : 0), 0);
    expect(drawnG).toBe(2000);
    expect(floor.piece('L1').grams).toBe(5000 - drawnG);
    expect(floor.piece('C1').grams).toBe(18_700);
  });
});

describe('the looks and the scales notice a floor that does not hold together', () => {
  const floor = Floor.harbour().bringTo('C1', 'bulk-1');
  const changed = (tag: string, change: Partial<Workpiece>): FloorState => {
    const workpiece = { ...floor.piece(tag), ...change };
    return { ...floor.state, workpieces: { ...floor.state.workpieces, [workpiece.id]: workpiece } };
  };

  test.each([
    ['two doughs in a mixer', () => complaints(inOneMixer()), 'both have the mixer spiral'],
    ['two loads in a slot', () => complaints(inOneSlot()), 'both have the slot top-left'],
    [
      'more vessels out than the kitchen has',
      () => complaints(changed('C1', { vessels: [{ vesselId: 'tub', count: 999 }] })),
      'the kitchen has',
    ],
    ['a dough off the floor that holds something', () => complaints(changed('C1', { finishedMs: 1, mixerId: 'spiral' })), 'still holds'],
    ['less than nothing', () => complaints(changed('C1', { grams: -1 })), 'weighs -1 g'],
    ['fewer pieces than none', () => complaints(changed('C1', { pieces: -1 })), '-1 pieces'],
    ['a dough that comes of itself', () => complaints(circle()), 'comes of itself'],
    ['a draw into itself', () => complaints(selfDraw()), 'a draw goes from'],
    ['weight that nothing brought', () => scale(changed('C1', { grams: 9999 })), 'its facts make 9200 g'],
    ['scrap that nothing left', () => scale(changed('C1', { scrapG: 40 })), 'and 40 g beside it'],
  ])('%s', (_what, look, words) => {
    expect(look().join('; ')).toContain(words);
  });

  function scale(state: FloorState): readonly string[] {
    return new Scales().weigh(floor.recorded).complaints(state);
  }

  function inOneMixer(): FloorState {
    const state = changed('C1', { mixerId: 'spiral' });
    const other = floor.piece('C2');
    return { ...state, workpieces: { ...state.workpieces, [other.id]: { ...other, mixerId: 'spiral' } } };
  }

  function inOneSlot(): FloorState {
    const state = changed('C1', { slotIds: ['top-left'] });
    const other = floor.piece('C2');
    return { ...state, workpieces: { ...state.workpieces, [other.id]: { ...other, slotIds: ['top-left'] } } };
  }

  function edge(kind: 'draw' | 'putBack', fromId: string, toId: string): FloorState['edges'][number] {
    return { kind, fromId, toId, grams: 1, atMs: 0, commandId: fromId };
  }

  function circle(): FloorState {
    const [one, other] = [floor.id('C1'), floor.id('C2')];
    return { ...floor.state, edges: [edge('putBack', one, other), edge('putBack', other, one)] };
  }

  function selfDraw(): FloorState {
    return { ...floor.state, edges: [edge('draw', floor.id('C1'), floor.id('C1'))] };
  }
});

function plannedOf(floor: Floor, workpieceId: string): number {
  const planned = floor.recorded.find(({ event }) => event.type === 'workpiecePlanned' && event.workpieceId === workpieceId)?.event;
  assert(planned?.type === 'workpiecePlanned', 'a batch was planned');
  return planned.grams;
}

import { describe, expect, test } from 'vitest';
import { readBakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, harbourJson, OPENING_MS } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const hands = (id: string, verb: string, more: object = {}): object => ({
  id,
  verb,
  kind: 'hands',
  station: 'bench',
  minutes: { target: 5 },
  ...more,
});
const chill = (id: string): object => ({
  id,
  verb: 'chill',
  kind: 'timed',
  minutes: { earliest: 20, target: 30, latest: 90 },
  place: 'cold-room',
});

/**
 * A laminated dough with a butter block: lock in, three single turns with a chill between them, sheet, as handbooks of
 * the trade have it (common practice; 3 × 3 × 3 = 27 layers of butter).
 */
function laminatedFloor(): Floor {
  const json = harbourJson();
  const block = {
    id: 'butter-block',
    name: 'Butter block',
    letters: 'Bb',
    kind: 'prep',
    parts: [{ name: 'Block', role: 'dough', items: [{ item: 'butter', g: 500 }] }],
    method: [hands('beat', 'sheet'), chill('keep')],
  };
  const dough = {
    id: 'laminated',
    name: 'Laminated dough',
    letters: 'La',
    parts: [
      {
        name: 'Dough',
        role: 'dough',
        items: [
          { item: 'wheat-flour', g: 1000 },
          { item: 'milk', g: 550 },
          { item: 'salt', g: 20 },
          { item: 'yeast', g: 30 },
          { formula: 'butter-block', g: 500 },
        ],
      },
    ],
    sidePreps: [{ formula: 'butter-block', joins: 'lock-in', readyMin: 30 }],
    method: [
      hands('mix', 'add', { claims: [{ kind: 'mixer' }] }),
      chill('chill-0'),
      hands('lock-in', 'lockIn', { additions: [{ formula: 'butter-block' }] }),
      hands('turn-1', 'turn'),
      chill('chill-1'),
      hands('turn-2', 'turn'),
      chill('chill-2'),
      hands('turn-3', 'turn'),
      chill('chill-3'),
      hands('sheet', 'sheet'),
      hands('divide', 'divide'),
    ],
  };
  const product = {
    id: 'leaf',
    name: 'Leaf',
    formula: 'laminated',
    pieceG: 70,
    way: [hands('shape-leaf', 'shape'), hands('pack-leaf', 'pack')],
  };
  const read = readBakehouseFile({
    ...json,
    formulas: [block, dough],
    products: [product],
    day: { batches: [{ formula: 'laminated', start: { afterLoadMin: 60 }, doughG: 2100, cuts: [{ product: 'leaf', pieces: 30 }] }] },
  });
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault, null, 2));
  const floor = new Floor();
  floor.ok(bringInCommand(read.value, OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

describe('D1 a laminated dough goes its way: lock in, turns with a chill between them, sheet', () => {
  test('the butter block is due so that it is ready for the lock in, and goes into the dough there', () => {
    const floor = laminatedFloor();
    const lockInMs = OPENING_MS + (60 + 5 + 30) * 60_000;
    expect(floor.due('Bb1').dueMs).toBe(lockInMs - (30 + 5) * 60_000);
    floor.bringTo('Bb1', 'keep').bringTo('La1', 'lock-in').finish('La1', 'lock-in');
    expect(floor.piece('Bb1')).toMatchObject({ ending: 'finished', grams: 0 });
    // The block is part of the 2100 g: it adds nothing to them.
    expect(floor.piece('La1').grams).toBe(2100);
    expect(floor.state.edges.map((edge) => [edge.kind, edge.grams])).toEqual([['draw', 500]]);
  });

  test('it stands in the cold between its turns, and each chill calls the turn after it', () => {
    const floor = laminatedFloor().bringTo('La1', 'turn-1');
    const turns: string[] = [];
    while (floor.due('La1').action.id !== 'sheet') {
      floor.finishWhenDue('La1');
      const { action, step } = floor.due('La1');
      if (step.verb === 'chill') turns.push(`${floor.piece('La1').placeId} → ${action.id}`);
    }
    expect(turns).toEqual(['cold-room → turn-2', 'cold-room → turn-3', 'cold-room → sheet']);
  });
});

import { describe, expect, test } from 'vitest';
import { idOf, OTHER_PHONE } from './support/ids.ts';
import { COUNTRY_20, edgesG, lasting, levainFloor, PLAIN_20, type Listed } from './support/levain-house.ts';
import type { Floor } from './support/floor.ts';

const ROUNDS: Listed = { ...PLAIN_20, cuts: [{ product: 'plain-round', pieces: 20 }] };

/** Two mixes at rest in bulk, the second begun ten minutes after the first. */
function twoInBulk(second: Listed = PLAIN_20): Floor {
  const floor = levainFloor(PLAIN_20, { ...second, min: 10 }).bringTo('P1', 'bulk');
  floor.wait(10);
  return floor.bringTo('P2', 'bulk').wait(5);
}

function join(floor: Floor, ...tags: string[]): ReturnType<Floor['give']> {
  return floor.give({ type: 'joinWorkpieces', workpieceIds: tags.map((tag) => floor.id(tag)) });
}

function faultOf(answer: ReturnType<Floor['give']>): object {
  return answer.decision.ok ? {} : answer.decision.fault;
}

function open(floor: Floor): ReturnType<Floor['piece']>[] {
  return Object.values(floor.state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
}

describe('D34 two mixes of one formula go on in one tub', () => {
  test('the one that has rested longest leads: its tag, its clock, the weight and pieces of both', () => {
    const floor = twoInBulk();
    const [first, second] = [floor.piece('P1'), floor.piece('P2')];
    const { dueMs } = floor.due('P1');
    expect(faultOf(join(floor, 'P2', 'P1'))).toEqual({});
    const [joined, ...others] = open(floor);
    expect(others).toEqual([]);
    expect(joined).toMatchObject({ kind: 'batch', tag: 'P1', grams: 36_000, pieces: 40, cuts: [{ productId: 'plain-loaf', pieces: 40 }] });
    expect(joined?.steps).toEqual(first.steps);
    expect([floor.state.workpieces[first.id]?.ending, floor.state.workpieces[second.id]?.ending]).toEqual(['divided', 'divided']);
    const edges = floor.state.edges.filter((edge) => edge.kind === 'join' && edge.toId === joined?.id);
    expect(edges.map((edge) => [edge.fromId, edge.grams])).toEqual([
      [first.id, first.grams],
      [second.id, second.grams],
    ]);
    floor.ok({ type: 'finishStep', workpieceId: joined?.id ?? '', stepId: 'divide' });
    expect(floor.nowMs).toBeLessThan(dueMs);
    expect(edgesG(floor, 'join', {})).toBe(36_000);
  });

  test('in the tub of the one that leads; the others’ vessels come back', () => {
    const floor = twoInBulk();
    for (const [tag, count] of [
      ['P1', 2],
      ['P2', 3],
    ] as const)
      floor.record(
        { type: 'vesselsTaken', workpieceId: floor.id(tag), vesselId: 'tin', count, atMs: floor.nowMs },
        idOf(6_000_000),
        0,
        OTHER_PHONE,
      );
    const before = floor.state;
    const { commandId } = join(floor, 'P1', 'P2');
    expect(open(floor).map((workpiece) => workpiece.vessels)).toEqual([[{ vesselId: 'tin', count: 2 }]]);
    expect(floor.state.vesselReturns).toMatchObject([{ vesselId: 'tin', count: 3 }]);
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });

  test('undone to exactly what was, while nothing has come of it', () => {
    const floor = twoInBulk();
    const before = floor.state;
    const first = join(floor, 'P1', 'P2').commandId;
    floor.ok({ type: 'undoCommand', commandId: first });
    expect(lasting(floor.state)).toEqual(lasting(before));
    const again = join(floor, 'P1', 'P2').commandId;
    const [joined] = open(floor);
    floor.ok({ type: 'finishStep', workpieceId: joined?.id ?? '', stepId: 'divide' }, { deviceId: OTHER_PHONE });
    expect(faultOf(floor.give({ type: 'undoCommand', commandId: again }))).toMatchObject({ code: 'workRestsOnIt' });
  });
});

describe('D34 what cannot be joined', () => {
  const AT = { code: 'notJoinable', tag: 'P1', stepId: 'divide' } as const;

  test('one alone', () => {
    const floor = twoInBulk();
    expect(faultOf(join(floor, 'P1', 'P1'))).toEqual({ ...AT, otherTag: 'P1' });
  });

  test('another formula, or another step', () => {
    const floor = levainFloor(PLAIN_20, { ...PLAIN_20, min: 10 }, { ...COUNTRY_20, min: 20 }).bringTo('P1', 'bulk');
    expect(faultOf(join(floor, 'P1', 'C1'))).toEqual({ ...AT, otherTag: 'C1' });
    expect(faultOf(join(floor, 'P1', 'P2'))).toEqual({ ...AT, otherTag: 'P2' });
    floor.finish('P2', 'weigh');
    expect(faultOf(join(floor, 'P1', 'P2')), 'the one that stood there first is named first').toMatchObject({ code: 'notJoinable' });
  });

  test('a dough on the way to another product', () => {
    const floor = twoInBulk(ROUNDS);
    expect(faultOf(join(floor, 'P1', 'P2'))).toEqual({ ...AT, otherTag: 'P2' });
  });

  test('what nobody has begun, what is in the oven, what is no mix', () => {
    const planned = levainFloor(PLAIN_20, { ...PLAIN_20, min: 10 });
    expect(faultOf(join(planned, 'P1', 'P2'))).toMatchObject({ code: 'notJoinable', stepId: 'weigh' });
    const baking = levainFloor(PLAIN_20, { ...PLAIN_20, min: 10 });
    for (const tag of ['P1', 'P2']) {
      baking.bringTo(tag, 'plain-loaf-load');
      baking.finish(tag, 'plain-loaf-load');
    }
    expect(faultOf(join(baking, 'P1', 'P2'))).toMatchObject({ code: 'notJoinable', stepId: 'plain-loaf-out' });
    const preps = levainFloor({ formula: 'filling', min: 0, doughG: 10 }, { formula: 'filling', min: 1, doughG: 10 });
    for (const tag of ['F1', 'F2']) preps.finish(tag, 'cook');
    expect(faultOf(join(preps, 'F1', 'F2'))).toEqual({ code: 'notJoinable', tag: 'F2', stepId: 'hold', otherTag: 'F1' });
  });

  test('what is unknown or gone', () => {
    const floor = twoInBulk();
    expect(faultOf(floor.give({ type: 'joinWorkpieces', workpieceIds: [floor.id('P1'), idOf(42_000)] }))).toEqual({
      code: 'workpieceUnknown',
      workpieceId: idOf(42_000),
    });
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('P2'), reason: 'spoilt' });
    expect(faultOf(join(floor, 'P1', 'P2'))).toEqual({ code: 'workpieceFinished', tag: 'P2', atMs: floor.nowMs });
  });
});

describe('D12 a bowl that was given free is not taken back from another', () => {
  test('once that has it', () => {
    const floor = levainFloor(PLAIN_20, { ...PLAIN_20, min: 10 });
    const bowlTo = (tag: string, commandId: string, deviceId: string): void =>
      floor.record(
        {
          type: 'stepStarted',
          workpieceId: floor.id(tag),
          stepId: 'weigh',
          atMs: floor.nowMs,
          resources: [{ kind: 'bowl', id: 'bowl-1' }],
          pins: { targetMin: 5, factor: 1, model: 'nominal', houseVersion: 1 },
        },
        commandId,
        0,
        deviceId,
      );
    bowlTo('P1', idOf(6_000_000), OTHER_PHONE);
    const commandId = floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('P1'), reason: 'salt forgotten' });
    bowlTo('P2', idOf(6_000_001), OTHER_PHONE);
    expect(faultOf(floor.give({ type: 'undoCommand', commandId }))).toEqual({ code: 'workRestsOnIt', tag: 'P2' });
  });
});

import { describe, expect, test } from 'vitest';
import { roleAt } from '../../shared/floor/due.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { expectUndone } from './support/undone.ts';

const MINUTE_MS = 60_000;

function resting(floor: Floor): void {
  floor.bringTo('C1', 'bulk-1').wait(30);
}

describe('D26 a dough stands somewhere else now', () => {
  test('where, and since when', () => {
    const floor = given(resting)
      .when((arranged) => ({ type: 'moveWorkpiece', workpieceId: arranged.id('C1'), placeId: 'cold-room' }))
      .thenTypes(['workpieceMoved']);
    expect(floor.recorded.at(-1)?.event).toMatchObject({ placeId: 'cold-room', atMs: floor.nowMs });
    expect(floor.piece('C1').placeId).toBe('cold-room');
    // In the cold it ripens more slowly than its thirty minutes say.
    const { ripening, dueMs, startedMs } = floor.due('C1');
    expect(ripening?.byMin).toBeGreaterThan(1);
    expect(dueMs).toBe((startedMs ?? 0) + Math.round((30 + (ripening?.byMin ?? 0)) * MINUTE_MS));
  });

  test('with minutes, its call is set aside for so long', () => {
    const floor = Floor.harbour();
    resting(floor);
    floor.raiseCalls();
    floor.ok({ type: 'moveWorkpiece', workpieceId: floor.id('C1'), placeId: 'cold-room', holdMin: 20 });
    expect(floor.recorded.slice(-2).map((recorded) => recorded.event)).toEqual([
      { type: 'workpieceMoved', workpieceId: floor.id('C1'), placeId: 'cold-room', atMs: floor.nowMs },
      {
        type: 'workpieceHeld',
        workpieceId: floor.id('C1'),
        stepId: 'fold-1',
        atMs: floor.nowMs,
        untilMs: floor.nowMs + 20 * MINUTE_MS,
      },
    ]);
    expect(roleAt(floor.due('C1'), floor.nowMs + 19 * MINUTE_MS)).toBe('running');
    expect(roleAt(floor.due('C1'), floor.nowMs + 20 * MINUTE_MS)).toBe('late');
  });

  test('only to a place of the kitchen, and to another than where it stands', () => {
    given(resting)
      .when((floor) => ({ type: 'moveWorkpiece', workpieceId: floor.id('C1'), placeId: 'attic' }))
      .thenRefusal<'placeUnknown'>({ code: 'placeUnknown', tag: 'C1', placeId: 'attic' });
    given(resting)
      .when((floor) => ({ type: 'moveWorkpiece', workpieceId: floor.id('C1'), placeId: 'warm-shelf', holdMin: 5 }))
      .thenRefusal<'alreadyThere'>({ code: 'alreadyThere', tag: 'C1', placeId: 'warm-shelf' });
  });

  test('not into a place that is being cleaned', () => {
    given((floor) => {
      resting(floor);
      floor.record({ type: 'resourceBlocked', resource: { kind: 'restPlace', id: 'cold-room' }, why: 'cleaning', atMs: floor.nowMs });
    })
      .when((floor) => ({ type: 'moveWorkpiece', workpieceId: floor.id('C1'), placeId: 'cold-room' }))
      .thenRefusal<'resourceBlocked'>({
        code: 'resourceBlocked',
        tag: 'C1',
        resource: { kind: 'restPlace', id: 'cold-room' },
        why: 'cleaning',
      });
  });

  test('out of the oven only by taking out', () => {
    given((floor) => floor.bringTo('R1', 'bake'))
      .when((floor) => ({ type: 'moveWorkpiece', workpieceId: floor.id('R1'), placeId: 'cooling-rack' }))
      .thenRefusal<'stepNotReached'>({ code: 'stepNotReached', tag: 'R1', currentStepId: 'take-out' });
  });

  test('not once it is off the floor', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'no salt' });
    expect(floor.give({ type: 'moveWorkpiece', workpieceId: floor.id('C1'), placeId: 'cold-room' }).decision).toEqual({
      ok: false,
      fault: { code: 'workpieceFinished', tag: 'C1', atMs: floor.nowMs },
    });
  });

  test('undo takes the move and its hold back, the call too', () => {
    const floor = Floor.harbour();
    resting(floor);
    floor.raiseCalls();
    expectUndone(floor, { type: 'moveWorkpiece', workpieceId: floor.id('C1'), placeId: 'cold-room', holdMin: 20 });
  });
});

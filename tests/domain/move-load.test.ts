import { describe, expect, test } from 'vitest';
import { ovenLanes } from '../../shared/floor/oven-lanes.ts';
import type { Floor } from './support/floor.ts';
import { ovenHouse } from './support/oven-house.ts';

const MINUTE_MS = 60_000;
const TAG = 'R1';
const PHASES = [{ minutes: 50 }];

function moved(floor: Floor, ...slotIds: readonly string[]): string {
  return floor.ok({ type: 'moveLoad', workpieceId: floor.id(TAG), slotIds: [...slotIds] });
}

function refusal(floor: Floor, ...slotIds: readonly string[]): unknown {
  const { decision } = floor.give({ type: 'moveLoad', workpieceId: floor.id(TAG), slotIds: [...slotIds] });
  return decision.ok ? null : decision.fault;
}

function bakeMin(floor: Floor): number {
  const { dueMs, startedMs } = floor.due(TAG);
  return (dueMs - (startedMs ?? 0)) / MINUTE_MS;
}

describe('OV7 a load goes on in other slots', () => {
  test('to the side, onto another deck, or spread over two; the lanes show it where it lies, undo brings it back', () => {
    const floor = ovenHouse({ phases: PHASES }).wait(10);
    const before = floor.piece(TAG).slotIds;
    const commandId = moved(floor, 'top-left', 'bottom-right');
    expect(floor.piece(TAG).slotIds).toEqual(['top-left', 'bottom-right']);
    const lanes = ovenLanes(floor.state, floor.nowMs).flatMap(({ lanes: own }) => own);
    const inside = lanes.filter(({ bookings }) => bookings.some(({ isIn, tag }) => isIn && tag === TAG)).map(({ slot }) => slot.id);
    expect(inside).toEqual(['top-left', 'bottom-right']);
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece(TAG).slotIds).toEqual(before);
  });

  test('what is left of its bake goes by the heat of where it is now', () => {
    const floor = ovenHouse({ phases: PHASES });
    floor.ok({ type: 'startTestPiece', slotId: 'top-left', referenceMin: 10 });
    floor.wait(8).ok({ type: 'endTestPiece', slotId: 'top-left', isDone: true });
    floor.wait(2);
    const hot = Math.exp((Math.log(0.8) * 6) / 8);
    moved(floor, 'top-left');
    expect(bakeMin(floor)).toBeCloseTo(10 + 40 * hot, 1);
  });

  test('it teaches nothing of either slot', () => {
    const floor = ovenHouse({ phases: PHASES }).wait(10);
    moved(floor, 'top-left');
    floor.wait(30).finish(TAG);
    expect(floor.state.slotHeat).toEqual({});
  });

  test('what cannot be is refused', () => {
    const floor = ovenHouse({ phases: PHASES });
    expect(refusal(floor, ...floor.piece(TAG).slotIds)).toMatchObject({ code: 'nothingChanges' });
    expect(refusal(floor, 'attic')).toMatchObject({ code: 'slotUnknown', slotId: 'attic' });
    floor.ok({ type: 'blockResource', resource: { kind: 'deck', id: 'top' }, why: 'cleaning', minutes: 20 });
    expect(refusal(floor, 'top-left')).toMatchObject({ code: 'resourceBlocked' });
    floor.wait(50).finish(TAG);
    expect(refusal(floor, 'top-left')).toMatchObject({ code: 'notInOven', tag: TAG });
  });
});

import { describe, expect, test } from 'vitest';
import { Floor } from './support/floor.ts';

const MINUTE_MS = 60_000;

describe('D41 one tap says where a dough really is', () => {
  test('the steps before are closed as inferred, and the rest has run for as long as it is said', () => {
    const floor = Floor.harbour().wait(60);
    floor.ok({ type: 'sayWhere', workpieceId: floor.id('C1'), stepId: 'bulk-1', sinceMin: 15 });
    const { steps } = floor.piece('C1');
    expect(Object.entries(steps).map(([id, life]) => [id, life.status, life.inferred])).toEqual([
      ['weigh', 'done', true],
      ['fill-bowl', 'done', true],
      ['first-speed', 'done', true],
      ['stand', 'done', true],
      ['salt', 'done', true],
      ['second-speed', 'done', true],
      ['turn-out', 'done', true],
      ['bulk-1', 'started', false],
    ]);
    expect(floor.due('C1').dueMs).toBe(floor.nowMs + 15 * MINUTE_MS);
  });

  test('hands are on it: the rest before is over', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1').wait(10);
    floor.ok({ type: 'sayWhere', workpieceId: floor.id('C1'), stepId: 'fold-1' });
    expect(floor.due('C1')).toMatchObject({ phase: 'working', step: { id: 'fold-1' } });
    expect(floor.piece('C1').steps['bulk-1']).toMatchObject({ status: 'done', inferred: true });
  });

  test('what has passed the oven door unseen is in its slots', () => {
    const floor = Floor.harbour().bringTo('R1', 'prove').wait(70);
    floor.ok({ type: 'sayWhere', workpieceId: floor.id('R1'), stepId: 'bake', sinceMin: 5 });
    expect(floor.piece('R1').slotIds).toEqual(['bottom-left']);
    expect(floor.due('R1')).toMatchObject({ phase: 'resting', step: { id: 'bake' } });
  });

  test('one undo takes it all back', () => {
    const floor = Floor.harbour().wait(60);
    const before = floor.piece('C1');
    const commandId = floor.ok({ type: 'sayWhere', workpieceId: floor.id('C1'), stepId: 'bulk-1', sinceMin: 15 });
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece('C1')).toEqual(before);
  });

  test('it is not so far: the rest goes on from when it began, and the change is kept', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1').wait(30);
    const startedMs = floor.piece('C1').steps['bulk-1']?.startedMs;
    floor.finish('C1', 'fold-1');
    floor.wait(1).ok({ type: 'sayWhere', workpieceId: floor.id('C1'), stepId: 'bulk-1' });
    expect(floor.due('C1')).toMatchObject({ phase: 'resting', step: { id: 'bulk-1' }, startedMs });
    expect(floor.piece('C1')).toMatchObject({ placeId: 'warm-shelf', corrections: [{ what: 'where', to: 'bulk-1' }] });
  });

  test('what has come out of the oven was in it: that is not taken back by a word', () => {
    const floor = Floor.harbour().bringTo('R1', 'bake');
    const { decision } = floor.give({ type: 'sayWhere', workpieceId: floor.id('R1'), stepId: 'prove' });
    expect(decision).toEqual({ ok: false, fault: { code: 'workRestsOnIt', tag: 'R1', stepId: 'prove' } });
  });

  test('where it is already, nothing changes; a step that is not on its way is unknown', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1');
    const on = { type: 'sayWhere' as const, workpieceId: floor.id('C1') };
    expect(floor.give({ ...on, stepId: 'bulk-1' }).decision).toMatchObject({ ok: false, fault: { code: 'nothingChanges' } });
    expect(floor.give({ ...on, stepId: 'depan' }).decision).toMatchObject({ ok: false, fault: { code: 'stepUnknown' } });
  });

  test('a load that is left out is not baked either', () => {
    const floor = Floor.harbour().bringTo('R1', 'load');
    floor.ok({ type: 'skipStep', workpieceId: floor.id('R1'), stepId: 'load', reason: 'given away raw' });
    expect(['load', 'bake', 'take-out'].map((id) => floor.piece('R1').steps[id]?.status)).toEqual(['skipped', 'skipped', 'skipped']);
    expect(floor.due('R1')).toMatchObject({ step: { id: 'depan' } });
  });
});

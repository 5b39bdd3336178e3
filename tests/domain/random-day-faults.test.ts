import { describe, expect, test } from 'vitest';
import { dueOf } from '../../shared/floor/due.ts';
import { recordedEventSchema } from '../../shared/floor/events.ts';
import { Floor } from './support/floor.ts';
import { OTHER_PHONE, PHONE } from './support/ids.ts';
import { levainFloor, PLAIN_20, POT } from './support/levain-house.ts';
import { expectUndone } from './support/undone.ts';

const MINUTE_MS = 60_000;

// Each was found by the random days of properties.test.ts and two-phones.test.ts, and is told here by itself.
describe('faults that random days have found', () => {
  test('D12 a cleaning that was over comes back with the undo of the step that took the mixer', () => {
    const floor = Floor.harbour().bringTo('C1', 'fill-bowl');
    floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'spiral' }, why: 'cleaning', minutes: 5 });
    floor.wait(6);
    const { blocked } = floor.state;
    expect(blocked).toHaveLength(1);
    const commandId = floor.finish('C1', 'fill-bowl');
    expect(floor.state.blocked).toEqual([]);
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.state.blocked).toEqual(blocked);
  });

  test('D12 a cleaning that has begun since is not overwritten by the one before it', () => {
    const floor = Floor.harbour().bringTo('C1', 'fill-bowl');
    const mixer = { kind: 'mixer', id: 'spiral' } as const;
    floor.ok({ type: 'blockResource', resource: mixer, why: 'cleaning', minutes: 5 });
    const commandId = floor.wait(6).finish('C1', 'fill-bowl');
    floor.ok({ type: 'blockResource', resource: mixer, why: 'outOfOrder' }, { deviceId: OTHER_PHONE });
    const { blocked } = floor.state;
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.state.blocked).toEqual(blocked);
  });

  test('D12 a few pieces that were said to be done can be taken back, at the last step too', () => {
    const floor = Floor.harbour().bringTo('R1', 'pack');
    expectUndone(floor, { type: 'finishStep', workpieceId: floor.id('R1'), stepId: 'pack', loadPieces: 3 });
  });

  test('a few pieces of a load that go on alone are a load beside it, with a tag as tags are written', () => {
    const floor = Floor.harbour().bringTo('R1', 'pack');
    const some = (tag: string, loadPieces: number): string =>
      floor.ok({ type: 'makeLoads', workpieceId: floor.id(tag), pieces: [loadPieces] });
    some('R1', 4);
    floor.ok({ type: 'finishStep', workpieceId: floor.id('R1·1'), stepId: 'pack', loadPieces: 1 });
    floor.ok({ type: 'finishStep', workpieceId: floor.id('R1·1'), stepId: 'pack', loadPieces: 2 });
    const tags = Object.values(floor.state.workpieces).flatMap(({ tag, pieces }) =>
      tag.startsWith('R1') ? [`${tag} ${pieces ?? 0}`] : [],
    );
    expect(tags).toEqual(['R1 4', 'R1·1 1', 'R1·2 1', 'R1·3 2']);
    for (const recorded of floor.recorded) expect(recordedEventSchema.safeParse(recorded).error).toBeUndefined();
  });

  test('D3 a second thumb that begins or leaves out the feed of a pot just fed is told who was first', () => {
    for (const type of ['startStep', 'skipStep'] as const) {
      const floor = levainFloor(POT);
      const fedMs = floor.nowMs;
      floor.finish('L1', 'feed');
      const on = { workpieceId: floor.id('L1'), stepId: 'feed' };
      const word = type === 'startStep' ? { type, ...on } : { type, ...on, reason: 'fed already' };
      const { decision } = floor.wait(2).give(word, { deviceId: OTHER_PHONE });
      expect(decision).toMatchObject({ ok: false, fault: { code: 'stepAlreadyDone', deviceId: PHONE, atMs: fedMs, skipped: false } });
    }
  });

  test('a feed is every one that was planned for until then: the pot is not called to be fed again at once', () => {
    const floor = levainFloor(POT, PLAIN_20);
    const plan = (min: number): string =>
      floor.ok({ type: 'planFeed', workpieceId: floor.id('L1'), feedMs: floor.nowMs + min * MINUTE_MS, grams: 4000 });
    floor.finish('L1', 'feed');
    plan(400);
    plan(420);
    plan(900);
    floor.wait(430).finish('L1', 'feed');
    expect(floor.piece('L1').stock?.plannedFeeds.map(({ feedMs }) => feedMs - floor.nowMs)).toEqual([470 * MINUTE_MS]);
    expect(dueOf(floor.state, floor.piece('L1'))?.dueMs).toBe(floor.nowMs + 470 * MINUTE_MS);
  });

  test('D11 a planned feed that is left out is not asked for again, and who leaves it out too is told', () => {
    const floor = levainFloor(POT);
    floor.finish('L1', 'feed');
    floor.ok({ type: 'planFeed', workpieceId: floor.id('L1'), feedMs: floor.nowMs + 400 * MINUTE_MS, grams: 4000 });
    const leftOut = { type: 'skipStep' as const, workpieceId: floor.id('L1'), stepId: 'feed', reason: 'closed tomorrow' };
    floor.wait(400).ok(leftOut);
    expect(floor.piece('L1').stock?.plannedFeeds).toEqual([]);
    expect(dueOf(floor.state, floor.piece('L1'))?.dueMs).toBeGreaterThan(floor.nowMs);
    const { decision } = floor.give(leftOut, { deviceId: OTHER_PHONE });
    expect(decision).toMatchObject({ ok: false, fault: { code: 'stepAlreadyDone', deviceId: PHONE, skipped: true } });
  });
});

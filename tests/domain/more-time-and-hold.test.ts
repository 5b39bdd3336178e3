import { describe, expect, test } from 'vitest';
import { roleAt } from '../../shared/floor/due.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { OPENING_MS } from './support/harbour.ts';

const MINUTE_MS = 60_000;

function roleOf(floor: Floor, tag: string): string {
  return roleAt(floor.due(tag), floor.nowMs);
}

describe('roles follow from the state and the time', () => {
  test('a judged step: running, call at its target, late past its tolerance, lost at its latest', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed');
    const roles = [0, 3.99, 4, 4.99, 5, 6.99, 7].map((min) => roleAt(floor.due('C1'), OPENING_MS + min * MINUTE_MS));
    expect(roles).toEqual(['running', 'running', 'call', 'call', 'late', 'late', 'lost']);
  });

  test('a rest: the tolerance is that of the step that ends it', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1');
    const { dueMs, lateMs, lostMs, earliestMs } = floor.due('C1');
    expect([earliestMs, dueMs, lateMs, lostMs].map((ms) => ((ms ?? 0) - floor.nowMs) / MINUTE_MS)).toEqual([20, 30, 40, 60]);
  });

  test('a flatbread in the hot hearth bears half a minute', () => {
    const floor = Floor.harbour().bringTo('O1', 'bake-off');
    const roles = [5.4, 5.5, 5.99, 6, 6.99, 7].map((min) => roleAt(floor.due('O1'), floor.nowMs + min * MINUTE_MS));
    expect(roles).toEqual(['running', 'call', 'call', 'late', 'late', 'lost']);
  });

  test('started work is no call; it is late past its own expected end and tolerance', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    expect([6, 20.9, 21].map((min) => roleAt(floor.due('C1'), OPENING_MS + min * MINUTE_MS))).toEqual(['running', 'running', 'late']);
  });

  test('what waits since the step before was tapped done is due at once', () => {
    const floor = Floor.harbour();
    expect(floor.due('C1')).toMatchObject({ phase: 'planned', isAtOnce: false });
    floor.finish('C1', 'weigh');
    expect(floor.due('C1')).toMatchObject({ phase: 'waiting', isAtOnce: true, dueMs: OPENING_MS });
  });
});

describe('D6 a little more moves what is due', () => {
  test('as often as the dough asks', () => {
    const floor = Floor.harbour().bringTo('C1', 'second-speed');
    const { dueMs, lateMs } = floor.due('C1');
    for (const minutes of [1, 2, 1]) floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'second-speed', minutes });
    expect([floor.due('C1').dueMs, floor.due('C1').lateMs]).toEqual([dueMs + 4 * MINUTE_MS, lateMs + 4 * MINUTE_MS]);
    expect(floor.piece('C1').steps['second-speed']?.moreMin).toBe(4);
    floor.finish('C1', 'second-speed');
    expect(floor.piece('C1').steps['second-speed'], 'how much more it took is kept').toMatchObject({ status: 'done', moreMin: 4 });
  });

  test('asked for knowingly, it moves the latest along once it reaches beyond it', () => {
    const floor = Floor.harbour().bringTo('C1', 'second-speed');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'second-speed', minutes: 10 });
    const due = floor.due('C1');
    expect([due.dueMs, due.lostMs].map((ms) => ((ms ?? 0) - floor.nowMs) / MINUTE_MS)).toEqual([24, 24]);
  });

  test('on a rest the minutes go to the rest, though the call is named after the step that ends it', () => {
    given((floor) => floor.bringTo('C1', 'bulk-1').wait(30))
      .when((floor) => ({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 5 }))
      .thenEvents([
        { type: 'moreTimeGiven', workpieceId: Floor.harbour().id('C1'), stepId: 'bulk-1', minutes: 5, atMs: OPENING_MS + 68 * MINUTE_MS },
      ]);
  });

  test('answers the call that is out', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1').wait(30);
    floor.raiseCalls();
    expect(floor.piece('C1').call).not.toBeNull();
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 5 });
    expect(floor.piece('C1').call).toBeNull();
    expect(roleOf(floor, 'C1')).toBe('running');
    floor.wait(5);
    expect(roleOf(floor, 'C1')).toBe('call');
  });

  test('a batch that has not begun begins later', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 5 });
    expect(floor.due('C1')).toMatchObject({ phase: 'planned', dueMs: OPENING_MS + 5 * MINUTE_MS });
  });

  test('a step that waits is put off, and then calls like any other', () => {
    const floor = Floor.harbour();
    floor.finish('C1', 'weigh');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'fill-bowl', minutes: 5 });
    expect(floor.due('C1')).toMatchObject({ phase: 'waiting', dueMs: OPENING_MS + 5 * MINUTE_MS, isAtOnce: false });
  });
});

describe('D7 a hold silences, but not what is being lost', () => {
  test('until it is over', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1').wait(30);
    floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 20 });
    expect(roleOf(floor, 'C1')).toBe('running');
    expect(roleOf(floor.wait(19.9), 'C1')).toBe('running');
    expect(roleOf(floor.wait(0.1), 'C1')).toBe('late');
  });

  test('what is being lost calls all the same', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1').wait(30);
    floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 120 });
    floor.wait(30);
    expect(roleOf(floor, 'C1')).toBe('lost');
    expect(floor.raiseCalls()).toContain('C1 fold-1 lost');
  });

  test('a release ends it at once', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1').wait(30);
    const workpieceId = floor.id('C1');
    floor.ok({ type: 'holdWorkpiece', workpieceId, stepId: 'fold-1', minutes: 20 });
    floor.wait(1).ok({ type: 'releaseWorkpiece', workpieceId, stepId: 'fold-1' });
    expect([floor.piece('C1').heldUntilMs, roleOf(floor, 'C1')]).toEqual([null, 'call']);
  });

  test('what is not held, or not any more, cannot be released', () => {
    given()
      .when((floor) => ({ type: 'releaseWorkpiece', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .thenRefusal<'notHeld'>({ code: 'notHeld', tag: 'C1', stepId: 'weigh' });
    given((floor) => {
      floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 5 });
      floor.wait(5);
    })
      .when((floor) => ({ type: 'releaseWorkpiece', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .thenRefusal<'notHeld'>({ code: 'notHeld', tag: 'C1', stepId: 'weigh' });
  });

  test('the step that is done ends the hold', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1').wait(30);
    floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 20 });
    floor.finish('C1', 'fold-1');
    expect(floor.piece('C1').heldUntilMs).toBeNull();
  });
});

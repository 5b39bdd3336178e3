import { describe, expect, test } from 'vitest';
import { nextRoleChangeMs } from '../../shared/floor/calls.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { OPENING_MS } from './support/harbour.ts';
import { OTHER_PHONE } from './support/ids.ts';

const MINUTE_MS = 60_000;

/** C1 alone, in its first rest; fold-1 is due at minute 68, late at 78, lost at 98. */
function inBulk(): Floor {
  return Floor.harbour().only('C1').bringTo('C1', 'bulk-1');
}

describe('D9 a call is raised once for each level', () => {
  test('due, late, being lost: one event each, however often it is looked at', () => {
    const floor = inBulk();
    expect(floor.raiseCalls()).toEqual([]);
    expect(floor.wait(30).raiseCalls()).toEqual(['C1 fold-1 call']);
    expect(floor.wait(5).raiseCalls()).toEqual([]);
    expect(floor.wait(5).raiseCalls()).toEqual(['C1 fold-1 late']);
    expect(floor.wait(20).raiseCalls()).toEqual(['C1 fold-1 lost']);
    expect(floor.wait(600).raiseCalls()).toEqual([]);
    expect(floor.recorded.filter(({ event }) => event.type === 'callRaised')).toHaveLength(3);
  });

  test('it carries the instant from which it was true, not the one at which it was found', () => {
    const floor = inBulk().wait(34);
    floor.raiseCalls();
    expect(floor.piece('C1').call).toMatchObject({
      level: 'call',
      dueMs: OPENING_MS + 68 * MINUTE_MS,
      raisedMs: OPENING_MS + 72 * MINUTE_MS,
      heardMs: null,
      soundedCount: 0,
    });
  });

  test('after a long silence only the level that is true is raised', () => {
    const floor = inBulk().wait(300);
    expect(floor.raiseCalls()).toEqual(['C1 fold-1 lost']);
  });

  test('after a hold the call is new, and true from the end of the hold', () => {
    const floor = inBulk().wait(30);
    floor.raiseCalls();
    floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 5 });
    expect(floor.wait(4).raiseCalls()).toEqual([]);
    expect(floor.wait(1).raiseCalls()).toEqual(['C1 fold-1 call']);
    expect(floor.piece('C1').call?.dueMs).toBe(floor.nowMs);
  });

  test('a call that a tap has meanwhile made untrue is refused', () => {
    const fold = { type: 'raiseCall', stepId: 'fold-1', level: 'call' } as const;
    given((floor) => floor.bringTo('C1', 'fold-1').finish('C1', 'fold-1'))
      .when((floor) => ({ ...fold, workpieceId: floor.id('C1') }))
      .thenRefusal<'callOutdated'>({ code: 'callOutdated' });
    given((floor) => floor.bringTo('C1', 'bulk-1'))
      .when((floor) => ({ ...fold, workpieceId: floor.id('C1') }))
      .thenRefusal<'callOutdated'>({ code: 'callOutdated' });
    given((floor) => floor.bringTo('C1', 'fold-1').raiseCalls())
      .when((floor) => ({ ...fold, workpieceId: floor.id('C1') }))
      .thenRefusal<'callOutdated'>({ code: 'callOutdated' });
    given((floor) => floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'no levain' }))
      .when((floor) => ({ ...fold, workpieceId: floor.id('C1') }))
      .thenRefusal<'callOutdated'>({ code: 'callOutdated' });
  });

  test('the next instant to look again is the next at which a role can change', () => {
    const floor = inBulk();
    const changesMin: number[] = [];
    for (let at = nextRoleChangeMs(floor.state, floor.nowMs); at !== null; at = nextRoleChangeMs(floor.state, at))
      changesMin.push((at - OPENING_MS) / MINUTE_MS);
    expect(changesMin).toEqual([68, 78, 98]);
  });

  test('the end of a hold is such an instant', () => {
    const floor = inBulk().wait(35);
    floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id('C1'), stepId: 'fold-1', minutes: 2 });
    expect(nextRoleChangeMs(floor.state, floor.nowMs)).toBe(floor.nowMs + 2 * MINUTE_MS);
  });

  test('nothing to wait for on an empty floor', () => {
    expect(nextRoleChangeMs(Floor.harbour().only().state, OPENING_MS)).toBeNull();
  });
});

describe('D8 heard is not done', () => {
  test('it says who heard nothing of the dough: due, late and lost stay where they are', () => {
    const floor = inBulk().wait(30);
    floor.raiseCalls();
    const before = floor.due('C1');
    floor.wait(1).ok({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'fold-1' });
    expect(floor.piece('C1').call?.heardMs).toBe(floor.nowMs);
    const { workpiece: _before, ...dueBefore } = before;
    const { workpiece: _after, ...dueAfter } = floor.due('C1');
    expect(dueAfter).toEqual(dueBefore);
  });

  test('it is heard until it becomes late: then it calls anew', () => {
    const floor = inBulk().wait(30);
    floor.raiseCalls();
    floor.ok({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'fold-1' });
    expect(floor.wait(9).raiseCalls()).toEqual([]);
    expect(floor.piece('C1').call?.heardMs).not.toBeNull();
    floor.wait(1).raiseCalls();
    expect(floor.piece('C1').call).toMatchObject({ level: 'late', heardMs: null });
  });

  test('hearing it twice answers when it was heard', () => {
    given((floor) => {
      floor.bringTo('C1', 'fold-1').raiseCalls();
      floor.ok({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'fold-1' }, { deviceId: OTHER_PHONE });
      floor.wait(1);
    })
      .when((floor) => ({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'fold-1' }))
      .thenRefusal<'alreadyHeard'>({ code: 'alreadyHeard', tag: 'C1', stepId: 'fold-1', atMs: OPENING_MS + 68 * MINUTE_MS });
  });

  test('where nothing calls there is nothing to hear', () => {
    given()
      .when((floor) => ({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .thenRefusal<'nothingCalls'>({ code: 'nothingCalls', tag: 'C1', stepId: 'weigh' });
    given()
      .when(() => ({ type: 'hearAllCalls' }))
      .thenRefusal<'nothingCalls'>({ code: 'nothingCalls' });
  });

  test('one key hears everything that calls, once', () => {
    const floor = Floor.harbour().wait(20);
    expect(floor.raiseCalls()).toEqual(['C1 weigh late', 'R1 weigh late', 'M1 weigh call']);
    floor.ok({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'weigh' });
    floor.ok({ type: 'hearAllCalls' });
    expect(floor.recorded.filter(({ event }) => event.type === 'callHeard')).toHaveLength(3);
    expect(['C1', 'R1', 'M1'].map((tag) => floor.piece(tag).call?.heardMs)).toEqual([floor.nowMs, floor.nowMs, floor.nowMs]);
  });

  test('a tap made before the call was raised hears it when it was raised', () => {
    const floor = inBulk().wait(30);
    floor.raiseCalls();
    const raisedMs = floor.nowMs;
    floor.wait(1).ok({ type: 'hearCall', workpieceId: floor.id('C1'), stepId: 'fold-1' }, { tapMs: raisedMs - 5 * MINUTE_MS });
    expect(floor.piece('C1').call?.heardMs).toBe(raisedMs);
  });
});

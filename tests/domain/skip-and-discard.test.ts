import { describe, expect, test } from 'vitest';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';

describe('D11 a step is left out with its reason, a workpiece given up with its own', () => {
  test('what stands after it follows as if it had been done', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bulk-1').wait(10))
      .when((arranged) => ({ type: 'skipStep', workpieceId: arranged.id('C1'), stepId: 'fold-1', reason: 'strong enough' }))
      .thenTypes(['stepDone', 'stepSkipped', 'stepStarted']);
    expect(floor.piece('C1').steps['fold-1']).toMatchObject({ status: 'skipped', reason: 'strong enough' });
    expect(floor.due('C1')).toMatchObject({ phase: 'resting', step: { id: 'bulk-2' } });
  });

  test('a rest itself can be left out: the step after it is due at once', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bulk-1').wait(1))
      .when((arranged) => ({ type: 'skipStep', workpieceId: arranged.id('C1'), stepId: 'bulk-1', reason: 'warm room' }))
      .thenTypes(['stepSkipped']);
    expect(floor.due('C1')).toMatchObject({ phase: 'waiting', action: { id: 'fold-1' }, dueMs: floor.nowMs });
  });

  test('leaving out the taking out gives its slots back', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bake').wait(45))
      .when((arranged) => ({ type: 'skipStep', workpieceId: arranged.id('C1'), stepId: 'take-out', reason: 'already out' }))
      .thenTypes(['stepDone', 'slotHeatLearned', 'ovenUnloaded', 'stepSkipped', 'stepStarted']);
    expect(floor.piece('C1').slotIds).toEqual([]);
  });

  test('leaving out the last step takes it off the floor', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'cool').wait(60))
      .when((arranged) => ({ type: 'skipStep', workpieceId: arranged.id('C1'), stepId: 'pack', reason: 'sold warm' }))
      .thenTypes(['stepDone', 'stepSkipped', 'workpieceFinished']);
    expect(floor.piece('C1').ending).toBe('finished');
  });

  test('leaving out the divide of a dough for several products divides it as planned', () => {
    const floor = given((arranged) => arranged.bringTo('M1', 'divide'))
      .when((arranged) => ({ type: 'skipStep', workpieceId: arranged.id('M1'), stepId: 'divide', reason: 'divided by machine' }))
      .thenTypes(['stepDone', 'stepSkipped', 'workpieceDivided']);
    expect([floor.piece('M1a').pieces, floor.piece('M1b').pieces]).toEqual([30, 30]);
  });

  test('a discarded workpiece leaves its mixer and its slots, and calls no more', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed').wait(9);
    floor.raiseCalls();
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'salt forgotten' });
    expect(floor.piece('C1')).toMatchObject({ ending: 'discarded', mixerId: null, slotIds: [], call: null, finishedMs: floor.nowMs });
    const baked = Floor.harbour().bringTo('R1', 'bake');
    baked.ok({ type: 'discardWorkpiece', workpieceId: baked.id('R1'), reason: 'fell from the peel' });
    expect(baked.piece('R1').slotIds).toEqual([]);
  });

  test('a discarded load is out of the oven, and the journal says so', () => {
    given((floor) => floor.bringTo('R1', 'bake'))
      .when((floor) => ({ type: 'discardWorkpiece', workpieceId: floor.id('R1'), reason: 'fell from the peel' }))
      .thenTypes(['ovenUnloaded', 'vesselsReturned', 'workpieceDiscarded']);
  });

  test('what is off the floor cannot be given up again', () => {
    given((floor) => floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'no levain' }))
      .when((floor) => ({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'no levain' }))
      .thenRefusal<'workpieceFinished'>({ code: 'workpieceFinished', tag: 'C1', atMs: Floor.harbour().nowMs });
  });
});

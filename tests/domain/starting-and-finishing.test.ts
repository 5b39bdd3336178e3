import { describe, expect, test } from 'vitest';
import type { EventOf } from '../../shared/floor/events.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { OPENING_MS } from './support/harbour.ts';
import { idOf, OTHER_PHONE, PHONE } from './support/ids.ts';

const MINUTE_MS = 60_000;
const NOBODY = idOf(77_777);

describe('D2 done says everything that follows from it', () => {
  test('a hands step that was begun: only its end', () => {
    given((floor) => floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'weigh' }), { stationId: 'mixer' })
      .thenEvents([{ type: 'stepDone', workpieceId: workpieceOf('C1'), stepId: 'weigh', atMs: OPENING_MS, stationId: 'mixer' }]);
  });

  test('before a step that begins by itself: that one has begun, with its mixer and its pins', () => {
    given((floor) => floor.bringTo('C1', 'fill-bowl'))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'fill-bowl' }))
      .thenEvents([
        { type: 'stepDone', workpieceId: workpieceOf('C1'), stepId: 'fill-bowl', atMs: OPENING_MS },
        {
          type: 'stepStarted',
          workpieceId: workpieceOf('C1'),
          stepId: 'first-speed',
          atMs: OPENING_MS,
          resources: [
            { kind: 'mixer', id: 'spiral' },
            { kind: 'bowl', id: 'spiral-bowl' },
          ],
          pins: { earliestMin: 3, targetMin: 4, latestMin: 7, factor: 1, model: 'nominal', houseVersion: 1 },
        },
      ]);
  });

  test('a fold: the rest before it is over, the one after it has begun', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bulk-1').wait(32))
      .when((arranged) => ({ type: 'finishStep', workpieceId: arranged.id('C1'), stepId: 'fold-1' }))
      .thenTypes(['stepDone', 'stepDone', 'stepStarted']);
    expect(
      Object.entries(floor.piece('C1').steps)
        .filter(([id]) => ['bulk-1', 'fold-1', 'bulk-2'].includes(id))
        .map(([id, life]) => [id, life.status]),
    ).toEqual([
      ['bulk-1', 'done'],
      ['fold-1', 'done'],
      ['bulk-2', 'started'],
    ]);
    expect(floor.piece('C1').placeId).toBe('warm-shelf');
  });

  test('the mixer is free again once the dough is turned out', () => {
    const floor = Floor.harbour().bringTo('C1', 'turn-out');
    expect(floor.piece('C1').mixerId).toBe('spiral');
    floor.finish('C1');
    expect(floor.piece('C1').mixerId).toBeNull();
  });

  test('a load: it is in its slots and the bake has begun', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'load'))
      .when((arranged) => ({ type: 'finishStep', workpieceId: arranged.id('C1'), stepId: 'load' }))
      .thenTypes(['ovenLoaded', 'stepDone', 'vesselsReturned', 'stepStarted']);
    expect(floor.piece('C1').slotIds).toEqual(['bottom-left', 'bottom-right']);
  });

  test('a load goes where the thumb says', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'load'))
      .when((arranged) => ({
        type: 'finishStep',
        workpieceId: arranged.id('C1'),
        stepId: 'load',
        slotIds: ['top-right', 'bottom-left', 'top-right'],
      }))
      .thenTypes(['ovenLoaded', 'stepDone', 'vesselsReturned', 'stepStarted']);
    expect(floor.piece('C1').slotIds).toEqual(['top-right', 'bottom-left']);
  });

  test('a taking out: the bake is over and the slots are free', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bake').wait(45))
      .when((arranged) => ({ type: 'finishStep', workpieceId: arranged.id('C1'), stepId: 'take-out' }))
      .thenTypes(['stepDone', 'slotHeatLearned', 'ovenUnloaded', 'lossNamed', 'stepDone', 'stepStarted']);
    expect(floor.piece('C1').slotIds).toEqual([]);
  });

  test('the last step: off the floor, with the pieces that were counted', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'cool').wait(60))
      .when((arranged) => ({ type: 'finishStep', workpieceId: arranged.id('C1'), stepId: 'pack', piecesDone: 9 }))
      .thenTypes(['stepDone', 'stepDone', 'workpieceFinished']);
    expect(floor.piece('C1').steps['pack']?.piecesDone).toBe(9);
    expect(floor.piece('C1').ending).toBe('finished');
  });
});

describe('starting', () => {
  test('a hands step is begun by somebody, at a station, and is no call meanwhile', () => {
    const floor = given()
      .when((arranged) => ({ type: 'startStep', workpieceId: arranged.id('C1'), stepId: 'weigh' }), {
        stationId: 'mixer',
        deviceId: OTHER_PHONE,
      })
      .thenTypes(['stepStarted']);
    expect(floor.piece('C1').steps['weigh']).toMatchObject({ status: 'started', startedBy: OTHER_PHONE, stationId: 'mixer' });
    expect(floor.due('C1')).toMatchObject({ phase: 'working', dueMs: OPENING_MS + 6 * MINUTE_MS });
  });

  test('the step that ends a rest ends it when it is begun', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bulk-1').wait(30))
      .when((arranged) => ({ type: 'startStep', workpieceId: arranged.id('C1'), stepId: 'fold-1' }))
      .thenTypes(['stepDone', 'stepStarted']);
    expect(floor.due('C1')).toMatchObject({ phase: 'working', action: { id: 'fold-1' } });
  });

  test('make-up takes as long as there are pieces', () => {
    const floor = Floor.harbour().bringTo('C1', 'bench-rest').wait(20);
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'shape' });
    expect(floor.piece('C1').steps['shape']?.pins?.targetMin).toBe(1 + 10 * 0.75);
  });

  test('D5 a mixer that is named is taken, where the dough could go into either', () => {
    const floor = Floor.harbour();
    floor.finish('R1', 'weigh');
    floor.ok({ type: 'startStep', workpieceId: floor.id('R1'), stepId: 'fill-bowl', mixerId: 'spiral' });
    expect(floor.piece('R1').mixerId).toBe('spiral');
  });

  test('D5 the second best mixer is taken where the best is busy', () => {
    const floor = Floor.harbour().bringTo('M1', 'first-speed');
    floor.bringTo('R1', 'first-speed');
    expect([floor.piece('M1').mixerId, floor.piece('R1').mixerId]).toEqual(['planetary', 'spiral']);
  });
});

describe('D3 a command names the step it believes in', () => {
  test('the second thumb is told when, where and by whom the step was done', () => {
    given((floor) => {
      floor.finish('C1', 'weigh', { deviceId: OTHER_PHONE, stationId: 'mixer' });
      floor.wait(0.5);
    })
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'weigh' }), { deviceId: PHONE })
      .thenRefusal<'stepAlreadyDone'>({
        code: 'stepAlreadyDone',
        tag: 'C1',
        stepId: 'weigh',
        atMs: OPENING_MS,
        deviceId: OTHER_PHONE,
        stationId: 'mixer',
        skipped: false,
      });
  });

  test('of a step that was skipped it is told so', () => {
    given((floor) => floor.ok({ type: 'skipStep', workpieceId: floor.id('C1'), stepId: 'weigh', reason: 'weighed last night' }))
      .when((floor) => ({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .thenRefusal<'stepAlreadyDone'>({
        code: 'stepAlreadyDone',
        tag: 'C1',
        stepId: 'weigh',
        atMs: OPENING_MS,
        deviceId: PHONE,
        skipped: true,
      });
  });

  test('of the divide that made cuts it is told too, though the batch is off the floor', () => {
    given((floor) => floor.bringTo('M1', 'divide').finish('M1', 'divide', { deviceId: OTHER_PHONE }))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('M1'), stepId: 'divide' }))
      .thenRefusal<'stepAlreadyDone'>({
        code: 'stepAlreadyDone',
        tag: 'M1',
        stepId: 'divide',
        atMs: OPENING_MS + 98 * MINUTE_MS,
        deviceId: OTHER_PHONE,
        skipped: false,
      });
  });

  test('starting what is started answers who began it', () => {
    given((floor) => floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' }, { deviceId: OTHER_PHONE }))
      .when((floor) => ({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .thenRefusal<'stepAlreadyStarted'>({
        code: 'stepAlreadyStarted',
        tag: 'C1',
        stepId: 'weigh',
        atMs: OPENING_MS,
        deviceId: OTHER_PHONE,
      });
  });

  test('a rest that runs is started already', () => {
    given((floor) => floor.bringTo('C1', 'bulk-1'))
      .when((floor) => ({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'bulk-1' }))
      .thenRefusal<'stepAlreadyStarted'>({
        code: 'stepAlreadyStarted',
        tag: 'C1',
        stepId: 'bulk-1',
        atMs: OPENING_MS + 38 * MINUTE_MS,
        deviceId: PHONE,
      });
  });

  test('a rest is ended by the step after it, not by a tap on itself', () => {
    given((floor) => floor.bringTo('C1', 'bulk-1'))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'bulk-1' }))
      .thenRefusal<'stepNotReached'>({ code: 'stepNotReached', tag: 'C1', stepId: 'bulk-1', currentStepId: 'fold-1' });
  });

  test('a step that is still ahead is not reached', () => {
    given()
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'load' }))
      .thenRefusal<'stepNotReached'>({ code: 'stepNotReached', tag: 'C1', stepId: 'load', currentStepId: 'weigh' });
  });

  test('a step that is not on its way is unknown', () => {
    given()
      .when((floor) => ({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'depan' }))
      .thenRefusal<'stepUnknown'>({ code: 'stepUnknown', tag: 'C1', stepId: 'depan' });
  });

  test('a workpiece that nobody knows is unknown', () => {
    given()
      .when(() => ({ type: 'finishStep', workpieceId: NOBODY, stepId: 'weigh' }))
      .thenRefusal<'workpieceUnknown'>({ code: 'workpieceUnknown', workpieceId: NOBODY });
  });

  test('a workpiece off the floor is finished', () => {
    given((floor) => floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('C1'), reason: 'no levain' }))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .thenRefusal<'workpieceFinished'>({ code: 'workpieceFinished', tag: 'C1', atMs: OPENING_MS });
  });
});

describe('D5 a mixer holds one dough, a slot one load', () => {
  test('a mixer that another dough has is busy', () => {
    given((floor) => floor.bringTo('C1', 'first-speed').bringTo('C2', 'fill-bowl'))
      .when((floor) => ({ type: 'startStep', workpieceId: floor.id('C2'), stepId: 'fill-bowl' }))
      .thenRefusal<'mixerBusy'>({ code: 'mixerBusy', tag: 'C2', stepId: 'fill-bowl', mixerId: 'spiral', busyWithTag: 'C1' });
  });

  test('filling the bowl cannot be done either while the mixer is busy: mixing would begin with it', () => {
    given((floor) => floor.bringTo('C1', 'first-speed').bringTo('C2', 'fill-bowl'))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C2'), stepId: 'fill-bowl' }))
      .thenRefusal<'mixerBusy'>({ code: 'mixerBusy', tag: 'C2', stepId: 'first-speed', mixerId: 'spiral', busyWithTag: 'C1' });
  });

  test('a mixer that the house has not is unknown', () => {
    given((floor) => floor.finish('C1', 'weigh'))
      .when((floor) => ({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'fill-bowl', mixerId: 'fork' }))
      .thenRefusal<'mixerUnknown'>({ code: 'mixerUnknown', tag: 'C1', stepId: 'fill-bowl', mixerId: 'fork' });
  });

  test('a slot that is taken is refused with the ones that are free', () => {
    given((floor) => floor.bringTo('R1', 'bake').bringTo('C1', 'load'))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'load', slotIds: ['bottom-left', 'bottom-right'] }))
      .thenRefusal<'slotTaken'>({
        code: 'slotTaken',
        tag: 'C1',
        stepId: 'load',
        slotId: 'bottom-left',
        takenByTag: 'R1',
        freeSlotIds: ['bottom-right', 'top-left', 'top-right'],
      });
  });

  test('a slot that no oven has is unknown', () => {
    given((floor) => floor.bringTo('C1', 'load'))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'load', slotIds: ['middle'] }))
      .thenRefusal<'slotUnknown'>({ code: 'slotUnknown', tag: 'C1', stepId: 'load', slotId: 'middle' });
  });

  test('where too few slots are free it says who has them', () => {
    given((floor) => floor.bringTo('C1', 'bake').bringTo('R1', 'bake').bringTo('C2', 'load'))
      .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('C2'), stepId: 'load' }))
      .thenRefusal<'noFreeSlot'>({ code: 'noFreeSlot', tag: 'C2', stepId: 'load', deckIds: ['bottom', 'top'], takenByTags: ['C1', 'R1'] });
  });

  test('the next deck that will do is taken where the best is full', () => {
    const floor = Floor.harbour().bringTo('C1', 'bake').bringTo('R1', 'bake');
    expect(floor.piece('R1').slotIds).toEqual(['top-left']);
  });
});

describe('temperatures', () => {
  test('a reading is kept with the time of its tap, and moves nothing', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bulk-1').wait(5))
      .when((arranged) => ({ type: 'readTemperature', workpieceId: arranged.id('C1'), where: 'dough', celsius: 25.4 }), {
        tapMs: OPENING_MS + 40 * MINUTE_MS,
      })
      .thenEvents([
        { type: 'temperatureRead', workpieceId: workpieceOf('C1'), where: 'dough', celsius: 25.4, atMs: OPENING_MS + 40 * MINUTE_MS },
      ]);
    expect(floor.piece('C1').readings).toEqual([{ where: 'dough', celsius: 25.4, atMs: OPENING_MS + 40 * MINUTE_MS }]);
    expect(floor.due('C1').action.id).toBe('fold-1');
  });

  test('only the last twenty stay in the live state', () => {
    const floor = Floor.harbour();
    for (let n = 0; n < 25; n += 1) floor.ok({ type: 'readTemperature', workpieceId: floor.id('C1'), where: 'room', celsius: n });
    expect(floor.piece('C1').readings.map((reading) => reading.celsius)).toEqual(Array.from({ length: 20 }, (_, n) => n + 5));
  });
});

describe('what is not tapped yet is folded all the same', () => {
  test('progress, hand-over and corrections change the step and the workpiece they name', () => {
    const floor = Floor.harbour();
    const workpieceId = floor.id('C1');
    floor.ok({ type: 'startStep', workpieceId, stepId: 'weigh' });
    const progressed: EventOf<'stepProgressed'> = {
      type: 'stepProgressed',
      workpieceId,
      stepId: 'weigh',
      atMs: floor.nowMs,
      piecesDone: 4,
    };
    floor.record(progressed);
    floor.record({ type: 'stepHandedOver', workpieceId, stepId: 'weigh', atMs: floor.nowMs, fromStationId: 'mixer', toStationId: 'bench' });
    floor.record({
      type: 'timeCorrected',
      workpieceId,
      stepId: 'weigh',
      edge: 'start',
      fromMs: floor.nowMs,
      toMs: floor.nowMs - MINUTE_MS,
      atMs: floor.nowMs,
    });
    floor.record({ type: 'countCorrected', workpieceId, fromPieces: 10, toPieces: 9, atMs: floor.nowMs });
    floor.record({ type: 'tagCorrected', workpieceId, fromTag: 'C1', toTag: 'C9', atMs: floor.nowMs });
    expect(floor.piece('C9')).toMatchObject({
      id: workpieceId,
      pieces: 9,
      steps: { weigh: { piecesDone: 4, stationId: 'bench', startedMs: OPENING_MS - MINUTE_MS } },
    });
  });

  test('decks set, resources blocked and freed, pieces moved', () => {
    const floor = Floor.harbour();
    const blocked: EventOf<'resourceBlocked'> = {
      type: 'resourceBlocked',
      resource: { kind: 'mixer', id: 'spiral' },
      why: 'cleaning',
      atMs: floor.nowMs,
    };
    floor.record({ type: 'deckSet', deckId: 'top', temperatureC: 220, atMs: floor.nowMs });
    floor.record(blocked);
    expect([floor.state.deckC, floor.state.blocked]).toEqual([{ top: 220 }, [blocked]]);
    floor.record({ type: 'resourceFreed', resource: { kind: 'mixer', id: 'spiral' }, atMs: floor.nowMs });
    floor.record({ type: 'workpieceMoved', workpieceId: floor.id('C1'), placeId: 'bench', atMs: floor.nowMs });
    expect([floor.state.blocked, floor.piece('C1').placeId]).toEqual([[], 'bench']);
  });

  test('a plan moves what has not begun, and leaves the rest where it is', () => {
    const floor = Floor.harbour();
    floor.finish('C1', 'weigh');
    const laterMs = OPENING_MS + 90 * MINUTE_MS;
    const starts = ['C1', 'C2'].map((tag) => ({ workpieceId: floor.id(tag), stepId: 'weigh', plannedStartMs: laterMs, resources: [] }));
    floor.record({ type: 'planAdopted', planId: idOf(5), isWhole: true, starts, moved: [], warnings: [] });
    expect([floor.piece('C1').plannedStartMs, floor.piece('C2').plannedStartMs, floor.due('C2').dueMs]).toEqual([
      OPENING_MS,
      laterMs,
      laterMs,
    ]);
  });
});

/** The id of a workpiece of the demo day, the same on every floor. */
function workpieceOf(tag: string): string {
  return Floor.harbour().id(tag);
}

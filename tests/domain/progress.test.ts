import { describe, expect, test } from 'vitest';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { bringInCommand, harbourFile, OPENING_MS } from './support/harbour.ts';
import { OTHER_PHONE, PHONE, SERVER_DEVICE } from './support/ids.ts';
import { expectUndone } from './support/undone.ts';

const MINUTE_MS = 60_000;

/** C1 is being shaped, begun by somebody at the bench. */
function shaping(floor: Floor): void {
  floor.bringTo('C1', 'shape').ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'shape' }, { stationId: 'bench' });
}

/** The demo day with one thing changed in its file. */
function harbourWith(change: (command: ReturnType<typeof bringInCommand>) => ReturnType<typeof bringInCommand>): Floor {
  const floor = new Floor();
  floor.ok(change(bringInCommand(harbourFile(), OPENING_MS)), { deviceId: SERVER_DEVICE });
  return floor;
}

describe('D26 pieces done of how many', () => {
  test('so many are done, then more, then fewer where it was a mis-tap', () => {
    const floor = Floor.harbour();
    shaping(floor);
    for (const piecesDone of [4, 7, 6]) {
      floor.wait(1).ok({ type: 'reportProgress', workpieceId: floor.id('C1'), stepId: 'shape', piecesDone });
      expect(floor.piece('C1').steps['shape']?.piecesDone).toBe(piecesDone);
    }
    expect(floor.due('C1')).toMatchObject({ phase: 'working', step: { id: 'shape' } });
  });

  test('on a step that nobody said was begun, it has begun, and the rest before it is over', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'shape'))
      .when((arranged) => ({ type: 'reportProgress', workpieceId: arranged.id('C1'), stepId: 'shape', piecesDone: 3 }), {
        stationId: 'bench',
      })
      .thenTypes(expectedTypes());
    expect(floor.piece('C1').steps['bench-rest']).toMatchObject({ status: 'done', endedMs: floor.nowMs });
    expect(floor.piece('C1').steps['shape']).toMatchObject({
      status: 'started',
      startedMs: floor.nowMs,
      startedBy: PHONE,
      stationId: 'bench',
      piecesDone: 3,
    });
  });

  test('a divide into several counts the pieces that its cuts will have', () => {
    const floor = given((arranged) => arranged.bringTo('M1', 'divide'))
      .when((arranged) => ({ type: 'reportProgress', workpieceId: arranged.id('M1'), stepId: 'divide', piecesDone: 60 }))
      .thenTypes(['stepDone', 'stepStarted', 'stepProgressed']);
    given(() => {})
      .when(() => ({ type: 'reportProgress', workpieceId: floor.id('M1'), stepId: 'weigh', piecesDone: 61 }))
      .thenRefusal<'morePiecesThanThere'>({ code: 'morePiecesThanThere', tag: 'M1', stepId: 'weigh', wanted: 61, has: 60 });
  });

  test('not more pieces than there are', () => {
    given(shaping)
      .when((floor) => ({ type: 'reportProgress', workpieceId: floor.id('C1'), stepId: 'shape', piecesDone: 11 }))
      .thenRefusal<'morePiecesThanThere'>({ code: 'morePiecesThanThere', tag: 'C1', stepId: 'shape', wanted: 11, has: 10 });
  });

  test('the same again, or none of a step not begun, changes nothing', () => {
    given((floor) => {
      shaping(floor);
      floor.ok({ type: 'reportProgress', workpieceId: floor.id('C1'), stepId: 'shape', piecesDone: 4 });
    })
      .when((floor) => ({ type: 'reportProgress', workpieceId: floor.id('C1'), stepId: 'shape', piecesDone: 4 }))
      .thenRefusal<'nothingChanges'>({ code: 'nothingChanges', tag: 'C1', stepId: 'shape' });
    given()
      .when((floor) => ({ type: 'reportProgress', workpieceId: floor.id('C1'), stepId: 'weigh', piecesDone: 0 }))
      .thenRefusal<'nothingChanges'>({ code: 'nothingChanges', tag: 'C1', stepId: 'weigh' });
  });

  test('a dough of which nobody counts pieces has none to report', () => {
    const floor = harbourWith((command) => ({ ...command, batches: command.batches.map((batch) => ({ ...batch, cuts: [] })) }));
    expect(floor.give({ type: 'reportProgress', workpieceId: floor.id('M1'), stepId: 'weigh', piecesDone: 1 }).decision).toEqual({
      ok: false,
      fault: { code: 'noPieces', tag: 'M1', stepId: 'weigh' },
    });
  });

  test('a rest has no pieces done: the step that ends it has', () => {
    given((floor) => floor.bringTo('C1', 'bench-rest'))
      .when((floor) => ({ type: 'reportProgress', workpieceId: floor.id('C1'), stepId: 'bench-rest', piecesDone: 1 }))
      .thenRefusal<'stepNotReached'>({ code: 'stepNotReached', tag: 'C1', stepId: 'bench-rest', currentStepId: 'shape' });
  });

  test('a step that takes a mixer which is busy does not begin', () => {
    given((floor) => floor.bringTo('C1', 'first-speed').finish('C2', 'weigh'))
      .when((floor) => ({ type: 'reportProgress', workpieceId: floor.id('C2'), stepId: 'fill-bowl', piecesDone: 1 }))
      .thenRefusal<'mixerBusy'>({ code: 'mixerBusy', tag: 'C2', stepId: 'fill-bowl', mixerId: 'spiral', busyWithTag: 'C1' });
  });
});

/** The rest is over, what the step takes is taken, it has begun, and so many are done. */
function expectedTypes(): ('stepDone' | 'vesselsTaken' | 'stepStarted' | 'stepProgressed')[] {
  const shape = harbourFile()
    .products.find((product) => product.id === 'country-loaf')
    ?.way.find((step) => step.id === 'shape');
  const vessels = shape?.claims.filter((claim) => claim.kind === 'vessel') ?? [];
  return ['stepDone', ...vessels.map(() => 'vesselsTaken' as const), 'stepStarted', 'stepProgressed'];
}

describe('D26 two people on one step', () => {
  test('another station works on it too', () => {
    given(shaping)
      .when((floor) => ({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'shape' }), {
        stationId: 'fillings',
        deviceId: OTHER_PHONE,
      })
      .thenEvents([
        {
          type: 'stepHelped',
          workpieceId: Floor.harbour().id('C1'),
          stepId: 'shape',
          atMs: Floor.harbour().bringTo('C1', 'shape').nowMs,
          stationId: 'fillings',
        },
      ]);
  });

  test('a judged step can be helped with too, and the way names its station where the tap had none', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed');
    floor.ok({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'first-speed' }, { stationId: 'oven' });
    expect(floor.piece('C1').steps['first-speed']).toMatchObject({ stationId: null, helperIds: ['oven'] });
    given((arranged) => arranged.bringTo('C1', 'first-speed'))
      .when((arranged) => ({ type: 'helpStep', workpieceId: arranged.id('C1'), stepId: 'first-speed' }), { stationId: 'mixer' })
      .thenRefusal<'alreadyThere'>({ code: 'alreadyThere', tag: 'C1', stepId: 'first-speed', stationId: 'mixer' });
  });

  test('whose step it is, and who helps already, is there already', () => {
    given(shaping)
      .when((floor) => ({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'shape' }), { stationId: 'bench' })
      .thenRefusal<'alreadyThere'>({ code: 'alreadyThere', tag: 'C1', stepId: 'shape', stationId: 'bench' });
    given((floor) => {
      shaping(floor);
      floor.ok({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'shape' }, { stationId: 'oven' });
    })
      .when((floor) => ({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'shape' }), { stationId: 'oven' })
      .thenRefusal<'alreadyThere'>({ code: 'alreadyThere', tag: 'C1', stepId: 'shape', stationId: 'oven' });
  });

  test('a device without a station cannot say who helps, one of a station that is gone neither', () => {
    given(shaping)
      .when((floor) => ({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'shape' }))
      .thenRefusal<'stationNeeded'>({ code: 'stationNeeded', tag: 'C1', stepId: 'shape' });
    given(shaping)
      .when((floor) => ({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'shape' }), { stationId: 'attic' })
      .thenRefusal<'stationUnknown'>({ code: 'stationUnknown', tag: 'C1', stepId: 'shape', stationId: 'attic' });
  });

  test('what waits or rests cannot be helped with', () => {
    given()
      .when((floor) => ({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'weigh' }), { stationId: 'bench' })
      .thenRefusal<'notUnderWay'>({ code: 'notUnderWay', tag: 'C1', stepId: 'weigh' });
    for (const stepId of ['bulk-1', 'fold-1']) {
      given((floor) => floor.bringTo('C1', 'bulk-1'))
        .when((floor) => ({ type: 'helpStep', workpieceId: floor.id('C1'), stepId }), { stationId: 'bench' })
        .thenRefusal<'notUnderWay'>({ code: 'notUnderWay', tag: 'C1', stepId });
    }
  });
});

describe('D26 a step handed over', () => {
  test('from the station that has it to another, which helps no longer', () => {
    const floor = Floor.harbour();
    shaping(floor);
    for (const stationId of ['oven', 'fillings'])
      floor.ok({ type: 'helpStep', workpieceId: floor.id('C1'), stepId: 'shape' }, { stationId });
    floor.wait(1).ok({ type: 'handOver', workpieceId: floor.id('C1'), stepId: 'shape', toStationId: 'oven' });
    expect(floor.recorded.at(-1)?.event).toEqual({
      type: 'stepHandedOver',
      workpieceId: floor.id('C1'),
      stepId: 'shape',
      atMs: floor.nowMs,
      fromStationId: 'bench',
      toStationId: 'oven',
    });
    expect(floor.piece('C1').steps['shape']).toMatchObject({
      stationId: 'oven',
      helperIds: ['fillings'],
      startedMs: floor.nowMs - MINUTE_MS,
    });
  });

  test('a step begun without a station comes from where the way has it', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed');
    floor.ok({ type: 'handOver', workpieceId: floor.id('C1'), stepId: 'first-speed', toStationId: 'bench' });
    expect(floor.recorded.at(-1)?.event).toMatchObject({ type: 'stepHandedOver', fromStationId: 'mixer', toStationId: 'bench' });
  });

  test('where neither says, it comes from where the tap was made, or it cannot be said', () => {
    const withoutStation = (): Floor =>
      harbourWith((command) => ({
        ...command,
        formulas: command.formulas.map((formula) => ({ ...formula, method: formula.method.map(({ station: _station, ...step }) => step) })),
      })).bringTo('C1', 'first-speed');
    const floor = withoutStation();
    const handOver = { type: 'handOver', workpieceId: floor.id('C1'), stepId: 'first-speed', toStationId: 'bench' } as const;
    expect(floor.give(handOver).decision).toEqual({ ok: false, fault: { code: 'stationNeeded', tag: 'C1', stepId: 'first-speed' } });
    floor.ok(handOver, { stationId: 'oven' });
    expect(floor.recorded.at(-1)?.event).toMatchObject({ type: 'stepHandedOver', fromStationId: 'oven', toStationId: 'bench' });
  });

  test('only to a station of the kitchen, and to another than it has', () => {
    given(shaping)
      .when((floor) => ({ type: 'handOver', workpieceId: floor.id('C1'), stepId: 'shape', toStationId: 'attic' }))
      .thenRefusal<'stationUnknown'>({ code: 'stationUnknown', tag: 'C1', stepId: 'shape', stationId: 'attic' });
    given(shaping)
      .when((floor) => ({ type: 'handOver', workpieceId: floor.id('C1'), stepId: 'shape', toStationId: 'bench' }))
      .thenRefusal<'alreadyThere'>({ code: 'alreadyThere', tag: 'C1', stepId: 'shape', stationId: 'bench' });
  });

  test('only what is under way', () => {
    given((floor) => floor.bringTo('C1', 'bulk-1'))
      .when((floor) => ({ type: 'handOver', workpieceId: floor.id('C1'), stepId: 'fold-1', toStationId: 'oven' }))
      .thenRefusal<'notUnderWay'>({ code: 'notUnderWay', tag: 'C1', stepId: 'fold-1' });
  });
});

describe('D26 undo takes it back', () => {
  test('progress that began a step and ended a rest', () => {
    const floor = Floor.harbour().bringTo('C1', 'shape');
    floor.raiseCalls();
    expectUndone(floor, { type: 'reportProgress', workpieceId: floor.id('C1'), stepId: 'shape', piecesDone: 3 });
  });

  test('progress, help and handing over', () => {
    const floor = Floor.harbour();
    shaping(floor);
    const onStep = { workpieceId: floor.id('C1'), stepId: 'shape' };
    floor.ok({ type: 'reportProgress', ...onStep, piecesDone: 2 }, { deviceId: OTHER_PHONE });
    expectUndone(floor, { type: 'reportProgress', ...onStep, piecesDone: 3 });
    expectUndone(floor, { type: 'helpStep', ...onStep }, { stationId: 'oven' });
    expectUndone(floor, { type: 'handOver', ...onStep, toStationId: 'oven' });
  });
});

import { describe, expect, test } from 'vitest';
import type { FloorEvent } from '../../shared/floor/events.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { bringInCommand, harbourFile, OPENING_MS } from './support/harbour.ts';
import { idOf, OTHER_PHONE, PHONE, SERVER_DEVICE } from './support/ids.ts';
import { expectUndone } from './support/undone.ts';

const MINUTE_MS = 60_000;
const KEPT_MS = 36 * 3_600_000;

/** C1 at its second rest, five minutes after the fold was tapped. */
function folded(floor: Floor): void {
  floor.bringTo('C1', 'fold-1').finish('C1', 'fold-1');
  floor.wait(5);
}

function edges(floor: Floor, tag: string, ...stepIds: string[]): (number | null | undefined)[][] {
  const { steps } = floor.piece(tag);
  return stepIds.map((stepId) => [steps[stepId]?.startedMs, steps[stepId]?.endedMs]);
}

/** The last events that the floor recorded, of one command. */
function lastEvents(floor: Floor): readonly FloorEvent[] {
  const commandId = floor.recorded.at(-1)?.commandId;
  return floor.recorded.filter((recorded) => recorded.commandId === commandId).map((recorded) => recorded.event);
}

describe('D27 a wrong time is corrected', () => {
  test('what the same tap said moves along: the rest it ended, the rest that began with it', () => {
    const floor = Floor.harbour();
    folded(floor);
    const tappedMs = floor.nowMs - 5 * MINUTE_MS;
    const [toMs, bulkMs] = [tappedMs - 3 * MINUTE_MS, floor.piece('C1').steps['bulk-1']?.startedMs];
    const { dueMs } = floor.due('C1');
    floor.ok({ type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'fold-1', edge: 'end', toMs });
    const moved = { type: 'timeCorrected', workpieceId: floor.id('C1'), fromMs: tappedMs, toMs, atMs: floor.nowMs };
    expect(lastEvents(floor)).toEqual([
      { ...moved, stepId: 'fold-1', edge: 'end' },
      { ...moved, stepId: 'bulk-1', edge: 'end' },
      { ...moved, stepId: 'bulk-2', edge: 'start' },
    ]);
    expect(edges(floor, 'C1', 'bulk-1', 'fold-1', 'bulk-2')).toEqual([
      [bulkMs, toMs],
      [null, toMs],
      [toMs, null],
    ]);
    expect(floor.due('C1').dueMs).toBe(dueMs - 3 * MINUTE_MS);
    expect(floor.piece('C1').readyMs).toBe(toMs);
  });

  test('the step after that was tapped begun stays where it is', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    floor.wait(6).finish('C1', 'weigh');
    const doneMs = floor.nowMs;
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'fill-bowl' });
    floor.ok({ type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'weigh', edge: 'end', toMs: doneMs - MINUTE_MS });
    expect(lastEvents(floor)).toHaveLength(1);
    expect(edges(floor, 'C1', 'weigh', 'fill-bowl')).toEqual([
      [OPENING_MS, doneMs - MINUTE_MS],
      [doneMs, null],
    ]);
  });

  test('a start moves what is due', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    const { dueMs } = floor.wait(3).due('C1');
    floor.ok({ type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'weigh', edge: 'start', toMs: OPENING_MS - 10 * MINUTE_MS });
    expect(floor.due('C1').dueMs).toBe(dueMs - 10 * MINUTE_MS);
  });

  test('it is kept with what it was, by which device and when', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    floor
      .wait(3)
      .ok(
        { type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'weigh', edge: 'start', toMs: OPENING_MS + MINUTE_MS },
        { deviceId: OTHER_PHONE },
      );
    expect(floor.piece('C1').corrections).toEqual([
      { what: 'start', stepId: 'weigh', from: OPENING_MS, to: OPENING_MS + MINUTE_MS, atMs: floor.nowMs, deviceId: OTHER_PHONE },
    ]);
  });

  test('between what came before and what came after, ends included', () => {
    const arranged = (): Floor => {
      const floor = Floor.harbour();
      folded(floor);
      return floor;
    };
    const [startMs, nowMs] = [arranged().piece('C1').steps['bulk-1']?.startedMs ?? 0, arranged().nowMs];
    const command = (toMs: number) =>
      ({ type: 'correctTime', workpieceId: arranged().id('C1'), stepId: 'fold-1', edge: 'end', toMs }) as const;
    for (const toMs of [startMs - 1, nowMs + 1])
      given(folded)
        .when(() => command(toMs))
        .thenRefusal<'timeOutOfOrder'>({ code: 'timeOutOfOrder', tag: 'C1', stepId: 'fold-1', earliestMs: startMs, latestMs: nowMs });
    for (const toMs of [startMs, nowMs])
      given(folded)
        .when(() => command(toMs))
        .thenTypes(['timeCorrected', 'timeCorrected', 'timeCorrected']);
  });

  test('not after the next thing that happened', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    floor.wait(6).finish('C1', 'weigh');
    const doneMs = floor.nowMs;
    const startMs = (toMs: number) =>
      floor.wait(5).give({ type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'weigh', edge: 'start', toMs }).decision;
    expect(startMs(doneMs + 1)).toEqual({
      ok: false,
      fault: { code: 'timeOutOfOrder', tag: 'C1', stepId: 'weigh', earliestMs: OPENING_MS - KEPT_MS, latestMs: doneMs },
    });
    expect(startMs(doneMs).ok).toBe(true);
  });

  test('a cut has no time before its divide, and what was divided none after it', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    floor.finish('M1', 'divide');
    const dividedMs = floor.nowMs;
    floor.wait(5).ok({ type: 'startStep', workpieceId: floor.id('M1a'), stepId: 'round' });
    expect(
      floor.give({ type: 'correctTime', workpieceId: floor.id('M1a'), stepId: 'round', edge: 'start', toMs: dividedMs - 1 }).decision,
    ).toEqual({
      ok: false,
      fault: { code: 'timeOutOfOrder', tag: 'M1a', stepId: 'round', earliestMs: dividedMs, latestMs: floor.nowMs },
    });
    expect(
      floor.give({ type: 'correctTime', workpieceId: floor.id('M1'), stepId: 'divide', edge: 'end', toMs: dividedMs + 1 }).decision,
    ).toMatchObject({ ok: false, fault: { code: 'timeOutOfOrder', latestMs: dividedMs } });
  });

  test('a load has the times of its cut from before it was made', () => {
    const floor = Floor.harbour().bringTo('C1', 'shape').wait(2);
    floor.finish('C1', 'shape');
    const shapedMs = floor.nowMs;
    const child = {
      workpieceId: idOf(61),
      tag: 'C1·1',
      productId: 'country-loaf',
      productVersion: 1,
      pieces: 10,
      grams: 9000,
      vessels: [],
    };
    floor.wait(1);
    floor.record({
      type: 'loadsMade',
      workpieceId: floor.id('C1'),
      stepId: 'shape',
      atMs: floor.nowMs,
      children: [child],
      restPieces: 0,
      restG: 0,
    });
    floor.ok({ type: 'correctTime', workpieceId: floor.id('C1·1'), stepId: 'shape', edge: 'end', toMs: shapedMs - MINUTE_MS });
    expect(floor.piece('C1·1').steps['shape']?.endedMs).toBe(shapedMs - MINUTE_MS);
    expect(floor.piece('C1').steps['shape']?.endedMs, 'its cut has said what it said').toBe(shapedMs);
  });

  test('what is off the floor can be corrected for the records', () => {
    const floor = Floor.harbour().bringTo('R1', 'pack');
    floor.finish('R1', 'pack');
    floor.wait(10).ok({ type: 'correctTime', workpieceId: floor.id('R1'), stepId: 'pack', edge: 'end', toMs: floor.nowMs - 4 * MINUTE_MS });
    expect(floor.piece('R1').steps['pack']?.endedMs).toBe(floor.nowMs - 4 * MINUTE_MS);
  });

  test('only a time that was said', () => {
    const started = (floor: Floor): void => {
      floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    };
    for (const [stepId, edge] of [
      ['weigh', 'end'],
      ['fill-bowl', 'start'],
    ] as const)
      given(started)
        .when((floor) => ({ type: 'correctTime', workpieceId: floor.id('C1'), stepId, edge, toMs: OPENING_MS }))
        .thenRefusal<'notUnderWay'>({ code: 'notUnderWay', tag: 'C1', stepId });
    given(started)
      .when((floor) => ({ type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'weigh', edge: 'start', toMs: OPENING_MS }))
      .thenRefusal<'nothingChanges'>({ code: 'nothingChanges', tag: 'C1', stepId: 'weigh' });
  });

  test('of a step of its way and a dough that is here', () => {
    given()
      .when((floor) => ({ type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'tin', edge: 'end', toMs: OPENING_MS }))
      .thenRefusal<'stepUnknown'>({ code: 'stepUnknown', tag: 'C1', stepId: 'tin' });
    given()
      .when(() => ({ type: 'correctTime', workpieceId: idOf(88_888), stepId: 'weigh', edge: 'end', toMs: OPENING_MS }))
      .thenRefusal<'workpieceUnknown'>({ code: 'workpieceUnknown', workpieceId: idOf(88_888) });
  });

  test('undo brings back all that moved', () => {
    const floor = Floor.harbour();
    folded(floor);
    const toMs = floor.nowMs - 8 * MINUTE_MS;
    expectUndone(floor, { type: 'correctTime', workpieceId: floor.id('C1'), stepId: 'fold-1', edge: 'end', toMs });
  });
});

describe('D27 a wrong count is corrected', () => {
  test('fewer pieces: the count with its reason, and their weight as a loss', () => {
    const floor = Floor.harbour().bringTo('C1', 'shape');
    const { grams } = floor.piece('C1');
    const commandId = floor.ok({ type: 'correctCount', workpieceId: floor.id('C1'), pieces: 8, reason: 'two fell' });
    const fact = { workpieceId: floor.id('C1'), atMs: floor.nowMs };
    // A piece is a tenth of what ten of them weigh.
    expect(floor.recorded.filter((recorded) => recorded.commandId === commandId).map((recorded) => recorded.event)).toEqual([
      { type: 'countCorrected', ...fact, fromPieces: 10, toPieces: 8, reason: 'two fell' },
      { type: 'lossNamed', ...fact, what: 'pieces', grams: Math.round(grams * 2) / 10, pieces: 2 },
    ]);
    expect(floor.piece('C1')).toMatchObject({ pieces: 8, plannedPieces: 10 });
    expect(floor.piece('C1').grams).toBeCloseTo(grams * 0.8, 6);
    expect(floor.piece('C1').corrections).toEqual([{ what: 'count', stepId: null, from: 10, to: 8, atMs: floor.nowMs, deviceId: PHONE }]);
  });

  test('before it is in pieces, fewer of them lose nothing: the dough is all there', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'bulk-1'))
      .when((arranged) => ({ type: 'correctCount', workpieceId: arranged.id('C1'), pieces: 8 }))
      .thenTypes(['countCorrected']);
    expect(floor.piece('C1')).toMatchObject({ pieces: 8, grams: 9200 });
  });

  test('more pieces only where the weight bears them, and the weight stays', () => {
    const floor = Floor.harbour().bringTo('C1', 'divide');
    floor.finish('C1', 'divide');
    floor.ok({ type: 'correctCount', workpieceId: floor.id('C1'), pieces: 9 });
    const { grams } = floor.piece('C1');
    const command = { type: 'correctCount', workpieceId: floor.id('C1'), pieces: 10 } as const;
    expect(floor.give(command).decision).toEqual({
      ok: false,
      fault: { code: 'cutsTooHeavy', tag: 'C1', neededG: 9000, hasG: grams },
    });
    const whole = Floor.harbour().bringTo('C1', 'bulk-1');
    whole.ok({ type: 'correctCount', workpieceId: whole.id('C1'), pieces: 7 });
    whole.ok({ type: 'correctCount', workpieceId: whole.id('C1'), pieces: 10 });
    expect(whole.piece('C1')).toMatchObject({ pieces: 10, grams: 9200 });
  });

  test('bread weighs less than its dough: after the oven the lighter piece is borne', () => {
    const loss = harbourFile().products.find((product) => product.id === 'country-loaf')?.bakeLossPct ?? 0;
    expect(loss).toBeGreaterThan(0);
    const floor = Floor.harbour().bringTo('C1', 'pack');
    const workpieceId = floor.id('C1');
    floor.ok({ type: 'addIngredient', workpieceId, stepId: 'pack', ingredientId: 'olives', grams: 5000 });
    const hasG = Math.round(11 * 900 * (100 - loss)) / 100;
    floor.ok({ type: 'nameLoss', workpieceId, what: 'trim', grams: floor.piece('C1').grams - hasG });
    expect(floor.give({ type: 'correctCount', workpieceId, pieces: 12 }).decision).toMatchObject({
      ok: false,
      fault: { code: 'cutsTooHeavy', neededG: Math.round(12 * 9 * (100 - loss)) },
    });
    floor.ok({ type: 'correctCount', workpieceId, pieces: 11 });
    expect(floor.piece('C1')).toMatchObject({ pieces: 11, grams: hasG });
  });

  test('none left: all of it is lost, the slots and the vessels are given back, and it is off the floor', () => {
    const floor = Floor.harbour().bringTo('R1', 'bake');
    const before = floor.piece('R1');
    const held = before.vessels.reduce((sum, one) => sum + one.count, 0);
    floor.ok({ type: 'correctCount', workpieceId: before.id, pieces: 0, reason: 'burnt' });
    expect(lastEvents(floor).map((event) => event.type)).toEqual([
      'countCorrected',
      'lossNamed',
      'ovenUnloaded',
      ...before.vessels.map(() => 'vesselsReturned'),
      'workpieceDiscarded',
    ]);
    expect(lastEvents(floor)).toContainEqual({
      type: 'lossNamed',
      workpieceId: before.id,
      what: 'pieces',
      grams: before.grams,
      pieces: 8,
      atMs: floor.nowMs,
    });
    expect(lastEvents(floor).at(-1)).toMatchObject({ reason: 'burnt' });
    expect(floor.piece('R1')).toMatchObject({ pieces: 0, grams: 0, ending: 'discarded', slotIds: [], vessels: [] });
    expect(floor.state.vesselReturns.reduce((sum, back) => sum + back.count, 0)).toBe(held);
  });

  test('without a reason it says that none are left', () => {
    const floor = Floor.harbour().bringTo('R1', 'bake');
    floor.ok({ type: 'correctCount', workpieceId: floor.id('R1'), pieces: 0 });
    expect(floor.recorded.at(-1)?.event).toMatchObject({ type: 'workpieceDiscarded', reason: 'none left' });
  });

  test('what has no count, or that very count, has none to correct', () => {
    given()
      .when((floor) => ({ type: 'correctCount', workpieceId: floor.id('M1'), pieces: 8 }))
      .thenRefusal<'noPieces'>({ code: 'noPieces', tag: 'M1' });
    given()
      .when((floor) => ({ type: 'correctCount', workpieceId: floor.id('C1'), pieces: 10 }))
      .thenRefusal<'nothingChanges'>({ code: 'nothingChanges', tag: 'C1' });
  });

  test('undo brings back count and weight, and what was off the floor with its slots and vessels', () => {
    const floor = Floor.harbour().bringTo('R1', 'bake');
    expectUndone(floor, { type: 'correctCount', workpieceId: floor.id('R1'), pieces: 7 });
    expectUndone(floor, { type: 'correctCount', workpieceId: floor.id('R1'), pieces: 0 });
  });
});

describe('D27 a wrong tag is corrected', () => {
  test('to one that nobody bears', () => {
    given()
      .when((floor) => ({ type: 'correctTag', workpieceId: floor.id('C1'), toTag: 'C7' }))
      .thenEvents([{ type: 'tagCorrected', workpieceId: Floor.harbour().id('C1'), fromTag: 'C1', toTag: 'C7', atMs: OPENING_MS }]);
  });

  test('two that bore each other’s change them, and both keep that they did', () => {
    const floor = Floor.harbour();
    const [first, second] = [floor.id('C1'), floor.id('C2')];
    floor.ok({ type: 'correctTag', workpieceId: first, toTag: 'C2' });
    expect([floor.id('C2'), floor.id('C1')]).toEqual([first, second]);
    expect(['C1', 'C2'].map((tag) => floor.piece(tag).corrections)).toEqual([
      [{ what: 'tag', stepId: null, from: 'C2', to: 'C1', atMs: OPENING_MS, deviceId: PHONE }],
      [{ what: 'tag', stepId: null, from: 'C1', to: 'C2', atMs: OPENING_MS, deviceId: PHONE }],
    ]);
  });

  test('one that is off the floor changes tags too, so that no two of a day bear one', () => {
    const floor = Floor.harbour();
    const [first, second] = [floor.id('C1'), floor.id('C2')];
    floor.ok({ type: 'discardWorkpiece', workpieceId: first, reason: 'no salt' });
    floor.ok({ type: 'correctTag', workpieceId: second, toTag: 'C1' });
    expect([floor.id('C1'), floor.id('C2')]).toEqual([second, first]);
  });

  test('one of another day keeps its own', () => {
    const floor = Floor.harbour();
    const yesterdays = floor.id('C1');
    floor.ok(bringInCommand(harbourFile(), floor.nowMs, '2026-03-08'), { deviceId: SERVER_DEVICE });
    const todays = Object.values(floor.state.workpieces).find(
      (workpiece) => workpiece.tag === 'C2' && workpiece.serviceDate === '2026-03-08',
    );
    const todaysFirst = Object.values(floor.state.workpieces).find(
      (workpiece) => workpiece.tag === 'C1' && workpiece.serviceDate === '2026-03-08',
    );
    floor.ok({ type: 'correctTag', workpieceId: todays?.id ?? '', toTag: 'C1' });
    expect([yesterdays, todays?.id ?? '', todaysFirst?.id ?? ''].map((id) => floor.state.workpieces[id]?.tag)).toEqual(['C1', 'C1', 'C2']);
  });

  test('the cuts of a dough keep theirs', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    floor.finish('M1', 'divide');
    floor.ok({ type: 'correctTag', workpieceId: floor.id('M1a'), toTag: 'M1b' });
    expect([floor.piece('M1a').productId, floor.piece('M1b').productId]).toEqual(['custard-bun', 'milk-bun']);
    expect(floor.piece('M1').tag).toBe('M1');
  });

  test('only one of its formula, and of its kind', () => {
    for (const toTag of ['R1', 'Ch1', 'C1a', 'C1·2'])
      given()
        .when((floor) => ({ type: 'correctTag', workpieceId: floor.id('C1'), toTag }))
        .thenRefusal<'tagOfOther'>({ code: 'tagOfOther', tag: 'C1', wantedTag: toTag });
  });

  test('its own changes nothing', () => {
    given()
      .when((floor) => ({ type: 'correctTag', workpieceId: floor.id('C1'), toTag: 'C1' }))
      .thenRefusal<'nothingChanges'>({ code: 'nothingChanges', tag: 'C1' });
  });

  test('undo gives both their tags back', () => {
    const floor = Floor.harbour();
    expectUndone(floor, { type: 'correctTag', workpieceId: floor.id('C1'), toTag: 'C2' });
  });
});

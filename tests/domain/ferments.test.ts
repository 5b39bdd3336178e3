import { describe, expect, test } from 'vitest';
import { roleAt } from '../../shared/floor/due.ts';
import { feedEvents } from '../../shared/floor/decide/feed.ts';
import { bringInCommand, OPENING_MS } from './support/harbour.ts';
import { idOf, SERVER_DEVICE } from './support/ids.ts';
import { COUNTRY_20, drawn, edgesG, feedPot, lasting, levainFile, levainFloor, MINUTE_MS, POT, tell } from './support/levain-house.ts';

const HOUR_MS = 60 * MINUTE_MS;

describe('D30 a ferment is living stock', () => {
  test('the first feed makes what was planned, as the formula is written, and throws nothing away', () => {
    const floor = levainFloor(POT);
    expect(feedEvents(floor.state, floor.piece('L1'), undefined, floor.nowMs)).toEqual({
      ok: true,
      value: [
        { type: 'fermentFed', workpieceId: floor.id('L1'), seedG: 1000, flourG: 2000, waterG: 2000, discardedG: 0, atMs: OPENING_MS },
      ],
    });
    feedPot(floor, 'L1');
    expect(floor.piece('L1')).toMatchObject({ grams: 5000, stock: { seedG: 500, fedMs: OPENING_MS } });
    expect(floor.due('L1')).toMatchObject({ phase: 'resting', earliestMs: OPENING_MS + 6 * HOUR_MS });
  });

  test('its ripening cannot be left out, which would take the pot off the floor', () => {
    const floor = levainFloor(POT);
    floor.finish('L1', 'feed');
    const { decision } = floor.give({ type: 'skipStep', workpieceId: floor.id('L1'), stepId: 'ripen', reason: 'in a hurry' });
    expect(decision).toEqual({ ok: false, fault: { code: 'stepNotReached', tag: 'L1', stepId: 'ripen', currentStepId: 'feed' } });
  });

  test('it calls to be fed again when that is planned, or when it is past its time', () => {
    const floor = levainFloor(POT);
    feedPot(floor, 'L1');
    expect(floor.due('L1').dueMs).toBe(OPENING_MS + 14 * HOUR_MS);
    floor.ok({ type: 'planFeed', workpieceId: floor.id('L1'), feedMs: OPENING_MS + 10 * HOUR_MS, grams: 3000 });
    const due = floor.due('L1');
    expect([due.action.id, due.dueMs, roleAt(due, due.dueMs)]).toEqual(['feed', OPENING_MS + 10 * HOUR_MS, 'call']);
  });

  test('a later feed is scaled to what is planned; what is not the seed is thrown away, and amounts balance', () => {
    const floor = levainFloor(POT);
    feedPot(floor, 'L1');
    floor.ok({ type: 'planFeed', workpieceId: floor.id('L1'), feedMs: OPENING_MS + 7 * HOUR_MS, grams: 3000 });
    floor.wait(420);
    const before = floor.piece('L1').grams;
    feedPot(floor, 'L1');
    const fed = floor.recorded.map(({ event }) => event).findLast((event) => event.type === 'fermentFed');
    expect(fed).toMatchObject({ seedG: 600, flourG: 1200, waterG: 1200, discardedG: 4400 });
    expect((fed?.seedG ?? 0) + (fed?.discardedG ?? 0)).toBe(before);
    expect(floor.piece('L1').grams).toBe(3000);
    expect(floor.piece('L1').stock?.plannedFeeds).toEqual([]);
    expect(edgesG(floor, 'feed', { to: 'L1' })).toBe(4000 + 2400);
  });

  test('a pot that has less than the seed is made up with flour and water in the formula’s proportion', () => {
    const floor = levainFloor(POT, COUNTRY_20);
    feedPot(floor, 'L1');
    floor.ok({ type: 'drawFrom', fromWorkpieceId: floor.id('L1'), toWorkpieceId: floor.id('C1'), grams: 4500 });
    floor.wait(480);
    feedPot(floor, 'L1');
    const fed = floor.recorded.map(({ event }) => event).findLast((event) => event.type === 'fermentFed');
    expect(fed).toMatchObject({ seedG: 500, flourG: 2250, waterG: 2250, discardedG: 0 });
  });

  test('what somebody weighed counts, but no more seed than there is', () => {
    const floor = levainFloor(POT);
    feedPot(floor, 'L1', { seedG: 200, flourG: 400, waterG: 400 });
    expect(floor.piece('L1').grams).toBe(1000);
    floor.wait(60);
    expect(feedEvents(floor.state, floor.piece('L1'), { seedG: 1200, flourG: 1, waterG: 1 }, floor.nowMs)).toEqual({
      ok: false,
      fault: { code: 'moreThanThere', tag: 'L1', stepId: 'feed', fromTag: 'L1', neededG: 1200, hasG: 1000 },
    });
    expect(feedEvents(floor.state, floor.piece('L1'), { seedG: 300, flourG: 1, waterG: 1 }, floor.nowMs)).toMatchObject({
      ok: true,
      value: [{ seedG: 300, discardedG: 700 }],
    });
  });

  test('a second thumb on the same feed is told when it was fed', () => {
    const floor = levainFloor(POT);
    feedPot(floor, 'L1');
    const fedMs = floor.nowMs;
    const again = feedEvents(floor.state, floor.piece('L1'), undefined, floor.wait(359).nowMs);
    expect(again).toMatchObject({ ok: false, fault: { code: 'stepAlreadyDone', tag: 'L1', stepId: 'feed', atMs: fedMs, skipped: false } });
    expect(feedEvents(floor.state, floor.piece('L1'), undefined, floor.wait(1).nowMs).ok).toBe(true);
  });

  test('a ripening pot’s feed is no step that is over: more time and a hold of it are taken', () => {
    const floor = levainFloor(POT);
    feedPot(floor, 'L1');
    const { dueMs } = floor.due('L1');
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('L1'), stepId: 'feed', minutes: 30 });
    expect(floor.due('L1').dueMs).toBe(dueMs + 30 * MINUTE_MS);
  });

  test('only a living ferment is fed; the same feed is planned once', () => {
    const floor = levainFloor(POT, COUNTRY_20);
    const plan = { type: 'planFeed', feedMs: OPENING_MS + HOUR_MS, grams: 1000 } as const;
    expect(floor.give({ ...plan, workpieceId: floor.id('C1') }).decision).toEqual({ ok: false, fault: { code: 'notAFerment', tag: 'C1' } });
    floor.ok({ ...plan, workpieceId: floor.id('L1') });
    expect(floor.give({ ...plan, workpieceId: floor.id('L1') }).decision).toEqual({
      ok: false,
      fault: { code: 'nothingChanges', tag: 'L1' },
    });
  });

  test('the next day feeds the pot that stands instead of making another', () => {
    const floor = levainFloor(POT);
    feedPot(floor, 'L1');
    floor.wait(600);
    const nextDay = bringInCommand(levainFile([{ ...POT, doughG: 4000 }]), floor.nowMs, '2026-03-08');
    floor.ok(nextDay, { deviceId: SERVER_DEVICE });
    expect(Object.values(floor.state.workpieces)).toHaveLength(1);
    expect(floor.piece('L1').stock?.plannedFeeds).toEqual([{ feedMs: floor.nowMs, grams: 4000 }]);
  });

  test('two feeds of one day are one pot', () => {
    const floor = levainFloor(POT, { ...POT, min: 420, doughG: 3000 });
    expect(Object.values(floor.state.workpieces).map((workpiece) => workpiece.tag)).toEqual(['L1']);
    expect(floor.piece('L1').stock?.plannedFeeds).toEqual([{ feedMs: OPENING_MS + 7 * HOUR_MS, grams: 3000 }]);
  });

  test('a feed, a planned feed and a draw are undone to exactly what was', () => {
    const floor = levainFloor(POT, COUNTRY_20);
    const before = floor.state;
    floor.ok({ type: 'undoCommand', commandId: feedPot(floor, 'L1') });
    expect(lasting(floor.state)).toEqual(lasting(before));
    feedPot(floor, 'L1');
    const fed = floor.state;
    const planned = floor.ok({ type: 'planFeed', workpieceId: floor.id('L1'), feedMs: OPENING_MS + HOUR_MS, grams: 900 });
    floor.ok({ type: 'undoCommand', commandId: planned });
    expect(lasting(floor.state)).toEqual(lasting(fed));
    floor.wait(480);
    floor.ok({ type: 'undoCommand', commandId: tell(floor, drawn(floor, 'C1', 'add')) });
    expect(lasting(floor.state)).toEqual(lasting(fed));
  });

  test('a pot that was given up is not fed: the next day makes another', () => {
    const floor = levainFloor(POT);
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('L1'), reason: 'mould' }, { commandId: idOf(77) });
    floor.ok(bringInCommand(levainFile([POT]), floor.nowMs, '2026-03-08'), { deviceId: SERVER_DEVICE });
    expect(Object.values(floor.state.workpieces).filter((pot) => pot.finishedMs === null)).toMatchObject([
      { tag: 'L1', serviceDate: '2026-03-08' },
    ]);
  });
});

describe('D30 from one feed to the next, by taps alone', () => {
  test('fed, ripe, drawn on by two doughs, fed again; the second thumb is told, and the last feed is undone', () => {
    const floor = levainFloor(POT, COUNTRY_20, { ...COUNTRY_20, min: 500 });
    floor.finish('L1', 'feed');
    expect(floor.give({ type: 'finishStep', workpieceId: floor.id('L1'), stepId: 'feed' }).decision).toMatchObject({
      ok: false,
      fault: { code: 'stepAlreadyDone', tag: 'L1', stepId: 'feed', atMs: OPENING_MS },
    });
    floor.wait(480);
    for (const tag of ['C1', 'C2']) {
      floor.finish(tag, 'weigh');
      floor.finish(tag, 'add');
    }
    expect([floor.piece('L1').grams, edgesG(floor, 'draw', { from: 'L1' })]).toEqual([1000, 4000]);
    const before = floor.state;
    const commandId = floor.finish('L1', 'feed');
    expect(floor.piece('L1')).toMatchObject({ grams: 5000, stock: { fedMs: floor.nowMs } });
    expect(floor.due('L1')).toMatchObject({ phase: 'resting', startedMs: floor.nowMs });
    expect(edgesG(floor, 'feed', { to: 'L1' })).toBe(4000 + 4000);
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });
});

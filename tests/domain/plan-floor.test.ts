import { describe, expect, test } from 'vitest';
import type { CommandOf } from '../../shared/floor/commands.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';
import { ovenLanes } from '../../shared/floor/oven-lanes.ts';
import { plannedStepBelow, plannedStepOf } from '../../shared/floor/planned-step.ts';
import { projectionOf } from '../../shared/floor/projection.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { bringInCommand, demoFile, OPENING_MS, SERVICE_DATE } from './support/harbour.ts';
import { idOf, PHONE, SERVER_DEVICE } from './support/ids.ts';

const MINUTE_MS = 60_000;
const READY_MS = OPENING_MS + 600 * MINUTE_MS;

/** The demo bakehouse, with fillings and loads. */
function demoFloor(): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(demoFile(), floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor;
}

function order(more: Partial<CommandOf<'placeOrders'>['orders'][number]> = {}): CommandOf<'placeOrders'> {
  return {
    type: 'placeOrders',
    serviceDate: SERVICE_DATE,
    orders: [{ productId: 'country-loaf', pieces: 10, readyMs: READY_MS, form: 'cooled', weight: 1, ...more }],
  };
}

function planOf(floor: Floor, steps: readonly (Omit<PlannedStep, 'workpieceId' | 'resources'> & { tag: string; deck?: string })[]): void {
  const starts = steps.map(({ tag, deck, ...step }): PlannedStep => ({
    ...step,
    workpieceId: floor.id(tag),
    resources: deck === undefined ? [] : [{ kind: 'deck', id: deck }],
  }));
  floor.record({ type: 'planAdopted', planId: idOf(5), isWhole: true, starts, moved: [], warnings: [], atMs: floor.nowMs });
}

describe('Z19 orders are facts of a day', () => {
  test('placed, changed in their place, withdrawn', () => {
    const floor = given()
      .when(() => order())
      .thenTypes(['orderPlaced']);
    const [id] = Object.keys(floor.state.orders);
    assert(id !== undefined, 'the order is there');
    floor.ok(order({ id, pieces: 12 }));
    expect(Object.values(floor.state.orders).map(({ pieces }) => pieces)).toEqual([12]);
    floor.ok({ type: 'withdrawOrders', orderIds: [id] });
    expect(floor.state.orders).toEqual({});
  });

  test('of products that the house makes, on a day that is not over', () => {
    given()
      .when(() => order({ productId: 'moon-cake' }))
      .thenRefusal({ code: 'productUnknown', productId: 'moon-cake' });
    given()
      .when(() => order({ id: idOf(9) }))
      .thenRefusal({ code: 'orderUnknown', orderId: idOf(9) });
    given()
      .when(() => ({ type: 'withdrawOrders', orderIds: [idOf(9)] }))
      .thenRefusal({ code: 'orderUnknown', orderId: idOf(9) });
    given((floor) => floor.ok({ type: 'archiveFormula', formulaId: 'country', isArchived: true }))
      .when(() => order())
      .thenRefusal({ code: 'documentMissing', kind: 'formula', id: 'country' });
    given((floor) => floor.ok({ type: 'closeDay', serviceDate: SERVICE_DATE }))
      .when(() => order())
      .thenRefusal({ code: 'dayNotOpen', serviceDate: SERVICE_DATE });
  });

  test('said again as they are, nothing changes; a day has its limit', () => {
    const floor = given().floor;
    floor.ok(order());
    const [placed] = Object.values(floor.state.orders);
    assert(placed !== undefined, 'the order is there');
    const { serviceDate: _date, ...same } = placed;
    expect(floor.give({ ...order(), orders: [same] }).decision).toEqual({ ok: false, fault: { code: 'nothingChanges' } });
    const many = Array.from({ length: 500 }, () => order().orders[0]).filter((each) => each !== undefined);
    expect(floor.give({ ...order(), orders: many }).decision).toEqual({ ok: false, fault: { code: 'tooManyOrders', most: 500 } });
  });

  test('they leave with their day, and later days keep theirs', () => {
    const floor = given().floor;
    floor.ok(order());
    floor.ok({ ...order(), serviceDate: '2030-01-05' });
    floor.ok({ type: 'closeDay', serviceDate: SERVICE_DATE });
    expect(Object.values(floor.state.orders).map(({ serviceDate }) => serviceDate)).toEqual(['2030-01-05']);
  });

  test('standing orders are one document with versions', () => {
    const standing = [
      { id: 'market', productId: 'rye-tin', pieces: 8, weekdays: [6], readyAt: '07:00', form: 'cooled' as const, weight: 1 },
    ];
    const floor = given()
      .when(() => ({ type: 'adoptStanding', fromVersion: 0, standing }))
      .thenTypes(['standingAdopted']);
    expect(floor.state.standing).toEqual({ version: 1, document: standing });
    expect(floor.give({ type: 'adoptStanding', fromVersion: 0, standing }).decision).toEqual({
      ok: false,
      fault: { code: 'documentChanged', version: 1 },
    });
  });
});

describe('Z20 pins are kept until they are lifted', () => {
  test('a step begins then; said again, the last counts', () => {
    const floor = given().floor;
    const pin = { kind: 'startsAt' as const, workpieceId: floor.id('C1'), stepId: 'weigh', startMs: OPENING_MS };
    floor.ok({ type: 'setPin', pin });
    floor.ok({ type: 'setPin', pin: { ...pin, startMs: OPENING_MS + MINUTE_MS } });
    expect(Object.values(floor.state.pins)).toEqual([{ ...pin, id: expect.any(String) as string, startMs: OPENING_MS + MINUTE_MS }]);
    const [id] = Object.keys(floor.state.pins);
    floor.ok({ type: 'liftPin', pinId: id ?? '' });
    expect(floor.state.pins).toEqual({});
  });

  test('one order can come first; a withdrawn one does not', () => {
    const floor = given().floor;
    floor.ok(order());
    const [orderId] = Object.keys(floor.state.orders);
    assert(orderId !== undefined, 'the order is there');
    floor.ok({ type: 'setPin', pin: { kind: 'first', orderId } });
    floor.ok({ type: 'withdrawOrders', orderIds: [orderId] });
    expect(floor.state.pins).toEqual({});
  });

  test('not on what has begun, is unknown or is not on the way', () => {
    const pinOn =
      (stepId: string) =>
      (floor: Floor): CommandOf<'setPin'> => ({
        type: 'setPin',
        pin: { kind: 'startsAt', workpieceId: floor.id('C1'), stepId, startMs: OPENING_MS },
      });
    given((floor) => floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .when(pinOn('weigh'))
      .thenRefusal({ code: 'stepAlreadyStarted', tag: 'C1', stepId: 'weigh', atMs: OPENING_MS, deviceId: PHONE });
    given((floor) => floor.ok({ type: 'finishStep', workpieceId: floor.id('C1'), stepId: 'weigh' }))
      .when(pinOn('weigh'))
      .thenRefusal({ code: 'stepAlreadyDone', tag: 'C1', stepId: 'weigh', atMs: OPENING_MS, skipped: false, deviceId: PHONE });
    given().when(pinOn('polish')).thenRefusal({ code: 'stepUnknown', tag: 'C1', stepId: 'polish' });
    given()
      .when(() => ({ type: 'setPin', pin: { kind: 'first', orderId: idOf(3) } }))
      .thenRefusal({ code: 'orderUnknown', orderId: idOf(3) });
    given()
      .when(() => ({ type: 'liftPin', pinId: idOf(3) }))
      .thenRefusal({ code: 'pinUnknown', pinId: idOf(3) });
  });
});

describe('Z21 a plan is kept as it was tried', () => {
  const batch = {
    batchKey: 'milk-buns#1',
    formulaId: 'milk-buns',
    plannedStartMs: OPENING_MS + 30 * MINUTE_MS,
    grams: 3600,
    cuts: [
      { productId: 'milk-bun', pieces: 30, grams: 1800 },
      { productId: 'custard-bun', pieces: 30, grams: 1650 },
    ],
  };

  test('its batches and preps get ids, and its steps their times under them', () => {
    const floor = demoFloor();
    const before = new Set(Object.keys(floor.state.workpieces));
    const at = (minutes: number): { plannedStartMs: number; plannedEndMs: number; resources: [] } => ({
      plannedStartMs: OPENING_MS + minutes * MINUTE_MS,
      plannedEndMs: OPENING_MS + (minutes + 5) * MINUTE_MS,
      resources: [],
    });
    floor.ok({
      type: 'adoptProposal',
      serviceDate: SERVICE_DATE,
      batches: [batch],
      steps: [
        { batchKey: 'milk-buns#1', stepId: 'weigh', ...at(40) },
        { batchKey: 'milk-buns#1', cut: 1, stepId: 'shape', ...at(140) },
        { batchKey: 'custard>milk-buns#1', stepId: 'weigh', ...at(60) },
        { batchKey: floor.id('C1'), stepId: 'weigh', ...at(50) },
        { batchKey: 'nobody#7', stepId: 'weigh', ...at(50) },
      ],
      warnings: [],
    });
    const made = Object.values(floor.state.workpieces).filter(({ id }) => !before.has(id));
    expect(made.map(({ formulaId, kind }) => `${kind} ${formulaId}`).sort()).toEqual(['batch milk-buns', 'prep custard']);
    const [buns] = made.filter(({ kind }) => kind === 'batch');
    const [custard] = made.filter(({ kind }) => kind === 'prep');
    assert(buns !== undefined && custard !== undefined, 'both were planned');
    expect(buns.plannedStartMs).toBe(OPENING_MS + 40 * MINUTE_MS);
    expect(custard.plannedStartMs).toBe(OPENING_MS + 60 * MINUTE_MS);
    expect(plannedStepBelow(floor.state, buns, { cut: 1 }, 'shape')?.plannedStartMs).toBe(OPENING_MS + 140 * MINUTE_MS);
    expect(floor.piece('C1').plannedStartMs).toBe(OPENING_MS + 50 * MINUTE_MS);
    expect(Object.keys(floor.state.plan?.steps ?? {})).toHaveLength(3);
  });

  test('a re-plan moves what it names and nothing that has begun; where nothing moves it is refused', () => {
    const floor = given().floor;
    planOf(floor, [
      { tag: 'C1', stepId: 'weigh', plannedStartMs: OPENING_MS },
      { tag: 'C2', stepId: 'weigh', plannedStartMs: OPENING_MS },
    ]);
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    const later = (tag: string): PlannedStep => ({
      workpieceId: floor.id(tag),
      stepId: 'weigh',
      plannedStartMs: OPENING_MS + 20 * MINUTE_MS,
      resources: [],
    });
    floor.ok({ type: 'adoptReplan', isWhole: false, starts: [later('C1'), later('C2')], moved: [], warnings: [] });
    expect(plannedStepOf(floor.state, floor.piece('C1'), 'weigh')?.plannedStartMs).toBe(OPENING_MS);
    expect(floor.due('C2').dueMs).toBe(OPENING_MS + 20 * MINUTE_MS);
    expect(floor.give({ type: 'adoptReplan', isWhole: false, starts: [later('C1')], moved: [], warnings: [] }).decision).toEqual({
      ok: false,
      fault: { code: 'nothingChanges' },
    });
  });

  test('a set clock moves the plan with the doughs, and not the orders', () => {
    const floor = given().floor;
    floor.ok(order());
    planOf(floor, [{ tag: 'C1', stepId: 'weigh', plannedStartMs: OPENING_MS }]);
    floor.record({ type: 'clockJumped', byMs: 5 * MINUTE_MS, atMs: floor.nowMs });
    expect(plannedStepOf(floor.state, floor.piece('C1'), 'weigh')?.plannedStartMs).toBe(OPENING_MS + 5 * MINUTE_MS);
    expect(Object.values(floor.state.orders)[0]?.readyMs).toBe(READY_MS);
  });
});

describe('Z22 the floor follows its plan', () => {
  test('a rest calls when its next step is planned, within what the dough bears', () => {
    const floor = given((it) => it.bringTo('C1', 'bulk-1')).floor;
    const startedMs = floor.piece('C1').steps['bulk-1']?.startedMs ?? 0;
    const dueAt = (minutes: number): number => {
      planOf(floor, [{ tag: 'C1', stepId: 'fold-1', plannedStartMs: startedMs + minutes * MINUTE_MS }]);
      return (floor.due('C1').dueMs - startedMs) / MINUTE_MS;
    };
    // The method says 20 to 60 minutes, 30 wanted.
    expect([dueAt(38), dueAt(5), dueAt(200)]).toEqual([38, 20, 60]);
    planOf(floor, []);
    expect((floor.due('C1').dueMs - startedMs) / MINUTE_MS).toBe(30);
  });

  test('more time that somebody gives counts before the plan has followed', () => {
    const floor = given((it) => it.bringTo('C1', 'bulk-1')).floor;
    const startedMs = floor.piece('C1').steps['bulk-1']?.startedMs ?? 0;
    planOf(floor, [{ tag: 'C1', stepId: 'fold-1', plannedStartMs: startedMs + 30 * MINUTE_MS }]);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'bulk-1', minutes: 5 });
    expect(floor.due('C1').dueMs).toBe(startedMs + 35 * MINUTE_MS);
  });

  test('what is ready waits for its time in the plan, and a plan that is behind does not call before it is ready', () => {
    const floor = given((it) => it.bringTo('C1', 'divide')).floor;
    floor.finish('C1', 'divide');
    const readyMs = floor.piece('C1').readyMs;
    planOf(floor, [{ tag: 'C1', stepId: 'round', plannedStartMs: readyMs + 7 * MINUTE_MS }]);
    expect(floor.due('C1').dueMs).toBe(readyMs + 7 * MINUTE_MS);
    planOf(floor, [{ tag: 'C1', stepId: 'round', plannedStartMs: readyMs - 7 * MINUTE_MS }]);
    expect(floor.due('C1').dueMs).toBe(readyMs);
  });

  test('the wall books the deck that the plan has, when the plan has it', () => {
    const floor = given().floor;
    const atMs = OPENING_MS + 1200 * MINUTE_MS;
    planOf(floor, [
      { tag: 'C1', stepId: 'load', plannedStartMs: atMs - 2 * MINUTE_MS, plannedEndMs: atMs, deck: 'top' },
      { tag: 'C1', stepId: 'bake', plannedStartMs: atMs, plannedEndMs: atMs + 45 * MINUTE_MS, deck: 'top' },
    ]);
    const lanes = ovenLanes(floor.state, floor.nowMs).filter(({ deck }) => deck.id === 'top');
    const booked = lanes.flatMap((deck) => deck.lanes.flatMap((lane) => lane.bookings.filter(({ tag }) => tag === 'C1')));
    expect(booked.map(({ fromMs, toMs }) => [fromMs, toMs])).toEqual([
      [atMs, atMs + 45 * MINUTE_MS],
      [atMs, atMs + 45 * MINUTE_MS],
    ]);
  });

  test('what was planned for a cut and its loads is found once they are there', () => {
    const floor = demoFloor();
    floor.finishWhenDue('L1');
    floor.bringTo('R1', 'divide');
    const plannedMs = floor.nowMs + 300 * MINUTE_MS;
    planOf(floor, [
      { tag: 'R1', load: 0, stepId: 'prove', plannedStartMs: plannedMs },
      { tag: 'R1', load: 1, stepId: 'prove', plannedStartMs: plannedMs + MINUTE_MS },
    ]);
    const stays = projectionOf(floor.state, floor.piece('R1'), floor.nowMs)?.stays ?? [];
    expect(stays.map(({ tag }) => tag)).toEqual(['R1·1', 'R1·2']);
    floor.finish('R1', 'divide');
    floor.finish('R1', 'tin');
    expect(plannedStepOf(floor.state, floor.piece('R1·2'), 'prove')?.plannedStartMs).toBe(plannedMs + MINUTE_MS);
  });
});

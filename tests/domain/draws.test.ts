import { describe, expect, test } from 'vitest';
import { OPENING_MS } from './support/harbour.ts';
import { idOf, OTHER_PHONE } from './support/ids.ts';
import {
  COUNTRY_20,
  drawn,
  edgesG,
  feedPot,
  lasting,
  levainFloor,
  MINUTE_MS,
  PLAIN_20,
  POT,
  tell,
  type Listed,
} from './support/levain-house.ts';
import type { Floor } from './support/floor.ts';

const AT = { tag: 'C1', stepId: 'add' };
const NEEDED_G = 2000;

/** A ripe pot of so many grams beside C1, which takes 2 000 g of it. */
function withPot(grams: number, ...more: readonly Listed[]): Floor {
  const floor = levainFloor({ ...POT, doughG: grams }, COUNTRY_20, ...more);
  feedPot(floor, 'L1');
  return floor.wait(480);
}

describe('D31 a step draws what its formula takes', () => {
  test('by the parts of the formula, within the dough’s weight, with the allergens of what it came of', () => {
    const floor = withPot(5000);
    expect(drawn(floor, 'C1', 'add')).toEqual({
      ok: true,
      value: [
        {
          type: 'workpieceDrawn',
          fromWorkpieceId: floor.id('L1'),
          toWorkpieceId: floor.id('C1'),
          grams: NEEDED_G,
          allergens: ['wheat'],
          lotNumbers: [],
          atMs: floor.nowMs,
        },
      ],
    });
    tell(floor, drawn(floor, 'C1', 'add'));
    expect([floor.piece('L1').grams, floor.piece('C1').grams]).toEqual([3000, 18_700]);
    expect(edgesG(floor, 'draw', { from: 'L1', to: 'C1' })).toBe(NEEDED_G);
  });

  test('a dough of another size takes its share, to a tenth of a gram', () => {
    const floor = levainFloor(POT, { ...COUNTRY_20, doughG: 17_611 });
    feedPot(floor, 'L1');
    floor.wait(480);
    tell(floor, drawn(floor, 'C1', 'add'));
    expect(edgesG(floor, 'draw', { to: 'C1' })).toBe(1883.5);
    expect(1883.5).toBeCloseTo((2000 * 17_611) / 18_700, 1);
  });

  test('several doughs draw on one pot, down to its seed and not into it', () => {
    const floor = withPot(5000, { ...COUNTRY_20, min: 500 }, { ...COUNTRY_20, min: 520 });
    tell(floor, drawn(floor, 'C1', 'add'));
    tell(floor, drawn(floor, 'C2', 'add'));
    expect(floor.piece('L1').grams).toBe(1000);
    expect(drawn(floor, 'C3', 'add')).toEqual({
      ok: false,
      fault: { code: 'notEnoughToDraw', tag: 'C3', stepId: 'add', formulaId: 'levain', neededG: NEEDED_G, hasG: 500 },
    });
    expect(edgesG(floor, 'draw', { from: 'L1' }) + floor.piece('L1').grams).toBe(5000);
  });

  test('where only the seed would cover it, that is said; knowingly the pot can be emptied, and is off the floor', () => {
    const floor = withPot(2000);
    expect(drawn(floor, 'C1', 'add')).toEqual({
      ok: false,
      fault: { code: 'lastOfFerment', ...AT, fromTag: 'L1', neededG: NEEDED_G, hasG: 2000, seedG: 500 },
    });
    const before = floor.state;
    const commandId = tell(floor, drawn(floor, 'C1', 'add', { despite: ['lastOfFerment'] }));
    expect(floor.piece('L1')).toMatchObject({ grams: 0, ending: 'finished' });
    expect(edgesG(floor, 'draw', { from: 'L1' })).toBe(NEEDED_G);
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });

  test('a living pot drawn down to its seed stays', () => {
    const floor = withPot(2500);
    tell(floor, drawn(floor, 'C1', 'add'));
    expect(floor.piece('L1')).toMatchObject({ grams: 500, finishedMs: null });
  });

  test('nothing there at all is said; knowingly the dough goes without', () => {
    const floor = levainFloor(COUNTRY_20);
    expect(drawn(floor, 'C1', 'add')).toEqual({
      ok: false,
      fault: { code: 'nothingToDraw', ...AT, formulaId: 'levain', neededG: NEEDED_G },
    });
    expect(drawn(floor, 'C1', 'add', { despite: ['withoutSource'] })).toEqual({ ok: true, value: [] });
  });

  test('too little is said; knowingly it takes what there is beside the seed', () => {
    const floor = withPot(1500);
    expect(drawn(floor, 'C1', 'add')).toMatchObject({ ok: false, fault: { code: 'notEnoughToDraw', neededG: NEEDED_G, hasG: 1000 } });
    tell(floor, drawn(floor, 'C1', 'add', { despite: ['withoutSource'] }));
    expect([floor.piece('L1').grams, edgesG(floor, 'draw', { to: 'C1' })]).toEqual([500, 1000]);
  });

  test('a step that takes nothing draws nothing', () => {
    const floor = levainFloor(POT, PLAIN_20);
    expect(drawn(floor, 'P1', 'add')).toEqual({ ok: true, value: [] });
  });
});

describe('D31 a forgotten tap of the source does not block', () => {
  test('a pot that nobody said was fed was fed as planned, and ripens since then', () => {
    const floor = levainFloor(POT, COUNTRY_20).wait(480);
    const before = floor.state;
    const commandId = tell(floor, drawn(floor, 'C1', 'add'));
    const types = floor.recorded.slice(-4).map(({ event }) => event.type);
    expect(types).toEqual(['fermentFed', 'stepDone', 'stepStarted', 'workpieceDrawn']);
    expect(floor.piece('L1')).toMatchObject({ grams: 3000, steps: { feed: { inferred: true }, ripen: { status: 'started' } } });
    expect(floor.due('L1')).toMatchObject({ phase: 'resting', startedMs: OPENING_MS });
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });

  test('a prep under way is closed as inferred up to where it is kept', () => {
    const floor = levainFloor({ formula: 'filling', min: 0, doughG: 2000 }, BUNS_60).wait(200);
    floor.ok({ type: 'startStep', workpieceId: floor.id('F1'), stepId: 'cook' });
    tell(floor, drawn(floor, 'B1', 'bun-fill'));
    expect(floor.piece('F1')).toMatchObject({
      grams: 800,
      steps: { cook: { status: 'done', inferred: true }, hold: { status: 'started', startedMs: floor.nowMs } },
    });
  });

  test('a prep that is emptied is off the floor', () => {
    const floor = levainFloor({ formula: 'filling', min: 0, doughG: 1200.3 }, BUNS_60).wait(200);
    tell(floor, drawn(floor, 'B1', 'bun-fill'));
    expect(floor.piece('F1')).toMatchObject({ ending: 'finished', finishedMs: floor.nowMs });
    expect(floor.piece('F1').grams).toBeCloseTo(0.3, 6);
  });
});

const BUNS_60: Listed = { formula: 'buns', min: 0, cuts: [{ product: 'bun', pieces: 60 }] };
const FILLINGS: readonly Listed[] = [
  { formula: 'filling', min: 0, doughG: 500 },
  { formula: 'filling', min: 10, doughG: 900 },
  { formula: 'filling', min: 20, doughG: 700 },
];

describe('D31 in which order sources are drawn on', () => {
  test('ready before begun before planned, the oldest first, in turn until it is enough', () => {
    const floor = levainFloor(...FILLINGS, BUNS_60).wait(30);
    floor.finish('F2', 'cook');
    floor.ok({ type: 'startStep', workpieceId: floor.id('F3'), stepId: 'cook' });
    const decision = drawn(floor, 'B1', 'bun-fill');
    const tagOf = (id: string): string => floor.state.workpieces[id]?.tag ?? '?';
    const portions = (decision.ok ? decision.value : []).flatMap((event) =>
      event.type === 'workpieceDrawn' ? [[tagOf(event.fromWorkpieceId), event.grams, event.isExtra]] : [],
    );
    expect(portions).toEqual([
      ['F2', 900, true],
      ['F3', 300, true],
    ]);
    tell(floor, decision);
    expect(floor.piece('B1').grams).toBe(60 * 80 + 1200);
    expect(floor.piece('F1').steps).toEqual({});
  });

  test('a ripe pot before one that is not ripe yet', () => {
    const floor = withPot(5000);
    const young = idOf(5_000_001);
    floor.record({
      type: 'workpiecePlanned',
      workpieceId: young,
      kind: 'ferment',
      tag: 'L2',
      serviceDate: '2026-03-07',
      formulaId: 'levain',
      formulaVersion: 1,
      plannedStartMs: OPENING_MS - 600 * MINUTE_MS,
      grams: 5000,
      cuts: [],
    });
    feedPot(floor, 'L2');
    tell(floor, drawn(floor, 'C1', 'add'));
    expect([edgesG(floor, 'draw', { from: 'L1' }), edgesG(floor, 'draw', { from: 'L2' })]).toEqual([NEEDED_G, 0]);
  });

  test('what was made for it first; what was made for another dough and nobody has begun is not there', () => {
    const floor = levainFloor(BUNS_60, { ...BUNS_60, min: 30 });
    expect([floor.piece('F1').serves?.workpieceId, floor.piece('F2').serves?.workpieceId]).toEqual([floor.id('B1'), floor.id('B2')]);
    tell(floor, drawn(floor, 'B2', 'bun-fill'));
    expect([edgesG(floor, 'draw', { from: 'F1' }), edgesG(floor, 'draw', { from: 'F2' })]).toEqual([0, 1200]);
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('S1'), reason: 'spilt' });
    expect(drawn(floor, 'B1', 'add')).toMatchObject({ ok: false, fault: { code: 'nothingToDraw', formulaId: 'soaker' } });
  });
});

describe('D31 draws as somebody says them', () => {
  test('of which source and how much; nothing where the list is empty', () => {
    const floor = withPot(5000);
    tell(floor, drawn(floor, 'C1', 'add', { draws: [{ fromWorkpieceId: floor.id('L1'), grams: 1234.56 }] }));
    expect(edgesG(floor, 'draw', { to: 'C1' })).toBe(1234.6);
    expect(drawn(floor, 'C1', 'add', { draws: [] })).toEqual({ ok: true, value: [] });
  });

  test('not of another formula, not more than there is, not of the seed, not of what is gone', () => {
    const floor = withPot(5000, PLAIN_20);
    const draw = (tag: string, grams: number): object => {
      const decision = drawn(floor, 'C1', 'add', { draws: [{ fromWorkpieceId: floor.id(tag), grams }] });
      return decision.ok ? {} : decision.fault;
    };
    expect(draw('P1', 100)).toEqual({ code: 'wrongSource', ...AT, fromTag: 'P1' });
    expect(draw('L1', 5001)).toEqual({ code: 'moreThanThere', ...AT, fromTag: 'L1', neededG: 5001, hasG: 5000 });
    expect(draw('L1', 4600)).toEqual({ code: 'lastOfFerment', ...AT, fromTag: 'L1', neededG: 4600, hasG: 5000, seedG: 500 });
    expect(draw('L1', 4500)).toEqual({});
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('L1'), reason: 'mould' });
    expect(draw('L1', 100)).toEqual({ code: 'workpieceFinished', tag: 'L1', atMs: floor.nowMs });
    expect(drawn(floor, 'C1', 'add', { draws: [{ fromWorkpieceId: idOf(42_000), grams: 1 }] })).toEqual({
      ok: false,
      fault: { code: 'workpieceUnknown', workpieceId: idOf(42_000) },
    });
  });

  test('two lines of one source count together', () => {
    const floor = withPot(5000);
    const line = { fromWorkpieceId: floor.id('L1'), grams: 2500 };
    expect(drawn(floor, 'C1', 'add', { draws: [line, line] })).toMatchObject({ ok: false, fault: { code: 'lastOfFerment' } });
    tell(floor, drawn(floor, 'C1', 'add', { draws: [line, { ...line, grams: 1000 }] }));
    expect(edgesG(floor, 'draw', { from: 'L1' })).toBe(3500);
  });
});

describe('D31 a draw by hand comes on top', () => {
  test('of what both weigh', () => {
    const floor = withPot(5000);
    const before = floor.state;
    const commandId = floor.ok({ type: 'drawFrom', fromWorkpieceId: floor.id('L1'), toWorkpieceId: floor.id('C1'), grams: 300 });
    expect([floor.piece('L1').grams, floor.piece('C1').grams]).toEqual([4700, 19_000]);
    expect(floor.recorded.at(-1)?.event).toMatchObject({ type: 'workpieceDrawn', isExtra: true, grams: 300 });
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });

  test('not more than there is, nor of the seed unless that is meant, nor nothing, nor of what is unknown or gone', () => {
    const floor = withPot(5000, PLAIN_20);
    const by = (grams: number, despite?: 'lastOfFerment'): object => ({
      type: 'drawFrom',
      fromWorkpieceId: floor.id('L1'),
      toWorkpieceId: floor.id('C1'),
      grams,
      ...(despite === undefined ? {} : { despite: [despite] }),
    });
    const fault = (command: object): object => {
      const { decision } = floor.give(command as Parameters<Floor['give']>[0]);
      return decision.ok ? {} : decision.fault;
    };
    expect(fault(by(5001))).toEqual({ code: 'moreThanThere', tag: 'C1', fromTag: 'L1', neededG: 5001, hasG: 5000 });
    expect(fault(by(4600))).toEqual({ code: 'lastOfFerment', tag: 'C1', fromTag: 'L1', neededG: 4600, hasG: 5000, seedG: 500 });
    expect(fault(by(0))).toEqual({ code: 'nothingChanges', tag: 'C1' });
    expect(fault({ ...by(1), toWorkpieceId: idOf(42_000) })).toEqual({ code: 'workpieceUnknown', workpieceId: idOf(42_000) });
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('P1'), reason: 'spoilt' });
    expect(fault({ ...by(1), toWorkpieceId: floor.id('P1') })).toMatchObject({ code: 'workpieceFinished', tag: 'P1' });
    expect(fault(by(5000, 'lastOfFerment'))).toEqual({});
  });

  test('never of itself or of what came of it: what comes of what has no circles', () => {
    const floor = withPot(5000);
    const draw = (from: string, to: string): object => {
      const { decision } = floor.give({ type: 'drawFrom', fromWorkpieceId: floor.id(from), toWorkpieceId: floor.id(to), grams: 10 });
      return decision.ok ? {} : decision.fault;
    };
    expect(draw('L1', 'L1')).toEqual({ code: 'wrongSource', tag: 'L1', fromTag: 'L1' });
    expect(draw('L1', 'C1')).toEqual({});
    expect(draw('C1', 'L1')).toEqual({ code: 'wrongSource', tag: 'L1', fromTag: 'C1' });
  });

  test('is not undone once another dough has drawn on the source since', () => {
    const floor = withPot(5000, { ...COUNTRY_20, min: 500 });
    const commandId = floor.ok({ type: 'drawFrom', fromWorkpieceId: floor.id('L1'), toWorkpieceId: floor.id('C1'), grams: 300 });
    floor.ok({ type: 'drawFrom', fromWorkpieceId: floor.id('L1'), toWorkpieceId: floor.id('C2'), grams: 300 }, { deviceId: OTHER_PHONE });
    expect(floor.give({ type: 'undoCommand', commandId }).decision).toEqual({ ok: false, fault: { code: 'workRestsOnIt', tag: 'L1' } });
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { weighOutOf } from '../../shared/floor/weigh-out.ts';
import { bringInCommand, demoFile, OPENING_MS } from './support/harbour.ts';
import { idOf, OTHER_PHONE, SERVER_DEVICE } from './support/ids.ts';
import { openedHouse } from './support/live-day.ts';
import { feedPot } from './support/levain-house.ts';
import { asShown, LEVAIN_POT, line, mixingFloor, PLAIN_10, POOLISH_5, RICH_10, weighOut } from './support/mixing-house.ts';
import { Floor } from './support/floor.ts';

function weigh(floor: Floor, tag: string, lineId: string, grams: number, lotNumbers: string[] = []): string {
  return floor.ok({ type: 'weighIngredient', workpieceId: floor.id(tag), lineId, grams, lotNumbers });
}

function refusalOf(floor: Floor, command: Parameters<Floor['give']>[0]): unknown {
  const { decision } = floor.give(command);
  return decision.ok ? 'accepted' : decision.fault;
}

describe('Q1 a weigh-out is the formula scaled to the dough, part by part, on the scales of the house', () => {
  test('five times the poolish dough of "Baker’s Percentage 4" (wildyeastblog, as in trade.md)', () => {
    expect(asShown(weighOut(mixingFloor(POOLISH_5), 'P1'))).toEqual([
      ['Wheat flour 2340', 'Water 2340', 'Fresh yeast 1.5'],
      ['Wheat flour 4500', 'Water 2340', 'Fresh yeast 45', 'Salt 135', 'Poolish 4680'],
    ]);
  });

  test('light lines on the fine scale, heavy ones on the bench scale', () => {
    const floor = mixingFloor(POOLISH_5);
    expect(['1-0', '1-2', '1-3', '0-2'].map((id) => line(floor, 'P1', id).divisionG)).toEqual([5, 0.1, 0.1, 0.1]);
  });

  test('whatever the size: salt and yeast within half a division, every part within a division of what the dough needs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 15_000, max: 600_000 }), (tenths) => {
        const doughG = tenths / 10;
        const floor = mixingFloor({ ...POOLISH_5, doughG, cuts: [{ product: 'loaf', pieces: 1 }] });
        const factor = doughG / 2340.3;
        const exact: Record<string, number> = { '0-2': 0.3, '1-2': 9, '1-3': 27 };
        for (const [id, g] of Object.entries(exact)) {
          const { grams, divisionG } = line(floor, 'P1', id);
          expect(Math.abs(grams - g * factor)).toBeLessThanOrEqual(divisionG / 2 + 1e-9);
        }
        const [poolish, dough] = weighOut(floor, 'P1').parts;
        expect(Math.abs((poolish?.totalG ?? 0) - 936.3 * factor)).toBeLessThanOrEqual(5);
        expect(Math.abs((dough?.totalG ?? 0) - doughG)).toBeLessThanOrEqual(5);
      }),
    );
  });

  test('a dough goes on with the version that it began with, and pieces have no weigh-out', () => {
    const floor = mixingFloor(POOLISH_5);
    const before = weighOut(floor, 'P1');
    const formula = floor.state.formulas['poolish-loaf@1'];
    if (formula === undefined) throw new Error('the house has it');
    const parts = formula.parts.map((part) => ({ ...part, items: part.items.map((item) => ({ ...item, g: item.g * 3 })) }));
    floor.record({
      type: 'formulaAdopted',
      version: 2,
      formula: { ...formula, parts: [...parts.slice(0, -1), { name: 'Dough', role: 'dough', items: [{ item: 'wheat', g: 1 }] }] },
    });
    expect(weighOut(floor, 'P1')).toEqual(before);
    expect(weighOutOf(floor.state, { ...floor.piece('P1'), kind: 'cut' })).toBeNull();
  });

  test('scrap that is put back, and a spill, change nothing of what is weighed', () => {
    const floor = mixingFloor(RICH_10, { ...RICH_10, min: 600 });
    const before = asShown(weighOut(floor, 'R2'));
    floor.ok({ type: 'nameLoss', workpieceId: floor.id('R1'), what: 'trim', grams: 500 });
    floor.record({
      type: 'scrapPutBack',
      fromWorkpieceId: floor.id('R1'),
      toWorkpieceId: floor.id('R2'),
      what: 'scrap',
      grams: 500,
      allergens: [],
      lotNumbers: [],
      atMs: floor.nowMs,
    });
    floor.ok({ type: 'nameLoss', workpieceId: floor.id('R2'), what: 'spill', grams: 120 });
    expect(floor.piece('R2').grams).toBe(21_760 + 500 - 120);
    expect(asShown(weighOut(floor, 'R2'))).toEqual(before);
  });
});

describe('Q1 whatever is on the floor', () => {
  test('in any house, every dough, prep and feed weighs what it is scaled to, within half a division a line', () => {
    let looked = 0;
    fc.assert(
      fc.property(fc.nat(1_000_000), (house) => {
        const { state } = openedHouse(house);
        for (const workpiece of Object.values(state.workpieces)) {
          const found = weighOutOf(state, workpiece);
          const made = found?.parts.at(-1);
          if (made === undefined) continue;
          looked += 1;
          const slackG = made.lines.reduce((sum, { divisionG }) => sum + divisionG / 2, 0);
          expect(Math.abs(made.totalG - workpiece.scaledToG)).toBeLessThanOrEqual(slackG + 1e-6);
          for (const { grams, divisionG, portions } of found?.parts.flatMap((part) => part.lines) ?? []) {
            expect(Math.abs(grams / divisionG - Math.round(grams / divisionG))).toBeLessThan(1e-6);
            if (portions.length > 0) expect(portions.reduce((sum, portion) => sum + portion.grams, 0)).toBeCloseTo(grams, 6);
          }
          for (const part of found?.parts.slice(0, -1) ?? []) {
            const takenG = (found?.parts ?? [])
              .flatMap((other) => other.lines)
              .filter((one) => one.kind === 'part' && one.name === part.name)
              .reduce((sum, one) => sum + one.grams, 0);
            const partSlackG = part.lines.reduce((sum, { divisionG }) => sum + divisionG / 2, 0);
            // Each line that takes of it is rounded as well.
            expect(Math.abs(part.totalG - takenG)).toBeLessThanOrEqual(partSlackG + 5);
          }
        }
      }),
      { numRuns: 40 },
    );
    expect(looked).toBeGreaterThan(200);
  });

  test('what no mixer runs on is weighed until it is cooked, or has been stirred', () => {
    const floor = new Floor();
    floor.ok(bringInCommand(demoFile(), OPENING_MS), { deviceId: SERVER_DEVICE });
    const prep = Object.values(floor.state.workpieces).find((workpiece) => workpiece.formulaId === 'custard');
    if (prep === undefined) throw new Error('the demo day has a custard');
    const isMixed = (): boolean | undefined => weighOutOf(floor.state, floor.piece(prep.tag))?.isMixed;
    floor.until(Math.max(floor.nowMs, floor.due(prep.tag).dueMs));
    expect(isMixed()).toBe(false);
    floor.finish(prep.tag, 'weigh');
    expect(floor.piece(prep.tag).steps['cook']?.status).toBe('started');
    expect(isMixed()).toBe(true);
  });
});

describe('Q1 what goes in at a step is of the dough as it was scaled', () => {
  test('scrap that was put back before draws no more levain, and adds no more salt', () => {
    const floor = mixingFloor(LEVAIN_POT, RICH_10);
    floor.finish('L1', 'feed');
    floor.wait(120);
    floor.bringTo('R1', 'fill-bowl');
    floor.ok({ type: 'drawFrom', fromWorkpieceId: floor.id('L1'), toWorkpieceId: floor.id('R1'), grams: 500 });
    expect(floor.piece('R1').grams).toBe(22_260);
    floor.finish('R1', 'fill-bowl');
    expect(floor.piece('L1').grams).toBe(5000 - 500 - 2000);
    floor.bringTo('R1', 'second-speed');
    const salt = floor.recorded.map(({ event }) => event).find((event) => event.type === 'ingredientAdded');
    expect(salt).toMatchObject({ ingredientId: 'salt', grams: 200 });
  });

  test('two doughs that are joined are scaled to what both were', () => {
    const floor = mixingFloor(PLAIN_10, { ...PLAIN_10, doughG: 15_500 });
    for (const tag of ['A1', 'A2']) {
      floor.bringTo(tag, 'turn-out');
      floor.finish(tag, 'turn-out');
    }
    floor.ok({ type: 'joinWorkpieces', workpieceIds: [floor.id('A1'), floor.id('A2')] });
    const joined = Object.values(floor.state.workpieces).find((workpiece) => workpiece.finishedMs === null);
    expect(joined?.scaledToG).toBe(32_000);
  });

  test('when the server’s clock is set, what was weighed and taken moves with it', () => {
    const floor = mixingFloor(POOLISH_5);
    weigh(floor, 'P1', '1-0', 4500);
    floor.ok({ type: 'takeWater', workpieceId: floor.id('P1'), waterC: 20, waterG: 2340, iceG: 0, flourC: 22, roomC: 22 });
    const { nowMs } = floor;
    floor.record({ type: 'clockJumped', byMs: 3_600_000, atMs: nowMs });
    expect(floor.piece('P1')).toMatchObject({ weighed: { '1-0': { atMs: nowMs + 3_600_000 } }, water: { atMs: nowMs + 3_600_000 } });
  });
});

describe('Q2 a line says when it goes in', () => {
  test('salt at its step, butter in two portions, a soaker where what it holds is named; levain and flour at the start', () => {
    const floor = mixingFloor(RICH_10);
    const at = (id: string): unknown => [
      line(floor, 'R1', id).stepId,
      line(floor, 'R1', id).portions.map(({ stepId, grams }) => [stepId, grams]),
    ];
    expect(at('1-0')).toEqual([null, [[null, 10_000]]]);
    expect(at('1-2')).toEqual([null, [[null, 2000]]]);
    // Ten per cent of the flour, that in 2 000 g of levain included: four parts of nine are flour where the seed is as the rest.
    const flourG = 10_000 + (2000 * 4) / 9;
    const firstG = Math.round((0.1 * flourG) / 5) * 5;
    expect(at('1-3')).toEqual([
      'butter-1',
      [
        ['butter-1', firstG],
        ['butter-2', 1960 - firstG],
      ],
    ]);
    expect(at('1-4')).toEqual(['salt', [['salt', 200]]]);
    expect(at('1-5')).toEqual(['butter-2', [['butter-2', 2000]]]);
  });

  test('water that is kept back is said beside what goes in at first', () => {
    const floor = mixingFloor(RICH_10);
    const flourG = 10_000 + (2000 * 4) / 9;
    const heldBackG = Math.round((0.03 * flourG) / 5) * 5;
    expect(line(floor, 'R1', '1-1')).toMatchObject({
      grams: 5600,
      heldBackG,
      stepId: null,
      portions: [
        { stepId: null, grams: 5600 - heldBackG, isHeldBack: false },
        { stepId: 'salt', grams: heldBackG, isHeldBack: true },
      ],
    });
  });
});

describe('Q3 a feed is weighed out as it is planned', () => {
  test('the first one by the formula’s proportions', () => {
    expect(asShown(weighOut(mixingFloor(LEVAIN_POT), 'L1'))).toEqual([['Wheat flour 2000', 'Water 2500', 'Levain 500']]);
  });

  test('a later one with the seed that the pot can give, made up with flour and water; what was weighed belongs to the feed before', () => {
    const floor = mixingFloor(LEVAIN_POT, RICH_10);
    weigh(floor, 'L1', '0-0', 2000);
    expect(line(floor, 'L1', '0-0').weighed?.grams).toBe(2000);
    floor.finish('L1', 'feed');
    floor.ok({ type: 'drawFrom', fromWorkpieceId: floor.id('L1'), toWorkpieceId: floor.id('R1'), grams: 4900 });
    floor.ok({ type: 'planFeed', workpieceId: floor.id('L1'), feedMs: floor.wait(480).nowMs, grams: 3000 });
    // 300 g of seed are wanted and 100 g are there: 2 900 g of flour and water, four parts to five.
    expect(asShown(weighOut(floor, 'L1'))).toEqual([['Wheat flour 1290', 'Water 1610', 'Levain 100']]);
    expect(line(floor, 'L1', '0-0').weighed).toBeNull();
  });

  test('a pot that is being fed again is weighed for that feed, lot numbers and all, until it is fed', () => {
    const floor = mixingFloor(LEVAIN_POT);
    floor.finish('L1', 'feed');
    floor.wait(480);
    const on = { workpieceId: floor.id('L1'), lineId: '0-0' };
    const said: CommandOf<'weighIngredient'> = { type: 'weighIngredient', ...on, grams: 500, lotNumbers: ['W-8'] };
    const refused = { ok: false, fault: { code: 'alreadyMixed', tag: 'L1' } };
    expect(floor.give(said).decision).toEqual(refused);
    floor.ok({ type: 'startStep', workpieceId: floor.id('L1'), stepId: 'feed' });
    floor.ok(said);
    expect(line(floor, 'L1', '0-0').weighed).toMatchObject({ grams: 500, lotNumbers: ['W-8'] });
    floor.finish('L1', 'feed');
    expect(line(floor, 'L1', '0-0').weighed).toBeNull();
    expect(floor.give(said).decision).toEqual(refused);
  });

  test('what is weighed is what the feed makes of it', () => {
    const floor = mixingFloor({ ...LEVAIN_POT, doughG: 7400 });
    const [part] = weighOut(floor, 'L1').parts;
    feedPot(floor, 'L1');
    const fed = floor.recorded.map(({ event }) => event).findLast((event) => event.type === 'fermentFed');
    expect(fed).toMatchObject({ seedG: 740, flourG: 2960, waterG: 3700 });
    expect(part?.lines.map((one) => one.grams)).toEqual([2960, 3700, 740]);
  });
});

describe('Q4 a line is ticked off with what was weighed', () => {
  test('given a weigh-out, when a line is weighed, then its grams and lots are a fact and the bowl is so much heavier', () => {
    const floor = mixingFloor(POOLISH_5);
    const { decision } = floor.give({
      type: 'weighIngredient',
      workpieceId: floor.id('P1'),
      lineId: '1-0',
      grams: 4495,
      lotNumbers: ['W7'],
    });
    expect(decision).toEqual({
      ok: true,
      value: [
        {
          type: 'ingredientWeighed',
          workpieceId: floor.id('P1'),
          lineId: '1-0',
          ingredientId: 'wheat',
          grams: 4495,
          lotNumbers: ['W7'],
          atMs: floor.nowMs,
        },
      ],
    });
    weigh(floor, 'P1', '1-3', 135.1);
    expect(weighOut(floor, 'P1').parts.map((part) => part.inBowlG)).toEqual([0, 4630.1]);
    expect(line(floor, 'P1', '1-0')).toMatchObject({ weighed: { grams: 4495, lotNumbers: ['W7'], atMs: floor.nowMs }, takeOutG: 0 });
  });

  test('weighed again, the last counts; too much of it says how much to take out', () => {
    const floor = mixingFloor(POOLISH_5);
    weigh(floor, 'P1', '1-0', 4495);
    weigh(floor, 'P1', '1-0', 4620);
    expect(line(floor, 'P1', '1-0')).toMatchObject({ weighed: { grams: 4620 }, takeOutG: 120 });
    // One division over is what the scale cannot tell.
    weigh(floor, 'P1', '1-0', 4505);
    expect(line(floor, 'P1', '1-0').takeOutG).toBe(0);
  });

  test('a line that is an earlier part or comes of a pot is only ticked off: nothing is drawn before its step', () => {
    const floor = mixingFloor(LEVAIN_POT, RICH_10);
    floor.finish('L1', 'feed');
    const before = floor.piece('L1').grams;
    weigh(floor, 'R1', '1-2', 2000);
    weigh(floor, 'R1', '1-5', 2000);
    expect(floor.piece('L1').grams).toBe(before);
    expect(weighOut(floor, 'R1').parts.at(-1)?.inBowlG).toBe(4000);
  });

  test('there is no such line; nothing, and more than twice as much, is a slip of the finger', () => {
    const floor = mixingFloor(POOLISH_5);
    const said: CommandOf<'weighIngredient'> = {
      type: 'weighIngredient',
      workpieceId: floor.id('P1'),
      lineId: '1-3',
      grams: 135,
      lotNumbers: [],
    };
    expect(refusalOf(floor, { ...said, lineId: '2-0' })).toEqual({ code: 'lineUnknown', tag: 'P1', lineId: '2-0' });
    expect(refusalOf(floor, { ...said, grams: 0 })).toEqual({ code: 'nothingChanges', tag: 'P1' });
    expect(refusalOf(floor, { ...said, grams: 1350 })).toEqual({
      code: 'moreThanThere',
      tag: 'P1',
      fromTag: 'P1',
      neededG: 1350,
      hasG: 135,
    });
    expect(refusalOf(floor, { ...said, grams: 270.1 })).toMatchObject({ code: 'moreThanThere' });
    expect(refusalOf(floor, { ...said, grams: 270 })).toBe('accepted');
  });

  test('once the first speed runs, what goes in at the start is in; what goes in later is weighed until its step is done', () => {
    const floor = mixingFloor(LEVAIN_POT, RICH_10);
    floor.finish('L1', 'feed');
    floor.wait(120);
    floor.bringTo('R1', 'fill-bowl');
    expect([weighOut(floor, 'R1').isMixed, line(floor, 'R1', '1-0').isIn]).toEqual([false, false]);
    floor.finish('R1', 'fill-bowl');
    const said: Omit<CommandOf<'weighIngredient'>, 'lineId'> = {
      type: 'weighIngredient',
      workpieceId: floor.id('R1'),
      grams: 195,
      lotNumbers: [],
    };
    expect(refusalOf(floor, { ...said, lineId: '1-0' })).toEqual({ code: 'alreadyMixed', tag: 'R1' });
    expect(refusalOf(floor, { type: 'unweighIngredient', workpieceId: floor.id('R1'), lineId: '1-0' })).toEqual({
      code: 'alreadyMixed',
      tag: 'R1',
    });
    // What is kept back of the water does not keep its line open.
    expect(line(floor, 'R1', '1-1').isIn).toBe(true);
    weigh(floor, 'R1', '1-4', 195);
    weigh(floor, 'R1', '0-0', 990);
    floor.bringTo('R1', 'second-speed');
    expect(refusalOf(floor, { ...said, lineId: '1-4' })).toEqual({ code: 'alreadyMixed', tag: 'R1' });
    expect(refusalOf(floor, { ...said, lineId: '0-1' })).toBe('accepted');
    floor.bringTo('R1', 'last-speed');
    expect(refusalOf(floor, { ...said, lineId: '0-1' })).toEqual({ code: 'alreadyMixed', tag: 'R1' });
  });

  test('it was not in the bowl after all: only where somebody had said so', () => {
    const floor = mixingFloor(POOLISH_5);
    weigh(floor, 'P1', '1-0', 4500);
    const taken = { type: 'unweighIngredient', workpieceId: floor.id('P1'), lineId: '1-0' } as const;
    floor.ok(taken);
    expect(weighOut(floor, 'P1').parts.at(-1)?.inBowlG).toBe(0);
    expect(refusalOf(floor, taken)).toEqual({ code: 'notWeighed', tag: 'P1', lineId: '1-0' });
  });

  test('what is ticked off survives: the journal folded anew has it, undo takes it back, another phone’s tick stays', () => {
    const floor = mixingFloor(POOLISH_5, PLAIN_10);
    const commandId = weigh(floor, 'P1', '1-0', 4500);
    floor.ok(
      { type: 'weighIngredient', workpieceId: floor.id('A1'), lineId: '0-0', grams: 10_000, lotNumbers: [] },
      { deviceId: OTHER_PHONE },
    );
    const again = evolveAll(EMPTY_STATE, floor.recorded);
    expect(again.workpieces[floor.id('P1')]?.weighed).toEqual({ '1-0': { grams: 4500, lotNumbers: [], atMs: floor.nowMs } });
    floor.ok({ type: 'undoCommand', commandId });
    expect([floor.piece('P1').weighed, Object.keys(floor.piece('A1').weighed)]).toEqual([{}, ['0-0']]);
  });
});

describe('Q5 the lot number stays with the ingredient', () => {
  test('the one used last is offered first, to every dough, and each dough keeps its own', () => {
    const floor = mixingFloor(POOLISH_5, PLAIN_10);
    weigh(floor, 'P1', '1-0', 4500, ['W1']);
    weigh(floor, 'P1', '0-0', 2340, ['W2', 'W1']);
    expect(line(floor, 'A1', '0-0').lots).toEqual(['W2', 'W1']);
    expect(line(floor, 'A1', '0-1').lots).toEqual([]);
    weigh(floor, 'A1', '0-0', 10_000, ['W3']);
    expect(line(floor, 'P1', '0-0').lots).toEqual(['W3', 'W2', 'W1']);
    expect(floor.piece('P1').broughtIn.lotNumbers).toEqual([
      { ingredientId: 'wheat', lotNumber: 'W1' },
      { ingredientId: 'wheat', lotNumber: 'W2' },
    ]);
    expect(floor.piece('A1').broughtIn.lotNumbers).toEqual([{ ingredientId: 'wheat', lotNumber: 'W3' }]);
  });

  test('undone, a lot is offered no more; what was used since stays first', () => {
    const floor = mixingFloor(POOLISH_5, PLAIN_10);
    weigh(floor, 'P1', '1-0', 4500, ['W1']);
    const commandId = weigh(floor, 'P1', '0-0', 2340, ['W2']);
    floor.ok(
      { type: 'weighIngredient', workpieceId: floor.id('A1'), lineId: '0-0', grams: 10_000, lotNumbers: ['W3'] },
      { deviceId: OTHER_PHONE },
    );
    floor.ok({ type: 'undoCommand', commandId });
    expect(line(floor, 'P1', '0-0').lots).toEqual(['W3', 'W1']);
    const first = mixingFloor(POOLISH_5);
    first.ok({ type: 'undoCommand', commandId: weigh(first, 'P1', '1-0', 4500, ['W1']) });
    expect(first.state.lotsUsed).toEqual({});
  });

  test('lots go with what is drawn', () => {
    const floor = mixingFloor(LEVAIN_POT, RICH_10);
    weigh(floor, 'L1', '0-0', 2000, ['W9']);
    floor.finish('L1', 'feed');
    floor.wait(120);
    floor.bringTo('R1', 'first-speed');
    expect(floor.piece('R1').broughtIn.lotNumbers).toEqual([{ ingredientId: 'wheat', lotNumber: 'W9' }]);
  });

  test('an unknown workpiece has no lines', () => {
    const floor = mixingFloor(POOLISH_5);
    expect(refusalOf(floor, { type: 'weighIngredient', workpieceId: idOf(7), lineId: '0-0', grams: 1, lotNumbers: [] })).toEqual({
      code: 'workpieceUnknown',
      workpieceId: idOf(7),
    });
  });
});

import { describe, expect, test } from 'vitest';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { idOf, OTHER_PHONE } from './support/ids.ts';
import { COUNTRY_20, edgesG, lasting, levainFloor, PLAIN_20, type Listed } from './support/levain-house.ts';
import type { Floor } from './support/floor.ts';

const TWO: Listed = {
  formula: 'plain',
  min: 0,
  doughG: 18_000,
  cuts: [
    { product: 'plain-loaf', pieces: 12 },
    { product: 'plain-round', pieces: 7 },
  ],
};
/** Of 18 000 g, 19 pieces of 880 g. */
const SCRAP_G = 18_000 - 19 * 880;
/** 10 % of the flour, which is 10 000 g in 16 000 g, of 8 000 g. */
const CAP_G = 500;

/** P1 is divided with 1 280 g left over; P2, 8 000 g of the same dough, waits to be mixed, and C1 of another. */
function afterDivide(): Floor {
  const floor = levainFloor(TWO, { ...PLAIN_20, min: 100, doughG: 8000, cuts: [{ product: 'plain-loaf', pieces: 9 }] }, COUNTRY_20);
  floor.bringTo('P1', 'divide').finish('P1', 'divide');
  return floor;
}

function put(
  floor: Floor,
  from: string,
  to: string,
  grams: number,
  what: CommandOf<'putBack'>['what'] = 'scrap',
): ReturnType<Floor['give']> {
  return floor.give({ type: 'putBack', fromWorkpieceId: floor.id(from), toWorkpieceId: floor.id(to), what, grams });
}

function faultOf(answer: ReturnType<Floor['give']>): object {
  return answer.decision.ok ? {} : answer.decision.fault;
}

describe('D35 scrap goes back into a later dough', () => {
  test('with its weight on top, and what it has in it', () => {
    const floor = afterDivide();
    expect(put(floor, 'P1', 'P2', 400).decision).toEqual({
      ok: true,
      value: [
        {
          type: 'scrapPutBack',
          fromWorkpieceId: floor.id('P1'),
          toWorkpieceId: floor.id('P2'),
          what: 'scrap',
          grams: 400,
          allergens: ['wheat'],
          lotNumbers: [],
          atMs: floor.nowMs,
        },
      ],
    });
    expect([floor.piece('P1').scrapG, floor.piece('P2').grams, edgesG(floor, 'putBack', { to: 'P2' })]).toEqual([SCRAP_G - 400, 8400, 400]);
  });

  test('is undone to exactly what was', () => {
    const floor = afterDivide();
    const before = floor.state;
    floor.ok({ type: 'undoCommand', commandId: put(floor, 'P1', 'P2', 400).commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });

  test('up to the cap, all that was put back before counted, by the dough as it was mixed', () => {
    const floor = afterDivide();
    expect(faultOf(put(floor, 'P1', 'P2', CAP_G + 0.1))).toEqual({ code: 'putBackOverCap', tag: 'P2', capG: CAP_G, alreadyG: 0 });
    expect(faultOf(put(floor, 'P1', 'P2', 300))).toEqual({});
    expect(faultOf(put(floor, 'P1', 'P2', 201))).toEqual({ code: 'putBackOverCap', tag: 'P2', capG: CAP_G, alreadyG: 300 });
    expect(faultOf(put(floor, 'P1', 'P2', 200))).toEqual({});
  });

  test('trim of a cut on the bench, taken from its weight', () => {
    const floor = afterDivide();
    expect(faultOf(put(floor, 'P1a', 'P2', 250, 'trim'))).toEqual({});
    expect([floor.piece('P1a').grams, edgesG(floor, 'putBack', { from: 'P1a' })]).toEqual([12 * 880 - 250, 250]);
  });

  test('what lay beside it first, then the dough', () => {
    const floor = afterDivide();
    floor.record({ type: 'lossNamed', workpieceId: floor.id('P1a'), what: 'trim', grams: 100, atMs: floor.nowMs });
    expect(faultOf(put(floor, 'P1a', 'P2', 250, 'trim'))).toEqual({});
    expect([floor.piece('P1a').scrapG, floor.piece('P1a').grams]).toEqual([0, 12 * 880 - 250]);
  });

  test('a dough that was given up, and bread that was packed', () => {
    const floor = levainFloor(PLAIN_20, { ...PLAIN_20, min: 1, doughG: 900, cuts: [{ product: 'plain-loaf', pieces: 1 }] }, COUNTRY_20);
    floor.record({ type: 'workpieceFinished', workpieceId: floor.id('P1'), atMs: floor.nowMs });
    expect(faultOf(put(floor, 'P1', 'C1', 100, 'scrap'))).toEqual({
      code: 'moreThanThere',
      tag: 'C1',
      fromTag: 'P1',
      neededG: 100,
      hasG: 0,
    });
    expect(faultOf(put(floor, 'P1', 'C1', 100, 'oldBread'))).toEqual({});
    expect(faultOf(put(floor, 'P2', 'C1', 900, 'scrap'))).toMatchObject({ code: 'moreThanThere', hasG: 0 });
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('P2'), reason: 'too small' });
    expect(faultOf(put(floor, 'P2', 'C1', 900, 'scrap'))).toEqual({});
    expect([edgesG(floor, 'putBack', { to: 'C1' }), floor.piece('C1').grams, floor.piece('P2').grams]).toEqual([1000, 19_700, 0]);
  });

  test('a cut that is put back whole is off the floor, with its vessels given back', () => {
    const floor = levainFloor(
      {
        ...TWO,
        doughG: 880 * 2,
        cuts: [
          { product: 'plain-loaf', pieces: 1 },
          { product: 'plain-round', pieces: 1 },
        ],
      },
      {
        ...PLAIN_20,
        min: 100,
      },
    );
    floor.bringTo('P1', 'divide').finish('P1', 'divide');
    floor.record(
      { type: 'vesselsTaken', workpieceId: floor.id('P1b'), vesselId: 'tin', count: 1, atMs: floor.nowMs },
      idOf(6_000_000),
      0,
      OTHER_PHONE,
    );
    const before = floor.state;
    const { commandId } = put(floor, 'P1b', 'P2', 880, 'trim');
    expect(floor.piece('P1b')).toMatchObject({ grams: 0, ending: 'finished', vessels: [] });
    floor.ok({ type: 'undoCommand', commandId });
    expect(lasting(floor.state)).toEqual(lasting(before));
  });
});

describe('D35 what is not put back', () => {
  test('where the formula does not take it, and into what is no mix', () => {
    const floor = afterDivide();
    expect(faultOf(put(floor, 'P1', 'P2', 100, 'oldBread'))).toEqual({ code: 'putBackNotTaken', tag: 'P2', kind: 'oldBread' });
    expect(faultOf(put(floor, 'P1', 'P1b', 100))).toMatchObject({ code: 'putBackNotTaken', tag: 'P1b', kind: 'scrap' });
  });

  test('past the mixer', () => {
    const floor = afterDivide().bringTo('P2', 'first-speed');
    expect(faultOf(put(floor, 'P1', 'P2', 100))).toEqual({});
    floor.bringTo('P2', 'bulk');
    expect(faultOf(put(floor, 'P1', 'P2', 100))).toEqual({ code: 'pastMixing', tag: 'P2', stepId: 'bulk' });
  });

  test('too old', () => {
    const floor = afterDivide().wait(240);
    expect(faultOf(put(floor, 'P1', 'P2', 100))).toEqual({});
    floor.wait(1);
    expect(faultOf(put(floor, 'P1', 'P2', 100))).toEqual({ code: 'putBackTooOld', tag: 'P2', fromTag: 'P1', ageMin: 241, mostMin: 240 });
  });

  test('more than there is, nothing, of itself, of what came of it, of what nobody knows', () => {
    const floor = afterDivide();
    expect(faultOf(put(floor, 'P1', 'P2', SCRAP_G + 1))).toEqual({
      code: 'moreThanThere',
      tag: 'P2',
      fromTag: 'P1',
      neededG: SCRAP_G + 1,
      hasG: SCRAP_G,
    });
    expect(faultOf(put(floor, 'P1', 'P2', 0.04))).toEqual({ code: 'nothingChanges', tag: 'P2' });
    expect(faultOf(put(floor, 'P2', 'P2', 10))).toEqual({ code: 'wrongSource', tag: 'P2', fromTag: 'P2' });
    expect(faultOf(put(floor, 'P1', 'P2', 10))).toEqual({});
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('P1a'), reason: 'torn' });
    const unknown = { type: 'putBack', fromWorkpieceId: idOf(42_000), toWorkpieceId: floor.id('P2'), what: 'scrap', grams: 1 } as const;
    expect(faultOf(floor.give(unknown))).toEqual({ code: 'workpieceUnknown', workpieceId: idOf(42_000) });
    expect(faultOf(put(floor, 'P1', 'P1a', 10))).toMatchObject({ code: 'workpieceFinished', tag: 'P1a' });
  });

  test('in a circle: what took something back cannot give it to where that came from', () => {
    const floor = levainFloor(PLAIN_20, { ...PLAIN_20, min: 1 });
    for (const tag of ['P1', 'P2'])
      floor.record({ type: 'lossNamed', workpieceId: floor.id(tag), what: 'trim', grams: 300, atMs: floor.nowMs });
    expect(faultOf(put(floor, 'P1', 'P2', 100))).toEqual({});
    expect(faultOf(put(floor, 'P2', 'P1', 100))).toEqual({ code: 'wrongSource', tag: 'P1', fromTag: 'P2' });
  });
});

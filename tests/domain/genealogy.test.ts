import { describe, expect, test } from 'vitest';
import type { Step } from '../../shared/documents/method.ts';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { bringInCommand, harbourFile, OPENING_MS } from './support/harbour.ts';
import { idOf, SERVER_DEVICE } from './support/ids.ts';

const REST: Step = {
  id: 'first-rest',
  verb: 'benchRest',
  kind: 'timed',
  minutes: { target: 10 },
  toleranceMin: { late: 5 },
  claims: [],
  additions: [],
};

describe('D13 nothing weighs more than what it came from', () => {
  test('a divide names each cut, its weight, and what is lost', () => {
    const floor = given((arranged) => arranged.bringTo('M1', 'divide'))
      .when((arranged) => ({ type: 'finishStep', workpieceId: arranged.id('M1'), stepId: 'divide' }), { commandId: idOf(42) })
      .thenTypes(['stepDone', 'stepDone', 'workpieceDivided']);
    const divided = floor.recorded.at(-1)?.event;
    expect(divided).toMatchObject({
      type: 'workpieceDivided',
      lossG: 150,
      children: [
        { tag: 'M1a', productId: 'milk-bun', productVersion: 1, pieces: 30, grams: 1800 },
        { tag: 'M1b', productId: 'custard-bun', productVersion: 1, pieces: 30, grams: 1650 },
      ],
    });
    expect(floor.state.edges.map((edge) => [edge.kind, edge.fromId === floor.id('M1'), edge.grams])).toEqual([
      ['divide', true, 1800],
      ['divide', true, 1650],
    ]);
  });

  test('as counted, where it came out otherwise than planned', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    floor.ok({
      type: 'finishStep',
      workpieceId: floor.id('M1'),
      stepId: 'divide',
      cuts: [
        { productId: 'custard-bun', pieces: 12 },
        { productId: 'milk-bun', pieces: 49 },
      ],
    });
    expect([floor.piece('M1a'), floor.piece('M1b')].map((cut) => [cut.productId, cut.pieces, cut.grams])).toEqual([
      ['custard-bun', 12, 660],
      ['milk-bun', 49, 2940],
    ]);
    expect(floor.recorded.at(-1)?.event).toMatchObject({ lossG: 0 });
  });

  test('cuts that would weigh more than the batch are refused', () => {
    given((floor) => floor.bringTo('M1', 'divide'))
      .when((floor) => ({
        type: 'finishStep',
        workpieceId: floor.id('M1'),
        stepId: 'divide',
        cuts: [{ productId: 'milk-bun', pieces: 61 }],
      }))
      .thenRefusal<'cutsTooHeavy'>({ code: 'cutsTooHeavy', tag: 'M1', stepId: 'divide', neededG: 3660, hasG: 3600 });
  });

  test('cuts for a product of another formula, or of none, are refused', () => {
    for (const productId of ['country-loaf', 'ghost']) {
      given((floor) => floor.bringTo('M1', 'divide'))
        .when((floor) => ({ type: 'finishStep', workpieceId: floor.id('M1'), stepId: 'divide', cuts: [{ productId, pieces: 1 }] }))
        .thenRefusal<'productUnknown'>({ code: 'productUnknown', tag: 'M1', stepId: 'divide', productId });
    }
  });

  test('a cut whose way begins with a rest is at rest from the divide on, and undo takes that back too', () => {
    const command = bringInCommand(harbourFile(), OPENING_MS);
    const products = command.products.map((product) => (product.id === 'milk-bun' ? { ...product, way: [REST, ...product.way] } : product));
    const floor = new Floor();
    floor.ok({ ...command, products }, { deviceId: SERVER_DEVICE });
    floor.bringTo('M1', 'divide');
    const before = floor.piece('M1');
    const commandId = floor.finish('M1', 'divide');
    expect(floor.due('M1a')).toMatchObject({
      phase: 'resting',
      step: { id: 'first-rest' },
      action: { id: 'round' },
      dueMs: floor.nowMs + 10 * 60_000,
    });
    expect(floor.due('M1b')).toMatchObject({ phase: 'waiting', step: { id: 'shape' } });
    floor.ok({ type: 'undoCommand', commandId });
    expect(floor.piece('M1')).toEqual(before);
  });

  test('loads, joins, draws, feeds and what is put back are edges with their amounts', () => {
    const floor = Floor.harbour();
    const [c1, c2, m1] = [floor.id('C1'), floor.id('C2'), floor.id('M1')];
    const child = { workpieceId: idOf(61), tag: 'C1·1', productId: 'country-loaf', productVersion: 1, pieces: 4, grams: 3600, vessels: [] };
    floor.record({
      type: 'workpieceDrawn',
      fromWorkpieceId: m1,
      toWorkpieceId: c1,
      grams: 600,
      allergens: ['wheat'],
      lotNumbers: [],
      atMs: floor.nowMs,
    });
    floor.record({
      type: 'scrapPutBack',
      fromWorkpieceId: m1,
      toWorkpieceId: c2,
      what: 'trim',
      grams: 100,
      allergens: ['wheat'],
      lotNumbers: [],
      atMs: floor.nowMs,
    });
    expect(floor.piece('M1').grams).toBe(2900);
    floor.record({ type: 'fermentFed', workpieceId: m1, seedG: 100, flourG: 500, waterG: 500, discardedG: 2800, atMs: floor.nowMs });
    expect(floor.piece('M1').grams).toBe(1100);
    floor.record({ type: 'loadsMade', workpieceId: c1, stepId: 'shape', atMs: floor.nowMs, children: [child], restPieces: 0, restG: 0 });
    floor.record({
      type: 'workpiecesJoined',
      workpieceId: idOf(62),
      tag: 'C8',
      parents: [
        { workpieceId: c2, grams: 9200 },
        { workpieceId: m1, grams: 1100 },
      ],
      atMs: floor.nowMs,
    });
    expect(floor.piece('C1·1')).toMatchObject({ kind: 'load', pieces: 4, grams: 3600, parentId: c1 });
    expect(floor.piece('C8')).toMatchObject({ grams: 10_300, formulaId: 'country' });
    expect(floor.state.edges.map((edge) => [edge.kind, edge.grams])).toEqual([
      ['draw', 600],
      ['putBack', 100],
      ['feed', 1000],
      ['load', 3600],
      ['join', 9200],
      ['join', 1100],
    ]);
  });
});

describe('D13 what is counted at the divide counts, where a dough becomes one product too', () => {
  test('another count is kept as a correction', () => {
    const floor = given((arranged) => arranged.bringTo('C1', 'divide'))
      .when((arranged) => ({
        type: 'finishStep',
        workpieceId: arranged.id('C1'),
        stepId: 'divide',
        cuts: [{ productId: 'country-loaf', pieces: 9 }],
      }))
      .thenTypes(['stepDone', 'stepDone', 'countCorrected', 'lossNamed']);
    // Nine loaves of 900 g out of 9200 g: what is left lies beside them and can go back into another dough.
    expect(floor.piece('C1')).toMatchObject({ pieces: 9, grams: 8100, scrapG: 1100 });
  });

  test('not more than it weighs, and not of another product', () => {
    given((arranged) => arranged.bringTo('C1', 'divide'))
      .when((arranged) => ({
        type: 'finishStep',
        workpieceId: arranged.id('C1'),
        stepId: 'divide',
        cuts: [{ productId: 'country-loaf', pieces: 11 }],
      }))
      .thenRefusal<'cutsTooHeavy'>({ code: 'cutsTooHeavy', tag: 'C1', stepId: 'divide', neededG: 9900, hasG: 9200 });
    given((arranged) => arranged.bringTo('C1', 'divide'))
      .when((arranged) => ({
        type: 'finishStep',
        workpieceId: arranged.id('C1'),
        stepId: 'divide',
        cuts: [{ productId: 'milk-bun', pieces: 9 }],
      }))
      .thenRefusal<'productUnknown'>({ code: 'productUnknown', tag: 'C1', stepId: 'divide', productId: 'milk-bun' });
  });
});

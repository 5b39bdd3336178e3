import { describe, expect, it } from 'vitest';
import { askLots } from '../../server/records/ask-lots.ts';
import { askTrace } from '../../server/records/ask-trace.ts';
import type { TraceAnswer } from '../../shared/records/trace-answer.ts';
import { assert } from '../../shared/result.ts';
import type { Floor } from '../domain/support/floor.ts';
import { SERVICE_DATE } from '../domain/support/harbour.ts';
import { idOf } from '../domain/support/ids.ts';
import { levainFloor, PLAIN_20, type Listed } from '../domain/support/levain-house.ts';
import { askedOf } from './asked-of.ts';
import { draw, idOn, SECOND_DAY, THIRD_DAY, threeDays, weigh } from './three-days.ts';

const BUNS: Listed = {
  formula: 'buns',
  min: 10,
  doughG: 6000,
  cuts: [
    { product: 'bun', pieces: 40 },
    { product: 'roll', pieces: 30 },
  ],
};
async function traced(floor: Floor, asked: Parameters<typeof askTrace>[1]): Promise<TraceAnswer> {
  const answer = await askedOf(floor.recorded, (reader) => askTrace(reader, asked));
  assert(answer !== null, 'it is in the records');
  return answer;
}

function nodes({ nodes: all }: TraceAnswer): readonly string[] {
  return all.map(({ piece, via, feeds }) => `${piece.tag} ${piece.serviceDate.slice(-2)} ${via ?? 'asked'} ${feeds}`);
}

function lots({ lots: all }: TraceAnswer): readonly string[] {
  return all.map(({ lot, tag, feeds }) => `${lot} ${tag} ${feeds}`);
}

describe('TR2 a lot in a pot is in every later draw from it, with the feeds since', () => {
  it('onward: the first day’s flour is in all three doughs, the second day’s only in the third', async () => {
    const floor = threeDays();
    const first = await traced(floor, { lot: 'FLOUR-1' });
    expect(nodes(first)).toEqual(['L1 07 weighed 0', 'C1 07 draw 0', 'C1 08 draw 0', 'C1 09 draw 2']);
    expect(first.nodes[0]).toMatchObject({ fedSince: 2, isInIt: true });
    expect(first.products.map(({ serviceDate, feeds, here }) => [serviceDate, feeds, here])).toEqual([
      [SERVICE_DATE, 0, 20],
      [SECOND_DAY, 0, 20],
      [THIRD_DAY, 2, 20],
    ]);
    expect(first.total).toEqual({ products: 1, days: 3, finished: 0, discarded: 0, here: 60, carried: 20 });
    expect(first.stillHere.map(({ piece }) => piece.tag)).toEqual(['L1']);
    expect(nodes(await traced(floor, { lot: 'FLOUR-2' }))).toEqual(['L1 07 weighed 0', 'C1 09 draw 1']);
  });

  it('back: what was weighed after a draw is not in it', async () => {
    const floor = threeDays();
    expect(lots(await traced(floor, { product: 'country-loaf', date: SECOND_DAY }))).toEqual(['FLOUR-1 L1 0']);
    expect(lots(await traced(floor, { id: idOn(floor, THIRD_DAY, 'C1') }))).toEqual(['FLOUR-2 L1 1', 'FLOUR-1 L1 2']);
  });

  it('a line that was weighed anew counts in what was taken as it was then', async () => {
    const floor = levainFloor(PLAIN_20, { ...PLAIN_20, min: 20 }, { ...PLAIN_20, min: 40 });
    const trim = (to: string): void => {
      const into = { fromWorkpieceId: floor.id('P1'), toWorkpieceId: floor.id(to) };
      floor.ok({ type: 'putBack', ...into, what: 'trim', grams: 200 });
    };
    weigh(floor, 'P1', '0-0', 'WRONG');
    trim('P2');
    weigh(floor, 'P1', '0-0', 'RIGHT');
    trim('P3');
    const wrong = await traced(floor, { lot: 'WRONG' });
    expect(wrong.nodes.map(({ piece, isInIt }) => [piece.tag, isInIt])).toEqual([
      ['P1', false],
      ['P2', true],
    ]);
    expect(wrong.lots).toMatchObject([{ tag: 'P1', isReplaced: true }]);
    expect(lots(await traced(floor, { id: floor.id('P1') }))).toEqual(['RIGHT P1 0']);
    expect(lots(await traced(floor, { id: floor.id('P2') }))).toEqual(['WRONG P1 0']);
    expect(lots(await traced(floor, { id: floor.id('P3') }))).toEqual(['RIGHT P1 0']);
    expect(lots(await traced(floor, { product: 'plain-loaf', date: SERVICE_DATE }))).toEqual(['WRONG P1 0', 'RIGHT P1 0']);
  });
});

describe('TR3 old dough and fillings carry their lots', () => {
  it('scrap of one dough put back into another: both ways, and what became of the pieces', async () => {
    const floor = levainFloor(
      {
        formula: 'plain',
        min: 0,
        doughG: 18_000,
        cuts: [
          { product: 'plain-loaf', pieces: 12 },
          { product: 'plain-round', pieces: 7 },
        ],
      },
      { ...PLAIN_20, min: 100, doughG: 8000, cuts: [{ product: 'plain-loaf', pieces: 9 }] },
    );
    weigh(floor, 'P1', '0-0', 'OLD-1');
    weigh(floor, 'P2', '0-0', 'NEW-1');
    floor.bringTo('P1', 'divide').finish('P1', 'divide');
    floor.ok({ type: 'putBack', fromWorkpieceId: floor.id('P1'), toWorkpieceId: floor.id('P2'), what: 'scrap', grams: 300 });
    floor.ok({ type: 'discardWorkpiece', workpieceId: floor.id('P1b'), reason: 'fell off the board' });
    const old = await traced(floor, { lot: 'OLD-1', ingredient: 'wheat' });
    expect([...nodes(old)].sort()).toEqual(['P1 07 weighed 0', 'P1a 07 divide 0', 'P1b 07 divide 0', 'P2 07 putBack 0']);
    expect(old.edges.map(({ kind, grams }) => [kind, grams])).toContainEqual(['putBack', 300]);
    expect(old.products.map(({ product, here, discarded }) => [product, here, discarded])).toEqual([
      ['plain-loaf', 21, 0],
      ['plain-round', 0, 7],
    ]);
    expect(lots(await traced(floor, { id: floor.id('P2') }))).toEqual(['OLD-1 P1 0', 'NEW-1 P2 0']);
    expect(lots(await traced(floor, { id: floor.id('P1') }))).toEqual(['OLD-1 P1 0']);
  });

  it('a filling is in the cut that it went into, not in its sister; orders say where that went', async () => {
    const floor = levainFloor(BUNS);
    const order = { productId: 'bun', form: 'cooled', weight: 1 } as const;
    const readyMs = floor.nowMs + 3_600_000;
    floor.ok({
      type: 'placeOrders',
      serviceDate: SERVICE_DATE,
      orders: [
        { ...order, readyMs, pieces: 30, label: 'Market stall' },
        { ...order, readyMs: readyMs + 1, pieces: 10 },
        { ...order, readyMs, pieces: 5, label: 'Not wanted after all' },
      ],
    });
    const withdrawn = Object.values(floor.state.orders).find(({ pieces }) => pieces === 5);
    assert(withdrawn !== undefined, 'it was placed');
    floor.ok({ type: 'withdrawOrders', orderIds: [withdrawn.id] });
    const filling = Object.values(floor.state.workpieces).find(({ formulaId }) => formulaId === 'filling');
    assert(filling !== undefined, 'buns have a filling');
    weigh(floor, filling.tag, '0-0', 'CHEESE-1');
    weigh(floor, 'B1', '0-0', 'FLOUR-1');
    floor.ok({ type: 'sayWhere', workpieceId: floor.id('B1'), stepId: 'divide' });
    floor.finish('B1', 'divide');
    draw(floor, filling.tag, 'B1a');
    const cheese = await traced(floor, { lot: 'CHEESE-1' });
    expect(cheese.products).toMatchObject([
      {
        product: 'bun',
        here: 40,
        orders: [
          { label: 'Market stall', pieces: 30 },
          { label: null, pieces: 10 },
        ],
      },
    ]);
    expect(lots(await traced(floor, { product: 'roll', date: SERVICE_DATE }))).toEqual(['FLOUR-1 B1 0']);
    expect(lots(await traced(floor, { product: 'bun', date: SERVICE_DATE }))).toEqual([`CHEESE-1 ${filling.tag} 0`, 'FLOUR-1 B1 0']);
    // The whole batch: whatever is in any part of it.
    expect(lots(await traced(floor, { id: floor.id('B1') }))).toHaveLength(2);
  });

  it('what nobody knows is told so', async () => {
    const floor = threeDays();
    await askedOf(floor.recorded, (reader) => {
      expect(askTrace(reader, { lot: 'FLOUR-9' })).toBeNull();
      expect(askTrace(reader, { lot: 'FLOUR-1', ingredient: 'salt' })).toBeNull();
      expect(askTrace(reader, { product: 'country-loaf', date: '2020-01-01' })).toBeNull();
      expect(askTrace(reader, { id: idOf(77_777) })).toBeNull();
    });
  });
});

describe('TR4 lots to choose from', () => {
  it('by how they begin, by ingredient, the last used first', async () => {
    const floor = threeDays();
    const dough = idOn(floor, THIRD_DAY, 'C1');
    floor.ok({ type: 'weighIngredient', workpieceId: dough, lineId: '0-2', grams: 200, lotNumbers: ['SALT-7'] });
    await askedOf(floor.recorded, (reader) => {
      const found = (asked: Parameters<typeof askLots>[1]): readonly string[] => askLots(reader, asked).lots.map(({ lot }) => lot);
      expect(found({})).toEqual(['SALT-7', 'FLOUR-2', 'FLOUR-1']);
      expect(found({ text: 'flour' })).toEqual(['FLOUR-2', 'FLOUR-1']);
      expect(found({ text: '%' })).toEqual([]);
      expect(found({ ingredient: 'salt' })).toEqual(['SALT-7']);
      expect(found({ text: 'S', ingredient: 'wheat' })).toEqual([]);
    });
  });
});

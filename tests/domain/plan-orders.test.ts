import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Order } from '../../shared/documents/order.ts';
import type { ProposedBatch } from '../../shared/plan/build/day-input.ts';
import { allocationOf, type Supply } from '../../shared/plan/orders/allocation.ts';
import { batchesFor } from '../../shared/plan/orders/batches-for.ts';
import { assert } from '../../shared/result.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import type { Floor } from './support/floor.ts';
import { built, demoFloor, emptyFloor, MINUTE_MS, NEXT_DATE, order, ordered } from './support/planned-house.ts';

function batches(floor: Floor, ...orders: readonly Order[]): readonly ProposedBatch[] {
  const found = batchesFor(ordered(floor.state, ...orders), orders, floor.nowMs);
  assert(found.ok, found.ok ? '' : JSON.stringify(found.fault));
  return found.value;
}

/** `country#1 9000 country-loaf×10`. */
function told(made: readonly ProposedBatch[]): readonly string[] {
  return made.map(({ batchKey, grams, cuts }) =>
    [batchKey, grams, ...cuts.map(({ productId, pieces }) => `${productId}×${pieces}`)].join(' '),
  );
}

function supply(key: string, pieces: number, hour: number | null, more: Partial<Supply> = {}): Supply {
  const readyMs = hour === null ? null : Date.parse(`${NEXT_DATE}T00:00:00Z`) + hour * 60 * MINUTE_MS;
  return { key, productId: 'country-loaf', pieces, readyMs, serviceDate: NEXT_DATE, ...more };
}

describe('Z15 who gets which pieces', () => {
  const early = order(1, 'country-loaf', 10, 7);
  const late = order(2, 'country-loaf', 10, 15);
  const shares = (allocation: ReturnType<typeof allocationOf>): readonly string[] =>
    allocation.shares.map(({ orderId, key, pieces }) => `${orderId === early.id ? 'early' : 'late'} ${key}×${pieces}`);

  test('what is ready first goes to the order that is wanted first', () => {
    const found = allocationOf(EMPTY_STATE, [late, early], [supply('b', 12, 9), supply('a', 8, 6)]);
    expect(shares(found)).toEqual(['early a×8', 'early b×2', 'late b×10']);
    expect([found.short, found.spare]).toEqual([[], []]);
  });

  test('an order before all others comes before them', () => {
    const found = allocationOf(EMPTY_STATE, [early, late], [supply('a', 12, 6)], { firstOrderIds: new Set([late.id]) });
    expect(shares(found)).toEqual(['late a×10', 'early a×2']);
    expect(found.short).toEqual([{ orderId: early.id, pieces: 8 }]);
  });

  test('what would be much too late is left to a later order while more can be made', () => {
    const afternoon = supply('a', 10, 14);
    expect(shares(allocationOf(EMPTY_STATE, [early, late], [afternoon, supply('made', 10, null)]))).toEqual(['early made×10', 'late a×10']);
    expect(shares(allocationOf(EMPTY_STATE, [early, late], [afternoon]))).toEqual(['early a×10']);
  });

  test('pieces of one day do not serve another', () => {
    const found = allocationOf(EMPTY_STATE, [early], [supply('a', 10, 6, { serviceDate: '2026-03-07' })]);
    expect([found.short, found.spare]).toEqual([[{ orderId: early.id, pieces: 10 }], [{ key: 'a', pieces: 10 }]]);
  });

  test('no piece is given twice, none is lost', () => {
    const pieces = fc.integer({ min: 1, max: 30 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(pieces, fc.integer({ min: 4, max: 18 })), { maxLength: 6 }),
        fc.array(fc.tuple(pieces, fc.option(fc.integer({ min: 4, max: 18 }))), { maxLength: 6 }),
        (wanted, made) => {
          const orders = wanted.map(([count, hour], n) => order(n, 'country-loaf', count, hour));
          const supplies = made.map(([count, hour], n) => supply(`s${n}`, count, hour));
          const found = allocationOf(EMPTY_STATE, orders, supplies);
          const sum = (list: readonly { readonly pieces: number }[]): number => list.reduce((all, each) => all + each.pieces, 0);
          for (const { key, pieces: count } of supplies)
            expect(sum(found.shares.filter((share) => share.key === key)) + sum(found.spare.filter((spare) => spare.key === key))).toBe(
              count,
            );
          for (const { id, pieces: count } of orders)
            expect(
              sum(found.shares.filter((share) => share.orderId === id)) + sum(found.short.filter((short) => short.orderId === id)),
            ).toBe(count);
          // Nothing stays over while somebody lacks it.
          expect(Math.min(sum(found.short), sum(found.spare))).toBe(0);
        },
      ),
      { numRuns: 100, seed: 7 },
    );
  });
});

describe('Z16 orders become batches', () => {
  test('the same dough is mixed for all of its products, evenly, by what the mixer takes', () => {
    // 10 × 60 g and 40 × 55 g are 2800 g: one batch of the planetary, from 1 to 7 kg.
    expect(told(batches(emptyFloor(), order(1, 'milk-bun', 10, 8), order(2, 'custard-bun', 40, 8)))).toEqual([
      'milk-buns#1 2800 custard-bun×40 milk-bun×10',
    ]);
    // 26 loaves of 900 g are 23.4 kg: two batches of the spiral, which takes 12 kg.
    expect(told(batches(emptyFloor(), order(1, 'country-loaf', 12, 8), order(2, 'country-loaf', 14, 9))).slice(0, 2)).toEqual([
      'country#1 11700 country-loaf×7 country-loaf×6',
      'country#2 11700 country-loaf×7 country-loaf×6',
    ]);
  });

  test('what stays in the bowl is made too', () => {
    const floor = emptyFloor((file) => {
      const country = file.formulas.find(({ id }) => id === 'country');
      if (country !== undefined) country.handlingLossPct = 10;
    });
    // 9 kg in pieces are 90 % of 10 kg.
    expect(told(batches(floor, order(1, 'country-loaf', 10, 8)))[0]).toBe('country#1 10000 country-loaf×10');
  });

  test('less than the least load is made up to it', () => {
    // Four boats of 210 g: the spiral takes no less than 2.5 kg.
    expect(told(batches(emptyFloor(), order(1, 'cheese-boat', 4, 8)))).toEqual(['cheese-boats#1 2500 cheese-boat×4']);
    // 13.5 kg are more than one load of 8 to 12 kg, and less than two.
    const large = emptyFloor((file) => {
      for (const mixer of file.kitchen.mixers) if (mixer.id === 'spiral') mixer.leastG = 8000;
    });
    expect(told(batches(large, order(1, 'country-loaf', 15, 8))).slice(0, 2)).toEqual([
      'country#1 8000 country-loaf×8',
      'country#2 8000 country-loaf×7',
    ]);
  });

  test('a cut is no more than goes into the oven at once, a batch no more than there are tins for', () => {
    // Two slots of five loaves; four trays of fifteen buns, two slots of thirty.
    expect(told(batches(emptyFloor(), order(1, 'country-loaf', 11, 8)))[0]).toBe('country#1 9900 country-loaf×6 country-loaf×5');
    expect(told(batches(emptyFloor(), order(1, 'milk-bun', 70, 8)))).toEqual([
      'milk-buns#1 2100 milk-bun×35',
      'milk-buns#2 2100 milk-bun×35',
    ]);
    // Six boards of four: 58 boats are three batches, of whole pieces.
    expect(told(batches(emptyFloor(), order(1, 'cheese-boat', 58, 8))).map((text) => text.split(' ').slice(1).join(' '))).toEqual([
      '4200 cheese-boat×10 cheese-boat×10',
      '3990 cheese-boat×10 cheese-boat×9',
      '3990 cheese-boat×10 cheese-boat×9',
    ]);
    // Seventeen tins of rye would fit the mixer; there are sixteen.
    expect(told(batches(emptyFloor(), order(1, 'rye-tin', 17, 8))).slice(0, 2)).toEqual(['rye#1 6300 rye-tin×9', 'rye#2 5600 rye-tin×8']);
  });

  test('what goes through a cold night is another dough than what is baked on its morning', () => {
    const made = batches(emptyFloor(), order(1, 'country-loaf', 8, 8), order(2, 'country-loaf-cold', 8, 8));
    expect(told(made).slice(0, 2)).toEqual(['country#1 7200 country-loaf-cold×8', 'country#2 7200 country-loaf×8']);
  });

  test('early where it keeps, and not where it must be fresh', () => {
    const twice = [order(1, 'country-loaf', 5, 7), order(2, 'country-loaf', 5, 15)];
    expect(told(batches(emptyFloor(), ...twice))[0]).toBe('country#1 9000 country-loaf×10');
    const [morning, afternoon] = twice;
    assert(morning !== undefined && afternoon !== undefined, 'two orders');
    const fresh = { ...afternoon, freshMin: 240 };
    expect(told(batches(emptyFloor(), morning, fresh)).slice(0, 2)).toEqual([
      'country#1 4500 country-loaf×5',
      'country#2 4500 country-loaf×5',
    ]);
    const keeps = emptyFloor((file) => {
      const loaf = file.products.find(({ id }) => id === 'country-loaf');
      if (loaf !== undefined) Object.assign(loaf, { keepsMin: 300 });
    });
    expect(told(batches(keeps, ...twice)).slice(0, 2)).toEqual(['country#1 4500 country-loaf×5', 'country#2 4500 country-loaf×5']);
  });

  test('what is planned already is counted first', () => {
    // The demo's Saturday has twenty country loaves and ten more through the cold night.
    const floor = demoFloor();
    const today = { serviceDate: '2026-03-07' };
    expect(told(batches(floor, order(1, 'country-loaf', 20, 16, today)))).toEqual([]);
    expect(told(batches(floor, order(1, 'country-loaf', 26, 16, today)))[0]).toBe('country#1 5400 country-loaf×6');
    // They are for their own day.
    expect(told(batches(floor, order(1, 'country-loaf', 10, 8)))[0]).toBe('country#1 9000 country-loaf×10');
  });

  test('what doughs draw on is fed for them, its seed on top, and each feed is ripe for all who draw', () => {
    // The pot keeps 150 g of seed. What the floor would draw by the formulas' lines is what is fed.
    const floor = emptyFloor();
    const made = batches(floor, order(1, 'country-loaf', 10, 8), order(2, 'rye-tin', 8, 9));
    const feeds = made.filter(({ formulaId }) => formulaId === 'levain');
    expect(feeds).toHaveLength(1);
    const taken = (formulaId: string, grams: number): number => {
      const formula = floor.state.formulas[`${formulaId}@1`];
      const lines = formula?.parts.flatMap((part) => part.items) ?? [];
      const all = formula?.parts.at(-1)?.items.reduce((sum, line) => sum + line.g, 0) ?? 1;
      return lines.reduce((sum, line) => sum + ('formula' in line && line.formula === 'levain' ? (line.g * grams) / all : 0), 0);
    };
    expect(feeds[0]?.grams).toBeCloseTo(taken('country', 9000) + taken('rye', 5600) + 150, 0);
    // Eight hours past it: one for the early morning, one for the evening.
    const apart = batches(emptyFloor(), order(1, 'country-loaf', 10, 6), { ...order(2, 'rye-tin', 8, 18), freshMin: 300 });
    expect(apart.filter(({ formulaId }) => formulaId === 'levain')).toHaveLength(2);
  });

  test('doughs that take turns at one mixer draw on as many feeds as are ripe one after another', () => {
    // 200 loaves are 16 batches of up to 13 of them (11.7 of 12 kg) in the one spiral, 44 min each from the filling to the turning
    // out: 11 h 44 min.
    // A feed is ripe for 5 h, in which 6 of them can begin after the first.
    const made = batches(emptyFloor(), order(1, 'country-loaf', 200, 28));
    const doughs = made.filter(({ formulaId }) => formulaId === 'country');
    const feeds = made.filter(({ formulaId }) => formulaId === 'levain');
    expect(doughs).toHaveLength(16);
    expect(feeds.length).toBeGreaterThanOrEqual(3);
    const allG = feeds.reduce((sum, { grams }) => sum + grams - 150, 0);
    for (const { grams } of feeds) expect((grams - 150) / (allG / 16)).toBeLessThanOrEqual(7.1);
  });

  test('what the kitchen cannot make is refused by name, all of it', () => {
    const floor = emptyFloor((file) => {
      for (const mixer of file.kitchen.mixers) if (mixer.id === 'planetary') Object.assign(mixer, { leastG: 40, mostG: 40 });
      const cheese = file.formulas.find(({ id }) => id === 'cheese-boats');
      const last = cheese?.method.at(-1);
      if (last !== undefined) last['verb'] = 'scale';
    });
    const orders = [order(1, 'milk-bun', 10, 8), order(2, 'cheese-boat', 18, 8), order(3, 'nothing-known', 1, 8)];
    const found = batchesFor(ordered(floor.state, ...orders), orders, floor.nowMs);
    expect(found.ok ? [] : found.fault.map(({ code, productId }) => `${code} ${productId}`).sort()).toEqual([
      'noDeck cheese-boat',
      'noMixer milk-bun',
      'productUnknown nothing-known',
    ]);
  });
});

describe('Z17 orders are goals', () => {
  const goalsOf = (floor: Floor, ...orders: readonly Order[]) => {
    const made = batches(floor, ...orders);
    floor.state = ordered(floor.state, ...orders);
    const day = built(floor, { proposed: made });
    return day.day.problem.goals.map((goal, index) => ({
      ...goal,
      step: day.day.steps[goal.activity]?.stepId,
      dueMs: goal.dueS * 1000 + day.day.originMs,
      orderId: day.day.goalOrders[index],
      freshOf: goal.fresh === null ? null : day.day.steps[goal.fresh.activity]?.stepId,
    }));
  };

  test('cooled: its last step is over when it has to be loaded; hot: it is out of the oven', () => {
    const cooled = order(1, 'country-loaf', 10, 8, { loadingMin: 15, weight: 3 });
    expect(goalsOf(emptyFloor(), cooled)).toMatchObject([
      { step: 'pack', edge: 'end', dueMs: cooled.readyMs - 15 * MINUTE_MS, latePrice: 300, fresh: null, orderId: cooled.id },
    ]);
    const hot = order(2, 'country-loaf', 10, 8, { form: 'hot' });
    expect(goalsOf(emptyFloor(), hot)).toMatchObject([{ step: 'take-out', edge: 'end', dueMs: hot.readyMs, latePrice: 100 }]);
  });

  test('fresh from the oven on; what keeps only so long, from when it is ready', () => {
    const fresh = order(1, 'country-loaf', 10, 8, { freshMin: 180 });
    expect(goalsOf(emptyFloor(), fresh)).toMatchObject([{ freshOf: 'take-out', fresh: { edge: 'end', mostS: 180 * 60, price: 3 } }]);
    const keeping = emptyFloor((file) => {
      const loaf = file.products.find(({ id }) => id === 'country-loaf');
      if (loaf !== undefined) Object.assign(loaf, { keepsMin: 300 });
    });
    expect(goalsOf(keeping, fresh)).toMatchObject([
      { freshOf: 'take-out', latePrice: 100 },
      { freshOf: 'pack', latePrice: 0, fresh: { mostS: 300 * 60, price: 30 } },
    ]);
  });

  test('every load that serves it, and first what somebody has put first', () => {
    const floor = emptyFloor();
    const rye = order(1, 'rye-tin', 13, 9);
    const loaves = order(2, 'country-loaf', 5, 9);
    floor.state = ordered(floor.state, rye, loaves);
    floor.ok({ type: 'setPin', pin: { kind: 'first', orderId: rye.id } });
    const { pins } = floor.state;
    const made = batches(floor, rye, loaves);
    floor.state = { ...ordered(floor.state, rye, loaves), pins };
    const day = built(floor, { proposed: made });
    expect(day.day.problem.goals.map(({ key, isFirst }) => [key.split('|').slice(1).join('|'), isFirst])).toEqual([
      ['rye#1||0', true],
      ['rye#1||1', true],
      ['country#1||', false],
    ]);
    expect(day.day.orders.short).toEqual([]);
  });
});

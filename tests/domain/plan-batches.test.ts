import { describe, expect, test } from 'vitest';
import { withValueAt } from '../../display/desk/inwards.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { newestFormula } from '../../shared/floor/contents.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { given, Situation } from './support/given.ts';
import { bringInCommand, demoFile, harbourFile, OPENING_MS, SERVICE_DATE } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

type Plan = CommandOf<'planBatches'>;

const MINUTE_MS = 60_000;
const LATER_MS = OPENING_MS + 60 * MINUTE_MS;

/** Country loaves of 900 g, as in the demo bakehouse. */
function loaves(pieces: number, more: Partial<Plan['batches'][number]> = {}): Plan['batches'][number] {
  const grams = 900 * pieces;
  return { formulaId: 'country', plannedStartMs: LATER_MS, grams, cuts: [{ productId: 'country-loaf', pieces, grams }], ...more };
}

function planned(batches: readonly Plan['batches'][number][], serviceDate = SERVICE_DATE): Plan {
  return { type: 'planBatches', serviceDate, batches: [...batches] };
}

function demoFloor(): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(demoFile(), floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor;
}

describe('R8 more batches are planned by the book in force', () => {
  test('for a day that is open: the next number of its letters, the newest versions', () => {
    const floor = Floor.harbour();
    const tags = Object.values(floor.state.workpieces).flatMap(({ tag, formulaId }) => (formulaId === 'country' ? [tag] : []));
    expect(tags).toEqual(['C1', 'C2', 'C3']);
    new Situation(floor)
      .when(() => planned([loaves(10)]))
      .thenEvents([
        {
          type: 'workpiecePlanned',
          workpieceId: expect.any(String) as string,
          kind: 'batch',
          tag: 'C4',
          serviceDate: SERVICE_DATE,
          formulaId: 'country',
          formulaVersion: 1,
          plannedStartMs: LATER_MS,
          grams: 9000,
          cuts: [{ productId: 'country-loaf', productVersion: 1, pieces: 10, grams: 9000 }],
        },
      ]);
  });

  test('in the order of their starts, whatever order they are said in', () => {
    const floor = given()
      .when(() => planned([loaves(11, { plannedStartMs: LATER_MS + MINUTE_MS }), loaves(10)]))
      .thenTypes(['workpiecePlanned', 'workpiecePlanned']);
    expect([floor.piece('C4').pieces, floor.piece('C5').pieces]).toEqual([10, 11]);
  });

  test('a day that is not open yet is opened with them, and one that is over takes none', () => {
    const floor = given()
      .when(() => planned([loaves(10)], '2026-03-08'))
      .thenTypes(['dayOpened', 'workpiecePlanned']);
    expect(floor.state.openDates).toEqual([SERVICE_DATE, '2026-03-08']);
    given((at) => at.ok({ type: 'closeDay', serviceDate: SERVICE_DATE }))
      .when(() => planned([loaves(10)]))
      .thenRefusal({ code: 'dayNotOpen', serviceDate: SERVICE_DATE });
  });

  test('with the preps that go into them, ready for the step at which they join', () => {
    const floor = demoFloor();
    const before = Object.keys(floor.state.workpieces).length;
    const grams = 30 * 85;
    floor.ok(
      planned([{ formulaId: 'milk-buns', plannedStartMs: LATER_MS, grams, cuts: [{ productId: 'custard-bun', pieces: 30, grams }] }]),
    );
    const added = Object.values(floor.state.workpieces).slice(before);
    expect(added.map(({ kind, formulaId }) => [kind, formulaId])).toEqual([
      ['batch', 'milk-buns'],
      ['prep', 'custard'],
    ]);
    // 25 g on each of 30 buns, as the demo file has it.
    expect(added[1]?.grams).toBe(750);
    expect(added[1]?.serves?.workpieceId).toBe(added[0]?.id);
  });

  test('a pot that stands is fed for it', () => {
    const floor = demoFloor();
    const pot = Object.values(floor.state.workpieces).find(({ formulaId }) => formulaId === 'levain');
    assert(pot !== undefined, 'the demo house has a pot');
    new Situation(floor)
      .when(() => planned([{ formulaId: 'levain', plannedStartMs: LATER_MS, grams: 3000, cuts: [] }]))
      .thenEvents([{ type: 'feedPlanned', workpieceId: pot.id, feedMs: LATER_MS, grams: 3000, atMs: floor.nowMs }]);
  });
});

describe('R9 nothing is planned that cannot be made', () => {
  test('of a formula that is not there, or out of the way', () => {
    given()
      .when(() => planned([loaves(10, { formulaId: 'ghost' })]))
      .thenRefusal({ code: 'documentMissing', kind: 'formula', id: 'ghost' });
    given((floor) => floor.ok({ type: 'archiveFormula', formulaId: 'country', isArchived: true }))
      .when(() => planned([loaves(10)]))
      .thenRefusal({ code: 'documentMissing', kind: 'formula', id: 'country' });
  });

  test('of a formula whose ingredient is in no list', () => {
    const floor = Floor.harbour();
    const [first] = floor.state.ingredients?.document ?? [];
    assert(first !== undefined, 'the house has ingredients');
    const others = floor.state.ingredients?.document.filter(({ id }) => id !== 'salt') ?? [];
    floor.record({ type: 'ingredientsAdopted', version: 2, ingredients: [...others] });
    new Situation(floor).when(() => planned([loaves(10)])).thenRefusal({ code: 'documentMissing', kind: 'ingredient', id: 'salt' });
  });

  test('for a product that is not there, or of another formula', () => {
    for (const productId of ['ghost', 'rye-tin']) {
      given()
        .when(() => planned([loaves(10, { cuts: [{ productId, pieces: 10, grams: 9000 }] })]))
        .thenRefusal({ code: 'productUnknown', productId });
    }
  });

  test('cuts that need more than there is', () => {
    given()
      .when(() => planned([loaves(10, { grams: 8900 })]))
      .thenRefusal({ code: 'cutsTooHeavy', neededG: 9000, hasG: 8900 });
  });

  test('more than its mixer takes, or less than it can mix; just as much as it takes is planned', () => {
    const mixer = harbourFile().kitchen.mixers.find(({ id }) => id === 'spiral');
    assert(mixer !== undefined, 'the demo house has a spiral');
    const { leastG, mostG } = mixer;
    const outside = { code: 'outsideMixer' as const, stepId: 'fill-bowl', mixerId: 'spiral', leastG, mostG };
    const heavy = (grams: number): Plan => planned([loaves(1, { grams })]);
    given()
      .when(() => heavy(mostG + 1))
      .thenRefusal(outside);
    given()
      .when(() => heavy(mostG))
      .thenTypes(['workpiecePlanned']);
    given()
      .when(() => heavy(leastG - 1))
      .thenRefusal(outside);
    given()
      .when(() => heavy(leastG))
      .thenTypes(['workpiecePlanned']);
  });

  test('nothing at all, a dough without cuts, several cuts without a divide', () => {
    const refused = (floor: Floor, plan: Plan, path: string, code: string): void =>
      expect(floor.give(plan).decision).toMatchObject({
        ok: false,
        fault: { code: 'documentFaulty', faults: [{ path, facts: { code } }] },
      });
    refused(Floor.harbour(), planned([loaves(10), loaves(10, { cuts: [] })]), 'batches[1].cuts', 'cutsMissing');
    const two = loaves(10, {
      cuts: [
        { productId: 'country-loaf', pieces: 5, grams: 4500 },
        { productId: 'country-loaf', pieces: 5, grams: 4500 },
      ],
    });
    const floor = Floor.harbour();
    const country = newestFormula(floor.state)('country');
    assert(country !== null, 'the demo house has a country dough');
    const last = country.method.length - 1;
    floor.ok({ type: 'adoptFormula', fromVersion: 1, formula: withValueAt(country, ['method', last, 'verb'], 'scale') });
    refused(floor, planned([two]), 'batches[0].cuts', 'divideNotLast');
    const pot = { formulaId: 'levain', plannedStartMs: LATER_MS, grams: 0, cuts: [] };
    refused(demoFloor(), planned([pot]), 'batches[0].grams', 'weightNeeded');
  });
});

import { describe, expect, test } from 'vitest';
import { withValueAt } from '../../display/desk/inwards.ts';
import type { FaultFacts } from '../../shared/documents/fault-facts.ts';
import { newestFormula } from '../../shared/floor/contents.ts';
import type { Refusal } from '../../shared/floor/refusals.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { given, Situation, type CommandOn } from './support/given.ts';
import { bringInCommand, demoFile } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { FILLING, formulaOf } from './support/small-book.ts';

/** The demo house, whose doughs share a pot and whose buns are filled. */
function demo(arrange: (floor: Floor) => void = () => {}): Situation {
  const floor = new Floor();
  floor.ok(bringInCommand(demoFile(), floor.nowMs), { deviceId: SERVER_DEVICE });
  arrange(floor);
  return new Situation(floor);
}

function formulaIn(floor: Floor, id: string): ReturnType<typeof formulaOf> {
  const formula = newestFormula(floor.state)(id);
  assert(formula !== null, `there is no formula ${id}`);
  return formula;
}

function productIn(floor: Floor, id: string) {
  const product = floor.state.products[`${id}@${floor.state.productVersions[id] ?? 0}`];
  assert(product !== undefined, `there is no product ${id}`);
  return product;
}

/** A formula of the house with something written otherwise. */
const written =
  (id: string, at: readonly (string | number)[], value: unknown, fromVersion = 1): CommandOn =>
  (floor) => ({ type: 'adoptFormula', fromVersion, formula: withValueAt(formulaIn(floor, id), at, value) });

/** The one fault of a refusal. */
function faulty(path: string, facts: FaultFacts): Extract<Refusal, { code: 'documentFaulty' }> {
  return { code: 'documentFaulty', faults: [{ path, message: expect.any(String) as string, facts }] };
}

const SOAK = formulaOf({
  ...FILLING,
  id: 'soak',
  name: 'Soak',
  letters: 'Sk',
  parts: [{ name: 'Soak', items: [{ item: 'water', g: 100 }] }],
});

describe('R4 a formula is kept as its next version, with the time', () => {
  test('one that is new', () => {
    given()
      .when(() => ({ type: 'adoptFormula', fromVersion: 0, formula: SOAK }))
      .thenEvents([{ type: 'formulaAdopted', version: 1, formula: SOAK, atMs: expect.any(Number) as number }]);
  });

  test('one that is there; the time is that of the tap', () => {
    const floor = given()
      .when(written('country', ['name'], 'Country, wetter'), { tapMs: 1_000 })
      .thenTypes(['formulaAdopted']);
    expect(formulaIn(floor, 'country').name).toBe('Country, wetter');
    expect(floor.state.formulaHistory['country']).toEqual([
      { version: 1, sequence: expect.any(Number) as number, atMs: floor.nowMs },
      { version: 2, sequence: floor.state.sequence, atMs: 1_000 },
    ]);
  });

  test('a batch that runs keeps the one that it began with; the next has the new one', () => {
    const floor = Floor.harbour();
    floor.bringTo('C1', 'first-speed');
    const before = wayOf(floor.state, floor.piece('C1'));
    const { method } = formulaIn(floor, 'country');
    const slow = method.map((step) => (step.id === 'first-speed' ? { ...step, minutes: { target: 9 } } : step));
    floor.ok({ type: 'adoptFormula', fromVersion: 1, formula: { ...formulaIn(floor, 'country'), method: slow } });
    expect(wayOf(floor.state, floor.piece('C1'))).toEqual(before);
    const cut = { productId: 'country-loaf', pieces: 10, grams: 9000 };
    const plan = { formulaId: 'country', plannedStartMs: floor.nowMs, grams: 9000, cuts: [cut] };
    floor.ok({ type: 'planBatches', serviceDate: '2026-03-07', batches: [plan] });
    const next = Object.values(floor.state.workpieces).findLast(({ formulaId }) => formulaId === 'country');
    assert(next !== undefined, 'a batch was planned');
    expect([floor.piece('C1').formulaVersion, next.formulaVersion]).toEqual([1, 2]);
    expect(wayOf(floor.state, next).find((step) => step.id === 'first-speed')?.minutes).toEqual({ target: 9 });
  });

  test('not from a version that is behind or that never was', () => {
    given()
      .when(written('country', ['name'], 'Country, late', 0))
      .thenRefusal({ code: 'documentChanged', version: 1 });
    given()
      .when(() => ({ type: 'adoptFormula', fromVersion: 1, formula: SOAK }))
      .thenRefusal({ code: 'documentChanged', version: 0 });
  });

  test('not where nothing changes, in whatever order its keys are', () => {
    given()
      .when((floor) => ({ type: 'adoptFormula', fromVersion: 1, formula: formulaIn(floor, 'country') }))
      .thenRefusal({ code: 'nothingChanges' });
  });

  test('not with faults, and no more than 50 of them are told', () => {
    const items = Array.from({ length: 60 }, () => ({ item: 'sand', g: 10 }));
    const parts = [{ name: 'Sand', role: 'preferment' as const, items }];
    const answer = new Situation(Floor.harbour()).floor.give({ type: 'adoptFormula', fromVersion: 0, formula: { ...SOAK, parts } });
    assert(!answer.decision.ok && answer.decision.fault.code === 'documentFaulty', 'it is refused for its faults');
    expect(answer.decision.fault.faults).toHaveLength(50);
    expect(answer.decision.fault.faults[0]?.facts).toEqual({ code: 'ingredientUnknown', id: 'sand' });
  });
});

describe('R5 no save breaks what rests on the formula', () => {
  test('a pot that becomes a dough', () => {
    demo()
      .when((floor) => {
        const { seedG: _none, ...levain } = formulaIn(floor, 'levain');
        const unseeded = levain.parts.map((part) => ({ ...part, items: part.items.filter((line) => !('seed' in line)) }));
        return { type: 'adoptFormula', fromVersion: 1, formula: { ...levain, kind: 'dough', parts: unseeded } };
      })
      .thenRefusal(faulty('formula.kind', { code: 'kindNeeded', kind: 'dough', by: ['country', 'rye'] }));
  });

  test('a filling that becomes a ferment: side preps are preps', () => {
    demo()
      .when((floor) => {
        const { keeping: _kept, ...formula } = formulaIn(floor, 'custard');
        return { type: 'adoptFormula', fromVersion: 1, formula: { ...formula, kind: 'ferment' } };
      })
      .thenRefusal(faulty('formula.kind', { code: 'kindNeeded', kind: 'ferment', by: ['custard-bun'] }));
  });

  test('a step by the name of one of its products’ steps', () => {
    demo()
      .when((floor) => {
        const formula = formulaIn(floor, 'milk-buns');
        const method = [{ ...firstOf(formula.method), id: 'fill' }, ...formula.method];
        return { type: 'adoptFormula', fromVersion: 1, formula: { ...formula, method } };
      })
      .thenRefusal(faulty('formula.method[0].id', { code: 'stepOfProduct', id: 'fill', product: 'custard-bun' }));
  });

  test('a step that a product’s prep waits for', () => {
    demo()
      .when((floor) => {
        const formula = formulaIn(floor, 'milk-buns');
        return {
          type: 'adoptFormula',
          fromVersion: 1,
          formula: { ...formula, method: formula.method.filter(({ id }) => id !== 'divide') },
        };
      })
      .thenRefusal(faulty('formula.method', { code: 'stepNeeded', id: 'divide', by: ['custard-bun'] }));
  });

  test('a line that says how much a product takes', () => {
    demo((floor) => {
      const loaf = productIn(floor, 'country-loaf');
      const way = loaf.way.map((step, index) => (index === 0 ? { ...step, additions: [{ formula: 'levain', heldBack: false }] } : step));
      floor.ok({ type: 'adoptProduct', fromVersion: 1, product: { ...loaf, way } });
    })
      .when((floor) => {
        const formula = formulaIn(floor, 'country');
        const parts = formula.parts.map((part) => ({ ...part, items: part.items.filter((line) => !('formula' in line)) }));
        const method = formula.method.map((step) => ({
          ...step,
          additions: step.additions.filter((addition) => addition.formula === undefined),
        }));
        return { type: 'adoptFormula', fromVersion: 1, formula: { ...formula, parts, method } };
      })
      .thenRefusal(faulty('formula.parts', { code: 'lineNeeded', id: 'levain', by: ['country-loaf'] }));
  });
});

describe('R6 products and ingredients are kept by the same rules', () => {
  test('a product, new and changed', () => {
    const floor = given()
      .when((at) => ({ type: 'adoptProduct', fromVersion: 0, product: { ...productIn(at, 'country-loaf'), id: 'big-loaf', pieceG: 1800 } }))
      .thenTypes(['productAdopted']);
    floor.ok({ type: 'adoptProduct', fromVersion: 1, product: { ...productIn(floor, 'big-loaf'), bakeLossPct: 11 } });
    expect(floor.state.productHistory['big-loaf']?.map(({ version, atMs }) => [version, atMs])).toEqual([
      [1, floor.nowMs],
      [2, floor.nowMs],
    ]);
  });

  test('not behind, not the same, not of a formula that is out of the way', () => {
    given()
      .when((floor) => ({ type: 'adoptProduct', fromVersion: 2, product: productIn(floor, 'country-loaf') }))
      .thenRefusal({ code: 'documentChanged', version: 1 });
    given()
      .when((floor) => ({ type: 'adoptProduct', fromVersion: 1, product: productIn(floor, 'country-loaf') }))
      .thenRefusal({ code: 'nothingChanges' });
    given((floor) => floor.ok({ type: 'archiveFormula', formulaId: 'country', isArchived: true }))
      .when((floor) => ({ type: 'adoptProduct', fromVersion: 1, product: { ...productIn(floor, 'country-loaf'), pieceG: 800 } }))
      .thenRefusal(faulty('product.formula', { code: 'formulaUnknown', id: 'country' }));
  });

  test('an ingredient goes to the end of the list, or takes the place of its own', () => {
    const spelt = { id: 'spelt', name: 'Spelt', kind: 'flour' as const, allergens: ['wheat' as const] };
    const floor = given()
      .when(() => ({ type: 'adoptIngredient', ingredient: spelt }))
      .thenEvents([{ type: 'ingredientAdopted', version: 2, ingredient: spelt }]);
    floor.ok({ type: 'adoptIngredient', ingredient: { ...spelt, name: 'Spelt, sifted' } });
    expect(floor.state.ingredients?.version).toBe(3);
    expect(floor.state.ingredients?.document.at(-1)?.name).toBe('Spelt, sifted');
    expect(floor.give({ type: 'adoptIngredient', ingredient: { ...spelt, name: 'Spelt, sifted' } }).decision).toEqual({
      ok: false,
      fault: { code: 'nothingChanges' },
    });
  });

  test('an ingredient that doughs need as their flour stays one', () => {
    const answer = demo().floor.give({
      type: 'adoptIngredient',
      ingredient: { id: 'wheat-flour', name: 'Wheat', kind: 'seed', allergens: [] },
    });
    expect(answer.decision).toMatchObject({
      ok: false,
      fault: { code: 'documentFaulty', faults: [{ path: 'ingredient.kind', facts: { code: 'flourNeeded' } }] },
    });
  });
});

describe('R7 a formula is put out of the way and taken back', () => {
  test('its letters are free for another, and it comes back only while they are', () => {
    const floor = given()
      .when(() => ({ type: 'archiveFormula', formulaId: 'country', isArchived: true }))
      .thenEvents([{ type: 'formulaArchived', formulaId: 'country', isArchived: true, atMs: expect.any(Number) as number }]);
    expect(floor.state.archivedFormulas).toEqual(['country']);
    floor.ok({ type: 'adoptFormula', fromVersion: 0, formula: { ...SOAK, letters: 'C' } });
    new Situation(floor)
      .when(() => ({ type: 'archiveFormula', formulaId: 'country', isArchived: false }))
      .thenRefusal(faulty('formula.letters', { code: 'lettersTaken', letters: 'C', by: 'soak' }));
    floor.ok({ type: 'adoptFormula', fromVersion: 1, formula: SOAK });
    floor.ok({ type: 'archiveFormula', formulaId: 'country', isArchived: false });
    expect(floor.state.archivedFormulas).toEqual([]);
  });

  test('not while one that stays takes from it, and what runs goes on', () => {
    demo()
      .when(() => ({ type: 'archiveFormula', formulaId: 'levain', isArchived: true }))
      .thenRefusal(
        faulty('formula', { code: 'stillNeeded', name: formulaIn(demo().floor, 'levain').name, by: namesOf(['country', 'rye']) }),
      );
    const floor = given((at) => at.bringTo('C1', 'first-speed'))
      .when(() => ({ type: 'archiveFormula', formulaId: 'country', isArchived: true }))
      .thenTypes(['formulaArchived']);
    floor.finishWhenDue('C1');
    expect(floor.piece('C1').finishedMs).toBeNull();
  });

  test('not twice, and not what is not there', () => {
    given()
      .when(() => ({ type: 'archiveFormula', formulaId: 'country', isArchived: false }))
      .thenRefusal({ code: 'nothingChanges' });
    given()
      .when(() => ({ type: 'archiveFormula', formulaId: 'ghost', isArchived: true }))
      .thenRefusal({ code: 'documentMissing', kind: 'formula', id: 'ghost' });
  });

  test('the kitchen may lose what it alone needed; it comes back only where that is there again', () => {
    const floor = given((at) => at.only()).floor;
    const { kitchen } = floor.state;
    assert(kitchen !== null, 'the house has a kitchen');
    for (const id of Object.keys(floor.state.formulaVersions)) floor.ok({ type: 'archiveFormula', formulaId: id, isArchived: true });
    const bare = { ...kitchen.document, ovens: [] };
    floor.ok({ type: 'adoptKitchen', fromVersion: kitchen.version, kitchen: bare });
    const back = floor.give({ type: 'archiveFormula', formulaId: 'country', isArchived: false });
    expect(back.decision).toMatchObject({ ok: false, fault: { code: 'documentFaulty' } });
  });

  test('a bakehouse file that has it brings it back', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'archiveFormula', formulaId: 'country', isArchived: true });
    floor.ok(bringInCommand(demoFile(), floor.nowMs, '2026-03-08'), { deviceId: SERVER_DEVICE });
    expect(floor.state.archivedFormulas).toEqual([]);
  });
});

function namesOf(ids: readonly string[]): string[] {
  return ids.map((id) => demoFile().formulas.find((formula) => formula.id === id)?.name ?? id);
}

function firstOf<Item>([first]: readonly Item[]): Item {
  assert(first !== undefined, 'the list is not empty');
  return first;
}

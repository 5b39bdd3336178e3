import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bookFileOf, broughtInBy, readBookFile } from '../../shared/book/book-file.ts';
import type { BookFile } from '../../shared/book/book-api.ts';
import { bookIndexOf } from '../../shared/book/book-index.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import { evolve, evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { idOf, PHONE } from './support/ids.ts';
import { days, liveDay } from './support/live-day.ts';
import { bookInFaults } from '../../shared/floor/book-in-faults.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { assert } from '../../shared/result.ts';
import { Digits } from './support/digits.ts';
import { Floor } from './support/floor.ts';
import { Situation } from './support/given.ts';
import { demoFile } from './support/harbour.ts';
import { DOUGH, FILLING, formulaOf, LOAF, POT, QUAY_INGREDIENTS, QUAY_KITCHEN } from './support/small-book.ts';

const QUAY: BookFile = { format: 1, ingredients: QUAY_INGREDIENTS, formulas: [POT, FILLING, DOUGH], products: [LOAF], archived: [] };

/** The house on the quay before anything is in its book. */
function quay(): Floor {
  const floor = new Floor();
  floor.record({ type: 'houseAdopted', version: 1, house: demoFile().house });
  floor.record({ type: 'kitchenAdopted', version: 1, kitchen: QUAY_KITCHEN });
  return floor;
}

function bringIn({ ingredients, formulas, products, archived }: BookFile): CommandOf<'bringInBook'> {
  return { type: 'bringInBook', ingredients, formulas, products, archived };
}

function withFormula(book: BookFile, changed: Formula): BookFile {
  return { ...book, formulas: book.formulas.map((formula) => (formula.id === changed.id ? changed : formula)) };
}

describe('R11 a book is taken in whole or not at all', () => {
  test('what is new is the first version, what differs the next, what is the same stays', () => {
    const floor = quay();
    new Situation(floor)
      .when(() => bringIn(QUAY))
      .thenTypes(['ingredientsAdopted', 'formulaAdopted', 'formulaAdopted', 'formulaAdopted', 'productAdopted']);
    new Situation(floor).when(() => bringIn(QUAY)).thenRefusal({ code: 'nothingChanges' });
    const changed = withFormula(QUAY, { ...DOUGH, name: 'Dough, wetter' });
    expect(broughtInBy(floor.state, changed)).toEqual({
      ingredients: { new: 0, changed: 0, unchanged: 5 },
      formulas: { new: 0, changed: 1, unchanged: 2 },
      products: { new: 0, changed: 0, unchanged: 1 },
    });
    new Situation(floor).when(() => bringIn(changed)).thenTypes(['formulaAdopted']);
    expect(floor.state.formulaVersions).toEqual({ pot: 1, filling: 1, dough: 2 });
  });

  test('one fault anywhere and nothing is', () => {
    const floor = quay();
    const bad = withFormula(QUAY, { ...DOUGH, letters: 'P' });
    expect(bookInFaults(floor.state, bringIn(bad)).map(({ path }) => path)).toEqual(['formulas[0].letters', 'formulas[2].letters']);
    const before = floor.state;
    expect(floor.give(bringIn(bad)).decision).toMatchObject({ ok: false, fault: { code: 'documentFaulty' } });
    expect(floor.state).toBe(before);
  });

  test('what the house has beside it counts: its letters, what it takes, its ingredients', () => {
    const floor = quay();
    floor.ok(bringIn(QUAY));
    const beside = {
      ...FILLING,
      id: 'jam',
      letters: 'J',
      parts: [{ name: 'Jam', role: 'preferment' as const, items: [{ formula: 'filling', g: 5 }] }],
    };
    const alone: BookFile = { format: 1, ingredients: [], formulas: [beside], products: [], archived: [] };
    expect(bookInFaults(floor.state, bringIn(alone))).toEqual([]);
    const clash = { ...alone, formulas: [{ ...beside, letters: 'D' }] };
    expect(bookInFaults(floor.state, bringIn(clash)).map(({ path, facts }) => [path, facts])).toEqual([
      ['formulas[0].letters', { code: 'lettersTaken', letters: 'D', by: 'dough' }],
    ]);
  });

  test('what it would break in the house is told where it stands in the file', () => {
    const floor = quay();
    floor.ok(bringIn(QUAY));
    const { seedG: _none, ...pot } = POT;
    const asDough = formulaOf({ ...pot, kind: 'dough', parts: [{ name: 'Pot', items: [{ item: 'flour', g: 500 }] }] });
    const ofPot = { ...bringIn(QUAY), formulas: [asDough], products: [] };
    expect(bookInFaults(floor.state, ofPot).map(({ path, facts }) => [path, facts])).toEqual([
      ['formulas[0].kind', { code: 'kindNeeded', kind: 'dough', by: ['dough'] }],
    ]);
    const noFlour = {
      ...bringIn(QUAY),
      ingredients: [{ id: 'flour', name: 'Flour', kind: 'seed' as const, allergens: [] }],
      formulas: [],
      products: [],
    };
    expect(bookInFaults(floor.state, noFlour).map(({ path, facts }) => [path, facts])).toEqual([
      ['ingredients[0].kind', { code: 'flourNeeded', by: ['dough'] }],
    ]);
  });

  test('out of the way as the file says, as long as nobody takes from it', () => {
    const floor = quay();
    floor.ok(bringIn(QUAY));
    const away = { ...QUAY, archived: ['dough'] };
    new Situation(floor).when(() => bringIn(away)).thenTypes(['formulaArchived']);
    expect(floor.state.archivedFormulas).toEqual(['dough']);
    new Situation(floor).when(() => bringIn(QUAY)).thenTypes(['formulaArchived']);
    expect(floor.state.archivedFormulas).toEqual([]);
    const potAway = { ...bringIn({ ...QUAY, archived: ['pot'] }), formulas: [POT], products: [] };
    expect(bookInFaults(floor.state, potAway).map(({ path, facts }) => [path, facts])).toEqual([
      ['formulas[0]', { code: 'stillNeeded', name: 'Pot', by: ['Dough'] }],
    ]);
    expect(bookInFaults(floor.state, bringIn({ ...QUAY, archived: ['ghost'] })).map(({ path }) => path)).toEqual(['archived[0]']);
  });

  test('ids twice are told, before anything else', () => {
    const twice = { ...QUAY, formulas: [...QUAY.formulas, POT], ingredients: [...QUAY_INGREDIENTS, ...QUAY_INGREDIENTS.slice(0, 1)] };
    expect(bookInFaults(quay().state, bringIn(twice)).map(({ path }) => path)).toEqual(['ingredients[5].id', 'formulas[3].id']);
  });

  test.each([
    ['no book at all', null, ['(the whole file)']],
    ['another format', { ...QUAY, format: 2 }, ['format']],
    ['a field that nobody knows', { ...QUAY, colour: 'grey' }, ['(the whole file)']],
    ['a formula without steps', withFormula(QUAY, { ...DOUGH, method: [] }), ['formulas[2].method']],
  ])('%s is told with its path', (_name, value, paths) => {
    const read = readBookFile(value);
    expect(read.ok ? [] : read.fault.map(({ path }) => path)).toEqual(paths);
  });
});

describe('R15 events about the book come to the same together as one by one', () => {
  test('on any day', () => {
    fc.assert(
      fc.property(days, (day) => {
        const { recorded } = liveDay(day);
        expect(evolveAll(EMPTY_STATE, recorded)).toEqual(recorded.reduce(evolve, EMPTY_STATE));
      }),
      { seed: 20260307, numRuns: 20 },
    );
  });

  test('versions of one formula, out of the way and back between them', () => {
    const floor = quay();
    floor.ok(bringIn(QUAY));
    const { sequence } = floor.state;
    const from = floor.state;
    const run = [
      { type: 'formulaAdopted' as const, version: 2, formula: { ...DOUGH, note: 'second' }, atMs: 2 },
      { type: 'formulaArchived' as const, formulaId: 'dough', isArchived: true, atMs: 3 },
      { type: 'formulaArchived' as const, formulaId: 'pot', isArchived: true, atMs: 3 },
      { type: 'formulaAdopted' as const, version: 3, formula: { ...DOUGH, note: 'third' } },
      { type: 'formulaArchived' as const, formulaId: 'dough', isArchived: false, atMs: 4 },
      { type: 'productAdopted' as const, version: 2, product: { ...LOAF, bakeLossPct: 9 }, atMs: 5 },
    ].map((event, ordinal) => ({ sequence: sequence + 1 + ordinal, commandId: idOf(7), ordinal, deviceId: PHONE, event }));
    const together = evolveAll(from, run);
    expect(together).toEqual(run.reduce(evolve, from));
    expect(together.formulaHistory['dough']).toEqual([
      { version: 1, sequence: expect.any(Number) as number, atMs: floor.nowMs },
      { version: 2, sequence: sequence + 1, atMs: 2 },
      { version: 3, sequence: sequence + 4, atMs: null },
    ]);
    expect([together.archivedFormulas, together.sequence]).toEqual([['pot'], sequence + 6]);
    expect(from.formulaVersions['dough']).toBe(1);
  });
});

describe('R12 what is written out comes in again as it was', () => {
  test('the demo house’s book, into the same kitchen', () => {
    const { house, kitchen, ingredients, formulas, products } = demoFile();
    const floor = new Floor();
    floor.record({ type: 'houseAdopted', version: 1, house });
    floor.record({ type: 'kitchenAdopted', version: 1, kitchen });
    floor.ok(bringIn({ format: 1, ingredients, formulas, products, archived: [] }));
    expectRoundTrip(floor);
  });

  test('any book that the house takes in', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(2 ** 40), { minLength: 1, maxLength: 25 }), (numbers) => {
        const floor = quay();
        floor.ok(bringIn(randomBook(numbers)));
        expectRoundTrip(floor);
      }),
      { seed: 20260307, numRuns: 60 },
    );
  });
});

/** Out, through JSON, into a house that has the kitchen alone: the same book, in the same order. */
function expectRoundTrip(floor: Floor): void {
  const read = readBookFile(JSON.parse(JSON.stringify(bookFileOf(floor.state))));
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault));
  const other = new Floor();
  const { house, kitchen } = floor.state;
  assert(house !== null && kitchen !== null, 'the house has both');
  other.record({ type: 'houseAdopted', version: 1, house: house.document });
  other.record({ type: 'kitchenAdopted', version: 1, kitchen: kitchen.document });
  other.ok(bringIn(read.value));
  expect(bookFileOf(other.state)).toEqual(bookFileOf(floor.state));
  const { entries } = bookIndexOf(other.state);
  expect(entries.map(({ id, hydrationPct, isArchived }) => [id, hydrationPct, isArchived])).toEqual(
    bookIndexOf(floor.state).entries.map(({ id, hydrationPct, isArchived }) => [id, hydrationPct, isArchived]),
  );
}

/** A book of preps that take one another, pots and doughs, one for each number; some out of the way. */
function randomBook(numbers: readonly number[]): BookFile {
  const formulas: Formula[] = [];
  const archived: string[] = [];
  numbers.forEach((number, index) => {
    const digits = new Digits(number);
    const id = `f-${index}`;
    const letters = `${String.fromCharCode(65 + (index % 26))}${index < 26 ? '' : 'x'}`;
    const kind = digits.amongOr(['dough', 'prep', 'ferment'] as const, 'prep');
    const takeable = formulas.filter((other) => other.kind !== 'dough' && !archived.includes(other.id));
    const taken = digits.onceIn(2) ? digits.among(takeable) : undefined;
    formulas.push(
      formulaOf({
        ...FILLING,
        id,
        name: `Formula ${index}`,
        letters,
        kind,
        ...(digits.onceIn(3) ? { handlingLossPct: digits.below(20) } : {}),
        ...(digits.onceIn(3) ? { note: `note ${digits.below(90)}` } : {}),
        parts: [
          {
            name: 'All',
            items: [
              { item: 'flour', g: 100 + digits.below(900) },
              { item: 'water', g: digits.below(800) },
              ...(taken === undefined ? [] : [{ formula: taken.id, g: 1 + digits.below(300) }]),
            ],
          },
        ],
      }),
    );
    if (kind === 'dough' && digits.onceIn(2)) archived.push(id);
  });
  const doughs = formulas.filter((formula) => formula.kind === 'dough');
  const products = doughs.map((formula) => ({
    ...LOAF,
    id: `p-${formula.id}`,
    formula: formula.id,
    sidePreps: [],
    way: LOAF.way.map((step) => ({ ...step, additions: [] })),
  }));
  return { format: 1, ingredients: QUAY_INGREDIENTS, formulas, products, archived };
}

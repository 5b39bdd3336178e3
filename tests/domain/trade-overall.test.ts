import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calcPartsOf, overallOf, type Overall } from '../../shared/book/overall.ts';
import { sharesOf, type FormulaOf } from '../../shared/documents/amounts.ts';
import { formulaSchema, type Formula, type Ingredient, type Part, type PartItem } from '../../shared/documents/formula.ts';
import { assert } from '../../shared/result.ts';
import { demoFile } from './support/harbour.ts';

const STEP = { id: 'weigh', verb: 'weigh', kind: 'hands', minutes: { target: 6 } };
const INGREDIENTS: readonly Ingredient[] = [
  { id: 'flour', name: 'Flour', kind: 'flour', allergens: [] },
  { id: 'rye', name: 'Rye', kind: 'flour', allergens: [] },
  { id: 'water', name: 'Water', kind: 'water', allergens: [] },
  { id: 'salt', name: 'Salt', kind: 'salt', allergens: [] },
  { id: 'milk', name: 'Milk', kind: 'dairy', waterPct: 88, allergens: [] },
];

function formula(
  id: string,
  kind: Formula['kind'],
  ...parts: readonly { name: string; role?: string; items: readonly PartItem[] }[]
): Formula {
  return formulaSchema.parse({ id, name: id, letters: 'X', kind, parts, method: [STEP] });
}

function booksOf(...formulas: readonly Formula[]): FormulaOf {
  return (id) => formulas.find((each) => each.id === id) ?? null;
}

function overall(of: Formula, formulaOf: FormulaOf, ingredients: readonly Ingredient[] = INGREDIENTS): Overall {
  const result = overallOf(of, formulaOf, ingredients);
  assert(result.ok, JSON.stringify(result));
  return result.value;
}

function gramsOf({ byIngredient }: Overall): Readonly<Record<string, number>> {
  return Object.fromEntries(byIngredient.map(({ ingredientId, g }) => [ingredientId, g]));
}

describe('K11 the overall formula has everything that a formula takes of others in it', () => {
  const file = demoFile();
  const formulaOf = booksOf(...file.formulas);
  const named = (id: string): Overall => {
    const found = formulaOf(id);
    assert(found !== null, id);
    return overall(found, formulaOf, file.ingredients);
  };

  test('a pot’s seed is what the pot is made of: the demo levain', () => {
    // By hand: 1500 g of 600 flour to 750 water, the seed included; a seed of mass m and hydration h holds m ÷ (1 + h) flour.
    const levain = named('levain');
    expect(levain.flourG).toBeCloseTo(600 + 150 / 2.25, 9);
    expect(levain.waterG).toBeCloseTo(750 + (150 * 1.25) / 2.25, 9);
    expect(levain).toMatchObject({ doughG: 1500 });
    expect(levain.hydrationPct).toBeCloseTo(125, 9);
  });

  test('a dough with that levain: the demo country loaf', () => {
    // By hand: 4700 g of flour and 2895 g of water, and 1500 g of levain with 666.67 and 833.33 in it.
    const country = named('country');
    expect(country.doughG).toBe(9200);
    expect(country.flourG).toBeCloseTo(5366.667, 3);
    expect(country.waterG).toBeCloseTo(3728.333, 3);
    expect(country.hydrationPct).toBeCloseTo(69.47, 2);
    expect(country.saltPct).toBeCloseTo(1.957, 3);
    expect(country.prefermentedFlourPct).toBeCloseTo(12.42, 2);
    expect(country.parts.map(({ name }) => name)).toEqual(['Liquid levain', 'Dough']);
  });

  test('a filling has weights and no percentages', () => {
    const custard = named('custard');
    expect(custard).toMatchObject({ doughG: 750, flourG: 0, hydrationPct: null });
    expect(custard.byIngredient.every(({ pct }) => pct === null)).toBe(true);
  });

  test('every formula of the demo house, as its shares are reckoned elsewhere', () => {
    for (const each of file.formulas) {
      const found = overall(each, formulaOf, file.ingredients);
      const shares = sharesOf(each, formulaOf);
      expect(found.byIngredient.map(({ ingredientId }) => ingredientId).sort()).toEqual([...shares.keys()].sort());
      for (const { ingredientId, g, pct } of found.byIngredient) {
        expect(g).toBeCloseTo((shares.get(ingredientId) ?? 0) * found.doughG, 6);
        if (found.flourG > 0) expect(pct).toBeCloseTo((g / found.flourG) * 100, 9);
      }
    }
  });

  test('a levain built in two stages from its own seed: what went in is what it is made of', () => {
    // By hand: of 600 g, 50 g are seed; the other 550 g are 50 + 300 flour and 50 + 150 water, and stand for all of it.
    const levain = formula(
      'levain',
      'ferment',
      {
        name: 'First',
        items: [
          { seed: true, g: 50 },
          { item: 'flour', g: 50 },
          { item: 'water', g: 50 },
        ],
      },
      {
        name: 'Second',
        role: 'dough',
        items: [
          { part: 'First', g: 150 },
          { item: 'flour', g: 300 },
          { item: 'water', g: 150 },
        ],
      },
    );
    const found = overall(levain, booksOf(levain));
    expect(found.doughG).toBeCloseTo(600, 9);
    expect(gramsOf(found)['flour']).toBeCloseTo((350 * 600) / 550, 9);
    expect(gramsOf(found)['water']).toBeCloseTo((200 * 600) / 550, 9);
    // Of a dough that takes 120 g of it.
    const dough = formula('dough', 'dough', {
      name: 'Dough',
      items: [
        { item: 'flour', g: 1000 },
        { formula: 'levain', g: 120 },
      ],
    });
    expect(overall(dough, booksOf(levain)).flourG).toBeCloseTo(1000 + (350 * 120) / 550, 9);
  });

  test('a prep’s flour is not prefermented, a ferment’s and an old dough’s is; parts of other formulas keep names apart', () => {
    const scald = formula('scald', 'prep', {
      name: 'Dough',
      items: [
        { item: 'rye', g: 100 },
        { item: 'water', g: 200 },
      ],
    });
    const sponge = formula('sponge', 'ferment', {
      name: 'Dough',
      items: [
        { item: 'flour', g: 100 },
        { item: 'milk', g: 100 },
      ],
    });
    const old = formula('old', 'dough', {
      name: 'Dough',
      items: [
        { item: 'flour', g: 100 },
        { item: 'water', g: 60 },
      ],
    });
    const dough = formula('dough', 'dough', {
      name: 'Dough',
      items: [
        { item: 'flour', g: 700 },
        { formula: 'scald', g: 300 },
        { formula: 'sponge', g: 200 },
        { formula: 'old', g: 160 },
      ],
    });
    const found = overall(dough, booksOf(scald, sponge, old));
    expect(found).toMatchObject({ flourG: 1000, waterG: 348, prefermentedFlourPct: 20 });
    expect(found.parts.map(({ name }) => name)).toEqual(['scald', 'sponge', 'old', 'Dough']);
  });

  test('a part that nothing takes is in no dough', () => {
    const dough = formula(
      'dough',
      'dough',
      { name: 'New', items: [{ item: 'rye', g: 5 }] },
      { name: 'Dough', items: [{ item: 'flour', g: 10 }] },
    );
    expect(gramsOf(overall(dough, booksOf()))).toEqual({ flour: 10 });
  });

  test.each([
    ['an ingredient that is missing', [{ item: 'spelt', g: 1 }], 'ingredientMissing', 'parts[0].items[0].item'],
    [
      'a formula that is missing',
      [
        { item: 'flour', g: 1 },
        { formula: 'biga', g: 1 },
      ],
      'formulaMissing',
      'parts[0].items[1].formula',
    ],
    [
      'a formula that contains itself',
      [
        { item: 'flour', g: 1 },
        { formula: 'circle', g: 1 },
      ],
      'partOfItself',
      'parts[0].items[1].formula',
    ],
    [
      'an ingredient that another formula misses',
      [
        { item: 'flour', g: 1 },
        { formula: 'far', g: 1 },
      ],
      'ingredientMissing',
      'parts[0].items[1].formula',
    ],
    [
      'a part that is missing',
      [
        { item: 'flour', g: 1 },
        { part: 'Biga', g: 1 },
      ],
      'partMissing',
      'parts',
    ],
    [
      'a pot of nothing but seed',
      [
        { item: 'flour', g: 1 },
        { formula: 'seeds', g: 1 },
      ],
      'seedAlone',
      'parts[0].items[1].formula',
    ],
  ])('%s is refused', (_what, items, code, field) => {
    const circle = formula('circle', 'ferment', {
      name: 'Circle',
      items: [
        { item: 'flour', g: 1 },
        { formula: 'dough', g: 1 },
      ],
    });
    const seeds = formula('seeds', 'ferment', { name: 'Seeds', items: [{ seed: true, g: 1 }] });
    const far = formula('far', 'ferment', { name: 'Far', items: [{ item: 'spelt', g: 1 }] });
    const dough = formula('dough', 'dough', { name: 'Dough', items });
    expect(overallOf(dough, booksOf(circle, seeds, far, dough), INGREDIENTS)).toMatchObject({ ok: false, fault: { code, field } });
  });

  const leaf = fc.record({ item: fc.constantFrom('flour', 'rye', 'water', 'salt', 'milk'), g: fc.integer({ min: 1, max: 90_000 }) });
  const taken = fc.integer({ min: 1, max: 90_000 });
  /** Formulas that take one another, four deep, each of two parts: the last is the dough. */
  const books = fc
    .array(
      fc.record({
        inner: fc.array(leaf, { minLength: 1, maxLength: 4 }),
        own: fc.array(leaf, { minLength: 1, maxLength: 4 }),
        innerG: taken,
        otherG: taken,
      }),
      {
        minLength: 5,
        maxLength: 5,
      },
    )
    .map((levels) =>
      levels.map(({ inner, own, innerG, otherG }, index): Formula => {
        const other: PartItem[] = index === 0 ? [] : [{ formula: `formula-${index - 1}`, g: otherG }];
        const parts: Part[] = [
          { name: 'Inner', role: 'preferment', items: [...inner, ...other] },
          { name: 'Dough', role: 'dough', items: [{ item: 'flour', g: 1000 }, ...own, { part: 'Inner', g: innerG }, ...other] },
        ];
        return formula(`formula-${index}`, index % 2 === 0 ? 'ferment' : 'dough', ...parts);
      }),
    );

  test('whatever formulas take of one another, four deep: no gram of any ingredient is lost or won', () => {
    fc.assert(
      fc.property(books, (formulas) => {
        const dough = formulas.at(-1);
        assert(dough !== undefined, 'there are five');
        const found = overall(dough, booksOf(...formulas));
        const shares = sharesOf(dough, booksOf(...formulas));
        let sumG = 0;
        for (const { ingredientId, g } of found.byIngredient) {
          sumG += g;
          expect(Math.abs(g - (shares.get(ingredientId) ?? 0) * found.doughG)).toBeLessThan(1e-9 * found.doughG);
        }
        expect(Math.abs(sumG - found.doughG)).toBeLessThan(1e-9 * found.doughG);
      }),
      { seed: 111, numRuns: 200 },
    );
  });

  test('the names of all parts are apart, and everything a part takes is there', () => {
    fc.assert(
      fc.property(books, (formulas) => {
        const dough = formulas.at(-1);
        assert(dough !== undefined, 'there are five');
        const parts = calcPartsOf(dough, booksOf(...formulas), INGREDIENTS);
        assert(parts.ok, 'nothing is missing');
        const names = parts.value.map(({ name }) => name);
        expect(new Set(names).size).toBe(names.length);
        expect(names.length).toBe(10);
        for (const { items } of parts.value) for (const item of items) if ('part' in item) expect(names).toContain(item.part);
      }),
      { seed: 112, numRuns: 50 },
    );
  });
});

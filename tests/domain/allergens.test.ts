import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { euText, usText } from '../../display/parts/allergen-text.ts';
import { ALLERGEN_LIST as DE } from '../../display/words/de/allergens.ts';
import { EU_GROUP_NAMES, US_GROUP_NAMES } from '../../display/words/en/allergen-groups.ts';
import { ALLERGEN_LIST as EN } from '../../display/words/en/allergens.ts';
import { ALLERGENS } from '../../display/words/en/floor.ts';
import { ALLERGEN_LIST as FR } from '../../display/words/fr/allergens.ts';
import { EU_GROUPS, euGroupOf, US_GROUPS, usGroupOf } from '../../shared/book/allergen-groups.ts';
import { euListOf, usListOf } from '../../shared/book/allergen-lists.ts';
import { allergenSources, allergensOfFacts, productAllergens, sharedAllergens } from '../../shared/book/allergens.ts';
import { allergenSchema, type Allergen } from '../../shared/documents/allergen.ts';
import { allergensIn } from '../../shared/documents/amounts.ts';
import { formulaSchema, ingredientSchema, productSchema, type Formula, type Ingredient } from '../../shared/documents/formula.ts';
import { allergensOf } from '../../shared/floor/contents.ts';
import { workpieceAllergens } from '../../shared/floor/workpiece-allergens.ts';
import { Floor } from './support/floor.ts';
import { demoFile, harbourFile } from './support/harbour.ts';

/** Regulation (EU) No 1169/2011, Annex II, in its order, with the names that its points 1 and 8 spell out. */
const ANNEX_II: readonly (readonly [string, readonly string[]])[] = [
  ['cereals containing gluten', ['wheat', 'rye', 'barley', 'oats']],
  ['crustaceans', []],
  ['eggs', []],
  ['fish', []],
  ['peanuts', []],
  ['soybeans', []],
  ['milk', []],
  ['nuts', ['almonds', 'hazelnuts', 'walnuts', 'cashews', 'pecan nuts', 'Brazil nuts', 'pistachio nuts', 'macadamia']],
  ['celery', []],
  ['mustard', []],
  ['sesame seeds', []],
  ['sulphur dioxide and sulphites', []],
  ['lupin', []],
  ['molluscs', []],
];

/**
 * "Milk, egg, fish …, Crustacean shellfish …, tree nuts …, wheat, peanuts, and soybeans": Food Allergen Labeling and Consumer
 * Protection Act of 2004, section 203; sesame: FASTER Act of 2021, section 2.
 */
const MAJOR_NINE = ['milk', 'egg', 'fish', 'crustacean shellfish', 'tree nuts', 'wheat', 'peanuts', 'soybeans', 'sesame'];

const everyAllergen = allergenSchema.options;

describe('U1 allergens by two lists', () => {
  test('the European list is Annex II, in its order and with the cereals and nuts that it names', () => {
    const listed = EU_GROUPS.map((group) => {
      const members = everyAllergen.filter((allergen) => euGroupOf(allergen) === group);
      return [EU_GROUP_NAMES[group], members.length === 1 ? [] : members.map((allergen) => ALLERGENS[allergen])];
    });
    // Annex II says "macadamia or Queensland nuts".
    expect(JSON.parse(JSON.stringify(listed).replace('macadamia nuts', 'macadamia'))).toEqual(ANNEX_II);
  });

  test('the American list is the nine of the two acts; wheat is on it and gluten is not', () => {
    expect(US_GROUPS.map((group) => US_GROUP_NAMES[group])).toEqual(MAJOR_NINE);
    expect(usText(['rye', 'barley', 'oats'])).toBe(EN.none);
    expect(usText(['wheat', 'rye'])).toBe('wheat');
    expect(euText(['rye', 'wheat'])).toBe('cereals containing gluten (wheat, rye)');
    const absent: readonly Allergen[] = ['rye', 'barley', 'oats', 'celery', 'mustard', 'sulphites', 'lupin', 'molluscs'];
    expect(everyAllergen.filter((allergen) => usGroupOf(allergen) === null)).toEqual(absent);
  });

  test('the nut is named on both lists, and every allergen stands on the European one exactly once', () => {
    expect([euText(['hazelnut', 'almond']), usText(['hazelnut', 'almond'])]).toEqual([
      'nuts (almonds, hazelnuts)',
      'tree nuts (almonds, hazelnuts)',
    ]);
    for (const allergen of everyAllergen) {
      expect(euListOf([allergen]).map(({ group }) => group)).toEqual([euGroupOf(allergen)]);
      expect(usListOf([allergen]).map(({ group }) => group)).toEqual([usGroupOf(allergen)].filter((group) => group !== null));
    }
    expect(euListOf([])).toEqual([]);
  });
});

/** Ingredients that each declare what their key says, and one that declares nothing. */
const PLAIN = ingredientSchema.parse({ id: 'water', name: 'Water', kind: 'water' });
const INGREDIENTS: readonly Ingredient[] = [
  PLAIN,
  ...everyAllergen.map((allergen) =>
    ingredientSchema.parse({ id: allergen, name: ALLERGENS[allergen], kind: 'other', allergens: [allergen] }),
  ),
];
const STEP = { id: 'mix', verb: 'firstSpeed', kind: 'hands', minutes: { target: 5 } } as const;

function formula(id: string, more: Partial<Record<keyof Formula, unknown>>): Formula {
  const parts = [{ name: 'all', role: 'dough', items: [{ item: 'water', g: 1 }] }];
  return formulaSchema.parse({ id, name: `Formula ${id}`, letters: 'F', kind: 'prep', parts, method: [STEP], ...more });
}

describe('U2 what brings an allergen in', () => {
  test('an ingredient is told with the parts and formulas that it comes through, whatever the depth', () => {
    const chain = [0, 1, 2, 3].map((depth) =>
      formula(`f${depth}`, {
        parts: [
          { name: `Soaker ${depth}`, role: 'soaker', items: [{ item: everyAllergen[depth] ?? '', g: 10 }] },
          {
            name: 'all',
            role: 'dough',
            items: [{ part: `Soaker ${depth}`, g: 10 }, depth === 3 ? { item: 'water', g: 10 } : { formula: `f${depth + 1}`, g: 10 }],
          },
        ],
      }),
    );
    const find = (id: string): Formula | null => chain.find((candidate) => candidate.id === id) ?? null;
    const [outermost] = chain;
    if (outermost === undefined) expect.fail('no formula');
    const { sources, missing } = allergenSources(outermost, find, INGREDIENTS);
    expect(sources.map(({ allergen, through }) => [allergen, through])).toEqual([
      ['wheat', ['Soaker 0']],
      ['rye', ['Formula f1', 'Soaker 1']],
      ['barley', ['Formula f1', 'Formula f2', 'Soaker 2']],
      ['oats', ['Formula f1', 'Formula f2', 'Formula f3', 'Soaker 3']],
    ]);
    expect(missing).toEqual([]);
  });

  test('what goes in at a step, what joins as a prep and a line of no weight all count', () => {
    const filling = formula('filling', { parts: [{ name: 'all', role: 'dough', items: [{ item: 'almond', g: 0 }] }] });
    const dough = formula('dough', {
      method: [
        { ...STEP, additions: [{ item: 'sesame', pct: 2 }] },
        { ...STEP, id: 'fill', verb: 'fill', additions: [{ formula: 'filling', gPerPiece: 20 }] },
      ],
      sidePreps: [{ formula: 'filling', joins: 'fill' }],
    });
    const facts = allergenSources(dough, (id) => (id === 'filling' ? filling : null), INGREDIENTS);
    expect(facts.sources).toEqual([
      { allergen: 'almond', ingredientId: 'almond', through: ['Formula filling'] },
      { allergen: 'sesame', ingredientId: 'sesame', through: [] },
    ]);
  });

  test('what the book lacks is told as not known instead of left out', () => {
    const dough = formula('dough', {
      parts: [
        {
          name: 'all',
          role: 'dough',
          items: [
            { item: 'nowhere', g: 1 },
            { formula: 'gone', g: 1 },
          ],
        },
      ],
      takesBack: [{ what: 'oldDough', capPct: 10, ageMin: 600 }],
    });
    expect(allergenSources(dough, () => null, INGREDIENTS)).toEqual({ sources: [], missing: ['nowhere', 'gone'], takesBack: true });
  });

  test('a formula that takes of itself ends', () => {
    const round = formula('round', {
      parts: [
        {
          name: 'all',
          role: 'dough',
          items: [
            { formula: 'round', g: 1 },
            { item: 'egg', g: 1 },
          ],
        },
      ],
    });
    expect(allergensOfFacts(allergenSources(round, () => round, INGREDIENTS))).toEqual(['egg']);
  });

  // By the shares of its ingredients, which the weighing is reckoned by, a formula has the same allergens.
  test('the same as by the shares of the ingredients, for any formulas that take of one another', () => {
    const lines = fc.array(fc.constantFrom(...everyAllergen), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(lines, { minLength: 1, maxLength: 5 }), (levels) => {
        const book = levels.map((items, depth) =>
          formula(`f${depth}`, {
            parts: [
              {
                name: 'all',
                role: 'dough',
                items: [
                  ...items.map((item) => ({ item, g: 1 })),
                  ...(depth + 1 < levels.length ? [{ formula: `f${depth + 1}`, g: 1 }] : []),
                ],
              },
            ],
          }),
        );
        const find = (id: string): Formula | null => book.find((candidate) => candidate.id === id) ?? null;
        const [outermost] = book;
        if (outermost === undefined) expect.fail('no formula');
        const found = [...allergensOfFacts(allergenSources(outermost, find, INGREDIENTS))].sort();
        expect(found).toEqual(allergensIn(outermost, find, INGREDIENTS));
      }),
      { seed: 601, numRuns: 200 },
    );
  });

  test('of several products of one dough each has the dough’s and its own', () => {
    const dough = formula('dough', { kind: 'dough', parts: [{ name: 'all', role: 'dough', items: [{ item: 'wheat', g: 1 }] }] });
    const product = (id: string, additions: readonly unknown[]): ReturnType<typeof productSchema.parse> =>
      productSchema.parse({ id, name: id, formula: 'dough', pieceG: 100, way: [{ ...STEP, id: 'top', verb: 'top', additions }] });
    const plain = product('plain', []);
    const seeded = product('seeded', [{ item: 'sesame', gPerPiece: 5 }]);
    const { shared, products } = sharedAllergens(dough, [plain, seeded], () => null, INGREDIENTS);
    expect(allergensOfFacts(shared)).toEqual(['wheat']);
    expect(products.map(({ name, own }) => [name, own])).toEqual([
      ['plain', []],
      ['seeded', ['sesame']],
    ]);
    expect(productAllergens(seeded, null, () => null, INGREDIENTS).missing).toEqual(['dough']);
  });

  test('every formula of the invented house has at least what the shares of its ingredients say', () => {
    for (const file of [demoFile(), harbourFile()]) {
      const find = (id: string): Formula | null => file.formulas.find((candidate) => candidate.id === id) ?? null;
      for (const made of file.formulas) {
        const facts = allergenSources(made, find, file.ingredients);
        expect(facts.missing, made.id).toEqual([]);
        expect(allergensOfFacts(facts), made.id).toEqual(expect.arrayContaining([...allergensIn(made, find, file.ingredients)]));
      }
    }
  });
});

describe('U3 allergens on the floor', () => {
  test('a batch has what its formula and the floor brought into it, and its products their own beyond it', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed');
    const before = workpieceAllergens(floor.state, floor.piece('C1')) ?? expect.fail('no allergens');
    expect(allergensOfFacts(before.facts)).toEqual(expect.arrayContaining([...allergensOf(floor.state, floor.piece('C1'))]));
    const piece = { ...floor.piece('C1'), broughtIn: { allergens: ['lupin' as const], lotNumbers: [] } };
    const after = workpieceAllergens(floor.state, piece) ?? expect.fail('no allergens');
    expect(after.facts.sources.filter(({ allergen }) => allergen === 'lupin')).toEqual([
      { allergen: 'lupin', ingredientId: null, through: [] },
    ]);
    expect(workpieceAllergens({ ...floor.state, formulas: {} }, piece)).toBeNull();
  });
});

describe('U3 what steps put in on top of the parts', () => {
  test('is in the dough from the step on at which it goes in; the card tells it before', () => {
    const floor = Floor.harbour().bringTo('Ch1', 'top');
    // The boats' dough has no egg; their filling, which only the step names, has.
    expect(allergensOf(floor.state, floor.piece('Ch1'))).not.toContain('egg');
    const told = workpieceAllergens(floor.state, floor.piece('Ch1')) ?? expect.fail('no allergens');
    expect(allergensOfFacts(told.facts)).toContain('egg');
    floor.finish('Ch1');
    expect(allergensOf(floor.state, floor.piece('Ch1'))).toContain('egg');
  });
});

describe('U4 whose word comes first', () => {
  test.each([
    ['en', EN, /local codes/i, /licensed advice/i],
    ['de', DE, /örtliche vorschriften/i, /beratung/i],
    ['fr', FR, /règles locales/i, /conseil agréé/i],
  ] as const)('in %s both lists are named, and local codes and licensed advice come before them', (_language, words, codes, advice) => {
    expect([words.euList, words.usList].join()).toMatch(/1169\/2011.*FALCPA 2004.*FASTER Act 2021/);
    expect(words.caution).toMatch(codes);
    expect(words.caution).toMatch(advice);
    expect(JSON.stringify(words)).not.toMatch(/\bsafe\b|\bsicher\b|\bsans danger\b|\bsûr/i);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { begunDrafts, dropDraft, freePlace, keepDraft, keptDraft } from '../../display/formulas/draft-shelf.ts';
import { edited, isChanged, newDraft } from '../../display/formulas/formula-draft.ts';
import { addressOf, MOST_PLACES, newDraftKey, searchOf, SECTIONS } from '../../display/formulas/page-address.ts';
import { flourG, flourTest, percentOf, scaledTo, totalG, withPartAdded, withPercent } from '../../display/formulas/part-edits.ts';
import { partOfTemplate, PART_TEMPLATES } from '../../display/formulas/part-templates.ts';
import { shownWeight, typedWeightG } from '../../display/formulas/weight-typed.ts';
import { overallOf } from '../../shared/book/overall.ts';
import { formulaSchema, type Formula, type Ingredient, type Part, type PartItem } from '../../shared/documents/formula.ts';

const INGREDIENTS: readonly Ingredient[] = [
  { id: 'wheat', name: 'Wheat flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'rye', name: 'Rye flour', kind: 'flour', allergens: ['rye'] },
  { id: 'spelt', name: 'Spelt flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'water', name: 'Water', kind: 'water', allergens: [] },
  { id: 'salt', name: 'Salt', kind: 'salt', allergens: [] },
  { id: 'yeast', name: 'Yeast', kind: 'yeast', yeastForm: 'fresh', allergens: [] },
  { id: 'seeds', name: 'Seeds', kind: 'seed', allergens: [] },
];
const IS_FLOUR = flourTest(INGREDIENTS);
/** A weight is kept to a tenth of a milligram. */
const KEPT_G = 1e-4;

const grams = fc.double({ min: 1, max: 50_000, noNaN: true });
/** A dough with three flours, water and salt. */
const lines = fc
  .record({ wheat: grams, rye: grams, spelt: grams, water: grams, salt: grams })
  .map((weights): readonly PartItem[] => Object.entries(weights).map(([item, g]) => ({ item, g })));

function formulaOf(parts: readonly Part[]): Formula {
  return formulaSchema.parse({
    id: 'loaf',
    name: 'Loaf',
    letters: 'Lo',
    parts,
    method: [{ id: 'mix', verb: 'firstSpeed', kind: 'hands', minutes: { target: 5 } }],
  });
}

describe('N1 N2 N3 lines in grams and per cent', () => {
  test('a per cent that is typed is the one that is read back; flour stays what it was', () => {
    fc.assert(
      fc.property(lines, fc.integer({ min: 3, max: 4 }), fc.double({ min: 0, max: 120, noNaN: true }), (items, index, pct) => {
        const before = flourG(items, IS_FLOUR);
        const after = withPercent(items, index, pct, IS_FLOUR);
        const line = after?.[index];
        if (after === null || line === undefined) throw new Error('a line on flour can be any per cent');
        expect(Math.abs(line.g - (before * pct) / 100)).toBeLessThanOrEqual(KEPT_G);
        expect(flourG(after, IS_FLOUR)).toBe(before);
      }),
    );
  });

  test('a flour’s per cent is shared out among the others as they stood to one another, and all of it stays', () => {
    fc.assert(
      fc.property(lines, fc.integer({ min: 0, max: 2 }), fc.double({ min: 0, max: 100, noNaN: true }), (items, index, pct) => {
        const before = flourG(items, IS_FLOUR);
        const after = withPercent(items, index, pct, IS_FLOUR);
        if (after === null) throw new Error('a blend can be shared out');
        expect(Math.abs(flourG(after, IS_FLOUR) - before)).toBeLessThanOrEqual(4 * KEPT_G);
        const [a, b] = [0, 1, 2].filter((at) => at !== index).map((at) => [items[at]?.g ?? 0, after[at]?.g ?? 0] as const);
        if (a === undefined || b === undefined) throw new Error('two others');
        expect(Math.abs(a[1] * b[0] - b[1] * a[0])).toBeLessThanOrEqual(2 * KEPT_G * (a[0] + b[0]));
      }),
    );
  });

  test('the only flour is always 100; nothing is less than none; without flour there is no per cent', () => {
    const one: readonly PartItem[] = [
      { item: 'wheat', g: 1000 },
      { item: 'water', g: 650 },
    ];
    expect(withPercent(one, 0, 90, IS_FLOUR)).toBeNull();
    expect(withPercent(one, 1, -1, IS_FLOUR)).toBeNull();
    expect(withPercent([{ item: 'water', g: 650 }], 0, 65, IS_FLOUR)).toBeNull();
    expect(percentOf({ item: 'water', g: 650 }, 0)).toBeNull();
  });

  test('another total scales every line, per cent as they were', () => {
    fc.assert(
      fc.property(lines, fc.double({ min: 100, max: 100_000, noNaN: true }), (items, g) => {
        const after = scaledTo(items, g);
        if (after === null) throw new Error('it weighs something');
        expect(Math.abs(totalG(after) - g)).toBeLessThanOrEqual(items.length * KEPT_G);
        after.forEach((line, at) => expect(line.g).toBeCloseTo(((items[at]?.g ?? 0) * g) / totalG(items), 3));
      }),
    );
  });
});

describe('N4 what is made before the dough', () => {
  const dough: Part = {
    name: 'Dough',
    role: 'dough',
    items: [
      { item: 'wheat', g: 1000 },
      { item: 'water', g: 700 },
      { item: 'salt', g: 20 },
      { item: 'yeast', g: 10 },
    ],
  };

  test.each(PART_TEMPLATES.filter((template) => template !== 'soaker' && template !== 'scald'))(
    '%s: flour and water of the whole formula stay, and some of the flour is prefermented',
    (template) => {
      const part = partOfTemplate(template, 'Before', 1000, INGREDIENTS);
      const overall = overallOf(formulaOf(withPartAdded([dough], part, INGREDIENTS)), () => null, INGREDIENTS);
      if (!overall.ok) throw new Error(overall.fault.message);
      expect(overall.value.flourG).toBeCloseTo(1000, 3);
      expect(overall.value.waterG).toBeCloseTo(700, 3);
      expect(overall.value.prefermentedFlourPct).toBeGreaterThan(0);
    },
  );

  test.each(['soaker', 'scald'] as const)('a %s comes on top, and none of its flour is prefermented', (template) => {
    const part = partOfTemplate(template, 'Before', 1000, INGREDIENTS);
    const overall = overallOf(formulaOf(withPartAdded([dough], part, INGREDIENTS)), () => null, INGREDIENTS);
    if (!overall.ok) throw new Error(overall.fault.message);
    expect(part.role).toBe('soaker');
    expect(overall.value.prefermentedFlourPct).toBe(0);
    expect(overall.value.doughG).toBeCloseTo(totalG(dough.items) + totalG(part.items), 3);
  });
});

describe('N5 drafts on this device', () => {
  test('a draft is there again as it was, until it is dropped; what cannot be read is none', () => {
    const texts = new Map<string, string>();
    const shelf = { read: (key: string) => texts.get(key) ?? null, write: (key: string, value: string) => void texts.set(key, value) };
    const draft = edited(
      newDraft('new:dough', formulaOf([{ name: 'Dough', role: 'dough', items: [{ item: 'wheat', g: 1 }] }])),
      ['formula', 'doughC'],
      26,
      () => false,
    );
    expect(isChanged(draft)).toBe(true);
    expect(keptDraft(shelf, draft.key)).toBeNull();
    keepDraft(shelf, draft);
    expect(keptDraft(shelf, draft.key)).toEqual(draft);
    expect(keptDraft(shelf, 'another')).toBeNull();
    dropDraft(shelf, draft.key);
    expect(keptDraft(shelf, draft.key)).toBeNull();
    for (const key of texts.keys()) texts.set(key, '{"key":"new:dough"');
    expect(keptDraft(shelf, draft.key)).toBeNull();
  });

  test('what is begun stands at a place of its own: nothing that was begun before is written over, and each is found again', () => {
    const texts = new Map<string, string>();
    const shelf = { read: (key: string) => texts.get(key) ?? null, write: (key: string, value: string) => void texts.set(key, value) };
    const begin = (name: string): void => {
      const place = freePlace(shelf, 'dough');
      if (place === null) throw new Error('there is a place left');
      const formula = formulaOf([{ name: 'Dough', role: 'dough', items: [{ item: 'wheat', g: 1 }] }]);
      keepDraft(shelf, newDraft(newDraftKey('dough', place), { ...formula, name }));
    };
    for (let count = 1; count <= MOST_PLACES; count += 1) begin(`Loaf ${count}`);
    expect(freePlace(shelf, 'dough')).toBeNull();
    expect(freePlace(shelf, 'prep')).toBe(1);
    expect(begunDrafts(shelf).map(({ name }) => name)).toEqual(Array.from({ length: MOST_PLACES }, (_, index) => `Loaf ${index + 1}`));
    dropDraft(shelf, newDraftKey('dough', 3));
    expect(freePlace(shelf, 'dough')).toBe(3);
  });

  test('an address says what is open, and is read back as it was', () => {
    for (const section of SECTIONS) {
      for (const version of [null, 3]) {
        const address = { shows: 'formula', formulaId: 'country', version, section } as const;
        expect(addressOf(searchOf(address, '?language=de'))).toEqual(address);
        expect(searchOf(address, '?language=de')).toContain('language=de');
      }
      expect(addressOf(searchOf({ shows: 'new', kind: 'ferment', place: 2, section }, ''))).toEqual({
        shows: 'new',
        kind: 'ferment',
        place: 2,
        section,
      });
    }
    expect(addressOf('?formula=country&version=x&section=nowhere')).toEqual({
      shows: 'formula',
      formulaId: 'country',
      version: null,
      section: 'parts',
    });
  });
});

describe('N8 weights as they are typed', () => {
  const METRIC = { temperature: 'C', weight: 'g' } as const;
  const POUNDS = { temperature: 'F', weight: 'lb' } as const;

  // International pound of 1959: exactly 0.45359237 kg; an ounce is a sixteenth of it.
  test.each([
    ['500', METRIC, 500],
    ['1,5 kg', METRIC, 1500],
    ['16', POUNDS, 453.592_37],
    ['2 lb', METRIC, 907.184_74],
    ['2 lb 3 oz', POUNDS, 992.233_309_375],
    ['.5g', METRIC, 0.5],
  ])('%s', (text, units, g) => {
    expect(typedWeightG(text, units)).toBeCloseTo(g, 9);
  });

  test.each(['', 'a lot', '-5', '5 cups', '1.2.3', '3 oz 2 lb'])('"%s" is no weight', (text) => {
    expect(typedWeightG(text, METRIC)).toBeNull();
  });

  test('what stands in a field is read back as it was, to what the field shows', () => {
    fc.assert(
      fc.property(grams, (g) => {
        expect(Math.abs((typedWeightG(shownWeight(g, METRIC), METRIC) ?? NaN) - g)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect(Math.abs((typedWeightG(shownWeight(g, POUNDS), POUNDS) ?? NaN) - g)).toBeLessThanOrEqual(0.005 * 28.35);
      }),
    );
  });
});

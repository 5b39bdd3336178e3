import { Temporal } from 'temporal-polyfill';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { durationMin } from '../../shared/book/recipe-duration.ts';
import { importedRecipe, recipesInText, type BookNames, type ImportedRecipe } from '../../shared/book/recipe-import.ts';
import { kindOfName } from '../../shared/book/recipe-kinds.ts';
import { readLine } from '../../shared/book/recipe-line.ts';
import { formulaFaults, productFaults } from '../../shared/documents/book-faults.ts';
import { formulaSchema, type Ingredient } from '../../shared/documents/formula.ts';
import { assert } from '../../shared/result.ts';
import { demoFile } from './support/harbour.ts';

/*
 * The vocabulary: schema.org's own schema.ttl (github.com/schemaorg/schemaorg, data/schema.ttl). recipeIngredient is Text,
 * PropertyValue or ItemList; recipeInstructions Text, CreativeWork (HowToStep, HowToSection) or ItemList; recipeYield Text or
 * QuantitativeValue; totalTime and cookTime a Duration in ISO 8601. JSON-LD 1.1 (W3C
 * Recommendation of 2020, from memory): graph objects, and data in script elements of type application/ld+json.
 */
const NO_NAMES: BookNames = { formulaIds: new Set(), productIds: new Set(), letters: new Set() };
const FLOUR: Ingredient = { id: 'wheat-flour', name: 'Bread flour', kind: 'flour', allergens: ['wheat'] };
const RECIPE = {
  '@context': 'https://schema.org',
  '@type': 'Recipe',
  name: 'Pier loaf',
  description: 'A plain loaf.',
  recipeYield: '2 loaves',
  totalTime: 'PT4H30M',
  recipeIngredient: ['1 kg bread flour', '650 ml cold water', '20 g salt', '2 tsp dry yeast'],
  recipeInstructions: [
    { '@type': 'HowToStep', text: 'Mix everything for 5 minutes.' },
    { '@type': 'HowToStep', text: 'Let the dough rise for 1 to 2 hours.' },
    { '@type': 'HowToStep', text: 'Divide in two. Shape each into a ball.' },
    { '@type': 'HowToStep', text: 'Bake at 450 °F (230 °C) for 40 minutes. Admire it.' },
  ],
};

const weightOf = (text: string): unknown => {
  const line = readLine(text);
  return line.ok ? [line.value.g, line.value.name] : line.fault;
};

function imported(json: unknown, ingredients: readonly Ingredient[] = [FLOUR]): ImportedRecipe {
  const result = importedRecipe(json, ingredients, NO_NAMES);
  assert(result.ok, 'the recipe is read');
  return result.value;
}

describe('N26 a recipe in the open vocabulary comes in as a draft', () => {
  test('ingredients, kinds, method, way and pieces are read; what the book has keeps its key and its allergens', () => {
    const { draft, product, newIngredients, totalMin } = imported(RECIPE);
    expect(draft).toMatchObject({ id: 'pier-loaf', name: 'Pier loaf', letters: 'P', kind: 'dough', note: 'A plain loaf.' });
    expect(draft.parts).toEqual([
      {
        name: 'Pier loaf',
        role: 'dough',
        items: [
          { item: 'wheat-flour', g: 1000 },
          { item: 'cold-water', g: 650 },
          { item: 'salt', g: 20 },
        ],
      },
    ]);
    expect(newIngredients.map(({ id, kind, allergens }) => [id, kind, allergens])).toEqual([
      ['cold-water', 'water', []],
      ['salt', 'salt', []],
    ]);
    expect(draft.method.map(({ verb, kind, minutes }) => [verb, kind, minutes])).toEqual([
      ['weigh', 'hands', { target: 0 }],
      ['firstSpeed', 'hands', { target: 5 }],
      ['bulk', 'timed', { earliest: 60, target: 60, latest: 120 }],
      ['divide', 'hands', { target: 0 }],
    ]);
    expect(product).toMatchObject({ formula: 'pier-loaf', pieceG: 835 });
    expect(product?.way.map(({ verb }) => verb)).toEqual(['shape', 'bake', 'takeOut']);
    // 450 °F stands beside 230 °C: the one that is in °C is taken.
    expect(product?.way[1]?.bake).toEqual([{ minutes: 40, temperatureC: 230 }]);
    expect(totalMin).toBe(270);
  });

  test('the draft of a plain recipe can be saved as it is: the house finds nothing impossible in it', () => {
    const { kitchen, ingredients, formulas } = demoFile();
    const { draft, product, newIngredients } = imported(
      { ...RECIPE, recipeIngredient: ['1 kg wheat flour', '650 ml cold water', '20 g salt'] },
      ingredients,
    );
    assert(product !== null, 'it says how many pieces it makes');
    const context = { kitchen, ingredients: [...ingredients, ...newIngredients], formulas };
    expect(formulaFaults(draft, context)).toEqual([]);
    expect(productFaults(product, { ...context, formulas: [...formulas, draft] })).toEqual([]);
  });

  test('it is found alone, in a list, in @graph, under what a page is about, and in a page pasted whole', () => {
    const page = `<!doctype html><html><head><script type="text/javascript">var a = "<script>";</script>
      <script type="application/ld+json">not json</script>
      <script data-a="1" type='application/ld+json'>/*<![CDATA[*/${JSON.stringify({ '@graph': [{ '@type': 'WebPage' }, RECIPE] })}/*]]>*/</script></head></html>`;
    const ways = [
      RECIPE,
      [{ '@type': 'Organization' }, RECIPE],
      { '@context': 'https://schema.org', '@graph': [{ '@type': 'WebSite' }, { ...RECIPE, '@type': ['Recipe', 'NewsArticle'] }] },
      { '@type': 'WebPage', mainEntity: { ...RECIPE, '@type': 'http://schema.org/Recipe' } },
    ].map((value) => JSON.stringify(value));
    for (const text of [...ways, page]) {
      const recipes = recipesInText(text);
      expect(recipes.ok && recipes.value).toHaveLength(1);
      expect(recipes.ok && imported(recipes.value[0]).draft.parts[0]?.items).toHaveLength(3);
    }
  });

  test('every shape that the vocabulary gives its properties reads alike', () => {
    const asList = {
      '@type': 'ItemList',
      itemListElement: [
        { '@type': 'ListItem', position: 1, item: '1 kg bread flour' },
        '650 ml cold water',
        '20 g salt',
        '2 tsp dry yeast',
      ],
    };
    const asValues = [
      { '@type': 'PropertyValue', name: 'bread flour', value: 1, unitCode: 'KGM' },
      { '@type': 'PropertyValue', name: 'cold water', value: 650, unitText: 'ml' },
      { '@type': 'PropertyValue', name: 'salt', value: { '@type': 'QuantitativeValue', value: 20, unitCode: 'GRM' } },
    ];
    const asText = RECIPE.recipeInstructions.map(({ text }) => text).join('\n');
    const asSection = [{ '@type': 'HowToSection', name: 'All of it', itemListElement: RECIPE.recipeInstructions }];
    const { draft, product } = imported(RECIPE);
    for (const other of [
      { recipeIngredient: asList },
      { recipeIngredient: asValues },
      { recipeIngredient: RECIPE.recipeIngredient.join('\n') },
      { recipeIngredient: undefined, ingredients: RECIPE.recipeIngredient },
      { recipeInstructions: asText },
      { recipeInstructions: asSection },
      { recipeInstructions: { '@type': 'ItemList', itemListElement: RECIPE.recipeInstructions } },
      { recipeYield: { '@type': 'QuantitativeValue', value: 2, unitText: 'loaves' } },
      { recipeYield: ['2', '2 loaves'] },
    ]) {
      const read = imported({ ...RECIPE, ...other });
      expect(read.draft).toEqual(draft);
      expect(read.product).toEqual(product);
    }
  });

  test('weights are read in grams, ounces and pounds, fractions and brackets included; water by volume too', () => {
    // One pound is 453.59237 g, an ounce its sixteenth (international yard and pound agreement, 1959).
    const pound = 453.592_37;
    expect(weightOf('500 g bread flour')).toEqual([500, 'bread flour']);
    expect(weightOf('500g flour, sifted')).toEqual([500, 'flour']);
    expect(weightOf('flour, 500 g')).toEqual([500, 'flour']);
    expect(weightOf('1 1/2 lb flour')).toEqual([Math.round(1.5 * pound * 100) / 100, 'flour']);
    expect(weightOf('1½ lb. of flour')).toEqual([Math.round(1.5 * pound * 100) / 100, 'flour']);
    expect(weightOf('10 oz butter')).toEqual([Math.round(((10 * pound) / 16) * 100) / 100, 'butter']);
    expect(weightOf('1 lb 4 oz rye flour')).toEqual([Math.round(1.25 * pound * 100) / 100, 'rye flour']);
    expect(weightOf('4 cups (480 g) bread flour')).toEqual([480, 'bread flour']);
    expect(weightOf('500 g (4 cups) bread flour')).toEqual([500, 'bread flour']);
    expect(weightOf('17.6 oz / 500 g flour')).toEqual([500, 'flour']);
    expect(weightOf('0,5 kg Weizenmehl')).toEqual([500, 'Weizenmehl']);
    expect(weightOf("250 g d'eau")).toEqual([250, 'eau']);
    expect(weightOf('3,5 dl Wasser')).toEqual([350, 'Wasser']);
    expect(weightOf('2 eggs (100 g)')).toEqual([100, 'eggs']);
    expect(weightOf('&frac12; kg flour')).not.toEqual([500, 'flour']);
  });

  test('kinds are guessed by the words of three languages', () => {
    const kinds: Readonly<Record<string, Ingredient['kind']>> = {
      'buckwheat flour': 'flour',
      'Roggenmehl 1150': 'flour',
      'farine de blé': 'flour',
      'salted butter': 'fat',
      buttermilk: 'dairy',
      Vollmilch: 'dairy',
      'crème fraîche': 'dairy',
      'olive oil': 'fat',
      Olivenöl: 'fat',
      Meersalz: 'salt',
      'levure fraîche': 'yeast',
      'levure chimique': 'other',
      'baking powder': 'other',
      eggplant: 'other',
      'egg yolks': 'egg',
      Rohrzucker: 'sugar',
      Sonnenblumenkerne: 'seed',
      'warm water': 'water',
      "fleur d'oranger": 'other',
      'sourdough starter': 'other',
    };
    expect(Object.fromEntries(Object.keys(kinds).map((name) => [name, kindOfName(name)]))).toEqual(kinds);
  });

  test('whatever a recipe says, a draft is a document of ours or a reason is given', () => {
    const texts = fc.oneof(
      fc.string(),
      fc.constantFrom('500 g flour', '1 lb', 'Bake for 99999 hours', 'PT1H', '9999999999 kg salt', '200000000 loaves', ''),
    );
    const values = fc.oneof(
      texts,
      fc.array(texts),
      fc.double(),
      fc.constant(null),
      fc.record({ text: texts, itemListElement: fc.array(texts) }),
    );
    const recipes = fc.record(
      {
        name: values,
        description: values,
        recipeIngredient: values,
        recipeInstructions: values,
        recipeYield: values,
        totalTime: values,
        cookTime: values,
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(recipes, (recipe) => {
        const result = importedRecipe({ '@type': 'Recipe', ...recipe }, [FLOUR], NO_NAMES);
        expect(result.ok ? formulaSchema.safeParse(result.value.draft).success : result.fault.code).toEqual(
          result.ok ? true : 'noIngredients',
        );
      }),
    );
  });
});

describe('N27 what of a recipe could not be read is listed, each with its reason', () => {
  test('volumes, ranges, numbers that two countries read differently, lines without a name', () => {
    expect(weightOf('2 tsp salt')).toBe('noWeight');
    expect(weightOf('200 ml milk')).toBe('noWeight');
    expect(weightOf('a pinch of salt')).toBe('noWeight');
    expect(weightOf('100–120 g sugar')).toBe('range');
    expect(weightOf('1,000 g flour')).toBe('unclearNumber');
    expect(weightOf('500 g')).toBe('noName');
  });

  test('the list names ingredients, instructions, yields and times', () => {
    const { unread } = imported({ ...RECIPE, recipeYield: 'plenty', cookTime: 'P1M', recipeInstructions: ['Bake.', 'Sing.'] });
    expect(unread).toEqual([
      { of: 'ingredient', text: '2 tsp dry yeast', why: 'noWeight' },
      { of: 'instruction', text: 'Bake.', why: 'noTime' },
      { of: 'instruction', text: 'Sing.', why: 'noStep' },
      { of: 'yield', text: 'plenty', why: 'noPieces' },
      { of: 'time', text: 'P1M', why: 'noDuration' },
    ]);
  });

  test('no line of a recipe is lost: each is in the draft or in the list', () => {
    const line = fc.constantFrom('500 g flour', '1 lb rye flour', '2 cups milk', '3 eggs', '20 g', '1-2 kg salt', 'water', '1 l water');
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 70 }), (lines) => {
        const result = importedRecipe({ ...RECIPE, recipeIngredient: ['1 g flour', ...lines] }, [], NO_NAMES);
        assert(result.ok, 'there is a line with a weight');
        const items = result.value.draft.parts.flatMap((part) => part.items);
        expect(items.length + result.value.unread.filter(({ of }) => of === 'ingredient').length).toBe(lines.length + 1);
      }),
    );
  });

  test('no recipe, no JSON and no weights are said so', () => {
    const codeOf = (text: string): unknown => {
      const result = recipesInText(text);
      return result.ok ? null : result.fault.code;
    };
    expect(codeOf('hello')).toBe('notJson');
    expect(codeOf('<p>hello</p>')).toBe('notJson');
    expect(codeOf('{"@type":"Person"}')).toBe('noRecipe');
    const weightless = importedRecipe({ ...RECIPE, recipeIngredient: ['salt'] }, [], NO_NAMES);
    expect(weightless.ok ? null : weightless.fault.code).toBe('noIngredients');
  });

  test('durations are those of ISO 8601, as Temporal reads them; months and years have no length', () => {
    const unit = fc.option(fc.nat({ max: 500 }), { nil: undefined });
    fc.assert(
      fc.property(unit, unit, unit, unit, (days, hours, minutes, seconds) => {
        const text = Temporal.Duration.from({
          days: days ?? 0,
          hours: hours ?? 0,
          minutes: minutes ?? 0,
          seconds: seconds ?? 0,
        }).toString();
        expect(durationMin(text)).toBeCloseTo(Temporal.Duration.from(text).total('minutes'), 6);
      }),
    );
    for (const text of ['P1W', 'PT1.5H', 'PT0.5M', 'pt90m'])
      expect(durationMin(text)).toBeCloseTo(Temporal.Duration.from(text).total({ unit: 'minutes', relativeTo: '2026-01-05' }), 6);
    for (const text of ['', 'P', 'PT', 'P1DT', '90', '1 hour']) {
      expect(() => Temporal.Duration.from(text)).toThrow(RangeError);
      expect(durationMin(text)).toBeNull();
    }
    for (const text of ['P1M', 'P1Y']) expect(durationMin(text)).toBeNull();
  });
});

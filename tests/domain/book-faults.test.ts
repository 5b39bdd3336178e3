import { describe, expect, test } from 'vitest';
import { withValueAt, type Inwards } from '../../display/desk/inwards.ts';
import { bookFaults, formulaFaults, ingredientFaults, productFaults } from '../../shared/documents/book-faults.ts';
import type { FaultFacts } from '../../shared/documents/fault-facts.ts';
import { formulaSchema, ingredientSchema, productSchema } from '../../shared/documents/formula.ts';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import { formFaults } from '../../shared/documents/shape-faults.ts';
import { demoFile } from './support/harbour.ts';
import { DOUGH, FILLING, formulaOf, LOAF, POT, QUAY_BOOK, QUAY_INGREDIENTS, QUAY_KITCHEN } from './support/small-book.ts';

/** What is written, where, with which faults: nothing but these, each at its field. An empty list is the nearest thing that is possible. */
type Case = readonly [name: string, at: Inwards, value: unknown, faults: readonly (readonly [path: string, facts: FaultFacts])[]];

const step = (id: string, more: object = {}): object => ({ id, verb: 'wait', kind: 'timed', minutes: { target: 5 }, ...more });
const dough = DOUGH.parts[1]?.items ?? [];
const mix = 1;

const FORMULA: readonly Case[] = [
  ['letters that another bears', ['letters'], 'P', [['formula.letters', { code: 'lettersTaken', letters: 'P', by: 'pot' }]]],
  ['letters that nobody bears', ['letters'], 'Pi', []],
  ['a seed in a dough', ['seedG'], 100, [['formula.seedG', { code: 'keepsSeed', kind: 'dough' }]]],
  [
    'a dough that says how it is kept',
    ['keeping'],
    { kind: 'egg', from: 'nowhere' },
    [
      ['formula.keeping', { code: 'keepingOfPreps', kind: 'dough' }],
      ['formula.keeping.from', { code: 'stepUnknown', id: 'nowhere' }],
    ],
  ],
  [
    'an ingredient that is not there',
    ['parts', 0, 'items', 0],
    { item: 'sand', g: 1000 },
    [['formula.parts[0].items[0].item', { code: 'ingredientUnknown', id: 'sand' }]],
  ],
  [
    'a part that stands nowhere before',
    ['parts', 1, 'items', 3, 'part'],
    'Biga',
    [
      ['formula.parts[1].items[3].part', { code: 'partUnknown', name: 'Biga' }],
      ['formula.parts[0].name', { code: 'partIdle', name: 'Sponge' }],
    ],
  ],
  [
    'a part that contains itself',
    ['parts', 0, 'items'],
    [
      { item: 'flour', g: 1000 },
      { part: 'Sponge', g: 100 },
    ],
    [
      ['formula.parts[0].items[1].part', { code: 'partUnknown', name: 'Sponge' }],
      ['formula.parts[1].items[3].part', { code: 'partTakenTwice', name: 'Sponge' }],
    ],
  ],
  [
    'a part twice in one',
    ['parts', 1, 'items'],
    [...dough, { part: 'Sponge', g: 10 }],
    [['formula.parts[1].items[5].part', { code: 'partTakenTwice', name: 'Sponge' }]],
  ],
  ['more of a part than is written of it: it is made larger', ['parts', 1, 'items', 3, 'g'], 9000, []],
  ['two parts of one name', ['parts', 1, 'name'], 'Sponge', [['formula.parts[1].name', { code: 'idTwice', id: 'Sponge' }]]],
  ['a part that weighs nothing', ['parts', 0, 'items'], [{ item: 'flour', g: 0 }], [['formula.parts[0].items', { code: 'noWeight' }]]],
  ['a line that weighs nothing beside one that does', ['parts', 0, 'items', 2, 'g'], 0, []],
  [
    'no flour in a dough',
    ['parts'],
    [
      {
        name: 'Dough',
        role: 'dough',
        items: [
          { item: 'water', g: 1000 },
          { item: 'salt', g: 20 },
        ],
      },
    ],
    [
      ['formula.parts[0].items', { code: 'noFlour' }],
      ['formula.method[0].additions[0].formula', { code: 'amountUnwritten', formula: 'dough', id: 'pot' }],
    ],
  ],
  [
    'no flour but that of the pot',
    ['parts'],
    [
      {
        name: 'Dough',
        role: 'dough',
        items: [
          { item: 'water', g: 1000 },
          { item: 'salt', g: 20 },
          { formula: 'pot', g: 1000 },
        ],
      },
    ],
    [],
  ],
  [
    'what was kept back, in a dough',
    ['parts', 1, 'items'],
    [...dough, { seed: true, g: 10 }],
    [['formula.parts[1].items[5].seed', { code: 'seedOutsideFerment' }]],
  ],
  [
    'a formula that is not there',
    ['parts', 1, 'items', 4, 'formula'],
    'ghost',
    [
      ['formula.parts[1].items[4].formula', { code: 'formulaUnknown', id: 'ghost' }],
      ['formula.method[0].additions[0].formula', { code: 'amountUnwritten', formula: 'dough', id: 'pot' }],
    ],
  ],
  [
    'itself',
    ['parts', 1, 'items', 4, 'formula'],
    'dough',
    [
      ['formula.parts[1].items[4].formula', { code: 'madeOfItself', id: 'dough', into: 'dough' }],
      ['formula.method[0].additions[0].formula', { code: 'amountUnwritten', formula: 'dough', id: 'pot' }],
    ],
  ],
  [
    'two rules for one thing that goes back in',
    ['takesBack'],
    [...DOUGH.takesBack, { what: 'scrap', capPct: 5, ageMin: 30 }],
    [['formula.takesBack[1].what', { code: 'takesBackTwice', what: 'scrap' }]],
  ],
  ['a step at no station', ['method', 0, 'station'], 'cellar', [['formula.method[0].station', { code: 'stationUnknown', id: 'cellar' }]]],
  ['a rest in no place', ['method', 2, 'place'], 'cellar', [['formula.method[2].place', { code: 'placeUnknown', id: 'cellar' }]]],
  [
    'a mixer that is not there',
    ['method', mix, 'claims', 0, 'ids', 0],
    'fork',
    [['formula.method[1].claims[0].ids[0]', { code: 'claimUnknown', kind: 'mixer', id: 'fork' }]],
  ],
  [
    'a deck that is not there',
    ['method', mix, 'claims', 0],
    { kind: 'deck', ids: ['bottom'], count: 1 },
    [['formula.method[1].claims[0].ids[0]', { code: 'claimUnknown', kind: 'deck', id: 'bottom' }]],
  ],
  ['any mixer', ['method', mix, 'claims', 0, 'ids'], [], []],
  [
    'vessels without a name',
    ['method', mix, 'claims', 0],
    { kind: 'vessel', ids: [], count: 1 },
    [['formula.method[1].claims[0].ids', { code: 'vesselsUnnamed' }]],
  ],
  [
    'vessels that come back at a step that is not there',
    ['method', mix, 'claims', 0],
    { kind: 'vessel', ids: ['tin'], count: 1, until: 'party' },
    [['formula.method[1].claims[0].until', { code: 'stepUnknown', id: 'party' }]],
  ],
  [
    'vessels that came back before they were taken',
    ['method', mix, 'claims', 0],
    { kind: 'vessel', ids: ['tin'], count: 1, until: 'weigh' },
    [['formula.method[1].claims[0].until', { code: 'untilBefore', id: 'weigh' }]],
  ],
  ['vessels that come back at the step itself', ['method', mix, 'claims', 0], { kind: 'vessel', ids: ['tin'], count: 1, until: 'mix' }, []],
  ['two steps of one id', ['method', 2, 'id'], 'mix', [['formula.method[2].id', { code: 'idTwice', id: 'mix' }]]],
  [
    'a step after one that comes later',
    ['method', mix, 'after'],
    [{ step: 'bulk', from: 'end', earliestMin: 0, targetMin: 0 }],
    [['formula.method[1].after[0].step', { code: 'stepNotBefore', id: 'bulk' }]],
  ],
  [
    'not after what is not before',
    ['method', 2, 'after'],
    [{ step: 'mix', from: 'end', earliestMin: 30, targetMin: 30, latestMin: 20 }],
    [['formula.method[2].after[0].latestMin', { code: 'lagOrder', earliestMin: 30, latestMin: 20 }]],
  ],
  [
    'growth whose best temperature is its least',
    ['method', 2, 'ripening'],
    { model: 'cardinal', referenceC: 25, minC: 30, optC: 30, maxC: 45 },
    [['formula.method[2].ripening.optC', { code: 'ripeningOrder' }]],
  ],
  [
    'growth whose best temperature is nearer to its least than to its most',
    ['method', 2, 'ripening'],
    { model: 'cardinal', referenceC: 25, minC: 3, optC: 20, maxC: 45 },
    [['formula.method[2].ripening.optC', { code: 'ripeningOrder' }]],
  ],
  ['growth in its order', ['method', 2, 'ripening'], { model: 'cardinal', referenceC: 25, minC: 3, optC: 32, maxC: 45 }, []],
  [
    'a bake at the end',
    ['method', 3],
    step('bake', { verb: 'bake', kind: 'bake', bake: [{ minutes: 5 }] }),
    [['formula.method[3].kind', { code: 'bakeLast' }]],
  ],
  [
    'a pot that goes in without being written, or said how much',
    ['method', mix, 'additions'],
    [{ formula: 'filling' }],
    [['formula.method[1].additions[0].formula', { code: 'amountUnwritten', formula: 'dough', id: 'filling' }]],
  ],
  ['one that says how much', ['method', mix, 'additions'], [{ formula: 'filling', pct: 5 }], []],
  [
    'more salt at a step than there is',
    ['method', mix, 'additions'],
    [{ item: 'salt', pct: 4 }],
    // 1000 + 4000 g of flour, and the half of 500 g from the pot (the seed is what the pot is made of): 4 % of 5250 g.
    [['formula.method[1].additions[0].pct', { code: 'addedTooMuch', id: 'salt', hasG: 105, addedG: 210 }]],
  ],
  [
    'all the salt, twice',
    ['method', mix, 'additions'],
    [{ item: 'salt' }, { item: 'salt' }],
    [['formula.method[1].additions[1].item', { code: 'addedTooMuch', id: 'salt', hasG: 105, addedG: 210 }]],
  ],
  [
    'held back of what is not in it',
    ['method', mix, 'additions'],
    [{ item: 'butter', heldBack: true }],
    [['formula.method[1].additions[0].item', { code: 'addedTooMuch', id: 'butter', hasG: 0, addedG: 0 }]],
  ],
  ['butter that the parts do not name, on top', ['method', mix, 'additions'], [{ item: 'butter', pct: 5 }], []],
  [
    'a side prep that is not there',
    ['sidePreps'],
    [{ formula: 'ghost', joins: 'mix' }],
    [
      ['formula.sidePreps[0].formula', { code: 'formulaUnknown', id: 'ghost' }],
      ['formula.sidePreps[0].joins', { code: 'notAdded', step: 'mix', id: 'ghost' }],
    ],
  ],
  [
    'a side prep that is a ferment',
    ['sidePreps'],
    [{ formula: 'pot', joins: 'weigh' }],
    [['formula.sidePreps[0].formula', { code: 'notAPrep', id: 'pot', kind: 'ferment' }]],
  ],
  [
    'a side prep that joins nowhere',
    ['sidePreps'],
    [{ formula: 'filling', joins: 'party' }],
    [['formula.sidePreps[0].joins', { code: 'stepUnknown', id: 'party' }]],
  ],
];

describe('R1 what is impossible in a formula stands at its field, and nothing else is refused', () => {
  test('the book on the quay and that of the demo house have no fault', () => {
    for (const formula of [POT, FILLING, DOUGH]) expect(formulaFaults(formula, QUAY_BOOK)).toEqual([]);
    const file = demoFile();
    expect(bookFaults(file, file.kitchen)).toEqual([]);
  });

  test.each(FORMULA)('%s', (_name, at, value, faults) => {
    const written = formulaSchema.parse(withValueAt(DOUGH, at, value));
    expect(placed(formulaFaults(written, QUAY_BOOK))).toEqual(faults);
  });

  test('more water held back than there is', () => {
    const additions = [{ item: 'water', pct: 70, heldBack: true }];
    const written = formulaSchema.parse(withValueAt(DOUGH, ['method', mix, 'additions'], additions));
    // All flour is 5000 g and the half of 500 g of the pot: 70 % of 5250 g.
    expect(placed(formulaFaults(written, QUAY_BOOK))).toEqual([
      ['formula.method[1].additions[0].pct', { code: 'addedTooMuch', id: 'water', hasG: 3000, addedG: 3675 }],
    ]);
  });

  test('a pot that is made with what nobody keeps back, or with it twice', () => {
    const { seedG: _kept, ...without } = POT;
    expect(placed(formulaFaults(without, QUAY_BOOK))).toEqual([['formula.seedG', { code: 'seedNotKept' }]]);
    const twice = withValueAt(POT, ['parts', 0, 'items', 1], { seed: true, g: 50 });
    expect(placed(formulaFaults(twice, QUAY_BOOK))).toEqual([['formula.parts[0].items[2].seed', { code: 'seedTwice' }]]);
    const only = withValueAt(POT, ['parts', 0, 'items'], [{ seed: true, g: 50 }]);
    expect(placed(formulaFaults(only, QUAY_BOOK))).toEqual([['formula.parts[0].items', { code: 'noWeight' }]]);
  });

  test('a circle over formulas is told at each of them, also where it goes through a step', () => {
    const sponge = formulaOf({
      ...FILLING,
      id: 'sponge',
      letters: 'S',
      parts: [{ name: 'Sponge', items: [{ formula: 'filling', g: 10 }] }],
    });
    const filling = withValueAt(FILLING, ['method', 0, 'additions'], [{ formula: 'sponge', pct: 10, heldBack: false }]);
    const context = { ...QUAY_BOOK, formulas: [sponge, filling] };
    expect(placed(formulaFaults(sponge, context))).toEqual([
      ['formula.parts[0].items[0].formula', { code: 'madeOfItself', id: 'filling', into: 'sponge' }],
    ]);
    expect(placed(formulaFaults(filling, context))).toEqual([
      ['formula.method[0].additions[0].formula', { code: 'madeOfItself', id: 'sponge', into: 'filling' }],
    ]);
  });

  test('a dough cannot be taken', () => {
    const other = formulaOf({
      ...DOUGH,
      id: 'other',
      letters: 'O',
      parts: [{ name: 'Other', items: [{ formula: 'dough', g: 10 }] }],
      method: [LOAF.way[0] as never],
    });
    expect(formulaFaults(other, QUAY_BOOK).map(({ facts }) => facts)).toContainEqual({ code: 'takenIsDough', id: 'dough' });
  });

  test('of a formula whose insides a screen does not know, nothing is held against it', () => {
    const known = QUAY_BOOK.formulas.map(({ id, letters, kind }) => ({ id, letters, kind }));
    const {
      parts: [, last],
    } = DOUGH;
    const fromPot = {
      ...DOUGH,
      parts: [
        {
          ...last,
          items: [
            { formula: 'pot', g: 500 },
            { item: 'water', g: 100 },
          ],
        },
      ],
      method: [DOUGH.method[3]],
    };
    expect(formulaFaults(formulaSchema.parse(fromPot), { ...QUAY_BOOK, formulas: known })).toEqual([]);
  });
});

const PRODUCT: readonly Case[] = [
  [
    'of no formula',
    ['formula'],
    'ghost',
    [
      ['product.formula', { code: 'formulaUnknown', id: 'ghost' }],
      ['product.sidePreps[0].notBefore', { code: 'stepUnknown', id: 'divide' }],
    ],
  ],
  ['with a step of the method', ['way', 1, 'id'], 'mix', [['product.way[1].id', { code: 'stepOfMethod', id: 'mix', formula: 'dough' }]]],
  ['in loads after no step', ['loads', 'after'], 'mix', [['product.loads.after', { code: 'stepUnknown', id: 'mix' }]]],
  [
    'a prep that does not go in where it joins',
    ['sidePreps', 0, 'joins'],
    'load',
    [['product.sidePreps[0].joins', { code: 'notAdded', step: 'load', id: 'filling' }]],
  ],
  [
    'a prep that waits for what comes later',
    ['sidePreps', 0, 'notBefore'],
    'load',
    [['product.sidePreps[0].notBefore', { code: 'waitsForLater', step: 'load', joins: 'fill' }]],
  ],
  [
    'a prep that waits for the step at which it joins',
    ['sidePreps', 0, 'notBefore'],
    'fill',
    [['product.sidePreps[0].notBefore', { code: 'waitsForLater', step: 'fill', joins: 'fill' }]],
  ],
  [
    'a prep that is ready before it may be begun',
    ['sidePreps', 0, 'withinMin'],
    5,
    [['product.sidePreps[0].readyMin', { code: 'readyAfterWithin', readyMin: 10, withinMin: 5 }]],
  ],
  ['a prep that is begun and ready at once', ['sidePreps', 0, 'withinMin'], 10, []],
  [
    'a prep twice at one step',
    ['sidePreps'],
    [LOAF.sidePreps[0], LOAF.sidePreps[0]],
    [['product.sidePreps[1].formula', { code: 'idTwice', id: 'filling' }]],
  ],
  ['the pot, as the formula has it written', ['way', 1, 'additions'], [{ formula: 'pot', heldBack: false }], []],
  [
    'a filling, not said how much',
    ['way', 1, 'additions'],
    [{ formula: 'filling', heldBack: false }],
    [['product.way[1].additions[0].formula', { code: 'amountUnwritten', formula: 'dough', id: 'filling' }]],
  ],
];

describe('R2 what is impossible in a product or an ingredient stands at its field', () => {
  test('the loaf has no fault', () => {
    expect(productFaults(LOAF, QUAY_BOOK)).toEqual([]);
  });

  test.each(PRODUCT)('%s', (_name, at, value, faults) => {
    expect(placed(productFaults(productSchema.parse(withValueAt(LOAF, at, value)), QUAY_BOOK))).toEqual(faults);
  });

  test('only yeast has a form', () => {
    const salt = ingredientSchema.parse({ id: 'salt', name: 'Salt', kind: 'salt', yeastForm: 'dry' });
    expect(placed(ingredientFaults(salt, QUAY_BOOK))).toEqual([['ingredient.yeastForm', { code: 'formsOfYeastOnly' }]]);
    for (const ingredient of QUAY_INGREDIENTS) expect(ingredientFaults(ingredient, QUAY_BOOK)).toEqual([]);
  });

  test('flour that becomes something else is missed by the doughs that have no other', () => {
    const flour = ingredientSchema.parse({ id: 'flour', name: 'Flour', kind: 'seed' });
    expect(placed(ingredientFaults(flour, QUAY_BOOK))).toEqual([['ingredient.kind', { code: 'flourNeeded', by: ['dough'] }]]);
    const rye = ingredientSchema.parse({ id: 'rye', name: 'Rye', kind: 'flour' });
    const withRye = withValueAt(DOUGH, ['parts', 0, 'items', 0], { item: 'rye', g: 1000 });
    const context = { ...QUAY_BOOK, ingredients: [...QUAY_INGREDIENTS, rye], formulas: [POT, FILLING, withRye] };
    expect(ingredientFaults(flour, context)).toEqual([]);
  });

  test('a whole book has its faults at the paths of its file', () => {
    const faults = bookFaults(
      { ingredients: QUAY_INGREDIENTS, formulas: [POT, withValueAt(DOUGH, ['letters'], 'P')], products: [LOAF] },
      QUAY_KITCHEN,
    );
    expect(faults.map(({ path }) => path)).toEqual([
      'formulas[0].letters',
      'formulas[1].letters',
      'products[0].way[0].additions[0].formula',
      'products[0].sidePreps[0].formula',
    ]);
  });
});

/** What a form can have while somebody types, in facts that screens put into words. */
const FORM: readonly (readonly [string, Inwards, unknown, string, FaultFacts])[] = [
  ['no name', ['name'], '', 'formula.name', { code: 'textNeeded' }],
  ['a name too long', ['name'], 'q'.repeat(61), 'formula.name', { code: 'textTooLong', most: 60 }],
  ['letters in a form of their own', ['letters'], 'qq', 'formula.letters', { code: 'lettersForm' }],
  ['no number', ['doughC'], Number.NaN, 'formula.doughC', { code: 'numberNeeded' }],
  ['too cold', ['doughC'], -6, 'formula.doughC', { code: 'atLeast', least: -5 }],
  ['too warm', ['doughC'], 46, 'formula.doughC', { code: 'atMost', most: 45 }],
  ['a weight below nothing', ['parts', 0, 'items', 0, 'g'], -1, 'formula.parts[0].items[0].g', { code: 'atLeast', least: 0 }],
  ['no ingredient', ['parts', 0, 'items', 0, 'item'], '', 'formula.parts[0].items[0].item', { code: 'keyForm' }],
  ['no steps', ['method'], [], 'formula.method', { code: 'oneNeeded' }],
  ['no such kind', ['kind'], 'cake', 'formula.kind', { code: 'choiceNeeded' }],
  [
    'earliest after target',
    ['method', 1, 'minutes'],
    { earliest: 7, target: 6 },
    'formula.method[1].minutes.earliest',
    { code: 'earliestAfterTarget', earliestMin: 7, targetMin: 6 },
  ],
  [
    'latest before target',
    ['method', 1, 'minutes'],
    { latest: 5, target: 6 },
    'formula.method[1].minutes.latest',
    { code: 'latestBeforeTarget', latestMin: 5, targetMin: 6 },
  ],
  [
    'lost before late',
    ['method', 1, 'toleranceMin'],
    { late: 5, lost: 2 },
    'formula.method[1].toleranceMin.lost',
    { code: 'lostBeforeLate', lostMin: 2, lateMin: 5 },
  ],
  ['judged by nothing', ['method', 1, 'kind'], 'judged', 'formula.method[1].check', { code: 'checkNeeded' }],
  ['a bake without phases', ['method', 1, 'kind'], 'bake', 'formula.method[1].bake', { code: 'phasesNeeded' }],
  [
    'phases of what is no bake',
    ['method', 1, 'bake'],
    [{ minutes: 6 }],
    'formula.method[1].bake',
    { code: 'phasesOfOther', kind: 'timed' },
  ],
  [
    'an addition of two things',
    ['method', 1, 'additions', 0, 'formula'],
    'pot',
    'formula.method[1].additions[0].item',
    { code: 'additionOfOne' },
  ],
  [
    'per cent and grams a piece',
    ['method', 1, 'additions', 0],
    { item: 'salt', pct: 1, gPerPiece: 1 },
    'formula.method[1].additions[0].gPerPiece',
    { code: 'additionInOneWay' },
  ],
  [
    'a formula held back',
    ['method', 1, 'additions', 0],
    { formula: 'pot', heldBack: true },
    'formula.method[1].additions[0].heldBack',
    { code: 'heldBackFormula' },
  ],
];

describe('R3 what a form cannot even send has its facts too', () => {
  test.each(FORM)('%s', (_name, at, value, path, facts) => {
    const { error } = formulaSchema.safeParse(withValueAt(DOUGH, at, value));
    expect(error && placed(formFaults('formula', error))).toEqual([[path, facts]]);
  });

  test('a piece that weighs nothing, and phases that do not last as long as the bake', () => {
    const nothing = productSchema.safeParse({ ...LOAF, pieceG: 0 });
    expect(nothing.error && placed(formFaults('product', nothing.error))).toEqual([['product.pieceG', { code: 'weightNeeded' }]]);
    const short = productSchema.safeParse(withValueAt(LOAF, ['way', 2, 'bake', 0, 'minutes'], 39));
    expect(short.error && placed(formFaults('product', short.error))).toEqual([
      ['product.way[2].bake', { code: 'phasesDiffer', sumMin: 39, targetMin: 40 }],
    ]);
  });
});

function placed(faults: readonly FileFault[]): readonly (readonly [string, FaultFacts | undefined])[] {
  return faults.map(({ path, facts }) => [path, facts]);
}

import type { TemplateResult } from 'lit';
import '../../../../display/formulas/book-in-out.ts';
import '../../../../display/formulas/book-list.ts';
import { draftOf } from '../../../../display/formulas/formula-draft.ts';
import type { EditorContext } from '../../../../display/formulas/editor-context.ts';
import '../../../../display/formulas/formula-desk.ts';
import '../../../../display/formulas/formula-head.ts';
import '../../../../display/formulas/formulas-header.ts';
import '../../../../display/formulas/import-recipe.ts';
import '../../../../display/formulas/part-adder.ts';
import '../../../../display/formulas/part-table.ts';
import '../../../../display/formulas/save-bar.ts';
import '../../../../display/formulas/totals-panel.ts';
import '../../../../display/formulas/totals-strip.ts';
import { noSize, type SizeChoice } from '../../../../display/formulas/size-choice.ts';
import '../../../../display/formulas/size-panel.ts';
import '../../../../display/formulas/version-compare.ts';
import type { BookFormula, BookIndex } from '../../../../shared/book/book-api.ts';
import { overallOf } from '../../../../shared/book/overall.ts';
import { importedRecipe } from '../../../../shared/book/recipe-import.ts';
import type { Formula, Product } from '../../../../shared/documents/formula.ts';
import type { FloorState } from '../../../../shared/floor/state.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import { floorOf } from '../rows.ts';
import type { Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

const NO_BOOK: BookIndex = { entries: [], ingredients: [], ingredientsVersion: 0 };
const RECIPE = {
  '@type': 'Recipe',
  name: 'Pier loaf',
  recipeYield: '2 loaves',
  totalTime: 'PT4H30M',
  recipeIngredient: ['1 kg wheat flour', '650 ml cold water', '20 g salt', '2 tsp dry yeast'],
  recipeInstructions: 'Mix for 5 minutes.\nLet rise for 2 hours.\nShape.\nBake at 230 °C for 40 minutes.\nSing.',
};

const STANDINGS = ['changed', 'saving', 'unsent', 'overtaken', 'saved'] as const;
const BLANK = { path: 'formula.name', words: 'say a name' };

/** The page's own parts: its header, the open formula with its tables and totals, what becomes of a draft. */
function desk(floor: FloorState, context: EditorContext, view: Scenes['kitchen']['view']): TemplateResult[] {
  const { left } = versionsOf(floor);
  const { formula } = left;
  const sums = overallOf(formula, context.formulaOf, context.ingredients);
  assert(sums.ok, 'the formula adds up');
  const overall = sums.value;
  const partIndex = formula.parts.length - 1;
  const content = formula.parts[partIndex];
  return [
    specimen('formulas-header', 'whole', made('formulas-header', { view, isOpen: true })),
    ...(['parts', 'method'] as const).map((section) =>
      specimen(
        `formula-desk, ${section}`,
        'whole',
        made('formula-desk', { draft: draftOf(left), loaded: left, overall, context, section }),
      ),
    ),
    specimen('formula-head', 'whole', made('formula-head', { formula, context })),
    specimen('part-table', 'whole', made('part-table', { formula, partIndex, content: content ?? null, context })),
    specimen('part-adder', 'whole', made('part-adder', { formula, context })),
    specimen('totals-panel', 'on-desk', made('totals-panel', { formula, overall, context })),
    specimen('totals-strip', 'whole', made('totals-strip', { overall, units: context.house.units })),
    ...STANDINGS.map((phase) => specimen(`save-bar, ${phase}`, 'whole', made('save-bar', { standing: { phase, version: 2 } }))),
    specimen('save-bar, with a fault', 'whole', made('save-bar', { standing: { phase: 'changed', version: 2 }, faults: [BLANK] })),
  ];
}

/** The book's list, sizes with their weigh-outs, two versions, what comes in and goes out. */
export function formulasBookSection({ kitchen }: Scenes): TemplateResult {
  const floor = floorOf(kitchen);
  const index = indexOf(floor);
  const context = contextOf(floor, index);
  return section('formulas-book', 'Parts of the formula book', [
    shelf('The list', [
      specimen('book-list', 'on-desk', made('book-list', { index, openId: 'country' })),
      specimen('book-list, none', 'on-desk', made('book-list', { index: NO_BOOK })),
      specimen('book-list, not here yet', 'on-desk', made('book-list')),
    ]),
    shelf('The open formula', desk(floor, context, kitchen.view), 'stacked'),
    shelf('How much', sizes(floor, context), 'stacked'),
    shelf('Two versions', [specimen('version-compare', 'whole', made('version-compare', { ...versionsOf(floor), context }))], 'stacked'),
    shelf('In and out', [
      specimen('book-in-out', 'on-desk', made('book-in-out', { index })),
      specimen('import-recipe', 'on-desk', made('import-recipe', { recipe: recipeOf(index), units: context.house.units })),
    ]),
  ]);
}

function sizes(floor: FloorState, context: EditorContext): TemplateResult[] {
  const sized = (name: string, formulaId: string, change: Partial<SizeChoice>): TemplateResult => {
    const formula = formulaIn(floor, formulaId);
    const products = productsOf(floor, formulaId);
    const choice = { ...noSize(products), ...change };
    return specimen(
      `size-panel, ${name}`,
      'whole',
      made('size-panel', { formula, version: 1, products, context, choice, serviceDate: '2026-05-02' }),
    );
  };
  return [
    sized('pieces of two products', 'milk-buns', { pieces: { 'milk-bun': { pieces: 90 }, 'custard-bun': { pieces: 60 } } }),
    sized('with preferment and soaker', 'rye', { mode: 'dough', doughG: 14_000 }),
    sized('less than the mixer takes', 'country', { mode: 'flour', flourG: 500 }),
  ];
}

function indexOf(floor: FloorState): BookIndex {
  const entries = Object.entries(floor.formulaVersions).map(([id, version]) => {
    const { name, letters, kind, parts } = formulaIn(floor, id);
    const lines = parts.flatMap(({ items }) => items);
    return {
      id,
      name,
      letters,
      kind,
      version,
      isArchived: false,
      atMs: null,
      hydrationPct: kind === 'dough' ? 68.4 : null,
      ingredientIds: lines.flatMap((line) => ('item' in line ? [line.item] : [])),
      products: productsOf(floor, id).map((product) => ({ id: product.id, name: product.name, version: 1 })),
    };
  });
  return { entries, ingredients: [...(floor.ingredients?.document ?? [])], ingredientsVersion: 1 };
}

function contextOf(floor: FloorState, { entries, ingredients }: BookIndex): EditorContext {
  const kitchen = floor.kitchen?.document;
  const house = floor.house?.document;
  assert(kitchen !== undefined && house !== undefined, 'the scene has no house');
  const formulaOf = (id: string): Formula | null => (id in floor.formulaVersions ? formulaIn(floor, id) : null);
  return { kitchen, house, ingredients, entries, formulaOf, faults: [] };
}

function formulaIn(floor: FloorState, id: string): Formula {
  const formula = Object.values(floor.formulas).find((known) => known.id === id);
  assert(formula !== undefined, `the scene has no formula ${id}`);
  return formula;
}

function productsOf(floor: FloorState, formulaId: string): readonly Product[] {
  return Object.values(floor.products).filter(({ formula }) => formula === formulaId);
}

/** A formula as it was, and with a line more, one other, one gone, two steps the other way round, and another piece weight. */
function versionsOf(floor: FloorState): { left: BookFormula; right: BookFormula } {
  const formula = formulaIn(floor, 'country');
  const history = [
    { version: 1, atMs: null },
    { version: 2, atMs: 1_777_600_000_000 },
  ];
  const products = productsOf(floor, 'country').map((product) => ({ product, version: 1 }));
  const left = { formula, version: 1, newestVersion: 2, isArchived: false, history, needs: [], products };
  const parts = formula.parts.map((part) => ({
    ...part,
    items: [...part.items.filter((_line, index) => index !== 2), { item: 'linseed', g: 200 }].map((line) =>
      'item' in line && line.item === 'water' ? { ...line, g: line.g + 100 } : line,
    ),
  }));
  const [weigh, fill, ...method] = formula.method;
  const changed = {
    ...formula,
    doughC: 27,
    parts,
    method: [weigh, ...method.slice(0, 2), fill, ...method.slice(2)].filter((step) => step !== undefined),
  };
  const others = products.map(({ product }) => ({ product: { ...product, pieceG: product.pieceG + 50 }, version: 2 }));
  return { left, right: { ...left, formula: changed, version: 2, products: others } };
}

function recipeOf({ ingredients }: BookIndex): NonNullable<HTMLElementTagNameMap['import-recipe']['recipe']> {
  const result = importedRecipe(RECIPE, ingredients, { formulaIds: new Set(), productIds: new Set(), letters: new Set() });
  assert(result.ok, 'the recipe is read');
  return result.value;
}

import type { TemplateResult } from 'lit';
import type { EditorContext } from '../../../../display/formulas/editor-context.ts';
import '../../../../display/formulas/ingredient-editor.ts';
import '../../../../display/formulas/method-editor.ts';
import { placeAt } from '../../../../display/formulas/form-place.ts';
import '../../../../display/formulas/product-editor.ts';
import '../../../../display/formulas/step-editor.ts';
import '../../../../display/formulas/takes-back-editor.ts';
import { formulaFaults } from '../../../../shared/documents/book-faults.ts';
import type { Formula } from '../../../../shared/documents/formula.ts';
import type { Step } from '../../../../shared/documents/method.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import { floorOf } from '../rows.ts';
import type { Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

/** Editors of a method, of its steps, of a product and of an ingredient, with something wrong among it. */
export function formulasMethodSection({ kitchen: { view, nowMs } }: Scenes): TemplateResult {
  const floor = floorOf({ view, nowMs });
  const kitchen = floor.kitchen?.document;
  const house = floor.house?.document;
  const formulas = Object.values(floor.formulas);
  const product = Object.values(floor.products)[0];
  const formula = formulas.find(({ id }) => id === product?.formula);
  const ingredients = floor.ingredients?.document ?? [];
  assert(kitchen !== undefined && house !== undefined && product !== undefined && formula !== undefined, 'the scene has no book');
  const wrong = withFault(formula);
  const context: EditorContext = {
    kitchen,
    house,
    ingredients,
    entries: formulas.map(({ id, name, letters, kind }) => ({
      id,
      name,
      letters,
      kind,
      version: 1,
      isArchived: false,
      atMs: null,
      hydrationPct: null,
      ingredientIds: [],
      products: [],
    })),
    formulaOf: (id) => formulas.find((known) => known.id === id) ?? null,
    faults: formulaFaults(wrong, { kitchen, ingredients, formulas }),
  };
  const step = (steps: readonly Step[], index: number): HTMLElement =>
    made('step-editor', { steps, index, context, place: placeAt('formula', ['method', index], context.faults) });
  const bakeAt = product.way.findIndex(({ kind }) => kind === 'bake');
  const takesBack: Formula['takesBack'] = [{ what: 'oldDough', capPct: 10, ageMin: 1440 }];
  return section('formulas-method', 'Methods, products, ingredients', [
    shelf('A method', [specimen('method-editor', 'whole', made('method-editor', { steps: wrong.method, context }))], 'stacked'),
    shelf('Steps', [
      specimen('step-editor, something wrong', 'on-desk', step(wrong.method, 0)),
      specimen('step-editor, a bake', 'on-desk', step(product.way, bakeAt)),
    ]),
    shelf('What goes back in', [specimen('takes-back-editor', 'whole', made('takes-back-editor', { takesBack, context }))], 'stacked'),
    shelf('A product', [specimen('product-editor', 'whole', made('product-editor', { product, context }))], 'stacked'),
    shelf(
      'An ingredient',
      [specimen('ingredient-editor', 'whole', made('ingredient-editor', { ingredient: ingredients[0] ?? null, context }))],
      'stacked',
    ),
  ]);
}

/** A first step that is at a station which is not there. */
function withFault(formula: Formula): Formula {
  return { ...formula, method: formula.method.map((step, index) => (index === 0 ? { ...step, station: 'cellar' } : step)) };
}

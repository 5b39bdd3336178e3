import { checkAdded } from './added-faults.ts';
import { bookLookup, wholeFormula, type BookContext, type BookLookup } from './book-lookup.ts';
import type { Formula, Ingredient, Product } from './formula.ts';
import { faultAt, idSet, uniqueIds, type Fault, type FileFault } from './kitchen-faults.ts';
import type { Keeping } from './keeping.ts';
import type { Kitchen } from './kitchen.ts';
import type { Step } from './method.ts';
import { checkOvenRoom } from './oven-room-faults.ts';
import { checkParts, hasFlour } from './part-faults.ts';
import { checkSidePreps } from './side-prep-faults.ts';
import { checkSteps } from './step-faults.ts';

/**
 * Everything that is impossible in a formula whose shape is right, held against the rest of the book and the kitchen.
 * Paths begin with `formula`. Empty where nothing is. What is only unusual is said by `remarksOf`.
 */
export function formulaFaults(formula: Formula, context: BookContext): FileFault[] {
  return gathered((fault) => checkFormula(formula, 'formula', bookLookup(context), fault));
}

/** Everything that is impossible in a product whose shape is right. Paths begin with `product`. */
export function productFaults(product: Product, context: BookContext): FileFault[] {
  return gathered((fault) => checkProduct(product, 'product', bookLookup(context), fault));
}

/**
 * Everything that is impossible in an ingredient, new or changed: also what formulas of the book could not do with it any
 * more. Paths begin with `ingredient`.
 */
export function ingredientFaults(ingredient: Ingredient, context: BookContext): FileFault[] {
  return gathered((fault) => {
    if (ingredient.yeastForm !== undefined && ingredient.kind !== 'yeast') fault('ingredient.yeastForm', { code: 'formsOfYeastOnly' });
    const before = context.ingredients.find((other) => other.id === ingredient.id);
    if (before?.kind !== 'flour' || ingredient.kind === 'flour') return;
    const was = bookLookup(context);
    const is = bookLookup({
      ...context,
      ingredients: context.ingredients.map((other) => (other.id === ingredient.id ? ingredient : other)),
    });
    const by = context.formulas.filter((formula) => formula.kind === 'dough' && hasFlour(formula, was) && !hasFlour(formula, is));
    if (by.length > 0) fault('ingredient.kind', { code: 'flourNeeded', by: by.map((formula) => formula.id) });
  });
}

/** The lists of a whole book, in a file of any kind. */
export interface BookLists {
  readonly ingredients: readonly Ingredient[];
  readonly formulas: readonly Formula[];
  readonly products: readonly Product[];
}

/** What is wrong with a whole book. Paths begin with `ingredients[n]`, `formulas[n]` and `products[n]`. */
export function bookFaults({ ingredients, formulas, products }: BookLists, kitchen: Kitchen): FileFault[] {
  const lookup = bookLookup({ kitchen, ingredients, formulas });
  return gathered((fault) => {
    uniqueIds('ingredients', ingredients, fault);
    uniqueIds('formulas', formulas, fault);
    uniqueIds('products', products, fault);
    ingredients.forEach((ingredient, index) => {
      if (ingredient.yeastForm !== undefined && ingredient.kind !== 'yeast')
        fault(`ingredients[${index}].yeastForm`, { code: 'formsOfYeastOnly' });
    });
    formulas.forEach((formula, index) => checkFormula(formula, `formulas[${index}]`, lookup, fault));
    products.forEach((product, index) => checkProduct(product, `products[${index}]`, lookup, fault));
  });
}

/** The faults of one formula at any path. */
export function checkFormula(formula: Formula, path: string, lookup: BookLookup, fault: Fault): void {
  const other = lookup.byLetters.get(formula.letters)?.find((id) => id !== formula.id);
  if (other !== undefined) fault(`${path}.letters`, { code: 'lettersTaken', letters: formula.letters, by: other });
  if (formula.seedG !== undefined && formula.kind !== 'ferment') fault(`${path}.seedG`, { code: 'keepsSeed', kind: formula.kind });
  if (formula.keeping !== undefined && formula.kind !== 'prep') fault(`${path}.keeping`, { code: 'keepingOfPreps', kind: formula.kind });
  checkKeptFrom(formula.keeping, formula.method, path, fault);
  checkParts(formula, path, lookup, fault);
  formula.takesBack.forEach(({ what }, index) => {
    if (formula.takesBack.findIndex((rule) => rule.what === what) < index)
      fault(`${path}.takesBack[${index}].what`, { code: 'takesBackTwice', what });
  });
  checkSteps(formula.method, formula, `${path}.method`, lookup, fault);
  checkAdded(formula, path, lookup, fault);
  checkSidePreps(formula.sidePreps, formula.method, `${path}.sidePreps`, lookup, fault);
}

/** The faults of one product at any path. */
export function checkProduct(product: Product, path: string, lookup: BookLookup, fault: Fault): void {
  const known = lookup.formulas.get(product.formula);
  if (known === undefined) fault(`${path}.formula`, { code: 'formulaUnknown', id: product.formula });
  const method = known?.method ?? [];
  const methodIds = idSet(method);
  product.way.forEach((step, index) => {
    if (methodIds.has(step.id)) fault(`${path}.way[${index}].id`, { code: 'stepOfMethod', id: step.id, formula: product.formula });
  });
  const formula = wholeFormula(lookup, product.formula);
  checkSteps(product.way, formula, `${path}.way`, lookup, fault);
  checkSidePreps(product.sidePreps, [...method, ...product.way], `${path}.sidePreps`, lookup, fault);
  checkOvenRoom(product, path, lookup, fault);
  checkKeptFrom(product.keeping, product.way, path, fault);
  const after = product.loads?.after;
  if (after !== undefined && !product.way.some((step) => step.id === after))
    fault(`${path}.loads.after`, { code: 'stepUnknown', id: after });
}

/** What has to be kept counts from one of its own steps. */
function checkKeptFrom(keeping: Keeping | undefined, steps: readonly Step[], path: string, fault: Fault): void {
  const from = keeping?.from;
  if (from !== undefined && !steps.some((step) => step.id === from)) fault(`${path}.keeping.from`, { code: 'stepUnknown', id: from });
}

function gathered(look: (fault: Fault) => void): FileFault[] {
  const faults: FileFault[] = [];
  look((path, what) => {
    faults.push(faultAt(path, what));
  });
  return faults;
}

import { checkFormula, checkProduct, ingredientFaults } from '../documents/book-faults.ts';
import { bookLookup } from '../documents/book-lookup.ts';
import { bookUse, checkBroken, checkTakers } from '../documents/broken-by.ts';
import { faultAt, uniqueIds, type Fault, type FileFault } from '../documents/kitchen-faults.ts';
import { bookContextOf, formulasInForce, productsInForce } from './book-of.ts';
import type { CommandOf } from './commands.ts';
import { newestFormula } from './contents.ts';
import { ingredientsWith } from './decide/documents-in.ts';
import type { FloorState } from './state.ts';

/**
 * Everything that keeps a book from being taken in: what is impossible in it beside the rest of the house's book, and what
 * would break there. Paths are those of the book's file. Formulas that the file has out of the way need not be possible,
 * as long as nobody takes them back.
 */
export function bookInFaults(state: FloorState, book: Omit<CommandOf<'bringInBook'>, 'type'>): FileFault[] {
  const faults: FileFault[] = [];
  const fault: Fault = (path, what) => {
    faults.push(faultAt(path, what));
  };
  uniqueIds('ingredients', book.ingredients, fault);
  uniqueIds('formulas', book.formulas, fault);
  uniqueIds('products', book.products, fault);
  const ids = new Set(book.formulas.map((formula) => formula.id));
  book.archived.forEach((id, index) => {
    if (!ids.has(id)) fault(`archived[${index}]`, { code: 'formulaUnknown', id });
  });
  if (faults.length > 0) return faults;

  const were = bookContextOf(state);
  const archived = new Set(book.archived);
  const stays = formulasInForce(state).filter((formula) => !ids.has(formula.id));
  const comes = book.formulas.filter((formula) => !archived.has(formula.id));
  const productIds = new Set(book.products.map((product) => product.id));
  const products = productsInForce(state).filter((product) => !productIds.has(product.id));
  const lookup = bookLookup({
    ...were,
    ingredients: ingredientsWith(state.ingredients?.document ?? [], book.ingredients),
    formulas: [...stays, ...comes],
  });
  const use = bookUse(stays, products);
  const useWithOwn = bookUse([...stays, ...comes], products);
  const before = newestFormula(state);
  const stay = { ...were, formulas: stays };
  book.ingredients.forEach((ingredient, index) => {
    for (const { path, facts } of ingredientFaults(ingredient, stay))
      if (facts !== undefined) fault(path.replace('ingredient', `ingredients[${index}]`), facts);
  });
  book.formulas.forEach((formula, index) => {
    const path = `formulas[${index}]`;
    const was = before(formula.id);
    if (archived.has(formula.id)) {
      checkTakers(formula, path, use, fault);
      return;
    }
    checkFormula(formula, path, lookup, fault);
    if (was !== null) checkBroken(was, formula, path, { ...use, productsOf: useWithOwn.productsOf }, fault);
  });
  book.products.forEach((product, index) => {
    if (!archived.has(product.formula)) checkProduct(product, `products[${index}]`, lookup, fault);
  });
  return faults;
}

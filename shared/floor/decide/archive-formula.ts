import { checkFormula, checkProduct } from '../../documents/book-faults.ts';
import { bookLookup } from '../../documents/book-lookup.ts';
import { bookUse, checkTakers } from '../../documents/broken-by.ts';
import { accepted, refused } from '../../result.ts';
import { bookContextOf, formulasInForce, productsInForce } from '../book-of.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { newestFormula } from '../contents.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { unlessFaulty } from './faulty.ts';

/**
 * Puts a formula out of the way, unless one that stays takes from it, or back, where it is still possible in the kitchen
 * and the book as they are by then. What runs and what is planned keeps it.
 */
export function decideArchiveFormula(state: FloorState, command: CommandOf<'archiveFormula'>, context: CommandContext): Decision {
  const { formulaId, isArchived } = command;
  const formula = newestFormula(state)(formulaId);
  if (formula === null) return refused({ code: 'documentMissing', kind: 'formula', id: formulaId });
  if (state.archivedFormulas.includes(formulaId) === isArchived) return refused({ code: 'nothingChanges' });
  const right = unlessFaulty((fault) => {
    const inForce = formulasInForce(state);
    if (isArchived) {
      const others = inForce.filter((other) => other.id !== formulaId);
      checkTakers(formula, 'formula', bookUse(others, productsInForce(state)), fault);
      return;
    }
    const lookup = bookLookup({ ...bookContextOf(state), formulas: [...inForce, formula] });
    checkFormula(formula, 'formula', lookup, fault);
    productsInForce(state)
      .filter((product) => product.formula === formulaId)
      .forEach((product, index) => checkProduct(product, `products[${index}]`, lookup, fault));
  });
  if (!right.ok) return right;
  return accepted([{ type: 'formulaArchived', formulaId, isArchived, atMs: context.tapMs }]);
}

import { checkFormula } from '../../documents/book-faults.ts';
import { bookLookup } from '../../documents/book-lookup.ts';
import { bookUse, checkBroken } from '../../documents/broken-by.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import { accepted, refused } from '../../result.ts';
import { bookContextOf, formulasInForce, productsInForce } from '../book-of.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { newestFormula } from '../contents.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { unlessFaulty } from './faulty.ts';

/**
 * The formula becomes its next version, where nobody else has changed it since it was read, it is possible in the kitchen
 * and the book as they are, and nothing that rests on it breaks. What runs keeps the version that it began with.
 */
export function decideAdoptFormula(state: FloorState, command: CommandOf<'adoptFormula'>, context: CommandContext): Decision {
  const { formula, fromVersion } = command;
  const version = state.formulaVersions[formula.id] ?? 0;
  if (fromVersion !== version) return refused({ code: 'documentChanged', version });
  const before = newestFormula(state)(formula.id);
  const right = unlessFaulty((fault) => {
    checkFormula(formula, 'formula', bookLookup(bookContextOf(state)), fault);
    if (before !== null) checkBroken(before, formula, 'formula', bookUse(formulasInForce(state), productsInForce(state)), fault);
  });
  if (!right.ok) return right;
  if (before !== null && isSameDocument(before, formula)) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'formulaAdopted', version: version + 1, formula, atMs: context.tapMs }]);
}

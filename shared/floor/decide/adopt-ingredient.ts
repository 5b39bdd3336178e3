import { ingredientFaults } from '../../documents/book-faults.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import { accepted, refused } from '../../result.ts';
import { bookContextOf } from '../book-of.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/** The ingredient is in the list as it is said, where formulas can still be made with it. */
export function decideAdoptIngredient(state: FloorState, command: CommandOf<'adoptIngredient'>, _context: CommandContext): Decision {
  const { ingredient } = command;
  const context = bookContextOf(state);
  const faults = ingredientFaults(ingredient, context);
  if (faults.length > 0) return refused({ code: 'documentFaulty', faults });
  const before = context.ingredients.find((other) => other.id === ingredient.id);
  if (isSameDocument(before, ingredient)) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'ingredientAdopted', version: (state.ingredients?.version ?? 0) + 1, ingredient }]);
}

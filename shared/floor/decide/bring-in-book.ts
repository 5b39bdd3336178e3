import { bookInFaults } from '../book-in-faults.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { documentsIn, ingredientsWith } from './documents-in.ts';
import { MOST_FAULTS } from './faulty.ts';

/**
 * Takes in a book from a file, all of it or nothing: each document that is new or differs becomes the next version, and
 * its formulas are in the way or out of it as the file says. What the file does not name stays as it is.
 */
export function decideBringInBook(state: FloorState, command: CommandOf<'bringInBook'>, context: CommandContext): Decision {
  const faults = bookInFaults(state, command);
  if (faults.length > 0) return refused({ code: 'documentFaulty', faults: faults.slice(0, MOST_FAULTS) });
  const atMs = context.tapMs;
  const events: FloorEvent[] = [];
  const ingredients = ingredientsWith(state.ingredients?.document ?? [], command.ingredients);
  if (!isSameDocument(state.ingredients?.document ?? [], ingredients))
    events.push({ type: 'ingredientsAdopted', version: (state.ingredients?.version ?? 0) + 1, ingredients: [...ingredients] });
  events.push(...documentsIn(state, command.formulas, command.products, atMs).events);
  const before = new Set(state.archivedFormulas);
  const after = new Set(command.archived);
  for (const { id } of command.formulas) {
    if (before.has(id) !== after.has(id)) events.push({ type: 'formulaArchived', formulaId: id, isArchived: after.has(id), atMs });
  }
  return events.length === 0 ? refused({ code: 'nothingChanges' }) : accepted(events);
}

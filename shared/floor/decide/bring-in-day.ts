import { isSameDocument } from '../../documents/same-document.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { newestFormula } from '../contents.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import type { DayBook } from './day-plan.ts';
import { documentsIn, ingredientsWith, type Versions } from './documents-in.ts';
import { broughtOrders } from './brought-orders.ts';
import { plannedEvents } from './plan-day.ts';

/**
 * Takes in what a bakehouse file says: each document that differs from the one in force becomes its next version, the
 * day's orders are placed, and its batches are planned with the preps that go into them. A day is planned once. Formulas
 * of the file that were out of the way are back; ingredients that it does not name stay in the list.
 */
export function decideBringInDay(state: FloorState, command: CommandOf<'bringInDay'>, context: CommandContext): Decision {
  if (state.openDates.includes(command.serviceDate) || state.closedDates.includes(command.serviceDate))
    return refused({ code: 'dayAlreadyOpen', serviceDate: command.serviceDate });
  const events: FloorEvent[] = [];
  if (!isSameDocument(state.house?.document, command.house))
    events.push({ type: 'houseAdopted', version: (state.house?.version ?? 0) + 1, house: command.house });
  if (!isSameDocument(state.kitchen?.document, command.kitchen))
    events.push({ type: 'kitchenAdopted', version: (state.kitchen?.version ?? 0) + 1, kitchen: command.kitchen });
  const ingredients = ingredientsWith(state.ingredients?.document ?? [], command.ingredients);
  if (!isSameDocument(state.ingredients?.document, ingredients))
    events.push({ type: 'ingredientsAdopted', version: (state.ingredients?.version ?? 0) + 1, ingredients: [...ingredients] });
  const documents = documentsIn(state, command.formulas, command.products, context.nowMs);
  events.push(...documents.events);
  for (const { id } of command.formulas) {
    if (state.archivedFormulas.includes(id))
      events.push({ type: 'formulaArchived', formulaId: id, isArchived: false, atMs: context.nowMs });
  }
  events.push({ type: 'dayOpened', serviceDate: command.serviceDate });
  const ordered = broughtOrders(state, command, context);
  if (!ordered.ok) return ordered;
  events.push(...ordered.value);
  const planned = plannedEvents(
    state,
    command,
    context,
    bookOfFile(state, { ...command, ingredients: [...ingredients] }, documents.versions),
  );
  return planned.ok ? accepted([...events, ...planned.value]) : planned;
}

/** What the file has counts before what the house has. */
function bookOfFile(state: FloorState, { formulas, products, ingredients }: CommandOf<'bringInDay'>, versions: Versions): DayBook {
  return {
    formulaOf: (id) => formulas.find((formula) => formula.id === id) ?? newestFormula(state)(id),
    productOf: (id) => products.find((product) => product.id === id) ?? null,
    ingredients,
    versions,
  };
}

import { isSameDocument } from '../../documents/same-document.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { versionKey, type FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { plannedEvents } from './plan-day.ts';

/**
 * Takes in what a bakehouse file says: each document that differs from the one in force becomes its next version, and
 * the day's batches are planned with the preps that go into them. A day is planned once.
 */
export function decideBringInDay(state: FloorState, command: CommandOf<'bringInDay'>, context: CommandContext): Decision {
  if (state.openDates.includes(command.serviceDate) || state.closedDates.includes(command.serviceDate))
    return refused({ code: 'dayAlreadyOpen', serviceDate: command.serviceDate });
  const events: FloorEvent[] = [];
  if (!isSameDocument(state.house?.document, command.house))
    events.push({ type: 'houseAdopted', version: (state.house?.version ?? 0) + 1, house: command.house });
  if (!isSameDocument(state.kitchen?.document, command.kitchen))
    events.push({ type: 'kitchenAdopted', version: (state.kitchen?.version ?? 0) + 1, kitchen: command.kitchen });
  if (!isSameDocument(state.ingredients?.document, command.ingredients)) {
    events.push({ type: 'ingredientsAdopted', version: (state.ingredients?.version ?? 0) + 1, ingredients: command.ingredients });
  }
  const formulaVersions: Record<string, number> = { ...state.formulaVersions };
  for (const formula of command.formulas) {
    const version = formulaVersions[formula.id] ?? 0;
    if (isSameDocument(state.formulas[versionKey(formula.id, version)], formula)) continue;
    formulaVersions[formula.id] = version + 1;
    events.push({ type: 'formulaAdopted', version: version + 1, formula });
  }
  const productVersions: Record<string, number> = { ...state.productVersions };
  for (const product of command.products) {
    const version = productVersions[product.id] ?? 0;
    if (isSameDocument(state.products[versionKey(product.id, version)], product)) continue;
    productVersions[product.id] = version + 1;
    events.push({ type: 'productAdopted', version: version + 1, product });
  }
  events.push({ type: 'dayOpened', serviceDate: command.serviceDate });
  const planned = plannedEvents(state, command, context, { formulaVersions, productVersions });
  return planned.ok ? accepted([...events, ...planned.value]) : planned;
}

import { derivedId } from '../../ids.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { versionKey, type FloorState, type PlannedCut } from '../state.ts';
import type { Decision } from './decision.ts';

/**
 * Takes in what a bakehouse file says: each document that differs from the one in force becomes its next version, and
 * the day's batches are planned, numbered formula by formula in the order of their starts. A day is planned once.
 */
export function decideBringInDay(state: FloorState, command: CommandOf<'bringInDay'>, context: CommandContext): Decision {
  if (state.openDates.includes(command.serviceDate)) return refused({ code: 'dayAlreadyOpen', serviceDate: command.serviceDate });
  const events: FloorEvent[] = [];
  if (!sameDocument(state.house?.document, command.house))
    events.push({ type: 'houseAdopted', version: (state.house?.version ?? 0) + 1, house: command.house });
  if (!sameDocument(state.kitchen?.document, command.kitchen))
    events.push({ type: 'kitchenAdopted', version: (state.kitchen?.version ?? 0) + 1, kitchen: command.kitchen });
  if (!sameDocument(state.ingredients?.document, command.ingredients)) {
    events.push({ type: 'ingredientsAdopted', version: (state.ingredients?.version ?? 0) + 1, ingredients: command.ingredients });
  }
  const formulaVersions: Record<string, number> = { ...state.formulaVersions };
  for (const formula of command.formulas) {
    const version = formulaVersions[formula.id] ?? 0;
    if (sameDocument(state.formulas[versionKey(formula.id, version)], formula)) continue;
    formulaVersions[formula.id] = version + 1;
    events.push({ type: 'formulaAdopted', version: version + 1, formula });
  }
  const productVersions: Record<string, number> = { ...state.productVersions };
  for (const product of command.products) {
    const version = productVersions[product.id] ?? 0;
    if (sameDocument(state.products[versionKey(product.id, version)], product)) continue;
    productVersions[product.id] = version + 1;
    events.push({ type: 'productAdopted', version: version + 1, product });
  }
  events.push({ type: 'dayOpened', serviceDate: command.serviceDate });
  const counts: Record<string, number> = {};
  const inOrder = [...command.batches].sort((a, b) => a.plannedStartMs - b.plannedStartMs);
  for (const [index, batch] of inOrder.entries()) {
    const formula = command.formulas.find((candidate) => candidate.id === batch.formulaId);
    const formulaVersion = formulaVersions[batch.formulaId];
    if (formula === undefined || formulaVersion === undefined)
      return refused({ code: 'documentMissing', kind: 'formula', id: batch.formulaId });
    const cuts: PlannedCut[] = [];
    for (const cut of batch.cuts) {
      const productVersion = productVersions[cut.productId];
      if (productVersion === undefined) return refused({ code: 'documentMissing', kind: 'product', id: cut.productId });
      cuts.push({ ...cut, productVersion });
    }
    const number = (counts[formula.letters] ?? 0) + 1;
    counts[formula.letters] = number;
    events.push({
      type: 'workpiecePlanned',
      workpieceId: derivedId(context.commandId, index),
      kind: formula.kind === 'dough' ? 'batch' : formula.kind,
      tag: `${formula.letters}${number}`,
      serviceDate: command.serviceDate,
      formulaId: formula.id,
      formulaVersion,
      plannedStartMs: batch.plannedStartMs,
      grams: batch.grams,
      cuts,
    });
  }
  return accepted(events);
}

/** Documents are the same where they say the same; the order of their keys says nothing. */
function sameDocument(a: unknown, b: unknown): boolean {
  return a !== undefined && canonical(a) === canonical(b);
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

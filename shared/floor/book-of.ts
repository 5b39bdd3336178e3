import type { BookContext } from '../documents/book-lookup.ts';
import type { Formula, Product } from '../documents/formula.ts';
import type { Kitchen } from '../documents/kitchen.ts';
import { versionKey, type FloorState } from './state.ts';

/** A kitchen in which nothing is: of a house that has not said yet what it has. */
const NO_KITCHEN: Kitchen = { stations: [], mixers: [], bowls: [], restPlaces: [], vessels: [], ovens: [] };

/** The formulas in force that are not archived, in the order in which they came. */
export function formulasInForce(state: FloorState): readonly Formula[] {
  const archived = new Set(state.archivedFormulas);
  return Object.entries(state.formulaVersions).flatMap(([id, version]) => {
    const formula = archived.has(id) ? undefined : state.formulas[versionKey(id, version)];
    return formula === undefined ? [] : [formula];
  });
}

/** The products in force, those of archived formulas included. */
export function productsInForce(state: FloorState): readonly Product[] {
  return Object.entries(state.productVersions).flatMap(([id, version]) => state.products[versionKey(id, version)] ?? []);
}

/** What a document of the book is held against on the floor as it is. */
export function bookContextOf(state: FloorState): BookContext {
  return {
    kitchen: state.kitchen?.document ?? NO_KITCHEN,
    ingredients: state.ingredients?.document ?? [],
    formulas: formulasInForce(state),
  };
}

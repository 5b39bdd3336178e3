import type { Formula, Ingredient, Product } from '../../documents/formula.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import type { FloorEvent } from '../events.ts';
import { versionKey, type FloorState } from '../state.ts';

/** The newest version of each formula and product, once documents are taken in. */
export interface Versions {
  readonly formulaVersions: Readonly<Record<string, number>>;
  readonly productVersions: Readonly<Record<string, number>>;
}

/** Formulas and products that differ from those in force become their next versions. */
export function documentsIn(
  state: FloorState,
  formulas: readonly Formula[],
  products: readonly Product[],
  atMs: number,
): { readonly events: readonly FloorEvent[]; readonly versions: Versions } {
  const events: FloorEvent[] = [];
  const formulaVersions: Record<string, number> = { ...state.formulaVersions };
  for (const formula of formulas) {
    const version = formulaVersions[formula.id] ?? 0;
    if (isSameDocument(state.formulas[versionKey(formula.id, version)], formula)) continue;
    formulaVersions[formula.id] = version + 1;
    events.push({ type: 'formulaAdopted', version: version + 1, formula, atMs });
  }
  const productVersions: Record<string, number> = { ...state.productVersions };
  for (const product of products) {
    const version = productVersions[product.id] ?? 0;
    if (isSameDocument(state.products[versionKey(product.id, version)], product)) continue;
    productVersions[product.id] = version + 1;
    events.push({ type: 'productAdopted', version: version + 1, product, atMs });
  }
  return { events, versions: { formulaVersions, productVersions } };
}

/** A list of ingredients with others taken in: those of the same id replaced, new ones at its end. */
export function ingredientsWith(before: readonly Ingredient[], more: readonly Ingredient[]): readonly Ingredient[] {
  const byId = new Map(before.map((ingredient) => [ingredient.id, ingredient]));
  for (const ingredient of more) byId.set(ingredient.id, ingredient);
  return [...byId.values()];
}

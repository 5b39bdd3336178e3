import { allergenSources, allergensOfFacts, productAllergens, type AllergenFacts } from '../book/allergens.ts';
import type { Allergen } from '../documents/allergen.ts';
import type { Product } from '../documents/formula.ts';
import { formulaOf, newestFormula } from './contents.ts';
import { versionKey, type FloorState, type Workpiece } from './state.ts';
import { productOf } from './way.ts';

/** What is in a workpiece, and what the products that it can still become have beyond it. */
export interface WorkpieceAllergens {
  readonly facts: AllergenFacts;
  readonly products: readonly { readonly name: string; readonly own: readonly Allergen[] }[];
}

/**
 * Allergens of a batch, cut, load or pot: those of the versions that it began with, and of whatever came into it on the floor.
 * Null where the state no longer has its formula.
 */
export function workpieceAllergens(state: FloorState, workpiece: Workpiece): WorkpieceAllergens | null {
  const formula = formulaOf(state, workpiece);
  if (formula === null) return null;
  const ingredients = state.ingredients?.document ?? [];
  const find = newestFormula(state);
  const product = productOf(state, workpiece);
  const written = product === null ? allergenSources(formula, find, ingredients) : productAllergens(product, formula, find, ingredients);
  const facts = withBroughtIn(written, workpiece.broughtIn.allergens);
  const within = new Set(allergensOfFacts(facts));
  const becomes = product === null ? productsOf(state, workpiece) : [];
  return {
    facts,
    products: becomes.map((made) => {
      const all = allergensOfFacts(productAllergens(made, formula, find, ingredients));
      return { name: made.name, own: all.filter((allergen) => !within.has(allergen)) };
    }),
  };
}

/** What nobody's formula names came in with what was drawn, put back or added. */
function withBroughtIn(facts: AllergenFacts, allergens: readonly Allergen[]): AllergenFacts {
  const known = new Set(allergensOfFacts(facts));
  const more = allergens.filter((allergen) => !known.has(allergen)).map((allergen) => ({ allergen, ingredientId: null, through: [] }));
  return { ...facts, sources: [...facts.sources, ...more] };
}

function productsOf(state: FloorState, workpiece: Workpiece): readonly Product[] {
  return workpiece.cuts.flatMap((cut) => state.products[versionKey(cut.productId, cut.productVersion)] ?? []);
}

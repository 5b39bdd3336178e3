import type { Formula } from '../documents/formula.ts';
import { newestFormula } from '../floor/contents.ts';
import { productsInForce } from '../floor/book-of.ts';
import { versionKey, type FloorState } from '../floor/state.ts';
import type { BookEntry, BookIndex } from './book-api.ts';
import { overallOf } from './overall.ts';

/** What the book's list is made of; the same parts of a state make the same list. */
export type ListedBook = Pick<
  FloorState,
  'formulas' | 'formulaVersions' | 'formulaHistory' | 'products' | 'productVersions' | 'archivedFormulas' | 'ingredients'
>;

/** The whole book without its formulas' insides, archived ones included, in the order in which they came. */
export function bookIndexOf(state: FloorState): BookIndex {
  const ingredients = state.ingredients?.document ?? [];
  const find = newestFormula(state);
  const archived = new Set(state.archivedFormulas);
  const productsOf = productsByFormula(state);
  const entryOf = (formula: Formula, version: number): BookEntry => {
    const overall = overallOf(formula, find, ingredients);
    return {
      id: formula.id,
      name: formula.name,
      letters: formula.letters,
      kind: formula.kind,
      version,
      isArchived: archived.has(formula.id),
      atMs: state.formulaHistory[formula.id]?.at(-1)?.atMs ?? null,
      hydrationPct: overall.ok ? overall.value.hydrationPct : null,
      ingredientIds: ingredientIdsOf(formula),
      products: productsOf.get(formula.id) ?? [],
    };
  };
  const entries = Object.entries(state.formulaVersions).flatMap(([id, version]) => {
    const formula = state.formulas[versionKey(id, version)];
    return formula === undefined ? [] : [entryOf(formula, version)];
  });
  return { entries, ingredients: [...ingredients], ingredientsVersion: state.ingredients?.version ?? 0 };
}

function ingredientIdsOf(formula: Formula): string[] {
  return [...new Set(formula.parts.flatMap((part) => part.items).flatMap((line) => ('item' in line ? [line.item] : [])))];
}

function productsByFormula(state: FloorState): ReadonlyMap<string, BookEntry['products']> {
  const products = new Map<string, BookEntry['products']>();
  for (const { id, name, formula } of productsInForce(state)) {
    const entry = { id, name, version: state.productVersions[id] ?? 0 };
    const known = products.get(formula);
    if (known === undefined) products.set(formula, [entry]);
    else known.push(entry);
  }
  return products;
}

import { shapeFaults } from '../documents/bakehouse-file.ts';
import type { Formula, Ingredient, Product } from '../documents/formula.ts';
import type { FileFault } from '../documents/kitchen-faults.ts';
import { isSameDocument } from '../documents/same-document.ts';
import { productsInForce } from '../floor/book-of.ts';
import { versionKey, type FloorState } from '../floor/state.ts';
import { accepted, refused, type Result } from '../result.ts';
import { BOOK_FORMAT, bookFileSchema, type BookFile } from './book-api.ts';

/** The whole book as one file, archived formulas included. */
export function bookFileOf(state: FloorState): BookFile {
  const formulas = Object.entries(state.formulaVersions).flatMap(([id, version]) => state.formulas[versionKey(id, version)] ?? []);
  return {
    format: BOOK_FORMAT,
    ingredients: [...(state.ingredients?.document ?? [])],
    formulas,
    products: [...productsInForce(state)],
    archived: [...state.archivedFormulas],
  };
}

/** Reads a parsed JSON value as a book file: its shape. Whether it is possible in a house, `bookInFaults` says. */
export function readBookFile(value: unknown): Result<BookFile, readonly FileFault[]> {
  const parsed = bookFileSchema.safeParse(value);
  return parsed.success ? accepted(parsed.data) : refused(shapeFaults(parsed.error));
}

/** How many documents of a kind a file brings that are new, that are other than the house's, and that are the same. */
export interface BroughtIn {
  readonly new: number;
  readonly changed: number;
  readonly unchanged: number;
}

/** What of a book file is news to a house. */
export function broughtInBy(state: FloorState, file: BookFile): Readonly<Record<'ingredients' | 'formulas' | 'products', BroughtIn>> {
  const ingredients = new Map((state.ingredients?.document ?? []).map((ingredient) => [ingredient.id, ingredient]));
  return {
    ingredients: counted(file.ingredients, (id) => ingredients.get(id)),
    formulas: counted(file.formulas, (id) => state.formulas[versionKey(id, state.formulaVersions[id] ?? 0)]),
    products: counted(file.products, (id) => state.products[versionKey(id, state.productVersions[id] ?? 0)]),
  };
}

function counted<Document extends Ingredient | Formula | Product>(
  documents: readonly Document[],
  known: (id: string) => Document | undefined,
): BroughtIn {
  const counts = { new: 0, changed: 0, unchanged: 0 };
  for (const document of documents) {
    const before = known(document.id);
    if (before === undefined) counts.new += 1;
    else if (isSameDocument(before, document)) counts.unchanged += 1;
    else counts.changed += 1;
  }
  return counts;
}

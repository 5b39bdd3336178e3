import type { BookEntry } from '../../shared/book/book-api.ts';
import type { FormulaOf } from '../../shared/documents/amounts.ts';
import type { Ingredient } from '../../shared/documents/formula.ts';
import type { House } from '../../shared/documents/house.ts';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';

/** What every part of the formula book's forms needs beside the document that it edits. */
export interface EditorContext {
  readonly kitchen: Kitchen;
  readonly house: House;
  readonly ingredients: readonly Ingredient[];
  /** Formulas of the book that are not archived, for lists of what can be taken. */
  readonly entries: readonly BookEntry[];
  /** The formulas whose insides are loaded; null for one that is not (yet). */
  readonly formulaOf: FormulaOf;
  /** What is wrong with the draft; paths begin with `formula`, `products[n]` or `ingredient`. */
  readonly faults: readonly FileFault[];
}

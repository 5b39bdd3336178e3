import type { BookEntry, BookIndex } from './book-api.ts';
import { folded } from './folded.ts';

/** Which formulas are looked for. */
export interface BookQuery {
  /** As typed; every word of it must be found, in any order, whole or in part. */
  readonly text: string;
  /** null: every kind. */
  readonly kind: BookEntry['kind'] | null;
  readonly isArchived: boolean;
}

/** A formula with what a search looks at, folded once. */
export interface SearchRow {
  readonly entry: BookEntry;
  readonly letters: string;
  readonly name: string;
  /** Name, letters, ingredients, products. */
  readonly text: string;
}

/** The book as a search looks at it, by name. Made once per book, since folding is what costs. */
export function searchRows(index: BookIndex): readonly SearchRow[] {
  const names = new Map(index.ingredients.map((ingredient) => [ingredient.id, folded(ingredient.name)]));
  return index.entries
    .map((entry) => rowOf(entry, names))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.entry.id < b.entry.id ? -1 : 1));
}

function rowOf(entry: BookEntry, ingredientNames: ReadonlyMap<string, string>): SearchRow {
  const name = folded(entry.name);
  const letters = folded(entry.letters);
  const ingredients = entry.ingredientIds.map((id) => ingredientNames.get(id) ?? folded(id));
  const products = entry.products.map((product) => folded(product.name));
  return { entry, letters, name, text: [name, letters, ...ingredients, ...products].join('\n') };
}

/** What is found, best first: by its letters, by the beginning of its name, by its name, by what is in it; else by name. */
export function foundIn(rows: readonly SearchRow[], query: BookQuery): readonly BookEntry[] {
  const words = folded(query.text).split(' ').filter(Boolean);
  const ranked: BookEntry[][] = [[], [], [], []];
  for (const row of rows) {
    if (row.entry.isArchived !== query.isArchived || (query.kind !== null && row.entry.kind !== query.kind)) continue;
    if (words.every((word) => row.text.includes(word))) ranked[rankOf(row, words)]?.push(row.entry);
  }
  return ranked.flat();
}

function rankOf(row: SearchRow, words: readonly string[]): number {
  const typed = words.join(' ');
  if (typed === '' || row.letters === typed) return 0;
  if (row.name.startsWith(typed)) return 1;
  return words.every((word) => row.name.includes(word)) ? 2 : 3;
}

import type { Formula } from '../../shared/documents/formula.ts';
import { bookFileOf } from '../../shared/book/book-file.ts';
import { bookIndexOf, type ListedBook } from '../../shared/book/book-index.ts';
import type { BookFormula } from '../../shared/book/book-api.ts';
import { needsOf } from '../../shared/book/needs.ts';
import { productsInForce } from '../../shared/floor/book-of.ts';
import { newestFormula } from '../../shared/floor/contents.ts';
import { versionKey, type FloorState } from '../../shared/floor/state.ts';
import type { Journal } from '../journal/journal.ts';

/** What is read of the book: its list, one formula in any version, the whole of it as a file. */
export class BookShelf {
  readonly #journal: Pick<Journal, 'read'>;
  readonly #kitchenId: string;
  #listed: { readonly of: ListedBook; readonly text: string } | null = null;

  constructor(journal: Pick<Journal, 'read'>, kitchenId: string) {
    this.#journal = journal;
    this.#kitchenId = kitchenId;
  }

  /** The book's list as JSON, made when it is first asked for after a change. */
  listText(state: FloorState): string {
    if (this.#listed === null || !isSameBook(this.#listed.of, state))
      this.#listed = { of: state, text: JSON.stringify(bookIndexOf(state)) };
    return this.#listed.text;
  }

  /** One formula with what belongs to it, in a version or the newest; null where there is none. Throws JournalError. */
  async formula(state: FloorState, id: string, wanted: number | null): Promise<BookFormula | null> {
    const newestVersion = state.formulaVersions[id];
    if (newestVersion === undefined) return null;
    const version = wanted ?? newestVersion;
    const formula = await this.#version(state, id, version);
    if (formula === null) return null;
    const products = productsInForce(state).filter((product) => product.formula === id);
    return {
      formula,
      version,
      newestVersion,
      isArchived: state.archivedFormulas.includes(id),
      history: (state.formulaHistory[id] ?? []).map((kept) => ({ version: kept.version, atMs: kept.atMs })),
      needs: [...needsOf(formula, products, newestFormula(state))],
      products: products.map((product) => ({ product, version: state.productVersions[product.id] ?? 1 })),
    };
  }

  /** The whole book as a file's JSON. */
  fileText(state: FloorState): string {
    return JSON.stringify(bookFileOf(state), null, 2);
  }

  /** A version that nothing uses any more is read from where it stands in the journal. */
  async #version(state: FloorState, id: string, version: number): Promise<Formula | null> {
    const known = state.formulas[versionKey(id, version)];
    if (known !== undefined) return known;
    const kept = state.formulaHistory[id]?.find((candidate) => candidate.version === version);
    if (kept === undefined) return null;
    const [recorded] = await this.#journal.read(this.#kitchenId, kept.sequence - 1, 1);
    return recorded?.event.type === 'formulaAdopted' && recorded.event.formula.id === id ? recorded.event.formula : null;
  }
}

function isSameBook(one: ListedBook, other: ListedBook): boolean {
  return (
    one.formulas === other.formulas &&
    one.formulaVersions === other.formulaVersions &&
    one.products === other.products &&
    one.productVersions === other.productVersions &&
    one.archivedFormulas === other.archivedFormulas &&
    one.ingredients === other.ingredients
  );
}

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { BookFormula, BookIndex } from '../../shared/book/book-api.ts';
import { versionKey, type FloorState } from '../../shared/floor/state.ts';
import type { OrderedProduct } from '../../shared/plan/orders/read-orders.ts';
import type { BookStore } from '../formulas/book-store.ts';

/**
 * What the page has of the formula book: its list, and the insides of what is ordered. The floor's state carries only the
 * documents of what is on the floor.
 */
export class DayBook implements ReactiveController {
  index: BookIndex | null = null;
  isFailed = false;
  readonly #host: ReactiveControllerHost;
  readonly #store: () => BookStore;
  readonly #asked = new Set<string>();
  #formulas: readonly BookFormula[] = [];
  #products: readonly OrderedProduct[] = [];
  /** The state that was filled last, and what came of it: many parts of the page look at one. */
  #filled: { readonly of: FloorState; readonly with: readonly BookFormula[]; readonly state: FloorState } | null = null;

  constructor(host: ReactiveControllerHost, store: () => BookStore) {
    this.#host = host;
    this.#store = store;
    host.addController(this);
  }

  hostConnected(): void {}

  /** Everything that can be ordered, by name. */
  get products(): readonly OrderedProduct[] {
    return this.#products;
  }

  /** The formula that a product is cut from; null where the book has none. */
  formulaOf(productId: string): string | null {
    return this.index?.entries.find((entry) => entry.products.some(({ id }) => id === productId))?.id ?? null;
  }

  /** Fetches the book's list anew; insides of a formula that has a new version are fetched when they are needed. */
  async fetchIndex(): Promise<void> {
    const fetched = await this.#store().index();
    this.isFailed = fetched.phase !== 'here';
    if (fetched.phase === 'here') {
      this.index = fetched.value;
      this.#products = fetched.value.entries
        .filter(({ isArchived }) => !isArchived)
        .flatMap(({ products }) => products.map(({ id, name }) => ({ id, name })))
        .sort((a, b) => a.name.localeCompare(b.name));
    }
    this.#host.requestUpdate();
  }

  /** Fetches the insides of formulas that the page has not seen in their present version. */
  need(formulaIds: Iterable<string>): void {
    for (const id of new Set(formulaIds)) {
      const version = this.index?.entries.find((entry) => entry.id === id)?.version;
      const key = versionKey(id, version ?? 0);
      if (version === undefined || this.#asked.has(key)) continue;
      this.#asked.add(key);
      void this.#fetchFormula(id, key);
    }
  }

  /** The floor's state with the documents of what is ordered or proposed put beside those of what is on the floor. */
  filled(state: FloorState): FloorState {
    const book = this.#formulas;
    if (this.#filled?.of === state && this.#filled.with === book) return this.#filled.state;
    const filled = withBook(state, book);
    this.#filled = { of: state, with: book, state: filled };
    return filled;
  }

  async #fetchFormula(id: string, key: string): Promise<void> {
    const fetched = await this.#store().formula(id);
    if (fetched.phase === 'here') this.#formulas = [...this.#formulas.filter(({ formula }) => formula.id !== id), fetched.value];
    // Asked for again with the next change of the page.
    else if (fetched.phase === 'failed') this.#asked.delete(key);
    this.#host.requestUpdate();
  }
}

/** A state with the newest of these formulas, of what they take from, and of their products. */
export function withBook(state: FloorState, book: readonly BookFormula[]): FloorState {
  if (book.length === 0) return state;
  const formulas = { ...state.formulas };
  const products = { ...state.products };
  const formulaVersions = { ...state.formulaVersions };
  const productVersions = { ...state.productVersions };
  for (const { formula, version, needs, products: made } of book) {
    formulas[versionKey(formula.id, version)] ??= formula;
    formulaVersions[formula.id] = Math.max(version, formulaVersions[formula.id] ?? 0);
    for (const need of needs) {
      const needVersion = formulaVersions[need.id] ?? 1;
      formulas[versionKey(need.id, needVersion)] ??= need;
      formulaVersions[need.id] = needVersion;
    }
    for (const { product, version: productVersion } of made) {
      products[versionKey(product.id, productVersion)] ??= product;
      productVersions[product.id] = Math.max(productVersion, productVersions[product.id] ?? 0);
    }
  }
  return { ...state, formulas, products, formulaVersions, productVersions };
}

import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { BookFormula, BookIndex } from '../../shared/book/book-api.ts';
import type { Formula, Ingredient } from '../../shared/documents/formula.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Refusal } from '../../shared/floor/refusals.ts';
import type { Id } from '../../shared/ids.ts';
import type { Inwards } from '../desk/inwards.ts';
import type { BookStore, Given } from './book-store.ts';
import { dropDraft, keepDraft, keptDraft, type TextShelf } from './draft-shelf.ts';
import {
  commandsOf,
  draftOf,
  edited,
  isChanged,
  isOvertaken,
  onNewer,
  refusedWith,
  taken,
  type FormulaDraft,
  type Versions,
} from './formula-draft.ts';

/** What the desk works with: the book over HTTP, a shelf of this device, fresh ids. */
export interface BookTools {
  readonly store: BookStore;
  readonly shelf: TextShelf;
  readonly freshId: () => Id;
}

/** How the open formula's saving stands. */
export type Saving =
  | { readonly phase: 'idle' | 'saving' | 'unsent' | 'saved' | 'forbidden' }
  | { readonly phase: 'refused'; readonly refusal: Refusal };

/** What the page has of the book: its index, the formula that is open with its draft, and others that it takes from. */
export class BookDesk implements ReactiveController {
  index: BookIndex | null = null;
  isFailed = false;
  /** The open formula as it is in force; null while it comes, and for a new one. */
  loaded: BookFormula | null = null;
  isMissing = false;
  draft: FormulaDraft | null = null;
  saving: Saving = { phase: 'idle' };
  /** Insides of other formulas, as far as they were needed. */
  others: ReadonlyMap<string, Formula> = new Map();
  readonly #host: ReactiveControllerHost;
  readonly #tools: () => BookTools;
  #openKey: string | null = null;
  #asked = new Set<string>();
  /** By command: the id under which it was given, for when nobody knows whether it came through. */
  #ids = new Map<string, Id>();

  constructor(host: ReactiveControllerHost, tools: () => BookTools) {
    this.#host = host;
    this.#tools = tools;
    host.addController(this);
  }

  hostConnected(): void {}

  /** Whether something was written here that nobody has saved. */
  get hasDraft(): boolean {
    return this.draft !== null && isChanged(this.draft);
  }

  /** Fetches the book's list. */
  async fetchIndex(): Promise<void> {
    const fetched = await this.#tools().store.index();
    this.isFailed = fetched.phase !== 'here';
    if (fetched.phase === 'here') this.index = fetched.value;
    this.#host.requestUpdate();
  }

  /** Opens a formula of the book, with what this device has kept of it; null closes the one that is open. */
  async open(formulaId: string | null): Promise<void> {
    this.#openKey = formulaId;
    this.loaded = null;
    this.draft = null;
    this.isMissing = false;
    this.saving = { phase: 'idle' };
    this.#host.requestUpdate();
    if (formulaId === null) return;
    await this.#fetchOpen(formulaId);
  }

  /** Opens what is in no book yet: as this device has kept it, else as it is given. */
  openNew(key: string, made: () => FormulaDraft): void {
    this.#openKey = key;
    this.loaded = null;
    this.isMissing = false;
    this.saving = { phase: 'idle' };
    this.draft = keptDraft(this.#tools().shelf, key) ?? made();
    this.needOthers(this.draft.mine.formula);
    this.#host.requestUpdate();
  }

  /** Puts another draft in the place of the open one. */
  replaceDraft(draft: FormulaDraft): void {
    this.saving = { phase: 'idle' };
    this.#setDraft(draft);
  }

  /** Fetches the open formula again where somebody has saved it meanwhile; a draft stays as it is. */
  async follow(versions: Versions): Promise<void> {
    const { loaded } = this;
    if (loaded === null || this.saving.phase === 'saving') return;
    const isNewer =
      (versions.formulas[loaded.formula.id] ?? 0) > loaded.version ||
      loaded.products.some(({ product, version }) => (versions.products[product.id] ?? 0) > version);
    const asked = `${loaded.formula.id}@${JSON.stringify(versions.formulas[loaded.formula.id])}`;
    if (!isNewer || this.#asked.has(asked)) return;
    this.#asked.add(asked);
    await Promise.all([this.#fetchOpen(loaded.formula.id), this.fetchIndex()]);
  }

  /** Whether somebody else has saved what the draft changes. */
  isOvertaken(versions: Versions): boolean {
    return this.draft !== null && this.saving.phase !== 'saving' && this.hasDraft && isOvertaken(this.draft, versions);
  }

  /** Puts something else at a place of the draft. */
  edit(path: Inwards, value: unknown): void {
    // What is being sent is not changed under the answer.
    if (this.draft === null || this.saving.phase === 'saving') return;
    this.saving = { phase: 'idle' };
    this.#setDraft(edited(this.draft, path, value, (id) => this.isTaken(id)));
    this.needOthers(this.draft.mine.formula);
  }

  /** Whether the book has a formula of an id. */
  isTaken(id: string): boolean {
    return this.index?.entries.some((entry) => entry.id === id) === true;
  }

  /** The draft as it was before anything was written; a new one goes away. */
  putBack(): void {
    const { draft, loaded } = this;
    if (draft === null) return;
    dropDraft(this.#tools().shelf, draft.key);
    this.saving = { phase: 'idle' };
    this.draft = loaded === null ? null : draftOf(loaded);
    this.#host.requestUpdate();
  }

  /** The draft's changes on top of what somebody else has saved. */
  takeNewer(): void {
    if (this.draft !== null && this.loaded !== null) this.#setDraft(onNewer(this.draft, this.loaded));
  }

  /** Says everything of the draft to the house, one thing after the other. Answers with the formula's id once all of it is in force. */
  async save(): Promise<string | null> {
    if (this.draft === null || this.saving.phase === 'saving') return null;
    const keptAs = this.draft.key;
    this.saving = { phase: 'saving' };
    this.#host.requestUpdate();
    for (const command of commandsOf(this.draft)) {
      const given = await this.give(command);
      if (this.draft === null) return null;
      if (given.phase !== 'done' && !isAlreadySo(given)) {
        this.#notSaved(command, given);
        return null;
      }
      this.draft = taken(this.draft, command);
    }
    dropDraft(this.#tools().shelf, keptAs);
    const formulaId = this.draft.mine.formula.id;
    this.#openKey = formulaId;
    this.saving = { phase: 'saved' };
    await Promise.all([this.#fetchOpen(formulaId), this.fetchIndex()]);
    return formulaId;
  }

  /** Says one thing to the house. The same thing said again after no answer has the same id. */
  async give(command: ClientCommand): Promise<Given> {
    const { store, freshId } = this.#tools();
    const key = JSON.stringify(command);
    const id = this.#ids.get(key) ?? freshId();
    this.#ids.set(key, id);
    const given = await store.give(id, command);
    if (given.phase !== 'unsent') this.#ids.delete(key);
    return given;
  }

  /** Puts an ingredient into the book, and into the list that the page shows. */
  async adoptIngredient(ingredient: Ingredient): Promise<Given> {
    const given = await this.give({ type: 'adoptIngredient', ingredient });
    const { index } = this;
    if (given.phase === 'done' && index !== null) {
      const others = index.ingredients.filter(({ id }) => id !== ingredient.id);
      this.index = { ...index, ingredients: [...others, ingredient] };
      this.#host.requestUpdate();
    }
    return given;
  }

  /** Fetches the insides of whatever a formula takes from and the page has not seen. */
  needOthers(formula: Formula): void {
    const ids = formula.parts.flatMap(({ items }) => items.flatMap((line) => ('formula' in line ? [line.formula] : [])));
    for (const id of ids) {
      if (this.others.has(id) || this.#asked.has(id)) continue;
      this.#asked.add(id);
      void this.#fetchOther(id);
    }
  }

  async #fetchOther(id: string): Promise<void> {
    const fetched = await this.#tools().store.formula(id);
    if (fetched.phase !== 'here') {
      // Asked for again with the next edit.
      this.#asked.delete(id);
      return;
    }
    this.#learn([fetched.value.formula, ...fetched.value.needs]);
    this.#host.requestUpdate();
  }

  async #fetchOpen(formulaId: string): Promise<void> {
    const fetched = await this.#tools().store.formula(formulaId);
    if (this.#openKey !== formulaId) return;
    if (fetched.phase === 'here') this.#show(fetched.value);
    this.isMissing = fetched.phase === 'missing';
    this.isFailed = fetched.phase === 'failed';
    this.#host.requestUpdate();
  }

  #show(loaded: BookFormula): void {
    this.loaded = loaded;
    this.#learn(loaded.needs);
    const kept = this.hasDraft ? this.draft : keptDraft(this.#tools().shelf, loaded.formula.id);
    this.draft = kept ?? draftOf(loaded);
    this.needOthers(this.draft.mine.formula);
  }

  #learn(formulas: readonly Formula[]): void {
    this.others = new Map([...this.others, ...formulas.map((formula) => [formula.id, formula] as const)]);
  }

  #setDraft(draft: FormulaDraft): void {
    this.draft = draft;
    if (isChanged(draft)) keepDraft(this.#tools().shelf, draft);
    else dropDraft(this.#tools().shelf, draft.key);
    this.#host.requestUpdate();
  }

  #notSaved(command: ClientCommand, given: Exclude<Given, { phase: 'done' }>): void {
    if (this.draft === null) return;
    this.saving = given;
    if (given.phase === 'refused' && given.refusal.code === 'documentFaulty') {
      this.saving = { phase: 'idle' };
      this.draft = refusedWith(this.draft, command, given.refusal.faults);
    }
    keepDraft(this.#tools().shelf, this.draft);
    this.#host.requestUpdate();
  }
}

/** The house has it so already: a command that came through, and whose answer did not. */
function isAlreadySo(given: Given): boolean {
  return given.phase === 'refused' && given.refusal.code === 'nothingChanges';
}

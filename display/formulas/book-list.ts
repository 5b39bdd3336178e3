import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookEntry, BookIndex } from '../../shared/book/book-api.ts';
import { foundIn, searchRows, type SearchRow } from '../../shared/book/book-search.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { BOOK } from '../words/book.ts';
import { ArchiveWantedEvent, DuplicateWantedEvent, FormulaWantedEvent, ImportWantedEvent, NewFormulaWantedEvent } from './book-events.ts';
import { bookRow } from './book-row.ts';
import { bookStyles } from './book-styles.ts';
import { listKey } from './list-key.ts';
import { isTyping } from './typing.ts';

type Kind = BookEntry['kind'];

const KINDS = ['dough', 'prep', 'ferment'] as const satisfies readonly Kind[];
/** Rows that are drawn at first, and how many more come when the last of them is in sight. */
const ROWS_AT_ONCE = 60;
/** Rows that a page of the keyboard is. */
const ROWS_A_PAGE = 8;

/** All formulas of the book, found as one types. */
@customElement('book-list')
export class BookList extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, bookStyles];

  /** null: not here yet. */
  @property({ attribute: false }) index: BookIndex | null = null;
  /** Which formula is open. */
  @property({ attribute: false }) openId: string | null = null;
  @state() private typed = '';
  @state() private kind: Kind | null = null;
  @state() private isArchived = false;
  /** The row that the keyboard is on. */
  @state() private active = 0;
  @state() private drawn = ROWS_AT_ONCE;
  @query('input[type=search]') private readonly search!: HTMLInputElement | null;
  @query('[role=listbox]') private readonly list!: HTMLElement | null;
  private rows: readonly SearchRow[] = [];
  private found: readonly BookEntry[] = [];

  override connectedCallback(): void {
    super.connectedCallback();
    globalThis.addEventListener('keydown', this.slashPressed);
  }

  override disconnectedCallback(): void {
    globalThis.removeEventListener('keydown', this.slashPressed);
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('index')) this.rows = this.index === null ? [] : searchRows(this.index);
    const isAnew = ['typed', 'kind', 'isArchived'].some((key) => changed.has(key));
    if (isAnew || changed.has('index')) this.found = this.findIn(this.isArchived);
    if (isAnew) {
      this.active = 0;
      this.drawn = ROWS_AT_ONCE;
    }
    this.active = Math.max(0, Math.min(this.active, this.found.length - 1));
    this.drawn = Math.max(this.drawn, Math.min(this.active + ROWS_A_PAGE, this.found.length));
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('active') && changed.get('active') !== undefined) this.activeRow?.scrollIntoView({ block: 'nearest' });
  }

  protected override render(): TemplateResult {
    return html`<div class="head">
        <div class="line">
          <h2>${BOOK.title}</h2>
          <button type="button" class="plain small" @click=${() => this.dispatchEvent(new ImportWantedEvent())}>${BOOK.inOut}</button>
        </div>
        <div class="search">
          <label for="search">${BOOK.search}</label>
          <input
            id="search"
            type="search"
            autocomplete="off"
            spellcheck="false"
            aria-controls=${this.found.length === 0 ? nothing : 'list'}
            aria-describedby="hint"
            aria-keyshortcuts="/"
            .value=${this.typed}
            @input=${this.searched}
            @keydown=${this.searchKey}
          />
          <span class="hint" id="hint">${BOOK.searchHint}</span>
        </div>
        <div class="buttons" role="group" aria-label=${BOOK.kinds}>
          ${this.kindButton(null, BOOK.allKinds)}${KINDS.map((kind) => this.kindButton(kind, BOOK.kindsMany[kind]))}
        </div>
        <div class="line">
          <p class="count" role="status">${this.index === null ? '' : BOOK.count(this.found.length, this.countInForce)}</p>
          <button type="button" class="plain small" aria-pressed=${this.isArchived} @click=${() => (this.isArchived = !this.isArchived)}>
            ${BOOK.archivedCount(this.archivedCount)}
          </button>
        </div>
        <div class="buttons">
          <span class="word" aria-hidden="true">${BOOK.newOne}</span>
          ${KINDS.map((kind) => this.newButton(kind))}
        </div>
        <div class="buttons">${this.openButtons()}</div>
      </div>
      ${this.found.length === 0 ? this.nothingFound() : this.listed()}`;
  }

  private listed(): TemplateResult {
    const { found, active, drawn } = this;
    return html`<div
      role="listbox"
      id="list"
      tabindex="0"
      aria-label=${BOOK.title}
      aria-activedescendant="row-${active}"
      @keydown=${this.listKeyPressed}
      @click=${this.rowClicked}
      @scroll=${this.scrolled}
    >
      ${found
        .slice(0, drawn)
        .map((entry, index) =>
          bookRow(entry, { index, count: found.length, isOpen: entry.id === this.openId, isActive: index === active }),
        )}
    </div>`;
  }

  private newButton(kind: Kind): TemplateResult {
    return html`<button
      type="button"
      class="plain small"
      aria-label=${BOOK.newOf[kind]}
      title=${BOOK.newOf[kind]}
      @click=${() => this.dispatchEvent(new NewFormulaWantedEvent(kind))}
    >
      ${BOOK.kind[kind]}
    </button>`;
  }

  /** What can be done with the formula that is open. */
  private openButtons(): TemplateResult {
    const entry = this.index?.entries.find(({ id }) => id === this.openId);
    const isArchived = entry?.isArchived ?? false;
    const ask = (event: (id: string) => Event): void => {
      if (entry !== undefined) this.dispatchEvent(event(entry.id));
    };
    return html`<button
        type="button"
        class="plain small"
        ?disabled=${entry === undefined}
        @click=${() => ask((id) => new DuplicateWantedEvent(id))}
      >
        ${BOOK.duplicate}
      </button>
      <button
        type="button"
        class="plain small"
        ?disabled=${entry === undefined}
        @click=${() => ask((id) => new ArchiveWantedEvent(id, !isArchived))}
      >
        ${isArchived ? BOOK.bringBack : BOOK.archive}
      </button>`;
  }

  private nothingFound(): TemplateResult {
    if (this.index === null) return html`<div class="still" role="status"><p>${BOOK.loading}</p></div>`;
    if (this.index.entries.length === 0)
      return html`<div class="still">
        <strong>${BOOK.emptyTitle}</strong>
        <p>${BOOK.emptyMore}</p>
      </div>`;
    if (this.typed.trim() === '') return html`<div class="still"><p>${this.isArchived ? BOOK.noneArchived : BOOK.noneOfKind}</p></div>`;
    const elsewhere = this.findIn(!this.isArchived).length;
    return html`<div class="still">
      <p>${BOOK.noneFound(this.typed.trim())}</p>
      ${
        elsewhere === 0
          ? nothing
          : html`<button type="button" class="plain" @click=${() => (this.isArchived = !this.isArchived)}>
              ${this.isArchived ? BOOK.foundInForce(elsewhere) : BOOK.foundAway(elsewhere)}
            </button>`
      }
      <button type="button" class="plain" @click=${this.cleared}>${BOOK.clear}</button>
    </div>`;
  }

  private kindButton(kind: Kind | null, words: string): TemplateResult {
    return html`<button type="button" class="plain small" aria-pressed=${this.kind === kind} @click=${() => (this.kind = kind)}>
      ${words}
    </button>`;
  }

  private findIn(isArchived: boolean): readonly BookEntry[] {
    return foundIn(this.rows, { text: this.typed, kind: this.kind, isArchived });
  }

  private get countInForce(): number {
    return this.rows.reduce((sum, { entry }) => sum + (entry.isArchived === this.isArchived ? 1 : 0), 0);
  }

  private get archivedCount(): number {
    return this.rows.reduce((sum, { entry }) => sum + (entry.isArchived ? 1 : 0), 0);
  }

  private get activeRow(): Element | null {
    return this.renderRoot.querySelector(`#row-${this.active}`);
  }

  private searched(event: InputEvent): void {
    this.typed = (event.target as HTMLInputElement).value;
  }

  private cleared(): void {
    this.typed = '';
    this.search?.focus();
  }

  private searchKey(event: KeyboardEvent): void {
    if (event.key === 'ArrowDown' && this.found.length > 0) {
      event.preventDefault();
      this.list?.focus();
    } else if (event.key === 'Enter') this.open(this.found[this.active]?.id);
    else if (event.key === 'Escape' && this.typed !== '') {
      event.preventDefault();
      this.cleared();
    }
  }

  private listKeyPressed(event: KeyboardEvent): void {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.open(this.found[this.active]?.id);
      return;
    }
    if (event.key === 'ArrowUp' && this.active === 0) {
      event.preventDefault();
      this.search?.focus();
      return;
    }
    const next = listKey(event.key, this.active, this.found.length, ROWS_A_PAGE);
    if (next === null) return;
    event.preventDefault();
    this.active = next;
  }

  private rowClicked(event: MouseEvent): void {
    const id = (event.target as Element).closest<HTMLElement>('[role=option]')?.dataset['formula'];
    const index = this.found.findIndex((entry) => entry.id === id);
    if (index >= 0) this.active = index;
    this.open(id);
  }

  private open(formulaId: string | undefined): void {
    if (formulaId !== undefined) this.dispatchEvent(new FormulaWantedEvent(formulaId));
  }

  private scrolled(event: Event): void {
    const { scrollTop, clientHeight, scrollHeight } = event.target as HTMLElement;
    if (scrollTop + 2 * clientHeight >= scrollHeight && this.drawn < this.found.length) this.drawn += ROWS_AT_ONCE;
  }

  private readonly slashPressed = (event: KeyboardEvent): void => {
    if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || isTyping(event)) return;
    event.preventDefault();
    this.search?.focus();
    this.search?.select();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'book-list': BookList;
  }
}

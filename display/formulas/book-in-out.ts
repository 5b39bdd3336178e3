import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BookIndex } from '../../shared/book/book-api.ts';
import { unreachable } from '../../shared/result.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { faultText } from '../desk/fault-text.ts';
import type { Units } from '../desk/field.ts';
import { IN_OUT, RECIPE_FAULTS } from '../words/book.ts';
import { BookChangedEvent } from './book-events.ts';
import { MOST_BOOK_BYTES, sendBook, type BookHolds, type BookOutcome } from './import-book.ts';
import './import-recipe.ts';
import { readRecipe, readText, recipeNames, type TextRead } from './import-read.ts';

const MEBIBYTE = 1024 * 1024;
/** Faults that are listed at once: nobody mends more of a file before trying again. */
const FAULTS_SHOWN = 50;

/** Where bringing something in stands. */
type Standing =
  | { readonly phase: 'asking' }
  | { readonly phase: 'busy'; readonly words: string }
  | { readonly phase: 'told'; readonly words: string }
  | { readonly phase: 'read'; readonly read: Exclude<TextRead, { kind: 'fault' }>; readonly recipeAt: number }
  | { readonly phase: 'answered'; readonly outcome: BookOutcome };

/** The whole book out as a file; a book, or a recipe in the open vocabulary, in. */
@customElement('book-in-out')
export class BookInOut extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-5);
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      section {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        justify-items: start;
        gap: var(--space-3);
      }
      h2 {
        font-size: var(--type-step);
        font-weight: var(--weight-strong);
      }
      h3 {
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
      a.plain {
        display: inline-flex;
        align-items: center;
        min-height: var(--target-desk);
        padding: 6px 14px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        color: var(--ink);
        font-weight: var(--weight-word);
        text-decoration: none;
      }
      input[type='file'] {
        width: 100%;
        min-width: 0;
        min-height: var(--target-desk);
        font: inherit;
        font-size: var(--type-text);
        color: var(--ink);
      }
      ::file-selector-button {
        min-height: 36px;
        margin-inline-end: var(--space-3);
        padding: 4px 12px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--paper);
        color: var(--ink);
        font: inherit;
      }
      label {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-1);
        width: 100%;
        font-weight: var(--weight-word);
      }
      textarea,
      select {
        width: 100%;
        min-height: var(--target-desk);
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        font: inherit;
        font-size: var(--type-text);
      }
      textarea {
        min-height: 110px;
        resize: vertical;
      }
      .told {
        width: 100%;
        padding: var(--space-3);
        border: var(--rule) solid var(--ink);
        font-weight: var(--weight-word);
      }
      .faults {
        width: 100%;
        max-height: 320px;
        overflow: auto;
      }
      .faults li {
        margin-top: var(--space-2);
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
      }
      code {
        display: block;
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
    `,
  ];

  /** What the book has, for a recipe's names and keys. */
  @property({ attribute: false }) index: BookIndex | null = null;
  @property({ attribute: false }) units: Units = { temperature: 'C', weight: 'g' };
  /** Sends a book to the server. */
  @property({ attribute: false }) send: (value: unknown) => Promise<BookOutcome> = (value) => sendBook(value);
  @state() private standing: Standing = { phase: 'asking' };
  @state() private pasted = '';

  protected override render(): TemplateResult {
    return html`<h2>${IN_OUT.title}</h2>
      <section>
        <h3>${IN_OUT.outTitle}</h3>
        <p>${IN_OUT.outMore}</p>
        <a class="plain" href="/api/book/export" download>${IN_OUT.download}</a>
      </section>
      <section>
        <h3>${IN_OUT.inTitle}</h3>
        <p>${IN_OUT.inMore}</p>
        <label
          >${IN_OUT.pick}<input
            type="file"
            accept=".json,.jsonld,.html,.htm,.txt,application/json,application/ld+json,text/html"
            @change=${this.filePicked}
        /></label>
        <label
          >${IN_OUT.pasteTitle}: ${IN_OUT.paste}<textarea
            spellcheck="false"
            .value=${this.pasted}
            @input=${(event: InputEvent) => (this.pasted = (event.target as HTMLTextAreaElement).value)}
          ></textarea>
        </label>
        <button type="button" class="plain" ?disabled=${this.pasted.trim() === ''} @click=${() => this.read(this.pasted)}>
          ${IN_OUT.read}
        </button>
        <div role="status">${this.told()}</div>
      </section>
      ${this.standing.phase === 'read' ? this.whatWasRead(this.standing) : nothing}`;
  }

  private told(): TemplateResult | typeof nothing {
    const { standing } = this;
    switch (standing.phase) {
      case 'busy':
      case 'told':
        return html`<p class="told">${standing.words}</p>`;
      case 'answered':
        return this.answer(standing.outcome);
      case 'asking':
      case 'read':
        return nothing;
      default:
        return unreachable(standing);
    }
  }

  private answer(outcome: BookOutcome): TemplateResult {
    switch (outcome.kind) {
      case 'done':
        return html`<p class="told">${IN_OUT.done} ${IN_OUT.counts(outcome.added, outcome.changed, outcome.same)}</p>`;
      case 'failed':
        return html`<p class="told">${IN_OUT.failed}</p>`;
      case 'refused':
        return html`<p class="told">${IN_OUT.refused} ${outcome.detail}</p>`;
      case 'faulty':
        return html`<p>${IN_OUT.faulty}</p>
          <ul class="faults" tabindex="0" aria-label=${IN_OUT.faulty}>
            ${outcome.faults.slice(0, FAULTS_SHOWN).map((fault) => html`<li>${faultText(fault)} <code>${fault.path}</code></li>`)}
            ${outcome.faults.length > FAULTS_SHOWN ? html`<li>${IN_OUT.moreFaults(outcome.faults.length - FAULTS_SHOWN)}</li>` : nothing}
          </ul>`;
      default:
        return unreachable(outcome);
    }
  }

  private whatWasRead(standing: Extract<Standing, { phase: 'read' }>): TemplateResult {
    const { read } = standing;
    return read.kind === 'book' ? this.book(read.value, read.holds) : this.recipes(read, standing.recipeAt);
  }

  private book(value: unknown, { formulas, products, ingredients }: BookHolds): TemplateResult {
    return html`<section>
      <h3>${IN_OUT.bookTitle}</h3>
      <p>${IN_OUT.bookHolds(formulas, products, ingredients)}</p>
      <p>${IN_OUT.bookNote}</p>
      <button type="button" class="plain filled" @click=${() => this.bringIn(value)}>${IN_OUT.bringIn}</button>
    </section>`;
  }

  private recipes(read: Extract<TextRead, { kind: 'recipes' }>, at: number): TemplateResult {
    const recipe = readRecipe(read.recipes, at, this.index);
    return html`<section>
      ${
        read.recipes.length === 1
          ? nothing
          : html`<label
              >${IN_OUT.whichRecipe}
              <select
                @change=${(event: Event) => (this.standing = { phase: 'read', read, recipeAt: Number((event.target as HTMLSelectElement).value) })}
              >
                ${recipeNames(read.recipes).map((name, index) => html`<option value=${index} .selected=${index === at}>${name}</option>`)}
              </select>
            </label>`
      }
      ${
        recipe.ok
          ? html`<import-recipe .recipe=${recipe.recipe} .units=${this.units}></import-recipe>`
          : html`<p class="told">${RECIPE_FAULTS[recipe.fault.code]}</p>`
      }
    </section>`;
  }

  private async filePicked(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file === undefined) return;
    if (file.size > MOST_BOOK_BYTES) {
      this.standing = { phase: 'told', words: IN_OUT.tooLarge(String(MOST_BOOK_BYTES / MEBIBYTE)) };
      return;
    }
    this.standing = { phase: 'busy', words: IN_OUT.reading };
    try {
      this.read(await file.text());
    } catch {
      this.standing = { phase: 'told', words: IN_OUT.notReadable };
    }
    // The same file, mended, can be chosen again.
    input.value = '';
  }

  private read(text: string): void {
    const read = readText(text);
    this.standing = read.kind === 'fault' ? { phase: 'told', words: RECIPE_FAULTS[read.fault.code] } : { phase: 'read', read, recipeAt: 0 };
  }

  private async bringIn(value: unknown): Promise<void> {
    this.standing = { phase: 'busy', words: IN_OUT.sending };
    const outcome = await this.send(value);
    this.standing = { phase: 'answered', outcome };
    if (outcome.kind === 'done') this.dispatchEvent(new BookChangedEvent());
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'book-in-out': BookInOut;
  }
}

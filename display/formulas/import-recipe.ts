import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ImportedRecipe } from '../../shared/book/recipe-import.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import type { Units } from '../desk/field.ts';
import { weightText } from '../parts/weight-text.ts';
import { IN_OUT, KIND_NAMES, UNREAD_WHY } from '../words/book.ts';
import { DraftWantedEvent } from './book-events.ts';

/** What was read of a recipe, what was not, and the way to a draft of it. */
@customElement('import-recipe')
export class ImportRecipe extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        justify-items: start;
        gap: var(--space-3);
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      h4 {
        margin: 0;
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      .list {
        width: 100%;
        border-top: 1px solid var(--line);
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
        gap: var(--space-3);
        padding: var(--space-1) 0;
        border-bottom: 1px solid var(--line);
      }
      li span {
        color: var(--ink-soft);
      }
      .caution {
        padding-inline-start: var(--space-3);
        border-inline-start: 6px double var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) recipe: ImportedRecipe | null = null;
  @property({ attribute: false }) units: Units | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { recipe, units } = this;
    if (recipe === null || units === null) return nothing;
    const { draft, product, newIngredients, unread } = recipe;
    const steps = draft.method.length + (product?.way.length ?? 0);
    return html`<h4>${IN_OUT.recipeTitle(draft.name)}</h4>
      <p>
        ${this.linesRead(recipe, units)}. ${IN_OUT.stepsRead(steps)}.
        ${product === null ? nothing : IN_OUT.productRead(weightText(product.pieceG, units))}
        ${recipe.totalMin === null ? nothing : IN_OUT.takes(timeText(recipe.totalMin))}
      </p>
      ${
        newIngredients.length === 0
          ? nothing
          : html`<h4>${IN_OUT.newTitle}</h4>
              <ul class="list">
                ${newIngredients.map(({ name, kind }) => html`<li>${name} <span>${KIND_NAMES[kind]}</span></li>`)}
              </ul>`
      }
      ${
        unread.length === 0
          ? html`<p>${IN_OUT.allRead}</p>`
          : html`<h4>${IN_OUT.unreadTitle}</h4>
              <ul class="list">
                ${unread.map(({ text, why }) => html`<li>${text} <span>${UNREAD_WHY[why]}</span></li>`)}
              </ul>`
      }
      <p class="caution">${IN_OUT.caution}</p>
      <button type="button" class="plain filled" @click=${() => this.dispatchEvent(new DraftWantedEvent(draft, newIngredients, product))}>
        ${IN_OUT.open}
      </button>`;
  }

  private linesRead({ draft }: ImportedRecipe, units: Units): string {
    const items = draft.parts.flatMap((part) => part.items);
    return IN_OUT.linesRead(
      items.length,
      weightText(
        items.reduce((sum, { g }) => sum + g, 0),
        units,
      ),
    );
  }
}

function timeText(minutes: number): string {
  const whole = Math.round(minutes);
  return IN_OUT.hours(Math.floor(whole / 60), whole % 60);
}

declare global {
  interface HTMLElementTagNameMap {
    'import-recipe': ImportRecipe;
  }
}

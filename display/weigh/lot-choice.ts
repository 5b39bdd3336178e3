import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { lotNumberSchema } from '../../shared/floor/events.ts';
import { fieldStyles } from '../phone/field-styles.ts';
import { NewlyShownEvent } from '../phone/phone-events.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { WEIGH } from '../words/weigh.ts';
import { LotChosenEvent } from './weigh-events.ts';

/** Lot numbers that are offered: with *Other lot…* one row of three. */
const OFFERED = 2;

/** From which lot an ingredient is taken: those used last as chips, any other typed (`lot-chosen`). */
@customElement('lot-choice')
export class LotChoice extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    fieldStyles,
    css`
      :host {
        display: block;
      }
      .label {
        margin-bottom: var(--space-1);
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .chips {
        display: grid;
        grid-template-columns: repeat(3, minmax(0, 1fr));
        gap: var(--space-4);
      }
      button {
        padding-inline: 2px;
        border-width: 2px;
        font-size: var(--type-small);
      }
      button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--paper);
      }
      .typed {
        display: grid;
        gap: var(--space-2);
      }
      .typed input:not([type='radio']) {
        min-height: var(--target);
      }
    `,
  ];

  /** Those used of the ingredient, the last used first. */
  @property({ attribute: false }) lots: readonly string[] = [];
  /** The one that is taken; null for none. */
  @property({ attribute: false }) chosen: string | null = null;
  @state() private isTyping = false;
  @query('input') private input!: HTMLInputElement | null;

  /** One step back: the field closes. False where it is not open. */
  stepBack(): boolean {
    const wasTyping = this.isTyping;
    this.isTyping = false;
    return wasTyping;
  }

  protected override render(): TemplateResult {
    return this.isTyping ? this.field() : this.chips();
  }

  private chips(): TemplateResult {
    const { chosen } = this;
    const last = this.lots.slice(0, OFFERED);
    const offered = chosen === null || last.includes(chosen) ? last : [chosen, ...last].slice(0, OFFERED);
    return html`
      <p class="label" aria-hidden="true">${WEIGH.lot}</p>
      <div class="chips" role="group" aria-label=${WEIGH.lot}>
        ${offered.map(
          (lot) =>
            html`<button
              type="button"
              class="middling"
              aria-pressed=${lot === chosen}
              @act=${() => this.choose(lot === chosen ? null : lot)}
            >
              ${lot}
            </button>`,
        )}
        <button type="button" class="middling" @act=${this.type}>${WEIGH.otherLot}</button>
      </div>
    `;
  }

  private field(): TemplateResult {
    return html`<div class="typed">
      <label for="lot">${WEIGH.typedLot}</label>
      <input
        id="lot"
        maxlength=${lotNumberSchema.maxLength ?? 0}
        autocomplete="off"
        autocapitalize="characters"
        enterkeyhint="done"
        @keydown=${this.keyed}
      />
      <button type="button" class="middling" @act=${this.typed}>${WEIGH.lotDone}</button>
    </div>`;
  }

  private type(): void {
    this.isTyping = true;
    this.dispatchEvent(new NewlyShownEvent());
    void this.updateComplete.then(() => this.input?.focus());
  }

  /** Enter is the button; leaving the field is not, or it would go away under the thumb that presses the button. */
  private keyed(event: KeyboardEvent): void {
    if (event.key === 'Enter') this.typed();
  }

  private typed(): void {
    const read = lotNumberSchema.safeParse(this.input?.value ?? '');
    this.isTyping = false;
    this.dispatchEvent(new NewlyShownEvent());
    if (read.success) this.choose(read.data);
  }

  private choose(lot: string | null): void {
    this.dispatchEvent(new LotChosenEvent(lot));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lot-choice': LotChoice;
  }
}

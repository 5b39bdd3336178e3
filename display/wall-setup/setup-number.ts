import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { NumberGivenEvent } from './setup-events.ts';
import { setupStyles } from './setup-styles.ts';

/** A number with its unit, between a minus and a plus. Says `number-given` for what lies within its bounds, and nothing else. */
@customElement('setup-number')
export class SetupNumber extends LitElement {
  static override styles = [
    setupStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-1);
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2);
      }
      input[type='text'] {
        width: 6em;
        text-align: right;
      }
      button {
        font-size: 1.3em;
        line-height: 1;
      }
      [aria-invalid='true'] {
        border-style: dashed;
      }
    `,
  ];

  @property() label = '';
  @property() unit = '';
  /** What − and + do, for a screen reader. */
  @property() lessLabel = '';
  @property() moreLabel = '';
  @property({ type: Number }) value = 0;
  @property({ type: Number }) least = 0;
  @property({ type: Number }) most = 0;
  @property({ type: Number }) step = 1;
  /** The page's language, whose decimal sign is written. */
  @property() language = 'en';
  /** As it is being typed, which may be no number yet. */
  @state() private typed: string | null = null;

  protected override render(): TemplateResult {
    const isFaulty = this.typed !== null && this.numberOf(this.typed) === null;
    return html`<label for="control">${this.label}</label>
      <div class="line">
        <button type="button" aria-label="${this.label}: ${this.lessLabel}" @click=${() => this.go(-1)}>−</button>
        <input
          id="control"
          type="text"
          inputmode="decimal"
          autocomplete="off"
          aria-invalid=${isFaulty}
          aria-describedby="unit"
          .value=${this.typed ?? this.shown}
          @input=${this.input}
          @blur=${() => (this.typed = null)}
        />
        <span id="unit">${this.unit}</span>
        <button type="button" aria-label="${this.label}: ${this.moreLabel}" @click=${() => this.go(1)}>+</button>
      </div>`;
  }

  private get shown(): string {
    return this.value.toLocaleString(this.language, { maximumFractionDigits: 2, useGrouping: false });
  }

  private go(steps: number): void {
    this.typed = null;
    // On the grid of the steps, and without the tails of binary fractions.
    const wanted = Math.round((this.value + steps * this.step) / this.step) * this.step;
    this.give(Math.min(this.most, Math.max(this.least, Math.round(wanted * 100) / 100)));
  }

  private input(event: InputEvent): void {
    this.typed = (event.target as HTMLInputElement).value;
    const value = this.numberOf(this.typed);
    if (value !== null) this.give(value);
  }

  private numberOf(text: string): number | null {
    const plain = text.trim().replace(',', '.');
    const value = /^\d+(\.\d*)?$/.test(plain) ? Number(plain) : Number.NaN;
    return value >= this.least && value <= this.most ? value : null;
  }

  private give(value: number): void {
    if (value !== this.value) this.dispatchEvent(new NumberGivenEvent(value));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-number': SetupNumber;
  }
}

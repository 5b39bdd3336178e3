import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { NUMBERS, numberWords } from '../words/numbers.ts';
import { PANELS } from '../words/panels.ts';
import { typedNumber } from './around-model.ts';
import { fieldStyles } from './field-styles.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** A number was stepped to or typed; always within the stepper's range. */
export class ValueChosenEvent extends Event {
  static readonly type = 'value-chosen';
  readonly value: number;

  constructor(value: number) {
    super(ValueChosenEvent.type, { bubbles: true, composed: true });
    this.value = value;
  }
}

/** A number with a large button on either side, that can be typed too. What is out of its range is refused in words. */
@customElement('number-stepper')
export class NumberStepper extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    fieldStyles,
    css`
      :host {
        display: block;
      }
      .row {
        display: grid;
        grid-template-columns: 94px minmax(0, 1fr) 94px;
        gap: var(--space-4);
        align-items: stretch;
        margin-top: var(--space-1);
      }
      button {
        min-height: var(--target);
        font-size: var(--type-verb);
      }
      input:not([type='radio']) {
        min-height: var(--target);
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
        text-align: center;
      }
      [role='alert'] p {
        margin-top: var(--space-2);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property() label = '';
  @property() unit = '';
  @property({ attribute: false }) value = 0;
  @property({ attribute: false }) step = 1;
  /** Decimals that can be typed, 0 or 1. */
  @property({ attribute: false }) digits = 0;
  @property({ attribute: false }) least = 0;
  @property({ attribute: false }) most = 100_000;
  /** Why what was typed was not taken. */
  @state() private refused: string | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('value')) this.refused = null;
  }

  protected override render(): TemplateResult {
    const { label, step, value } = this;
    return html`
      <label for="value">${label}${this.unit === '' ? '' : `, ${this.unit}`}</label>
      <div class="row">
        <button
          type="button"
          aria-label=${PANELS.less(label, step)}
          ?disabled=${value <= this.least}
          @act=${() => this.choose(value - step)}
        >
          −
        </button>
        <input
          id="value"
          inputmode="decimal"
          autocomplete="off"
          enterkeyhint="done"
          aria-describedby="refused"
          .value=${numberWords(value)}
          @change=${this.typed}
        />
        <button
          type="button"
          aria-label=${PANELS.moreBy(label, step)}
          ?disabled=${value >= this.most}
          @act=${() => this.choose(value + step)}
        >
          +
        </button>
      </div>
      <div id="refused" role="alert">${this.refused === null ? nothing : html`<p>${this.refused}</p>`}</div>
    `;
  }

  private typed(event: Event): void {
    const input = event.target as HTMLInputElement;
    const { value: text } = input;
    const typed = typedNumber(text);
    this.refused = this.whyNot(text, typed);
    // What will not do is put back as it was, so that nobody says it with the next touch.
    if (typed === null || this.refused !== null) input.value = numberWords(this.value);
    else this.choose(Math.round(typed * 10 ** this.digits) / 10 ** this.digits);
  }

  private whyNot(text: string, typed: number | null): string | null {
    const { least, most, unit } = this;
    if (typed === null) return NUMBERS.notANumber(text);
    if (typed >= least && typed <= most) return null;
    const withUnit = unit === '' ? '' : `\u00a0${unit}`;
    return NUMBERS.outOfRange(numberWords(typed), numberWords(least), `${numberWords(most)}${withUnit}`);
  }

  private choose(value: number): void {
    this.refused = null;
    this.dispatchEvent(new ValueChosenEvent(Math.min(this.most, Math.max(this.least, value))));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'number-stepper': NumberStepper;
  }
  interface HTMLElementEventMap {
    'value-chosen': ValueChosenEvent;
  }
}

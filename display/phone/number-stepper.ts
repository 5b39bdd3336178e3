import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { PANELS } from '../words/panels.ts';
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

/** A whole number with a large button on either side, that can be typed too. */
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
        gap: 16px;
        align-items: stretch;
        margin-top: 4px;
      }
      button {
        min-height: 94px;
        font-size: 34px;
      }
      input:not([type='radio']) {
        min-height: 94px;
        font-size: 28px;
        font-weight: var(--weight-strong);
        text-align: center;
      }
    `,
  ];

  @property() label = '';
  @property() unit = '';
  @property({ attribute: false }) value = 0;
  @property({ attribute: false }) step = 1;
  @property({ attribute: false }) least = 0;
  @property({ attribute: false }) most = 100_000;

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
        <input id="value" inputmode="numeric" autocomplete="off" enterkeyhint="done" .value=${String(value)} @change=${this.typed} />
        <button
          type="button"
          aria-label=${PANELS.moreBy(label, step)}
          ?disabled=${value >= this.most}
          @act=${() => this.choose(value + step)}
        >
          +
        </button>
      </div>
    `;
  }

  private typed(event: Event): void {
    const input = event.target as HTMLInputElement;
    const typed = Number(input.value);
    // What is no number is put back as it was.
    if (input.value.trim() === '' || !Number.isFinite(typed)) input.value = String(this.value);
    else this.choose(Math.round(typed));
  }

  private choose(value: number): void {
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

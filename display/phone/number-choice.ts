import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { NUMBERS, numberWords } from '../words/numbers.ts';
import './number-stepper.ts';
import { NewlyShownEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** One of the offered numbers was touched: that says it. */
export class ValueSaidEvent extends Event {
  static readonly type = 'value-said';
  readonly value: number;

  constructor(value: number) {
    super(ValueSaidEvent.type, { bubbles: true, composed: true });
    this.value = value;
  }
}

/**
 * The likely numbers as chips, one touch each (`value-said`); behind *Another…* a stepper for any other
 * (`value-chosen`, which says nothing yet).
 */
@customElement('number-choice')
export class NumberChoice extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }
      .label {
        margin-bottom: var(--space-1);
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .chips {
        display: grid;
        grid-template-columns: repeat(5, minmax(0, 1fr));
        gap: var(--space-4);
      }
      .chips[data-wide] {
        grid-template-columns: repeat(3, minmax(0, 1fr));
      }
      button {
        padding-inline: 2px;
        border-width: 2px;
        font-variant-numeric: tabular-nums;
      }
      button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--paper);
      }
      button[data-expected] {
        border-width: 5px;
        font-weight: var(--weight-strong);
      }
      .another {
        grid-column: auto / span 2;
      }
      [data-wide] .another {
        grid-column: auto / span 1;
      }
      .another:first-child {
        grid-column: 1 / -1;
      }
    `,
  ];

  @property() label = '';
  @property() unit = '';
  /** The numbers offered, in the order to show. */
  @property({ attribute: false }) values: readonly number[] = [];
  /** Which of them is the expected one; null where nothing is. */
  @property({ attribute: false }) expected: number | null = null;
  /** What is chosen: the pressed chip, and where the stepper begins. */
  @property({ attribute: false }) value = 0;
  /** Whether a chip shows as chosen, since something else says it. */
  @property({ type: Boolean }) keeps = false;
  /** Three to a row, for numbers of more figures. */
  @property({ type: Boolean }) wide = false;
  @property({ attribute: false }) step = 1;
  @property({ attribute: false }) digits = 0;
  @property({ attribute: false }) least = 0;
  @property({ attribute: false }) most = 100_000;
  /** How a chip reads. */
  @property({ attribute: false }) text: (value: number) => string = numberWords;
  @state() private isStepping = false;

  protected override render(): TemplateResult {
    return this.isStepping || this.values.length === 0 ? this.stepper() : this.chips();
  }

  private chips(): TemplateResult {
    const { label } = this;
    return html`
      ${label === '' ? nothing : html`<p class="label" aria-hidden="true">${label}</p>`}
      <div class="chips" role="group" aria-label=${label === '' ? nothing : label} ?data-wide=${this.wide}>
        ${this.values.map((value) => this.chip(value))}
        <button type="button" class="middling another" @act=${this.stepInstead}>${NUMBERS.another}</button>
      </div>
    `;
  }

  private chip(value: number): TemplateResult {
    return html`<button
      type="button"
      class="middling"
      aria-pressed=${this.keeps ? value === this.value : nothing}
      ?data-expected=${value === this.expected}
      @act=${() => this.dispatchEvent(new ValueSaidEvent(value))}
    >
      ${this.text(value)}
    </button>`;
  }

  private stepper(): TemplateResult {
    return html`<number-stepper
      label=${this.label}
      unit=${this.unit}
      .value=${this.value}
      .step=${this.step}
      .digits=${this.digits}
      .least=${this.least}
      .most=${this.most}
    ></number-stepper>`;
  }

  private stepInstead(): void {
    this.isStepping = true;
    this.dispatchEvent(new NewlyShownEvent());
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'number-choice': NumberChoice;
  }
  interface HTMLElementEventMap {
    'value-said': ValueSaidEvent;
  }
}

import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import { valuesAround } from '../phone/around-model.ts';
import { celsiusOf, degreesIn, onReadingStep, READING_STEP, readingText } from '../phone/degrees.ts';
import '../phone/number-choice.ts';
import type { ValueSaidEvent } from '../phone/number-choice.ts';
import type { ValueChosenEvent } from '../phone/number-stepper.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { NUMBERS } from '../words/numbers.ts';
import { actionStyles } from './action-styles.ts';

/** Chips below and above the expected one: with *Another…* two full rows. */
const BELOW = 3;
const ABOVE = 4;
/** Where a stepper begins when nothing is known, in °C. */
const START_C = 20;

/** A temperature was said, in °C. */
export class DegreesSaidEvent extends Event {
  static readonly type = 'degrees-said';
  readonly celsius: number;

  constructor(celsius: number) {
    super(DegreesSaidEvent.type, { bubbles: true, composed: true });
    this.celsius = celsius;
  }
}

/** One touch says a temperature around the expected one (`degrees-said`, in °C); any other is stepped to or typed. */
@customElement('degrees-choice')
export class DegreesChoice extends LitElement {
  static override styles = [baseStyles, buttonStyles, actionStyles];

  @property() heading = '';
  @property() label = '';
  @property() more = '';
  @property({ attribute: false }) unit: House['units']['temperature'] = 'C';
  /** In °C; null where nothing is known. */
  @property({ attribute: false }) expectedC: number | null = null;
  /** Whether the expected one is what is wanted, and not only what was last read. */
  @property({ type: Boolean }) isTarget = false;
  /** What a probe can read of it, in °C. */
  @property({ attribute: false }) leastC = -30;
  @property({ attribute: false }) mostC = 60;
  @state() private degrees: number | null = null;

  protected override render(): TemplateResult {
    const { unit, expectedC } = this;
    const step = READING_STEP[unit];
    const range = { least: Math.ceil(degreesIn(unit, this.leastC)), most: Math.floor(degreesIn(unit, this.mostC)) };
    const expected = expectedC === null ? null : onReadingStep(unit, expectedC);
    const degrees = this.degrees ?? expected ?? onReadingStep(unit, START_C);
    return html`
      <h2>${this.heading}</h2>
      ${this.more === '' ? nothing : html`<p class="soft">${this.more}</p>`}
      <number-choice
        label=${this.label}
        unit=${`°${unit}`}
        .values=${expected === null ? [] : valuesAround(expected, step, BELOW, ABOVE, range)}
        .expected=${this.isTarget ? expected : null}
        .value=${degrees}
        .step=${step}
        .digits=${1}
        .least=${range.least}
        .most=${range.most}
        @value-said=${(event: ValueSaidEvent) => this.say(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.degrees = event.value)}
      ></number-choice>
      ${
        this.degrees === null && expected !== null
          ? nothing
          : html`<button type="button" class="middling filled" @act=${() => this.say(degrees)}>
              ${NUMBERS.reads(readingText(celsiusOf(unit, degrees), unit))}
            </button>`
      }
    `;
  }

  private say(degrees: number): void {
    this.degrees = null;
    this.dispatchEvent(new DegreesSaidEvent(celsiusOf(this.unit, degrees)));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'degrees-choice': DegreesChoice;
  }
  interface HTMLElementEventMap {
    'degrees-said': DegreesSaidEvent;
  }
}

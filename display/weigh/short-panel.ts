import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import type { WeighLine } from '../../shared/floor/weigh-out.ts';
import { FloorCommandEvent, NewlyShownEvent } from '../phone/phone-events.ts';
import '../phone/number-choice.ts';
import type { ValueSaidEvent } from '../phone/number-choice.ts';
import type { ValueChosenEvent } from '../phone/number-stepper.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { numberWords } from '../words/numbers.ts';
import { WEIGH } from '../words/weigh.ts';
import { actionStyles } from './action-styles.ts';
import { amountField, gramsSaid, type AmountField, shortCommand, type ShortOutcome } from './short-model.ts';
import { weightText } from '../parts/weight-text.ts';

/** Too little of a line: how much there is, what the batch becomes with it, and then the word that it is so. */
@customElement('short-panel')
export class ShortPanel extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    actionStyles,
    css`
      .means {
        display: grid;
        gap: var(--space-1);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
    `,
  ];

  @property({ attribute: false }) line: WeighLine | null = null;
  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) units: House['units'] = { temperature: 'C', weight: 'g' };
  /** What the floor would make of it, or why it would not. */
  @property({ attribute: false }) outcomeOf: (grams: number) => ShortOutcome | null = () => null;
  /** A refusal in words. */
  @property({ attribute: false }) whyNot: (outcome: ShortOutcome) => string = () => '';
  /** An amount that a chip said: all that is left to say is that it is so. */
  @state() private said: number | null = null;
  /** An amount that was stepped to or typed. */
  @state() private stepped: number | null = null;

  /** One step back: the amount is asked for again. False where none was said. */
  stepBack(): boolean {
    if (this.said === null) return false;
    this.said = null;
    this.dispatchEvent(new NewlyShownEvent());
    return true;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { line, said } = this;
    if (line === null) return nothing;
    const field = amountField(line, this.units);
    return html`
      <h2>${WEIGH.shortTitle(line.name)}</h2>
      ${said === null ? this.asking(line, field) : this.sure(line, gramsSaid(said, field))}
    `;
  }

  private asking(line: WeighLine, field: AmountField): TemplateResult {
    const { stepped } = this;
    return html`
      <p class="soft">${WEIGH.shortNeeded(weightText(line.grams, this.units, line.divisionG))}</p>
      <number-choice
        label=${WEIGH.shortLabel}
        unit=${field.unit}
        wide
        .values=${field.values}
        .value=${stepped ?? field.values[0] ?? field.most}
        .step=${field.step}
        .digits=${field.digits}
        .least=${field.step}
        .most=${field.most}
        .text=${(amount: number) => `${numberWords(amount)}\u00a0${field.unit}`}
        @value-said=${(event: ValueSaidEvent) => this.say(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.stepped = event.value)}
      ></number-choice>
      ${stepped === null ? nothing : this.sure(line, gramsSaid(stepped, field))}
    `;
  }

  private sure(line: WeighLine, grams: number): TemplateResult {
    return html`<div role="status" class="means">${this.means(grams)}</div>
      ${this.doing(line, grams)}`;
  }

  private means(grams: number): TemplateResult {
    const outcome = this.outcomeOf(grams);
    if (outcome === null) return html``;
    if (!outcome.ok) return html`<p>${this.whyNot(outcome)}</p>`;
    const { units } = this;
    return html`
      <p>${WEIGH.shortMeans(weightText(outcome.fromG, units), weightText(outcome.toG, units))}</p>
      ${outcome.cuts.map(({ name, before, after }) => html`<p>${WEIGH.shortPieces(name, before, after)}</p>`)}
      <p class="soft">${WEIGH.shortTakeOut}</p>
    `;
  }

  private doing(line: WeighLine, grams: number): TemplateResult {
    const isPossible = this.outcomeOf(grams)?.ok === true;
    return html`<button
      type="button"
      class="big filled"
      ?disabled=${!isPossible}
      @act=${() => this.dispatchEvent(new FloorCommandEvent(shortCommand(this.workpieceId, line.id, grams)))}
    >
      ${WEIGH.shortDo(weightText(grams, this.units, line.divisionG))}
    </button>`;
  }

  private say(value: number): void {
    this.said = value;
    this.dispatchEvent(new NewlyShownEvent());
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'short-panel': ShortPanel;
  }
}

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Addition } from '../../shared/documents/method.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { weightMeasure } from '../desk/weight-measure.ts';
import { withValueAt } from '../desk/inwards.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { METHOD } from '../words/method.ts';
import { amountWay, withAddition, withAmountWay, type AmountWay } from './addition-edits.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { formField, ownFaults, removeButton, storedOf } from './form-fields.ts';
import { faultTexts, within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lineOf } from './line-of.ts';
import { additionChoices, additionName } from './step-names.ts';

const WAYS: Readonly<Record<AmountWay, string>> = { asFormula: METHOD.asFormula, pct: METHOD.additionPct, gPerPiece: METHOD.additionPiece };
const MOST_ADDITIONS = 40;

/** What goes in at a step: ingredients and what other formulas make, by the formula's own parts, per cent, or grams a piece. */
@customElement('step-additions')
export class StepAdditions extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) additions: readonly Addition[] = [];
  /** Of the list. */
  @property({ attribute: false }) place: FormPlace | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, place } = this;
    if (context === null || place === null) return nothing;
    const choices = additionChoices(context);
    return html`<h4>${METHOD.addition}</h4>
      ${ownFaults(place)}
      <ul class="lines" @field-changed=${this.fieldChanged}>
        ${this.additions.map((addition, index) => this.line(addition, index, choices, context, within(place, [index])))}
      </ul>
      <div class="buttons">
        <button type="button" class="plain" ?disabled=${this.additions.length >= MOST_ADDITIONS} @click=${this.addClicked}>
          ${METHOD.addAddition}
        </button>
      </div>`;
  }

  private line(
    addition: Addition,
    index: number,
    choices: ReturnType<typeof additionChoices>,
    context: EditorContext,
    place: FormPlace,
  ): TemplateResult {
    const what: Field = { key: 'what', label: METHOD.additionWhat, kind: 'one', options: {}, groups: choices };
    const how: Field = { key: 'how', label: METHOD.additionHow, kind: 'one', options: WAYS };
    const which = addition.item === undefined ? 'formula' : 'item';
    return html`<li class="line" data-index=${index}>
      ${ownFaults(place)}
      <div class="fields">
        ${formField(what, `${which}:${addition[which] ?? ''}`, within(place, [which]))}
        ${formField(how, amountWay(addition), within(place, ['how']))} ${this.amount(addition, context, place)}
      </div>
      ${removeButton(additionName(addition, context), () => this.changeTo(this.additions.filter((_other, at) => at !== index)))}
      ${
        addition.item === undefined && !addition.heldBack
          ? nothing
          : formField({ key: 'heldBack', label: METHOD.heldBack, kind: 'yes' }, addition.heldBack, within(place, ['heldBack']))
      }
      ${addition.heldBack && addition.item === undefined ? faultTexts(within(place, ['heldBack'])).map((text) => html`<p class="fault">${text}</p>`) : nothing}
    </li>`;
  }

  private amount(addition: Addition, context: EditorContext, place: FormPlace): TemplateResult | typeof nothing {
    switch (amountWay(addition)) {
      case 'asFormula':
        return nothing;
      case 'pct':
        return formField(
          numberField('pct', METHOD.additionPct, plainMeasure(UNITS.percent), 0, 1000),
          addition.pct,
          within(place, ['pct']),
        );
      case 'gPerPiece':
        return formField(
          numberField('gPerPiece', METHOD.additionPiece, weightMeasure(context.house.units), 0, 100_000),
          addition.gPerPiece,
          within(place, ['gPerPiece']),
        );
    }
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const index = lineOf(event);
    this.changeTo(this.additions.map((addition, at) => (at === index ? changedAddition(addition, event.key, storedOf(event)) : addition)));
  }

  private readonly addClicked = (): void => {
    const [first] = this.context?.ingredients ?? [];
    if (first !== undefined) this.changeTo([...this.additions, { item: first.id, heldBack: false }]);
  };

  private changeTo(additions: readonly Addition[]): void {
    if (this.place !== null) this.dispatchEvent(new DocumentChangedEvent(this.place.path, additions));
  }
}

function changedAddition(addition: Addition, key: string, value: unknown): Addition {
  if (key === 'what') return withAddition(addition, String(value));
  if (key === 'how') return withAmountWay(addition, value as AmountWay);
  return withValueAt(addition, [key], value);
}

declare global {
  interface HTMLElementTagNameMap {
    'step-additions': StepAdditions;
  }
}

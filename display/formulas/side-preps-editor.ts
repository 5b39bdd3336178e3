import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SidePrep, Step } from '../../shared/documents/method.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { withValueAt, type Inwards } from '../desk/inwards.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { PREPS } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { formFields, ownFaults, removeButton, storedOf } from './form-fields.ts';
import { placeAt, within } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lineOf } from './line-of.ts';
import { firstSidePrep } from './side-prep-new.ts';
import { additionName, namesOf, stepNames } from './step-names.ts';

const MOST_PREPS = 20;
const WEEK_MIN = 7 * 24 * 60;

/** What is made beside a dough and joins it at a step, with its order rules. */
@customElement('side-preps-editor')
export class SidePrepsEditor extends LitElement {
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

  @property({ attribute: false }) preps: readonly SidePrep[] = [];
  /** All steps by which they may go: a product's stand behind its formula's. */
  @property({ attribute: false }) steps: readonly Step[] = [];
  /** Where the list stands in its document. */
  @property({ attribute: false }) root: Inwards = ['sidePreps'];
  @property({ attribute: false }) faultPath = 'formula';
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, preps } = this;
    if (context === null) return nothing;
    const place = placeAt(this.faultPath, this.root, context.faults);
    const fields = prepFields(context, this.steps);
    const first = firstSidePrep(this.steps, preps, context);
    return html`<p class="soft">${PREPS.note}</p>
      ${ownFaults(place)} ${preps.length === 0 ? html`<p class="soft">${PREPS.empty}</p>` : nothing}
      <ul class="lines" @field-changed=${this.fieldChanged}>
        ${preps.map(
          (prep, index) =>
            html`<li class="line" data-index=${index}>
              ${ownFaults(within(place, [index]))}
              <div class="fields">${formFields(fields, prep, within(place, [index]))}</div>
              ${removeButton(additionName(prep, context), () => this.say(preps.filter((_other, at) => at !== index)))}
            </li>`,
        )}
      </ul>
      ${first === null ? html`<p class="soft">${PREPS.noPreps}</p>` : nothing}
      <div class="buttons">
        <button
          type="button"
          class="plain"
          ?disabled=${first === null || preps.length >= MOST_PREPS}
          @click=${() => first !== null && this.say([...preps, first])}
        >
          ${PREPS.add}
        </button>
      </div>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const index = lineOf(event);
    this.say(this.preps.map((prep, at) => (at === index ? withValueAt(prep, [event.key], storedOf(event)) : prep)));
  }

  private say(preps: readonly SidePrep[]): void {
    this.dispatchEvent(new DocumentChangedEvent(this.root, preps));
  }
}

function prepFields(context: EditorContext, steps: readonly Step[]): readonly Field[] {
  const minutes = plainMeasure(UNITS.minutes);
  const made = namesOf(context.entries.filter(({ kind }) => kind === 'prep'));
  const named = stepNames(steps);
  return [
    { key: 'formula', label: PREPS.formula, kind: 'one', options: made },
    { key: 'joins', label: PREPS.joins, kind: 'one', options: named },
    numberField('readyMin', PREPS.readyMin, minutes, 0, WEEK_MIN),
    { key: 'notBefore', label: PREPS.notBefore, kind: 'one', options: { '': PREPS.whenever, ...named } },
    numberField('withinMin', PREPS.withinMin, minutes, 0, WEEK_MIN, 'optional'),
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'side-preps-editor': SidePrepsEditor;
  }
}

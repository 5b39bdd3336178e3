import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import '../desk/desk-field.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import { faultText } from '../desk/fault-text.ts';
import { doughMeasure, numberField, plainMeasure, temperatureMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { FORMULAS } from '../words/formulas.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { faultsAt } from './place-faults.ts';

/** What a formula is called and what it makes. */
@customElement('formula-head')
export class FormulaHead extends LitElement {
  static override styles = [
    deskStyles,
    css`
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(170px, 1fr));
        align-items: start;
        gap: var(--space-3) var(--space-4);
      }
      .wide {
        grid-column: 1 / -1;
      }
    `,
  ];

  @property({ attribute: false }) formula: Formula | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { formula, context } = this;
    if (formula === null || context === null) return nothing;
    return html`<div class="fields" @field-changed=${this.changed}>
      ${fieldsOf(formula, context).map(
        (field) =>
          html`<desk-field
            class=${field.key === 'name' || field.key === 'note' ? 'wide' : ''}
            data-field="formula.${field.key}"
            .field=${field}
            .value=${(formula as Readonly<Record<string, unknown>>)[field.key]}
            .faults=${faultsAt(context.faults, `formula.${field.key}`).map(faultText)}
          ></desk-field>`,
      )}
    </div>`;
  }

  private changed({ key, value }: FieldChangedEvent): void {
    // An emptied note is none.
    this.dispatchEvent(new DocumentChangedEvent([key], key === 'note' && value === '' ? undefined : value));
  }
}

function fieldsOf({ kind }: Formula, { house }: EditorContext): readonly Field[] {
  const { units } = house;
  return [
    { key: 'name', label: FORMULAS.name, kind: 'text', most: NAME_CHARACTERS },
    { key: 'letters', label: FORMULAS.letters, kind: 'text', most: 2, hint: FORMULAS.lettersHint },
    { key: 'kind', label: FORMULAS.kind, kind: 'one', options: FORMULAS.kinds },
    numberField('doughC', FORMULAS.doughC, temperatureMeasure(units), -5, 45, 'optional'),
    ...(kind === 'ferment' ? [numberField('seedG', FORMULAS.seedKept, doughMeasure(units), 0, 10_000_000, 'optional')] : []),
    numberField('handlingLossPct', FORMULAS.handlingLoss, plainMeasure('%'), 0, 30, 'optional'),
    ...(kind === 'prep' ? [] : [numberField('selfHeatKPerH', FORMULAS.selfHeat, plainMeasure('K/h'), 0, 3, 'optional')]),
    { key: 'note', label: FORMULAS.note, kind: 'text', most: REMARK_CHARACTERS },
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'formula-head': FormulaHead;
  }
}

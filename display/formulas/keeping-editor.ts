import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Keeping } from '../../shared/documents/keeping.ts';
import type { Step } from '../../shared/documents/method.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import type { Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { withValueAt, inwardsOf } from '../desk/inwards.ts';
import { KEEPING_EDIT, KEEPING_KINDS } from '../words/keeping.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { formFields, ownFaults, storedOf } from './form-fields.ts';
import { placeAt } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { stepNames } from './step-names.ts';

/** Whether a prep or a product is food that has to be kept cold or hot, why, and from which step on its time counts. */
@customElement('keeping-editor')
export class KeepingEditor extends LitElement {
  static override styles = [deskStyles, formStyles];

  @property({ attribute: false }) keeping: Keeping | null = null;
  @property({ attribute: false }) steps: readonly Step[] = [];
  @property({ attribute: false }) firstNumber = 1;
  @property({ attribute: false }) faultPath = 'formula';
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, keeping } = this;
    if (context === null) return nothing;
    const place = placeAt(this.faultPath, ['keeping'], context.faults);
    const fields: readonly Field[] = [
      { key: 'kind', label: KEEPING_EDIT.kind, kind: 'one', options: { '': KEEPING_EDIT.no, ...KEEPING_KINDS } },
      ...(keeping === null
        ? []
        : [
            {
              key: 'from',
              label: KEEPING_EDIT.from,
              kind: 'one',
              options: { '': KEEPING_EDIT.fromUsual, ...stepNames(this.steps, this.firstNumber) },
            } as const,
          ]),
    ];
    return html`${ownFaults(place)}
      <div class="fields" @field-changed=${this.fieldChanged}>${formFields(fields, keeping ?? { kind: '' }, place)}</div>
      <p class="soft">${KEEPING_EDIT.note}</p>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const changed = withValueAt(this.keeping ?? {}, inwardsOf(event.key), storedOf(event)) as Partial<Keeping>;
    this.dispatchEvent(new DocumentChangedEvent(['keeping'], changed.kind === undefined ? undefined : changed));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'keeping-editor': KeepingEditor;
  }
}

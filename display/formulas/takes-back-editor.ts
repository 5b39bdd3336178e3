import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { putBackKindSchema, type Formula } from '../../shared/documents/formula.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { withValueAt, type Inwards } from '../desk/inwards.ts';
import { PUT_BACK } from '../words/floor.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { TAKES_BACK } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { formFields, ownFaults, removeButton, storedOf } from './form-fields.ts';
import { placeAt, within } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lineOf } from './line-of.ts';

type Rule = Formula['takesBack'][number];
const MINUTES_IN_AN_HOUR = 60;
/** What a new rule begins with: common practice, a tenth of the flour, of the day before. */
const FIRST = { capPct: 10, ageMin: 24 * MINUTES_IN_AN_HOUR } as const;

const FIELDS: readonly Field[] = [
  { key: 'what', label: TAKES_BACK.what, kind: 'one', options: PUT_BACK },
  numberField('capPct', TAKES_BACK.capPct, plainMeasure(UNITS.percent), 0, 100),
  numberField(
    'ageMin',
    TAKES_BACK.age,
    {
      unit: TAKES_BACK.hours,
      shown: (minutes) => Number((minutes / MINUTES_IN_AN_HOUR).toFixed(2)),
      stored: (hours) => Math.round(hours * MINUTES_IN_AN_HOUR),
    },
    0,
    7 * 24 * MINUTES_IN_AN_HOUR,
  ),
];

/** What of earlier dough and bread a dough takes back, with its cap and age. */
@customElement('takes-back-editor')
export class TakesBackEditor extends LitElement {
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

  @property({ attribute: false }) takesBack: readonly Rule[] = [];
  @property({ attribute: false }) root: Inwards = ['takesBack'];
  @property({ attribute: false }) faultPath = 'formula';
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, takesBack } = this;
    if (context === null) return nothing;
    const place = placeAt(this.faultPath, this.root, context.faults);
    const unused = putBackKindSchema.options.find((kind) => !takesBack.some(({ what }) => what === kind));
    return html`<p class="soft">${TAKES_BACK.note}</p>
      ${ownFaults(place)} ${takesBack.length === 0 ? html`<p class="soft">${TAKES_BACK.empty}</p>` : nothing}
      <ul class="lines" @field-changed=${this.fieldChanged}>
        ${takesBack.map(
          (rule, index) =>
            html`<li class="line" data-index=${index}>
              ${ownFaults(within(place, [index]))}
              <div class="fields">${formFields(FIELDS, rule, within(place, [index]))}</div>
              ${removeButton(PUT_BACK[rule.what], () => this.say(takesBack.filter((_other, at) => at !== index)))}
            </li>`,
        )}
      </ul>
      ${takesBack.length === 0 ? nothing : html`<p class="caution">${TAKES_BACK.caution}</p>`}
      <div class="buttons">
        <button
          type="button"
          class="plain"
          ?disabled=${unused === undefined}
          @click=${() => unused !== undefined && this.say([...takesBack, { what: unused, ...FIRST }])}
        >
          ${TAKES_BACK.add}
        </button>
      </div>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const index = lineOf(event);
    this.say(this.takesBack.map((rule, at) => (at === index ? withValueAt(rule, [event.key], storedOf(event)) : rule)));
  }

  private say(takesBack: readonly Rule[]): void {
    this.dispatchEvent(new DocumentChangedEvent(this.root, takesBack));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'takes-back-editor': TakesBackEditor;
  }
}

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { afterSchema, type Step } from '../../shared/documents/method.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { inwardsOf, withValueAt } from '../desk/inwards.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { METHOD } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import { formFields, ownFaults, removeButton, storedOf } from './form-fields.ts';
import { within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lineOf } from './line-of.ts';
import { stepNames } from './step-names.ts';

type Link = NonNullable<Step['after']>[number];
const MOST_LINKS = 8;
const WEEK_MIN = 7 * 24 * 60;

/** Which earlier steps a step follows, and with what lag. */
@customElement('step-links')
export class StepLinks extends LitElement {
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

  @property({ attribute: false }) links: readonly Link[] = [];
  @property({ attribute: false }) earlierSteps: readonly Step[] = [];
  /** The number of the first of them in the list. */
  @property({ attribute: false }) firstNumber = 1;
  /** Of the list. */
  @property({ attribute: false }) place: FormPlace | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { place } = this;
    if (place === null) return nothing;
    const names = stepNames(this.earlierSteps, this.firstNumber);
    const fields = linkFields(names);
    return html`<h4>${METHOD.link}</h4>
      ${this.links.length === 0 ? html`<p class="soft">${METHOD.linkNote}</p>` : nothing} ${ownFaults(place)}
      <ul class="lines" @field-changed=${this.fieldChanged}>
        ${this.links.map(
          (link, index) =>
            html`<li class="line" data-index=${index}>
              ${ownFaults(within(place, [index]))}
              <div class="fields">${formFields(fields, link, within(place, [index]))}</div>
              ${removeButton(names[link.step] ?? link.step, () => this.changeTo(this.links.filter((_other, at) => at !== index)))}
            </li>`,
        )}
      </ul>
      <div class="buttons">
        <button
          type="button"
          class="plain"
          ?disabled=${this.links.length >= MOST_LINKS || this.earlierSteps.length === 0}
          @click=${this.addClicked}
        >
          ${METHOD.addLink}
        </button>
      </div>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const index = lineOf(event);
    this.changeTo(this.links.map((link, at) => (at === index ? withValueAt(link, inwardsOf(event.key), storedOf(event)) : link)));
  }

  private readonly addClicked = (): void => {
    const before = this.earlierSteps.at(-1);
    if (before !== undefined) this.changeTo([...this.links, afterSchema.parse({ step: before.id })]);
  };

  private changeTo(links: readonly Link[]): void {
    if (this.place !== null) this.dispatchEvent(new DocumentChangedEvent(this.place.path, links.length === 0 ? undefined : links));
  }
}

function linkFields(steps: Readonly<Record<string, string>>): readonly Field[] {
  const minutes = plainMeasure(UNITS.minutes);
  return [
    { key: 'step', label: METHOD.linkStep, kind: 'one', options: steps },
    { key: 'from', label: METHOD.linkFrom, kind: 'one', options: METHOD.linkFroms },
    numberField('earliestMin', METHOD.linkEarliest, minutes, 0, WEEK_MIN),
    numberField('targetMin', METHOD.linkTarget, minutes, 0, WEEK_MIN),
    numberField('latestMin', METHOD.linkLatest, minutes, 0, WEEK_MIN, 'optional'),
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'step-links': StepLinks;
  }
}

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { beginsByItself, type Step } from '../../shared/documents/method.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { METHOD } from '../words/method.ts';
import { withBakeTarget } from './bake-sum.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { changedBy, formField, formFields, ownFaults } from './form-fields.ts';
import { within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import './step-additions.ts';
import './step-bake.ts';
import './step-claims.ts';
import {
  BEGINS_FIELD,
  coreFields,
  yieldFields,
  isVerb,
  KIND_FIELD,
  LEAVE_OUT_FIELD,
  lookFields,
  timeFields,
  VERB_FIELD,
  whereFields,
} from './step-fields.ts';
import { withKind, withVerb } from './step-kind.ts';
import './step-links.ts';
import './step-ripening.ts';

/** Everything that can be said of one step. */
@customElement('step-editor')
export class StepEditor extends LitElement {
  static override styles = [
    deskStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-5);
      }
      details {
        display: grid;
        gap: var(--space-3);
      }
      summary {
        min-height: var(--target-desk);
        padding-block: 10px;
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
        line-height: 1.2;
        cursor: pointer;
      }
    `,
  ];

  @property({ attribute: false }) steps: readonly Step[] = [];
  @property({ attribute: false }) index = 0;
  /** The number of the first step in the list. */
  @property({ attribute: false }) firstNumber = 1;
  /** Of the step. */
  @property({ attribute: false }) place: FormPlace | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, place } = this;
    const step = this.steps[this.index];
    if (context === null || place === null || step === undefined) return nothing;
    return html`${ownFaults(place)}
      <div class="group" @field-changed=${this.fieldChanged}>
        <div class="fields">${formFields([VERB_FIELD, KIND_FIELD], step, place)}</div>
        <h4>${METHOD.time}</h4>
        <div class="fields numbers">${formFields(timeFields(step), step, place)}</div>
        ${ownFaults(within(place, ['minutes']))}
      </div>
      ${this.oven(step, context, place)}
      <div class="group" @field-changed=${this.fieldChanged}>
        <h4>${METHOD.look}</h4>
        ${formFields(lookFields(step), step, place)}
      </div>
      <div class="group">
        <h4>${METHOD.whereWith}</h4>
        <div class="fields" @field-changed=${this.fieldChanged}>${formFields(whereFields(context.kitchen), step, place)}</div>
        <step-claims
          .claims=${step.claims}
          .laterSteps=${this.steps.slice(this.index)}
          .firstNumber=${this.index + this.firstNumber}
          .place=${within(place, ['claims'])}
          .context=${context}
        ></step-claims>
      </div>
      <step-additions .additions=${step.additions} .place=${within(place, ['additions'])} .context=${context}></step-additions>
      ${this.more(step, context, place)}`;
  }

  private oven(step: Step, { house }: EditorContext, place: FormPlace): TemplateResult | typeof nothing {
    const core = [...coreFields(step, house.units), ...yieldFields(step)];
    if (step.kind !== 'bake' && core.length === 0) return nothing;
    return html`<div class="group">
      ${step.kind === 'bake' ? html`<step-bake .step=${step} .place=${place} .units=${house.units}></step-bake>` : nothing}
      <div class="fields" @field-changed=${this.fieldChanged}>${formFields(core, step, place)}</div>
      <p class="soft">${METHOD.coreHint}</p>
    </div>`;
  }

  private more(step: Step, { house }: EditorContext, place: FormPlace): TemplateResult {
    const id = within(place, ['id']);
    const hasMore =
      step.after !== undefined || step.ripening !== undefined || step.leaveOut !== undefined || step.beginsByItself !== undefined;
    const isFaulty = ['after', 'ripening', 'leaveOut', 'id'].some((key) => within(place, [key]).faults.length > 0);
    return html`<details ?open=${hasMore || isFaulty}>
      <summary>${METHOD.more}</summary>
      <div class="group" @field-changed=${this.fieldChanged}>
        ${formField(BEGINS_FIELD, beginsByItself(step), within(place, ['beginsByItself']))} ${formFields([LEAVE_OUT_FIELD], step, place)}
      </div>
      <step-links
        .links=${step.after ?? []}
        .earlierSteps=${this.steps.slice(0, this.index)}
        .firstNumber=${this.firstNumber}
        .place=${within(place, ['after'])}
      ></step-links>
      <step-ripening .ripening=${step.ripening ?? null} .place=${within(place, ['ripening'])} .units=${house.units}></step-ripening>
      <p class="soft">${METHOD.key(step.id)}</p>
      ${ownFaults(id)}
    </details>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const { place } = this;
    const step = this.steps[this.index];
    if (place === null || step === undefined) return;
    const whole = changedStep(step, event);
    this.dispatchEvent(whole === null ? changedBy(event, place) : new DocumentChangedEvent(place.path, whole));
  }
}

/** A step whose one field changes others with it; null where the field stands alone. */
function changedStep(step: Step, { key, value }: FieldChangedEvent): Step | null {
  switch (key) {
    case 'verb':
      return typeof value === 'string' && isVerb(value) ? withVerb(step, value) : null;
    case 'kind':
      return withKind(step, value as Step['kind']);
    case 'minutes.target':
      return step.kind === 'bake' ? withBakeTarget(step, Number(value)) : null;
    case 'beginsByItself': {
      const { beginsByItself: _before, ...others } = step;
      return value === beginsByItself(others) ? others : { ...others, beginsByItself: value === true };
    }
    default:
      return null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'step-editor': StepEditor;
  }
}

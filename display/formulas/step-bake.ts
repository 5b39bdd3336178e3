import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Step } from '../../shared/documents/method.ts';
import { REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, temperatureMeasure, type Field, type Units } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { inwardsOf, withValueAt } from '../desk/inwards.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { METHOD } from '../words/method.ts';
import { phasesMin, withPhases } from './bake-sum.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import { formFields, ownFaults, removeButton, storedOf } from './form-fields.ts';
import { within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lineOf } from './line-of.ts';

type Phase = NonNullable<Step['bake']>[number];
const MOST_PHASES = 20;
const WEEK_MIN = 7 * 24 * 60;

/** The bake programme of a step. Its phases together are the step's target, whichever is typed. */
@customElement('step-bake')
export class StepBake extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
      .sum {
        font-weight: var(--weight-word);
        font-variant-numeric: tabular-nums;
      }
    `,
  ];

  @property({ attribute: false }) step: Step | null = null;
  /** Of the step. */
  @property({ attribute: false }) place: FormPlace | null = null;
  @property({ attribute: false }) units: Units = { temperature: 'C', weight: 'g' };

  protected override render(): TemplateResult | typeof nothing {
    const { step, place } = this;
    if (step === null || place === null) return nothing;
    const phases = step.bake ?? [];
    const list = within(place, ['bake']);
    return html`<h4>${METHOD.phases}</h4>
      ${ownFaults(list)}
      <ol class="lines" @field-changed=${this.fieldChanged}>
        ${phases.map((phase, index) => this.line(phase, index, phases, within(list, [index])))}
      </ol>
      <p class="sum">${METHOD.phasesSum(Number.isFinite(phasesMin(phases)) ? String(phasesMin(phases)) : '–')}</p>
      <div class="buttons">
        <button
          type="button"
          class="plain"
          ?disabled=${phases.length >= MOST_PHASES}
          @click=${() => this.changeTo([...phases, { minutes: 0 }])}
        >
          ${METHOD.addPhase}
        </button>
      </div>`;
  }

  private line(phase: Phase, index: number, phases: readonly Phase[], place: FormPlace): TemplateResult {
    return html`<li class="line" data-index=${index}>
      ${ownFaults(place)}
      <div class="fields">${formFields(phaseFields(this.units), phase, place)}</div>
      ${
        phases.length < 2
          ? nothing
          : removeButton(METHOD.phase(index + 1), () => this.changeTo(phases.filter((_other, at) => at !== index)))
      }
    </li>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const index = lineOf(event);
    this.changeTo(
      (this.step?.bake ?? []).map((phase, at) => (at === index ? withValueAt(phase, inwardsOf(event.key), storedOf(event)) : phase)),
    );
  }

  private changeTo(phases: readonly Phase[]): void {
    const { step, place } = this;
    if (step !== null && place !== null) this.dispatchEvent(new DocumentChangedEvent(place.path, withPhases(step, [...phases])));
  }
}

function phaseFields(units: Units): readonly Field[] {
  return [
    numberField('minutes', METHOD.phaseMinutes, plainMeasure(UNITS.minutes), 0, WEEK_MIN),
    numberField('temperatureC', METHOD.phaseC, temperatureMeasure(units), -40, 600, 'optional'),
    { key: 'steam', label: METHOD.phaseSteam, kind: 'one', options: { '': METHOD.none, ...METHOD.steam } },
    { key: 'vent', label: METHOD.phaseVent, kind: 'one', options: { '': METHOD.none, ...METHOD.vent } },
    { key: 'turn', label: METHOD.phaseTurn, kind: 'yes' },
    { key: 'note', label: METHOD.phaseNote, kind: 'text', most: REMARK_CHARACTERS },
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'step-bake': StepBake;
  }
}

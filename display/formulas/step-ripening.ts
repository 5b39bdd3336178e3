import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { unreachable } from '../../shared/result.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, temperatureMeasure, type Field, type Units } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { withValueAt } from '../desk/inwards.ts';
import { METHOD, RIPENING_MODELS, STEP_LABELS } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import { formField, formFields, ownFaults, storedOf } from './form-fields.ts';
import { within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { ripeningOf, type Ripening } from './usual-ripening.ts';

/** How a rest ripens with its temperature: the model and its figures. */
@customElement('step-ripening')
export class StepRipening extends LitElement {
  static override styles = [
    deskStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) ripening: Ripening | null = null;
  /** Of the ripening. */
  @property({ attribute: false }) place: FormPlace | null = null;
  @property({ attribute: false }) units: Units = { temperature: 'C', weight: 'g' };

  protected override render(): TemplateResult | typeof nothing {
    const { place, ripening } = this;
    if (place === null) return nothing;
    const options = { '': METHOD.none, ...RIPENING_MODELS };
    return html`${ownFaults(place)}
      <div class="fields" @field-changed=${this.fieldChanged}>
        ${formField({ key: 'model', label: STEP_LABELS.ripening, kind: 'one', options }, ripening?.model ?? '', within(place, ['model']))}
        ${ripening === null ? nothing : formFields(ripeningFields(ripening.model, this.units), ripening, place)}
      </div>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const value = storedOf(event);
    if (event.key === 'model') this.say(value === undefined ? undefined : ripeningOf(value as Ripening['model'], this.ripening));
    else if (this.ripening !== null) this.say(withValueAt(this.ripening, [event.key], value));
  }

  private say(ripening: Ripening | undefined): void {
    if (this.place !== null) this.dispatchEvent(new DocumentChangedEvent(this.place.path, ripening));
  }
}

function ripeningFields(model: Ripening['model'], units: Units): readonly Field[] {
  const temperature = temperatureMeasure(units);
  const degrees = (key: 'referenceC' | 'minC' | 'optC' | 'maxC'): Field => numberField(key, STEP_LABELS[key], temperature, -40, 600);
  switch (model) {
    case 'perKelvin':
      return [degrees('referenceC'), numberField('rate', STEP_LABELS.rate, rateMeasure(units), 0, 1)];
    case 'q10':
      return [degrees('referenceC'), numberField('q10', STEP_LABELS.q10, plainMeasure('×'), 1, 20)];
    case 'cardinal':
      return [degrees('referenceC'), degrees('minC'), degrees('optC'), degrees('maxC')];
    case 'levain':
      return [degrees('referenceC')];
    default:
      return unreachable(model);
  }
}

/** A share for each kelvin, as per cent for each degree of the house. */
function rateMeasure(units: Units): ReturnType<typeof plainMeasure> {
  const perDegree = units.temperature === 'F' ? 5 / 9 : 1;
  return {
    unit: '%',
    shown: (rate) => Number((rate * 100 * perDegree).toFixed(2)),
    stored: (typed) => Number((typed / 100 / perDegree).toFixed(6)),
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'step-ripening': StepRipening;
  }
}

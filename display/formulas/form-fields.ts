import { html, type TemplateResult } from 'lit';
import '../desk/desk-field.ts';
import type { Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { inwardsOf, valueAt } from '../desk/inwards.ts';
import { METHOD } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import { faultTexts, ownFaultTexts, within, type FormPlace } from './form-place.ts';

/** Keys of texts that cannot be taken away, only be empty. */
const NEEDED_TEXTS: ReadonlySet<string> = new Set(['name']);

/** Fields of a thing that stands at `place`, each with what is wrong with it. */
export function formFields(fields: readonly Field[], value: unknown, place: FormPlace): TemplateResult[] {
  return fields.map((field) => formField(field, valueAt(value, inwardsOf(field.key)), within(place, inwardsOf(field.key))));
}

/** One field with a value that is given; `place` is the field's own. */
export function formField(field: Field, value: unknown, place: FormPlace): TemplateResult {
  return html`<desk-field data-field=${place.faultPath} .field=${field} .value=${value} .faults=${faultTexts(place)}></desk-field>`;
}

/** What is wrong at this very place and in no field of it. */
export function ownFaults(place: FormPlace): TemplateResult[] {
  return ownFaultTexts(place).map((text) => html`<p class="fault" data-field=${place.faultPath}>${text}</p>`);
}

/** What a field says, of the document that it stands in: an empty text or choice that may be missing is taken away. */
export function changedBy(event: FieldChangedEvent, place: FormPlace): DocumentChangedEvent {
  return new DocumentChangedEvent([...place.path, ...inwardsOf(event.key)], storedOf(event));
}

/** What a field says, as documents keep it. */
export function storedOf({ key, value }: FieldChangedEvent): unknown {
  return value === '' && !NEEDED_TEXTS.has(key) ? undefined : value;
}

/** The button that takes a line out of a list; `name` says which to whoever does not see where it stands. */
export function removeButton(name: string, click: () => void): TemplateResult {
  return html`<div class="buttons">
    <button type="button" class="plain" aria-label=${METHOD.remove1(name)} @click=${click}>${METHOD.removeShort}</button>
  </div>`;
}

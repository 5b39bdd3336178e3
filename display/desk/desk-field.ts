import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { unreachable } from '../../shared/result.ts';
import { NO_VALUE, NUMBER_NEEDED, ONE_NEEDED, TEXT_NEEDED, WHOLE_NEEDED, rangeWords } from '../words/fields.ts';
import type { Field } from './field.ts';
import { FieldChangedEvent } from './field-changed.ts';
import { deskStyles } from './desk-styles.ts';

type NumberField = Extract<Field, { kind: 'number' }>;
type WrittenField = Extract<Field, { kind: 'written' }>;

/** One field of a thing with its label, its unit, and what is wrong with it. */
@customElement('desk-field')
export class DeskField extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-1);
      }
      label,
      legend,
      .unit,
      .hint {
        font-size: var(--type-text);
      }
      label,
      legend {
        padding: 0;
        font-weight: var(--weight-word);
      }
      .unit,
      .hint {
        color: var(--ink-soft);
      }
      .line {
        display: flex;
        align-items: center;
        gap: var(--space-2);
      }
      .line input {
        flex: 1 1 0;
      }
      .line.number input {
        flex: 0 1 150px;
      }
      input:not([type='checkbox']),
      textarea,
      select {
        min-width: 0;
        width: 100%;
        min-height: var(--target-desk);
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        font: inherit;
        font-size: var(--type-text);
      }
      textarea {
        field-sizing: content;
        resize: vertical;
      }
      :is(input, textarea, select)[aria-invalid='true'] {
        border-style: dashed;
      }
      fieldset {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 240px), 1fr));
        column-gap: var(--space-4);
      }
      label.choice {
        display: flex;
        align-items: center;
        gap: 10px;
        min-height: var(--target-desk);
      }
      input[type='checkbox'] {
        flex: none;
        width: 26px;
        height: 26px;
        margin: 0;
        accent-color: var(--ink);
      }
      .fault {
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) field: Field | null = null;
  @property({ attribute: false }) value: unknown = undefined;
  /** What the house says of this field. */
  @property({ attribute: false }) faults: readonly string[] = [];
  /** As it is being typed, which may be no value yet. */
  @state() private typed: string | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    // Another field: what was typed belonged to the one before.
    if (changed.has('field') && changed.get('field')?.key !== this.field?.key) this.typed = null;
    // What says nothing yet stands until it does, or until the value is put back from elsewhere.
    if (changed.has('value') && this.saysNothingYet && !isNothingYet(this.value)) this.typed = null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { field } = this;
    if (field === null) return nothing;
    const faults = this.faultsIn(field);
    return html`${this.control(field, faults.length > 0)}${faults.map((fault) => html`<p class="fault" id="fault">${fault}</p>`)}`;
  }

  private control(field: Field, isFaulty: boolean): TemplateResult {
    switch (field.kind) {
      case 'text':
        if (field.isLong === true) return this.longText(field, isFaulty);
        return html`<label for="control">${field.label}</label>
          <input
            id="control"
            maxlength=${field.most}
            autocomplete="off"
            list=${field.list === undefined ? nothing : 'known'}
            aria-invalid=${isFaulty}
            aria-describedby=${isFaulty ? 'fault' : nothing}
            .value=${this.text}
            @input=${this.textTyped}
          />
          ${field.hint === undefined ? nothing : html`<p class="hint">${field.hint}</p>`}
          ${field.list === undefined ? nothing : html`<datalist id="known">${field.list.map((known) => html`<option value=${known}></option>`)}</datalist>`}`;
      case 'number':
        return html`<label for="control">${field.label}</label>
          <div class="line number">
            <input
              id="control"
              inputmode=${field.isWhole ? 'numeric' : 'decimal'}
              autocomplete="off"
              aria-invalid=${isFaulty}
              aria-describedby=${isFaulty ? 'fault unit' : 'unit'}
              .value=${this.typed ?? this.shownNumber(field)}
              @input=${this.valueTyped}
              @blur=${this.left}
            />
            <span class="unit" id="unit">${this.behind(field)}</span>
          </div>`;
      case 'written':
        return this.written(field, isFaulty);
      case 'yes':
        return html`<label class="choice">
          <input type="checkbox" .checked=${this.value === true} @change=${this.ticked} />
          <span>${field.label}</span>
        </label>`;
      case 'one':
        return html`<label for="control">${field.label}</label>
          <select id="control" aria-invalid=${isFaulty} aria-describedby=${isFaulty ? 'fault' : nothing} @change=${this.oneChosen}>
            ${this.optionsOf(field).map((option) => this.option(option))}${Object.entries(field.groups ?? {}).map(
              ([heading, options]) =>
                html`<optgroup label=${heading}>${Object.entries(options).map((option) => this.option(option))}</optgroup>`,
            )}
          </select>`;
      case 'several':
        return html`<fieldset>
          <legend>${field.label}</legend>
          ${Object.entries(field.options).map(
            ([key, name]) =>
              html`<label class="choice">
                <input type="checkbox" value=${key} .checked=${this.several.includes(key)} @change=${this.severalChosen} />
                <span>${name}</span>
              </label>`,
          )}
        </fieldset>`;
      default:
        return unreachable(field);
    }
  }

  /** What cannot be said of a value in the house's terms is said here in the reader's: numbers in the unit that is shown. */
  private faultsIn(field: Field): readonly string[] {
    const { value } = this;
    if (this.faults.length === 0) return [];
    switch (field.kind) {
      case 'text':
        return this.text.trim() === '' ? [TEXT_NEEDED] : this.faults;
      case 'several':
        return this.several.length === 0 ? [ONE_NEEDED] : this.faults;
      case 'number': {
        const { least, most, measure } = field;
        if (typeof value !== 'number' || Number.isNaN(value)) return [NUMBER_NEEDED];
        if (value < least || value > most) return [rangeWords(measure.shown(least), measure.shown(most), measure.unit)];
        return field.isWhole && !Number.isInteger(value) ? [WHOLE_NEEDED] : this.faults;
      }
      case 'written':
        return isNothingYet(value) ? [field.needed] : this.faults;
      case 'one':
      case 'yes':
        return this.faults;
      default:
        return unreachable(field);
    }
  }

  private get text(): string {
    return typeof this.value === 'string' ? this.value : '';
  }

  private get several(): readonly string[] {
    return Array.isArray(this.value) ? (this.value as readonly string[]) : [];
  }

  /** What is chosen stays among the choices where the kitchen no longer has it, or nobody would see what is wrong. */
  private optionsOf({ options, groups = {} }: Extract<Field, { kind: 'one' }>): readonly (readonly [string, string])[] {
    const known = Object.entries(options);
    const chosen = this.text;
    const isKnown = chosen === '' || [options, ...Object.values(groups)].some((those) => chosen in those);
    return isKnown ? known : [...known, [chosen, chosen]];
  }

  private option([key, name]: readonly [string, string]): TemplateResult {
    return html`<option value=${key} ?selected=${key === this.text} .selected=${key === this.text}>${name}</option>`;
  }

  private longText(field: Extract<Field, { kind: 'text' }>, isFaulty: boolean): TemplateResult {
    return html`<label for="control">${field.label}</label>
      <textarea
        id="control"
        rows="2"
        maxlength=${field.most}
        autocomplete="off"
        aria-invalid=${isFaulty}
        aria-describedby=${isFaulty ? 'fault' : nothing}
        .value=${this.text}
        @input=${this.textTyped}
      ></textarea>
      ${field.hint === undefined ? nothing : html`<p class="hint">${field.hint}</p>`}`;
  }

  private written(field: WrittenField, isFaulty: boolean): TemplateResult {
    const described = isFaulty ? 'fault' : field.hint === undefined ? nothing : 'hint';
    return html`<label for="control">${field.label}</label>
      <div class="line number">
        <input
          id="control"
          maxlength=${field.most}
          autocomplete="off"
          aria-invalid=${isFaulty}
          aria-describedby=${described}
          .value=${this.typed ?? field.shown(this.value)}
          @input=${this.valueTyped}
          @blur=${this.left}
        />
      </div>
      ${field.hint === undefined ? nothing : html`<p class="hint" id="hint">${field.hint}</p>`}`;
  }

  /** Behind a number: its unit, and what its being empty means. */
  private behind({ measure, isOptional, whenEmpty = NO_VALUE }: NumberField): string {
    const parts = [measure.unit, isOptional && this.value === undefined ? whenEmpty : ''];
    return parts.filter((part) => part !== '').join(' · ');
  }

  private shownNumber(field: NumberField): string {
    return typeof this.value === 'number' && !Number.isNaN(this.value) ? String(field.measure.shown(this.value)) : '';
  }

  private say(value: unknown): void {
    if (this.field !== null) this.dispatchEvent(new FieldChangedEvent(this.field.key, value));
  }

  private textTyped(event: InputEvent): void {
    this.say((event.target as HTMLInputElement | HTMLTextAreaElement).value);
  }

  private valueTyped(event: InputEvent): void {
    this.typed = (event.target as HTMLInputElement).value;
    this.say(this.readTyped(this.typed));
  }

  /** What a text says in this field; NaN where it says nothing yet. */
  private readTyped(typed: string): unknown {
    const { field } = this;
    if (field?.kind === 'written') return field.read(typed);
    if (field?.kind !== 'number') return typed;
    const text = typed.trim().replace(',', '.');
    if (text === '') return field.isOptional ? undefined : Number.NaN;
    return /^-?\d*\.?\d+$|^-?\d+\.$/.test(text) ? field.measure.stored(Number(text)) : Number.NaN;
  }

  /** What says something is written out as it is kept; what does not is left for whoever mends it. */
  private left(): void {
    if (!this.saysNothingYet || !isNothingYet(this.value)) this.typed = null;
  }

  private get saysNothingYet(): boolean {
    return this.typed !== null && Number.isNaN(this.readTyped(this.typed));
  }

  private ticked(event: Event): void {
    this.say((event.target as HTMLInputElement).checked);
  }

  private oneChosen(event: Event): void {
    this.say((event.target as HTMLSelectElement).value);
  }

  private severalChosen(event: Event): void {
    const { value, checked } = event.target as HTMLInputElement;
    this.say(checked ? [...this.several, value] : this.several.filter((key) => key !== value));
  }
}

/** The value of a field in which something stands that says nothing yet. A draft that was kept on the device has null for it. */
function isNothingYet(value: unknown): boolean {
  return value === null || Number.isNaN(value);
}

declare global {
  interface HTMLElementTagNameMap {
    'desk-field': DeskField;
  }
}

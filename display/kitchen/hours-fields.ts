import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import type { Hours } from '../../shared/documents/kitchen.ts';
import { pathText } from '../../shared/documents/path-text.ts';
import '../desk/desk-field.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { faultText } from '../desk/fault-text.ts';
import { FieldChangedEvent } from '../desk/field-changed.ts';
import type { Field } from '../desk/field.ts';
import type { Inwards } from '../desk/inwards.ts';
import { weekdayText } from '../parts/clock-text.ts';
import { FIELDS, KITCHEN } from '../words/kitchen.ts';
import { faultsWithin } from './draft-faults.ts';
import { clockField } from './fields.ts';
import { firstDays, MOST_HOURS, WEEKDAYS, withDay, withoutOne, withOneMore } from './hours-edits.ts';

const DAILY = 'daily';
const SOME = 'some';

/** When somebody is at a station, or has a break: from a clock time to another, on all days or on some. */
@customElement('hours-fields')
export class HoursFields extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host,
      fieldset,
      ul,
      li {
        display: grid;
        gap: var(--space-3);
      }
      li {
        padding-block-end: var(--space-3);
        border-block-end: var(--hairline) solid var(--line);
      }
      legend {
        padding: 0;
        margin-block-end: var(--space-2);
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      p {
        font-size: var(--type-text);
      }
      .soft {
        color: var(--ink-soft);
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-3);
      }
      .line.clocks {
        align-items: start;
      }
      .line desk-field {
        flex: 1 1 100px;
        min-width: 0;
      }
      .days {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(78px, 1fr));
        gap: 0 var(--space-2);
      }
      .days label {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-height: var(--target-desk);
        font-size: var(--type-text);
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
        font-weight: var(--weight-word);
      }
    `,
  ];

  @property({ attribute: false }) which: 'hours' | 'breaks' = 'hours';
  /** undefined: nobody said. */
  @property({ attribute: false }) hours: readonly Hours[] | undefined = undefined;
  /** Of the station in the kitchen. */
  @property({ attribute: false }) place: Inwards = [];
  @property({ attribute: false }) faults: readonly FileFault[] = [];
  @query('.add') private adder!: HTMLButtonElement | null;

  protected override render(): TemplateResult {
    const { which, hours = [] } = this;
    return html`<fieldset @field-changed=${this.fieldChanged}>
      <legend>${KITCHEN[which]}</legend>
      ${hours.length === 0 ? html`<p class="soft">${this.noneWords()}</p>` : nothing}
      <ul>
        ${hours.map((each, index) => this.row(each, index, hours))}
      </ul>
      ${hours.length > 0 && which === 'hours' ? html`<p class="soft">${KITCHEN.overMidnight}</p>` : nothing}
      <div class="buttons">
        <button
          type="button"
          class="plain add"
          ?disabled=${hours.length >= MOST_HOURS}
          @click=${() => this.say(which, withOneMore(hours, which))}
        >
          ${which === 'hours' ? KITCHEN.addHours : KITCHEN.addBreak}
        </button>
      </div>
    </fieldset>`;
  }

  /** No hours said is always; a list of none, which only a file can bring, is never. */
  private noneWords(): string {
    if (this.which === 'breaks') return KITCHEN.noBreaks;
    return this.hours === undefined ? KITCHEN.alwaysThere : KITCHEN.neverThere;
  }

  private row(each: Hours, index: number, hours: readonly Hours[]): TemplateResult {
    const { weekdays } = each;
    const days: Field = {
      key: `${this.which}.${index}.days`,
      label: FIELDS.days,
      kind: 'one',
      options: { [DAILY]: KITCHEN.daily, [SOME]: KITCHEN.someDays },
    };
    return html`<li>
      <div class="line clocks">${this.clock(index, 'from', FIELDS.from, each.from)} ${this.clock(index, 'to', FIELDS.to, each.to)}</div>
      <div class="line">
        <desk-field .field=${days} .value=${weekdays === undefined ? DAILY : SOME}></desk-field>
        <button
          type="button"
          class="plain"
          aria-label=${`${KITCHEN.removeHours}: ${each.from}–${each.to}`}
          @click=${() => this.takeAway(hours, index)}
        >
          ${KITCHEN.removeHours}
        </button>
      </div>
      ${weekdays === undefined ? nothing : this.days(weekdays, index)}
    </li>`;
  }

  private clock(index: number, key: 'from' | 'to', label: string, value: string): TemplateResult {
    const place = [...this.place, this.which, index, key];
    return html`<desk-field
      data-field=${pathText(['kitchen', ...place])}
      .field=${clockField(`${this.which}.${index}.${key}`, label)}
      .value=${value}
      .faults=${faultsWithin(this.faults, 'kitchen', place).map(faultText)}
    ></desk-field>`;
  }

  private days(weekdays: readonly number[], index: number): TemplateResult {
    const faults = faultsWithin(this.faults, 'kitchen', [...this.place, this.which, index, 'weekdays']);
    return html`<div class="days" role="group" aria-label=${FIELDS.days}>
        ${WEEKDAYS.map(
          (day) =>
            html`<label>
              <input
                type="checkbox"
                value=${day}
                .checked=${weekdays.includes(day)}
                @change=${(event: Event) =>
                  this.say(`${this.which}.${index}.weekdays`, withDay(weekdays, day, (event.target as HTMLInputElement).checked))}
              />
              <span>${dayName(day)}</span>
            </label>`,
        )}
      </div>
      ${faults.map((fault) => html`<p class="fault">${faultText(fault)}</p>`)}`;
  }

  /** Whether every day holds is no field of the document, but whether it says which. */
  private fieldChanged(event: FieldChangedEvent): void {
    if (!event.key.endsWith('.days')) return;
    event.stopPropagation();
    this.say(event.key.replace(/days$/, 'weekdays'), firstDays(event.value === DAILY));
  }

  private takeAway(hours: readonly Hours[], index: number): void {
    this.say(this.which, withoutOne(hours, index));
    // The pressed button goes with its row: the keyboard stays with the hours.
    this.adder?.focus();
  }

  private say(key: string, value: unknown): void {
    this.dispatchEvent(new FieldChangedEvent(key, value));
  }
}

/** By its number (Monday 1), short. The first of January 2024 was a Monday. */
function dayName(day: number): string {
  return weekdayText(`2024-01-0${day}`);
}

declare global {
  interface HTMLElementTagNameMap {
    'hours-fields': HoursFields;
  }
}

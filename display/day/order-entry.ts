import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { OrderedProduct } from '../../shared/plan/orders/read-orders.ts';
import '../desk/desk-field.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import type { Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { ORDERS, STANDING } from '../words/day.ts';
import { EntryLeftEvent } from './day-events.ts';
import { weekdayName, WEEKDAYS } from './day-text.ts';
import { EMPTY_DRAFT, mainFields, moreFields, typedIn, type DraftFaults, type OrderDraft, type TypedOrder } from './order-draft.ts';

/** Whoever gives it makes it anew with every drawing: what says the same is no news, or it would take away what is typed. */
function isOther(draft: unknown, before: unknown): boolean {
  return JSON.stringify(draft) !== JSON.stringify(before);
}

/** The form of one order, or of a standing one: typed with suggestions, taken with Enter. */
@customElement('order-entry')
export class OrderEntry extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: block;
        font-size: var(--type-text);
      }
      form {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }
      .main {
        display: grid;
        grid-template-columns: minmax(0, 3fr) minmax(0, 1fr) minmax(0, 1.3fr) minmax(0, 1.3fr);
        align-items: start;
        gap: var(--space-3) var(--space-4);
      }
      .more {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 250px), 1fr));
        align-items: start;
        gap: var(--space-3) var(--space-4);
        padding-block: var(--space-3);
      }
      legend {
        padding: 0;
        font-weight: var(--weight-word);
      }
      .days {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
      }
      .days label {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-height: var(--target-desk);
      }
      input[type='checkbox'] {
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
      summary {
        width: fit-content;
        min-height: var(--target-desk);
        padding: 9px 0;
        cursor: pointer;
      }
      @media (max-width: 700px) {
        .main {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
        .main [data-field='product'] {
          grid-column: 1 / -1;
        }
      }
    `,
  ];

  @property({ attribute: false }) products: readonly OrderedProduct[] = [];
  /** What it begins with; null: nothing is typed yet. */
  @property({ attribute: false, hasChanged: isOther }) from: OrderDraft | null = null;
  @property({ attribute: false }) isStanding = false;
  /** Takes what was typed. Whether it was taken: then the form is ready for the next. */
  @property({ attribute: false }) save: (typed: TypedOrder) => Promise<boolean> = () => Promise.resolve(false);
  @state() private draft: OrderDraft = EMPTY_DRAFT;
  /** Somebody wanted to take what was not right: from then on it says why. */
  @state() private isTried = false;
  @state() private isSaving = false;

  /** Whether something is typed that nobody has taken. */
  get hasDraft(): boolean {
    const { product, pieces } = this.draft;
    return isOther(this.draft, this.from ?? EMPTY_DRAFT) && (product !== '' || pieces !== undefined);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('from')) this.draft = this.from ?? EMPTY_DRAFT;
  }

  protected override render(): TemplateResult {
    const faults = this.faults();
    return html`<form novalidate @submit=${this.submitted} @keydown=${this.keyPressed} @field-changed=${this.changed}>
      <div class="main">${mainFields(this.products).map((field) => this.field(field, faults))}</div>
      ${this.isStanding ? this.weekdays(faults) : nothing}
      <details ?open=${this.hasMore}>
        <summary>${ORDERS.more}</summary>
        <div class="more">${moreFields().map((field) => this.field(field, faults))}</div>
      </details>
      <div class="buttons">
        <button type="submit" class="plain filled" ?disabled=${this.isSaving}>${this.takeWords}</button>
        ${
          this.from === null && !this.isStanding
            ? nothing
            : html`<button type="button" class="plain" @click=${() => this.dispatchEvent(new EntryLeftEvent())}>${ORDERS.cancel}</button>`
        }
      </div>
    </form>`;
  }

  /** Puts the keyboard where typing begins. */
  focusFirst(): void {
    const field = this.renderRoot.querySelector('desk-field');
    void field?.updateComplete.then(() => field.renderRoot.querySelector('input')?.focus());
  }

  private get takeWords(): string {
    if (this.from !== null) return ORDERS.keep;
    return this.isStanding ? STANDING.take : ORDERS.take;
  }

  private get hasMore(): boolean {
    const { freshMin, loadingMin, weight = 1, label } = this.from ?? EMPTY_DRAFT;
    return freshMin !== undefined || loadingMin !== undefined || weight !== 1 || label !== undefined;
  }

  private faults(): DraftFaults {
    if (!this.isTried) return {};
    const typed = typedIn(this.draft, this.products, this.isStanding);
    return typed.ok ? {} : typed.faults;
  }

  private field(field: Field, faults: DraftFaults): TemplateResult {
    const key = field.key as keyof OrderDraft;
    const fault = faults[key];
    return html`<desk-field
      data-field=${key}
      .field=${field}
      .value=${this.draft[key]}
      .faults=${fault === undefined ? [] : [fault]}
    ></desk-field>`;
  }

  private weekdays({ weekdays: fault }: DraftFaults): TemplateResult {
    const chosen = this.draft.weekdays;
    return html`<fieldset>
        <legend>${STANDING.weekdays}</legend>
        <div class="days">
          ${WEEKDAYS.map(
            (weekday) =>
              html`<label>
                <input
                  type="checkbox"
                  .checked=${chosen.includes(weekday)}
                  aria-describedby=${fault === undefined ? nothing : 'days-fault'}
                  @change=${(event: Event) => this.ticked(weekday, (event.target as HTMLInputElement).checked)}
                />${weekdayName(weekday)}
              </label>`,
          )}
        </div>
      </fieldset>
      ${fault === undefined ? nothing : html`<p class="fault" id="days-fault">${fault}</p>`}`;
  }

  private ticked(weekday: number, isOn: boolean): void {
    const others = this.draft.weekdays.filter((other) => other !== weekday);
    this.draft = { ...this.draft, weekdays: isOn ? [...others, weekday] : others };
  }

  private changed(event: FieldChangedEvent): void {
    event.stopPropagation();
    this.draft = { ...this.draft, [event.key]: event.value };
  }

  /** A field of another tree does not submit its form by itself. */
  private keyPressed(event: KeyboardEvent): void {
    const [pressed] = event.composedPath();
    if (event.key === 'Enter' && pressed instanceof HTMLInputElement && pressed.type !== 'checkbox') void this.take();
  }

  private submitted(event: Event): void {
    event.preventDefault();
    void this.take();
  }

  private async take(): Promise<void> {
    const typed = typedIn(this.draft, this.products, this.isStanding);
    this.isTried = !typed.ok;
    if (!typed.ok || this.isSaving) return;
    this.isSaving = true;
    const isTaken = await this.save(typed.value);
    this.isSaving = false;
    if (!isTaken || this.from !== null) return;
    // The next order is often for the same time.
    this.draft = { ...EMPTY_DRAFT, readyAt: this.draft.readyAt, form: this.draft.form, weekdays: this.draft.weekdays };
    await this.updateComplete;
    this.focusFirst();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'order-entry': OrderEntry;
  }
}

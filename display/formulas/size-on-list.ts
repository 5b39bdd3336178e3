import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BatchPlan } from '../../shared/book/batch-plan.ts';
import type { Formula, Product } from '../../shared/documents/formula.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { zonedInstantMs } from '../parts/zoned-instant.ts';
import { SIZE } from '../words/book.ts';
import { PlanWantedEvent } from './book-events.ts';
import { mixerMin, planCommand, type PlanTimes } from './size-plan.ts';
import { sizeStyles } from './size-styles.ts';

const DAY_MIN = 24 * 60;
const CLOCK_TIME = /^(\d{2}):(\d{2})/;

/** Puts sized batches on a day's list: which day, when the first one starts, how far apart they are. */
@customElement('size-on-list')
export class SizeOnList extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    sizeStyles,
    css`
      :host {
        justify-items: start;
        gap: var(--space-3);
        padding-top: var(--space-4);
        border-top: var(--hairline) solid var(--line-strong);
      }
      .times {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-3) var(--space-4);
      }
      label {
        display: grid;
        gap: var(--space-1);
        font-weight: var(--weight-word);
      }
      label.tick {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-height: var(--target-desk);
      }
      input[type='checkbox'] {
        width: 26px;
        height: 26px;
        min-height: 0;
        margin: 0;
        accent-color: var(--ink);
      }
      input[type='number'] {
        width: 110px;
      }
      button:disabled {
        border-style: dashed;
        background: var(--paper);
        color: var(--ink-soft);
        cursor: default;
      }
    `,
  ];

  @property({ attribute: false }) plan: BatchPlan | null = null;
  @property({ attribute: false }) formula: Formula | null = null;
  /** The list takes the formula as it stands in the book. */
  @property({ attribute: false }) isSaved = false;
  @property({ attribute: false }) products: readonly Product[] = [];
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) serviceDate = '';
  @state() private day: string | null = null;
  @state() private at = '';
  @state() private isDayBefore = false;
  @state() private everyMin: number | null = null;
  @state() private productId: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { plan, formula } = this;
    if (plan === null || formula === null) return nothing;
    const obstacle = this.obstacle(plan, formula);
    return html`<h3>${SIZE.plan}</h3>
      ${this.needsProduct(plan, formula) && this.products.length > 0 ? this.productChoice() : nothing}
      <div class="times">
        <label>${SIZE.planDay}<input type="date" .value=${this.date} @input=${this.dayTyped} /></label>
        <label>${SIZE.planAt}<input type="time" .value=${this.at} @input=${this.timeTyped} /></label>
        <label class="tick"><input type="checkbox" .checked=${this.isDayBefore} @change=${this.beforeTicked} />${SIZE.planBefore}</label>
        ${
          plan.batches.length === 1
            ? nothing
            : html`<label
                >${SIZE.planEvery} (${SIZE.minutes})<input
                  type="number"
                  min="0"
                  max="1440"
                  .value=${String(this.every(formula))}
                  @input=${this.everyTyped}
              /></label>`
        }
        <button type="button" class="plain" ?disabled=${obstacle !== null} @click=${() => this.put(plan, formula)}>
          ${SIZE.planDo(plan.batches.length)}
        </button>
      </div>
      ${obstacle === null ? nothing : html`<p class="hint">${obstacle}</p>`}`;
  }

  private productChoice(): TemplateResult {
    return html`<label
      >${SIZE.cutInto}
      <select @change=${(event: Event) => (this.productId = (event.target as HTMLSelectElement).value)}>
        ${this.products.map(({ id, name }) => html`<option value=${id} .selected=${id === this.product?.id}>${name}</option>`)}
      </select>
    </label>`;
  }

  /** What keeps the batches from the list; null where nothing does. */
  private obstacle(plan: BatchPlan, formula: Formula): string | null {
    if (!this.isSaved) return SIZE.planUnsaved;
    if (this.needsProduct(plan, formula) && this.product === null) return SIZE.planNoProduct;
    return this.times(formula) === null ? SIZE.planNoDay : null;
  }

  /** A dough goes on the list with what it is cut into. */
  private needsProduct(plan: BatchPlan, formula: Formula): boolean {
    return formula.kind === 'dough' && plan.batches.some(({ pieces }) => pieces.length === 0);
  }

  private get product(): Product | null {
    return this.products.find(({ id }) => id === this.productId) ?? this.products[0] ?? null;
  }

  private get date(): string {
    return this.day ?? this.serviceDate;
  }

  private every(formula: Formula): number {
    return this.everyMin ?? mixerMin(formula.method);
  }

  private times(formula: Formula): PlanTimes | null {
    const [, hours, minutes] = CLOCK_TIME.exec(this.at) ?? [];
    if (this.date === '' || hours === undefined || minutes === undefined) return null;
    const firstMs = zonedInstantMs(this.date, Number(hours) * 60 + Number(minutes) - (this.isDayBefore ? DAY_MIN : 0), this.zone);
    return { serviceDate: this.date, firstMs, everyMin: this.every(formula) };
  }

  private put(plan: BatchPlan, formula: Formula): void {
    const times = this.times(formula);
    const product = this.needsProduct(plan, formula) ? this.product : null;
    if (times !== null) this.dispatchEvent(new PlanWantedEvent(planCommand(plan, formula, product, times)));
  }

  private dayTyped(event: InputEvent): void {
    this.day = (event.target as HTMLInputElement).value;
  }

  private timeTyped(event: InputEvent): void {
    this.at = (event.target as HTMLInputElement).value;
  }

  private beforeTicked(event: Event): void {
    this.isDayBefore = (event.target as HTMLInputElement).checked;
  }

  private everyTyped(event: InputEvent): void {
    const minutes = (event.target as HTMLInputElement).valueAsNumber;
    this.everyMin = Number.isFinite(minutes) && minutes >= 0 ? minutes : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'size-on-list': SizeOnList;
  }
}

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Order } from '../../shared/documents/order.ts';
import '../desk/desk-field.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { PLANNING } from '../words/day.ts';
import { NUMBER_NEEDED } from '../words/fields.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { DayPlanWantedEvent, TriedChangeEvent } from './day-events.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import type { PlanNames } from './plan-names.ts';
import { triedText } from './plan-words.ts';
import type { TriedChange } from './tried-change.ts';

const USUAL_LATER_MIN = 30;
/** A day, as far as an order can be put off in a try. */
const MOST_LATER_MIN = 1440;

/** What is to be tried otherwise than it was ordered: later, fewer, left out, before all others. */
@customElement('plan-tries')
export class PlanTries extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    dayPanelStyles,
    css`
      details > div {
        display: grid;
        gap: var(--space-3);
        padding-top: var(--space-2);
      }
      summary {
        width: fit-content;
        min-height: var(--target-desk);
        padding: 9px 0;
        font-weight: var(--weight-strong);
        cursor: pointer;
      }
      .line {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 210px), 1fr));
        align-items: end;
        gap: var(--space-3) var(--space-4);
      }
      .chosen {
        display: grid;
        gap: var(--space-2);
      }
      .chosen li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-3);
      }
      .chosen button {
        min-width: var(--target-desk);
      }
      .amount {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) orders: readonly Order[] = [];
  @property({ attribute: false }) tried: readonly TriedChange[] = [];
  @property({ attribute: false }) names: PlanNames | null = null;
  @state() private orderId = '';
  @state() private laterMin: number | undefined = USUAL_LATER_MIN;
  @state() private pieces: number | undefined = undefined;

  private get order(): Order | undefined {
    return this.orders.find(({ id }) => id === this.orderId) ?? this.orders[0];
  }

  protected override render(): TemplateResult | typeof nothing {
    const { names, order } = this;
    if (names === null || order === undefined) return nothing;
    return html`${this.chosen(names)}
      <details @field-changed=${this.changed}>
        <summary>${PLANNING.tryTitle}</summary>
        <div>
          <p class="soft">${PLANNING.tryMore}</p>
          ${this.orderField(order, names)}
          <div class="line">
            ${this.later(order)}${this.fewer(order)}
            <button type="button" class="plain" @click=${() => this.try({ kind: 'leaveOut', orderId: order.id })}>
              ${PLANNING.tryLeaveOut}
            </button>
            <button type="button" class="plain" @click=${() => this.try({ kind: 'first', orderId: order.id })}>${PLANNING.tryFirst}</button>
          </div>
        </div>
      </details>`;
  }

  private chosen(names: PlanNames): TemplateResult | typeof nothing {
    if (this.tried.length === 0) return nothing;
    return html`<div class="chosen">
      <h2 id="tried">${PLANNING.changes}</h2>
      <ul class="chosen" aria-labelledby="tried">
        ${this.tried.map((change) => {
          const text = triedText(change, names);
          return html`<li>
            <button
              type="button"
              class="plain"
              aria-label=${PLANNING.takeBack(text)}
              @click=${() => this.dispatchEvent(new TriedChangeEvent(change, true))}
            >
              ×
            </button>
            <span>${text}</span>
          </li>`;
        })}
      </ul>
      <div class="buttons">
        <button type="button" class="plain filled" @click=${() => this.dispatchEvent(new DayPlanWantedEvent())}>${PLANNING.again}</button>
      </div>
    </div>`;
  }

  private orderField(order: Order, names: PlanNames): TemplateResult {
    const options = Object.fromEntries(
      this.orders.map(({ id, label }) => [id, [names.order(id), ...(label === undefined ? [] : [label])].join(' · ')]),
    );
    return html`<desk-field .field=${{ key: 'order', label: PLANNING.order, kind: 'one', options }} .value=${order.id}></desk-field>`;
  }

  private later(order: Order): TemplateResult {
    const { laterMin } = this;
    const isRight = laterMin !== undefined && Number.isInteger(laterMin) && laterMin >= 1 && laterMin <= MOST_LATER_MIN;
    return html`<div class="amount">
      ${this.amount('laterMin', PLANNING.laterMin, UNITS.minutes, MOST_LATER_MIN, laterMin, isRight)}
      <button
        type="button"
        class="plain"
        ?disabled=${!isRight}
        @click=${() => (isRight ? this.try({ kind: 'readyLater', orderId: order.id, minutes: laterMin }) : undefined)}
      >
        ${PLANNING.tryLater}
      </button>
    </div>`;
  }

  private fewer(order: Order): TemplateResult {
    const most = order.pieces - 1;
    const pieces = this.pieces ?? Math.max(1, Math.floor(order.pieces / 2));
    const isRight = Number.isInteger(pieces) && pieces >= 1 && pieces <= most;
    return html`<div class="amount">
      ${this.amount('pieces', PLANNING.fewerTo, '', Math.max(1, most), pieces, isRight || most < 1)}
      <button
        type="button"
        class="plain"
        ?disabled=${!isRight}
        @click=${() => (isRight ? this.try({ kind: 'fewerPieces', orderId: order.id, pieces }) : undefined)}
      >
        ${PLANNING.tryFewer}
      </button>
    </div>`;
  }

  private amount(key: string, label: string, unit: string, most: number, value: number | undefined, isRight: boolean): TemplateResult {
    return html`<desk-field
      data-field=${key}
      .field=${numberField(key, label, plainMeasure(unit), 1, most, 'whole')}
      .value=${value}
      .faults=${isRight ? [] : [NUMBER_NEEDED]}
    ></desk-field>`;
  }

  private try(change: TriedChange): void {
    this.dispatchEvent(new TriedChangeEvent(change));
  }

  private changed(event: FieldChangedEvent): void {
    event.stopPropagation();
    const { key, value } = event;
    if (key === 'order') {
      this.orderId = String(value);
      this.pieces = undefined;
    } else if (key === 'laterMin') this.laterMin = value as number | undefined;
    else this.pieces = value as number | undefined;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-tries': PlanTries;
  }
}

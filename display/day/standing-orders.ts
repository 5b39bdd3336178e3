import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { StandingOrder } from '../../shared/documents/order.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { OrderedProduct, WantedOrder } from '../../shared/plan/orders/read-orders.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { zonedInstantMs } from '../parts/zoned-instant.ts';
import { ORDER_FORMS, ORDERS, STANDING } from '../words/day.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import { dateText, weekdaysText } from './day-text.ts';
import { draftOf, type TypedOrder } from './order-draft.ts';
import './order-entry.ts';
import { inWeekOrder, standingOn, standingToTake, withStanding } from './standing-edits.ts';

/** What the standing orders ask of their page; each answers whether it was done. */
export interface StandingDoing {
  readonly adopt: (standing: readonly StandingOrder[]) => Promise<boolean>;
  readonly takeOver: (orders: readonly WantedOrder[]) => Promise<boolean>;
}

const NOTHING_DONE: StandingDoing = { adopt: () => Promise.resolve(false), takeOver: () => Promise.resolve(false) };

/** Orders that come every week: edited here, taken over for the date that is looked at. */
@customElement('standing-orders')
export class StandingOrders extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    dayPanelStyles,
    css`
      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-1) var(--space-4);
        padding-block: var(--space-2);
        border-bottom: 1px solid var(--line);
      }
      li > p {
        flex: 1 1 260px;
      }
      li.form {
        display: block;
      }
      button.small {
        padding: 4px 11px;
        font-weight: var(--weight-text);
      }
      button.add {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) serviceDate = '';
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) products: readonly OrderedProduct[] = [];
  @property({ attribute: false }) isClosed = false;
  @property({ attribute: false }) doing: StandingDoing = NOTHING_DONE;
  /** Which one is changed; empty: a new one is typed. */
  @state() private openId: string | null = null;

  /** Whether something is typed that nobody has taken. */
  get hasDraft(): boolean {
    return [...this.renderRoot.querySelectorAll('order-entry')].some((entry) => entry.hasDraft);
  }

  private get standing(): readonly StandingOrder[] {
    return this.floor?.standing?.document ?? [];
  }

  protected override render(): TemplateResult {
    const { standing } = this;
    return html`<h2>${STANDING.title}</h2>
      <p class="soft">${STANDING.more}</p>
      ${this.takeOver()}
      ${
        standing.length === 0
          ? html`<p class="soft">${STANDING.none}</p>`
          : html`<ul>
              ${inWeekOrder(standing).map((order) => this.row(order))}
            </ul>`
      }
      ${
        this.openId === ''
          ? html`<section class="card" aria-label=${STANDING.add}>${this.form(null)}</section>`
          : html`<button type="button" class="plain add" @click=${() => this.open('')}>${STANDING.add}</button>`
      }`;
  }

  private takeOver(): TemplateResult | typeof nothing {
    const { standing, floor, serviceDate } = this;
    if (standing.length === 0 || this.isClosed) return nothing;
    const date = dateText(serviceDate);
    const open = standingToTake(standing, Object.values(floor?.orders ?? {}), serviceDate, (day, minute) =>
      zonedInstantMs(day, minute, this.zone),
    );
    const orders = open.filter(({ readyMs }) => readyMs > this.nowMs);
    if (orders.length > 0)
      return html`<button type="button" class="plain filled add" @click=${() => void this.doing.takeOver(orders)}>
        ${STANDING.takeOver(orders.length, date)}
      </button>`;
    if (open.length > 0) return html`<p class="strong">${STANDING.tooLate(date)}</p>`;
    return html`<p class="strong">${standingOn(standing, serviceDate).length === 0 ? STANDING.noneOn(date) : STANDING.allTaken(date)}</p>`;
  }

  private row(order: StandingOrder): TemplateResult {
    if (order.id === this.openId) return html`<li class="form card">${this.form(order)}</li>`;
    const { weekdays, label, form } = order;
    const name = this.named(order);
    return html`<li data-standing=${order.id}>
      <p>
        <span class="strong">${name}</span>
        <span class="soft">${[weekdaysText(weekdays), ORDER_FORMS[form], ...(label === undefined ? [] : [label])].join(' · ')}</span>
      </p>
      <div class="buttons">
        <button type="button" class="plain small" aria-label=${STANDING.changeOne(name)} @click=${() => this.open(order.id)}>
          ${STANDING.change}
        </button>
        <button type="button" class="plain small" aria-label=${STANDING.removeOne(name)} @click=${() => this.takeAway(order.id)}>
          ${STANDING.remove}
        </button>
      </div>
    </li>`;
  }

  private form(order: StandingOrder | null): TemplateResult {
    return html`<order-entry
      .isStanding=${true}
      .products=${this.products}
      .from=${order === null ? null : draftOf(order, order.readyAt, (id) => this.nameOf(id))}
      .save=${(typed: TypedOrder) => this.save(typed, order?.id ?? null)}
      @entry-left=${this.close}
    ></order-entry>`;
  }

  private named({ pieces, productId, readyAt }: StandingOrder): string {
    return ORDERS.named(pieces, this.nameOf(productId), readyAt);
  }

  private nameOf(productId: string): string {
    return this.products.find(({ id }) => id === productId)?.name ?? productId;
  }

  private open(id: string): void {
    this.openId = id;
    void this.updateComplete.then(() => this.renderRoot.querySelector('order-entry')?.focusFirst());
  }

  /** The keyboard goes back to where it came from. */
  private close(): void {
    const id = this.openId;
    this.openId = null;
    void this.updateComplete.then(() =>
      this.renderRoot
        .querySelector<HTMLButtonElement>(id === '' || id === null ? 'button.add:last-of-type' : `[data-standing="${id}"] button`)
        ?.focus(),
    );
  }

  private async save(typed: TypedOrder, beforeId: string | null): Promise<boolean> {
    const isDone = await this.doing.adopt(withStanding(this.standing, typed, beforeId));
    if (isDone && beforeId !== null) this.close();
    return isDone;
  }

  private async takeAway(id: string): Promise<void> {
    await this.doing.adopt(this.standing.filter((order) => order.id !== id));
    await this.updateComplete;
    if (this.renderRoot instanceof ShadowRoot && this.renderRoot.activeElement === null)
      this.renderRoot.querySelector<HTMLButtonElement>('button.add:last-of-type')?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'standing-orders': StandingOrders;
  }
}

import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Order } from '../../shared/documents/order.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { OrderedProduct } from '../../shared/plan/orders/read-orders.ts';
import { unreachable } from '../../shared/result.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { clockText, weekdayText } from '../parts/clock-text.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { lengthWords, ORDER_COLUMNS, ORDER_FORMS, ORDERS } from '../words/day.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import { draftOf, type TypedOrder } from './order-draft.ts';
import './order-entry.ts';
import { orderListStyles } from './order-list-styles.ts';
import { ordersOf, piecesByProduct, standingOf, type OrderStanding } from './order-rows.ts';

/** What the list asks of its page; each answers whether it was done. */
export interface OrderDoing {
  /** Takes an order of the date; with an id it takes the place of the one that has it. */
  readonly place: (typed: TypedOrder, before: Order | null) => Promise<boolean>;
  readonly withdraw: (order: Order) => Promise<boolean>;
  /** Takes an order anew that was withdrawn. */
  readonly putBack: (order: Order) => Promise<boolean>;
}

const NOTHING_DONE: OrderDoing = {
  place: () => Promise.resolve(false),
  withdraw: () => Promise.resolve(false),
  putBack: () => Promise.resolve(false),
};

type Column = 'label' | 'form' | 'freshMin' | 'loadingMin' | 'weight';

/** What is said of at least one of the orders; whether they are cooled or hot is said of all. */
function columnsOf(orders: readonly Order[]): readonly Column[] {
  const all = ['label', 'form', 'freshMin', 'loadingMin', 'weight'] as const;
  return all.filter((column) => orders.some((order) => saidIn(order, column) !== undefined));
}

function saidIn({ label, form, freshMin, loadingMin, weight }: Order, column: Column): string | undefined {
  switch (column) {
    case 'label':
      return label;
    case 'form':
      return ORDER_FORMS[form];
    case 'freshMin':
      return freshMin === undefined ? undefined : lengthWords(freshMin);
    case 'loadingMin':
      return loadingMin === undefined ? undefined : lengthWords(loadingMin);
    case 'weight':
      return weight === 1 ? undefined : `× ${weight}`;
    default:
      return unreachable(column);
  }
}

/** The orders of a date as a table, each to be changed or withdrawn; a form for the next one above it. */
@customElement('order-list')
export class OrderList extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, dayPanelStyles, orderListStyles];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) serviceDate = '';
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) products: readonly OrderedProduct[] = [];
  /** The day is over: nothing is ordered any more. */
  @property({ attribute: false }) isClosed = false;
  @property({ attribute: false }) doing: OrderDoing = NOTHING_DONE;
  @state() private changedId: string | null = null;
  @state() private withdrawn: Order | null = null;

  /** Whether something is typed that nobody has taken. */
  get hasDraft(): boolean {
    return [...this.renderRoot.querySelectorAll('order-entry')].some((entry) => entry.hasDraft);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { floor } = this;
    if (floor === null) return nothing;
    const orders = ordersOf(floor, this.serviceDate);
    return html`${
      this.isClosed
        ? nothing
        : html`<div class="card">
            <h2>${ORDERS.add}</h2>
            <order-entry .products=${this.products} .save=${(typed: TypedOrder) => this.doing.place(typed, null)}></order-entry>
          </div>`
    }
    ${this.undo()}${orders.length === 0 ? this.empty() : this.table(floor, orders)}`;
  }

  private empty(): TemplateResult {
    return html`<div class="empty">
      <h2>${ORDERS.none}</h2>
      <p class="soft">${ORDERS.noneMore}</p>
    </div>`;
  }

  /** What was withdrawn can be put back until something else is done. */
  private undo(): TemplateResult {
    const { withdrawn } = this;
    return html`<div role="status">
      ${
        withdrawn === null
          ? nothing
          : html`<p class="told line">
              <span>${ORDERS.withdrawn(this.named(withdrawn))}</span>
              <button type="button" class="plain" @click=${() => this.putBack(withdrawn)}>${ORDERS.putBack}</button>
            </p>`
      }
    </div>`;
  }

  private table(floor: FloorState, orders: readonly Order[]): TemplateResult {
    const pieces = orders.reduce((sum, order) => sum + order.pieces, 0);
    const columns = columnsOf(orders);
    return html`<div class="head">
        <h2 id="orders">${ORDERS.sum(orders.length, pieces)}</h2>
        <p class="soft small">
          ${piecesByProduct(orders)
            .map(([productId, count]) => `${count} ${this.nameOf(productId)}`)
            .join(' · ')}
        </p>
      </div>
      <div class="wide" tabindex="0" role="group" aria-labelledby="orders">
        <table role="table" aria-label=${ORDERS.table}>
          <thead role="rowgroup">
            <tr role="row">
              ${this.heading(ORDER_COLUMNS.readyAt)}${this.heading(ORDER_COLUMNS.pieces, 'number')}${this.heading(ORDER_COLUMNS.product)}
              ${columns.map((column) => this.heading(ORDER_COLUMNS[column]))} ${floor.plan === null ? nothing : this.heading(ORDERS.plan)}
              <th role="columnheader" scope="col"><span class="unseen">${ORDERS.actions}</span></th>
            </tr>
          </thead>
          <tbody role="rowgroup">
            ${repeat(
              orders,
              ({ id }) => id,
              (order) => (order.id === this.changedId ? this.form(floor, order, columns) : this.row(floor, order, columns)),
            )}
          </tbody>
        </table>
      </div>`;
  }

  private heading(words: string, className = ''): TemplateResult {
    return html`<th role="columnheader" scope="col" class=${className}>${words}</th>`;
  }

  private row(floor: FloorState, order: Order, columns: readonly Column[]): TemplateResult {
    const name = this.named(order);
    return html`<tr role="row" data-order=${order.id}>
      <td role="cell" class="clock">${this.clock(order)}</td>
      <td role="cell" class="number">${order.pieces}</td>
      <th role="rowheader" scope="row" class="name">
        ${this.nameOf(order.productId)}${order.standingId === undefined ? nothing : html` <span class="tag">${ORDERS.fromStanding}</span>`}
      </th>
      ${columns.map((column) => this.cell(ORDER_COLUMNS[column], saidIn(order, column)))}
      ${floor.plan === null ? nothing : html`<td role="cell" class="standing">${this.standing(standingOf(floor, order))}</td>`}
      <td role="cell" class="actions">
        ${
          this.isClosed
            ? nothing
            : html`<div class="buttons">
                <button type="button" class="plain small" aria-label=${ORDERS.changeOne(name)} @click=${() => this.open(order.id)}>
                  ${ORDERS.change}
                </button>
                <button type="button" class="plain small" aria-label=${ORDERS.withdrawOne(name)} @click=${() => this.withdraw(order)}>
                  ${ORDERS.withdraw}
                </button>
              </div>`
        }
      </td>
    </tr>`;
  }

  /** What was not said is left out where rows stand as cards, and where they do not it is a blank. */
  private cell(heading: string, text: string | undefined): TemplateResult {
    return text === undefined
      ? html`<td role="cell" class="unsaid"></td>`
      : html`<td role="cell"><span class="own-heading" aria-hidden="true">${heading}: </span>${text}</td>`;
  }

  private form(floor: FloorState, order: Order, columns: readonly Column[]): TemplateResult {
    return html`<tr role="row" data-order=${order.id}>
      <td role="cell" class="form" colspan=${columns.length + (floor.plan === null ? 4 : 5)}>
        <section class="card" aria-label=${ORDERS.changeOne(this.named(order))}>
          <order-entry
            .products=${this.products}
            .from=${draftOf(order, clockText(order.readyMs, this.zone), (id) => this.nameOf(id))}
            .save=${(typed: TypedOrder) => this.change(typed, order)}
            @entry-left=${() => this.close(order.id)}
          ></order-entry>
        </section>
      </td>
    </tr>`;
  }

  private standing(standing: OrderStanding | null): TemplateResult | typeof nothing {
    if (standing === null) return nothing;
    switch (standing.kind) {
      case 'notPlanned':
        return html`<span class="soft">${ORDERS.notPlanned}</span>`;
      case 'onTime':
        return html`${ORDERS.onTime}`;
      case 'late':
        return html`<span class="late strong">${ORDERS.late(Math.ceil(standing.byMin))}</span>`;
      case 'short':
        return html`<span class="late strong">${ORDERS.short(standing.pieces)}</span>`;
      default:
        return unreachable(standing);
    }
  }

  private named(order: Order): string {
    return ORDERS.named(order.pieces, this.nameOf(order.productId), this.clock(order));
  }

  /** With its weekday where it is wanted on another date than the one that it is made for. */
  private clock({ readyMs }: Order): string {
    const date = zonedDate(readyMs, this.zone);
    const clock = clockText(readyMs, this.zone);
    return date === this.serviceDate ? clock : `${weekdayText(date)} ${clock}`;
  }

  private nameOf(productId: string): string {
    return this.products.find(({ id }) => id === productId)?.name ?? productId;
  }

  private open(id: string): void {
    this.changedId = id;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElementTagNameMap['order-entry']>('td order-entry')?.focusFirst(),
    );
  }

  /** The keyboard goes back to where it came from. */
  private close(id: string): void {
    this.changedId = null;
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLButtonElement>(`[data-order="${id}"] button`)?.focus());
  }

  private async change(typed: TypedOrder, order: Order): Promise<boolean> {
    const isDone = await this.doing.place(typed, order);
    if (isDone) this.close(order.id);
    return isDone;
  }

  private async withdraw(order: Order): Promise<void> {
    if (await this.doing.withdraw(order)) {
      this.withdrawn = order;
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLButtonElement>('.told button')?.focus();
    }
  }

  private async putBack(order: Order): Promise<void> {
    if (await this.doing.putBack(order)) this.withdrawn = null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'order-list': OrderList;
  }
}

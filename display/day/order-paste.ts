import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import { ORDER_FIELDS } from '../../shared/plan/orders/order-columns.ts';
import { readOrders, type LineFault, type OrderedProduct, type ReadOrder, type ReadOrders } from '../../shared/plan/orders/read-orders.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { zonedDate, zonedInstantMs } from '../parts/zoned-instant.ts';
import { ORDER_COLUMNS, orderFaultWords, READING } from '../words/day.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import { dateText } from './day-text.ts';
import { textOfBytes } from './file-text.ts';
import { orderPasteStyles } from './order-paste-styles.ts';

const KIBIBYTE = 1024;
/** Largest file of orders, in bytes: far more than a day can have. */
const MOST_FILE_BYTES = 512 * KIBIBYTE;
/** Faults that are listed at once: nobody mends more before looking again. */
const FAULTS_SHOWN = 50;

/** Orders from a spreadsheet's clipboard or a CSV file: read as they stand, told what is wrong, taken by one button. */
@customElement('order-paste')
export class OrderPaste extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, dayPanelStyles, orderPasteStyles];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) products: readonly OrderedProduct[] = [];
  @property({ attribute: false }) serviceDate = '';
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) nowMs = 0;
  /** Takes what was read. Whether all of it was taken. */
  @property({ attribute: false }) place: (orders: readonly ReadOrder[]) => Promise<boolean> = () => Promise.resolve(false);
  @state() private text = '';
  @state() private told = '';
  @state() private isTaking = false;
  @query('textarea') private readonly box!: HTMLTextAreaElement;

  /** Whether something stands in the box that nobody has taken. */
  get hasDraft(): boolean {
    return this.text.trim() !== '';
  }

  protected override render(): TemplateResult {
    const read = this.read();
    return html`<h2>${READING.title}</h2>
      <p class="soft" id="more">${READING.more}</p>
      <p class="columns">${ORDER_FIELDS.map((field) => html`<span>${ORDER_COLUMNS[field]}</span>`)}</p>
      <label for="box">${READING.box}</label>
      <textarea
        id="box"
        rows="7"
        wrap="off"
        spellcheck="false"
        autocomplete="off"
        aria-describedby="more"
        .value=${this.text}
        @input=${() => this.typed(this.box.value)}
      ></textarea>
      <div class="line">
        <label class="file"
          >${READING.file}<input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
            @change=${this.filePicked}
        /></label>
      </div>
      <div role="status" class="read">
        ${this.told === '' ? nothing : html`<p class="told">${this.told}</p>`}${this.hasDraft ? this.outcome(read) : nothing}
      </div>
      ${this.faults(read)}
      ${
        this.hasDraft
          ? html`<div class="buttons">
              <button
                type="button"
                class="plain filled"
                ?disabled=${read.orders.length === 0 || this.isTaking}
                @click=${() => this.take(read)}
              >
                ${READING.take(read.orders.length)}
              </button>
              <button type="button" class="plain" @click=${this.clear}>${READING.clear}</button>
            </div>`
          : nothing
      }`;
  }

  private read(): ReadOrders {
    return readOrders(this.text, {
      products: this.products,
      serviceDate: this.serviceDate,
      firstDate: zonedDate(this.nowMs, this.zone),
      instantMs: (date, minuteOfDay) => zonedInstantMs(date, minuteOfDay, this.zone),
    });
  }

  private outcome({ orders, unread }: ReadOrders): TemplateResult {
    const others = [...new Set(orders.map(({ serviceDate }) => serviceDate))].filter((date) => date !== this.serviceDate).sort();
    const known = orders.filter((order) => this.isKnown(order)).length;
    return html`<p class="strong">${READING.read(orders.length)}</p>
      ${others.length === 0 ? nothing : html`<p>${READING.alsoDates(others.map(dateText).join(', '))}</p>`}
      ${unread.length === 0 ? nothing : html`<p class="soft">${READING.unread(unread.join(', '))}</p>`}
      ${known === 0 ? nothing : html`<p class="late">${READING.known(known)}</p>`}`;
  }

  private isKnown({ serviceDate, order }: ReadOrder): boolean {
    return Object.values(this.floor?.orders ?? {}).some(
      (known) =>
        known.serviceDate === serviceDate &&
        known.productId === order.productId &&
        known.pieces === order.pieces &&
        known.readyMs === order.readyMs &&
        known.label === order.label,
    );
  }

  private faults({ faults }: ReadOrders): TemplateResult | typeof nothing {
    if (faults.length === 0) return nothing;
    const words = READING.faults(new Set(faults.map(({ line }) => line)).size);
    return html`<p class="strong" id="faulty">${words}</p>
      <ul class="faults" aria-labelledby="faulty">
        ${faults.slice(0, FAULTS_SHOWN).map((fault) => this.fault(fault))}
        ${faults.length > FAULTS_SHOWN ? html`<li>${READING.moreFaults(faults.length - FAULTS_SHOWN)}</li>` : nothing}
      </ul>`;
  }

  private fault({ code, line, column, field, text, near }: LineFault): TemplateResult {
    return html`<li class="fault">
      <button type="button" class="place" @click=${() => this.toLine(line)}>${READING.at(line, column)}</button>
      ${orderFaultWords(code, text, field === null ? '' : ORDER_COLUMNS[field], near)}
    </li>`;
  }

  private typed(text: string): void {
    this.text = text;
    this.told = '';
  }

  /** Selects a line of the box, so that it is seen and can be put right. */
  private toLine(line: number): void {
    const lines = this.box.value.split('\n');
    const fromAt = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
    this.box.focus();
    this.box.setSelectionRange(fromAt, fromAt + (lines[line - 1]?.length ?? 0));
  }

  private async take({ orders, faultyText }: ReadOrders): Promise<void> {
    this.isTaking = true;
    const isTaken = await this.place(orders);
    this.isTaking = false;
    if (!isTaken) return;
    this.text = faultyText;
    await this.updateComplete;
    this.box.focus();
  }

  private clear(): void {
    this.typed('');
    this.box.focus();
  }

  private async filePicked(event: Event): Promise<void> {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file === undefined) return;
    if (file.size > MOST_FILE_BYTES) this.told = READING.tooLarge(MOST_FILE_BYTES / KIBIBYTE);
    else {
      try {
        const text = textOfBytes(new Uint8Array(await file.arrayBuffer()));
        this.typed(this.hasDraft ? `${this.text.trimEnd()}\n${text}` : text);
      } catch {
        this.told = READING.notReadable;
      }
    }
    // The same file, mended, can be chosen again.
    input.value = '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'order-paste': OrderPaste;
  }
}

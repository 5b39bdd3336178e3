import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Row } from '../../shared/floor/board.ts';
import { PHONE } from '../words/phone.ts';
import { THIS_PHONE } from '../words/this-phone.ts';
import { RowsMovedEvent } from './phone-events.ts';
import './phone-row.ts';
import { baseStyles } from './phone-styles.ts';

/** The floor's doughs in the order of the wall. Tells which rows have moved, so that no thumb hits the wrong one. */
@customElement('phone-list')
export class PhoneList extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
        min-height: 100%;
        padding-bottom: var(--space-5);
      }
      .empty {
        display: grid;
        gap: var(--space-2);
        padding: var(--space-7) var(--space-5);
        font-size: var(--type-text);
        color: var(--ink-soft);
      }
      .empty strong {
        font-size: var(--type-title);
        color: var(--ink);
      }
    `,
  ];

  /** In the order to show. */
  @property({ attribute: false }) rows: readonly Row[] = [];
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) floorDate: string | null = null;
  @property({ attribute: false }) stations: ReadonlyMap<string, string> = new Map();
  /** Workpieces with a tap that has not been sent. */
  @property({ attribute: false }) unsentIds: ReadonlySet<string> = new Set();

  /** Whose doughs alone are listed, by name; null where everybody's are. */
  @property({ attribute: false }) station: string | null = null;

  private tops = new Map<string, number>();

  protected override render(): TemplateResult {
    return html`
      <h1 class="unseen">${PHONE.doughs}</h1>
      ${
        this.rows.length === 0
          ? this.empty()
          : html`<ol>
              ${repeat(
                this.rows,
                (row) => row.workpieceId,
                (row) =>
                  html`<li>
                    <phone-row
                      .row=${row}
                      .nowMs=${this.nowMs}
                      .zone=${this.zone}
                      .floorDate=${this.floorDate}
                      .stations=${this.stations}
                      .notSent=${this.unsentIds.has(row.workpieceId)}
                    ></phone-row>
                  </li>`,
              )}
            </ol>`
      }
    `;
  }

  private empty(): TemplateResult {
    const { station } = this;
    return station === null
      ? html`<p class="empty"><strong>${PHONE.emptyTitle}</strong>${PHONE.emptyMore}</p>`
      : html`<p class="empty"><strong>${THIS_PHONE.emptyAt(station)}</strong>${THIS_PHONE.emptyAtMore}</p>`;
  }

  protected override updated(): void {
    const tops = new Map<string, number>();
    const moved: Element[] = [];
    const startPx = this.getBoundingClientRect().top + (this.parentElement?.scrollTop ?? 0);
    for (const element of this.renderRoot.querySelectorAll('phone-row')) {
      const workpieceId = element.row?.workpieceId ?? '';
      const topPx = startPx + element.offsetTop;
      const beforePx = this.tops.get(workpieceId);
      const isNew = beforePx === undefined && this.tops.size > 0;
      if (isNew || (beforePx !== undefined && Math.abs(beforePx - topPx) > 1)) moved.push(element);
      tops.set(workpieceId, topPx);
    }
    this.tops = tops;
    if (moved.length > 0) this.dispatchEvent(new RowsMovedEvent(moved));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'phone-list': PhoneList;
  }
}

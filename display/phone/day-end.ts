import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText, weekdayText } from '../parts/clock-text.ts';
import { PANELS } from '../words/panels.ts';
import { piecesCountWords } from '../words/phone.ts';
import { carriesOver, type CarriedOver } from './day-end-model.ts';
import { baseStyles } from './phone-styles.ts';
import { rowVerb } from '../parts/row-verb.ts';
import { roleWords } from './row-words.ts';

/** What goes over when the day ends, and where each of it stands. */
@customElement('day-end')
export class DayEnd extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        padding: var(--space-4);
      }
      h1 {
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
      }
      h2 {
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      li {
        padding: var(--space-2) 0;
        border-top: 1px solid var(--line);
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      li strong {
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      p {
        font-size: var(--type-text);
      }
    `,
  ];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';

  protected override render(): TemplateResult | typeof nothing {
    const { floor } = this;
    if (floor === null) return nothing;
    const { serviceDate } = floor;
    if (serviceDate === null) return html`<p>${PANELS.noDay}</p>`;
    const carried = carriesOver(floor, this.nowMs);
    const day = weekdayText(serviceDate);
    return html`
      <h1>${PANELS.dayEndTitle(day)}</h1>
      <h2>${carried.length === 0 ? PANELS.dayEndNone : PANELS.dayEndCarries}</h2>
      <ul>
        ${carried.map((over) => this.item(over))}
      </ul>
      <p>${PANELS.dayEndMore}</p>
    `;
  }

  private item({ tag, name, row, placeName }: CarriedOver): TemplateResult {
    const parts = [
      name,
      ...(row.pieces === null ? [] : [piecesCountWords(row.pieces)]),
      ...(placeName === null ? [] : [placeName]),
      `${rowVerb(row)} ${clockText(row.dueMs, this.zone)}`,
      ...(row.role === 'late' || row.role === 'lost' ? [roleWords(row)] : []),
    ];
    return html`<li><strong>${tag}</strong> ${parts.join(' · ')}</li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'day-end': DayEnd;
  }
}

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { deskStyles } from '../desk/desk-styles.ts';
import { clockText, weekdayText } from '../parts/clock-text.ts';
import { dayClockText } from '../parts/day-clock-text.ts';
import { minutesWords } from '../words/clock.ts';
import { STATION_LIST } from '../words/day-sheet.ts';
import { VERBS } from '../words/verbs.ts';
import type { Bar } from './sheet-bar.ts';
import type { StationDay } from './station-model.ts';

const MINUTE_MS = 60_000;

/** One station's hands in their order, on the screen and on paper. */
@customElement('station-sheet')
export class StationSheet extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
        max-width: 1080px;
        color: var(--ink);
        font-size: var(--type-text);
        font-variant-numeric: tabular-nums;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        justify-content: space-between;
        gap: 2px var(--space-5);
        padding-bottom: var(--space-2);
        border-bottom: var(--rule) solid currentColor;
      }
      h3 {
        font-size: var(--type-step);
        font-weight: var(--weight-strong);
        overflow-wrap: anywhere;
      }
      table {
        width: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: 7px var(--space-2);
        border-bottom: 1px solid currentColor;
        text-align: start;
        vertical-align: baseline;
        font-weight: var(--weight-text);
      }
      thead th {
        font-size: var(--type-small);
      }
      tbody tr {
        break-inside: avoid;
      }
      .clock,
      .tag {
        font-weight: var(--weight-strong);
        white-space: nowrap;
      }
      .tag.long {
        white-space: normal;
      }
      .what {
        font-weight: var(--weight-word);
      }
      .number {
        text-align: end;
        white-space: nowrap;
      }
      .check {
        width: 40%;
        overflow-wrap: anywhere;
      }
      .note {
        display: block;
        font-size: var(--type-small);
        font-weight: var(--weight-text);
      }
      .none {
        padding-block: var(--space-4);
      }
      /* Ink on white paper whatever the page looks like, in sizes that are read at a bench. */
      @media print {
        :host {
          color-scheme: only light;
          --ink: CanvasText;
          --type-small: 9.5pt;
          --type-text: 11.5pt;
          --type-step: 18pt;
          max-width: none;
        }
      }
      /* A line of figures, and what to look for under it. */
      @media screen and (max-width: 600px) {
        thead {
          position: absolute;
          width: 1px;
          height: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        tbody tr {
          display: grid;
          grid-template-columns: auto auto minmax(0, 1fr) auto;
          padding-block: 6px;
          border-bottom: 1px solid currentColor;
        }
        tbody th,
        tbody td {
          padding-block: 2px;
          border: none;
        }
        .pieces {
          display: none;
        }
        .check {
          grid-column: 1 / -1;
          width: auto;
        }
        .check:empty {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) station: StationDay | null = null;
  @property({ attribute: false }) zone = 'UTC';
  @property({ type: Number }) nowMs = 0;
  /** The day that it is of. */
  @property({ attribute: false }) date: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { station, zone, nowMs, date } = this;
    if (station === null) return nothing;
    return html`<header>
        <h3>${station.name}</h3>
        <span>${date === null ? '' : `${weekdayText(date)} ${date} · `}${STATION_LIST.asOf(clockText(nowMs, zone))}</span>
      </header>
      ${station.bars.length === 0 ? html`<p class="none">${STATION_LIST.none}</p>` : this.table(station)}`;
  }

  private table({ name, bars }: StationDay): TemplateResult {
    return html`<table aria-label=${name}>
      <thead>
        <tr>
          <th scope="col">${STATION_LIST.clock}</th>
          <th scope="col">${STATION_LIST.tag}</th>
          <th scope="col">${STATION_LIST.what}</th>
          <th scope="col" class="number pieces">${STATION_LIST.pieces}</th>
          <th scope="col" class="number">${STATION_LIST.length}</th>
          <th scope="col" class="check">${STATION_LIST.check}</th>
        </tr>
      </thead>
      <tbody>
        ${bars.map((bar) => this.row(bar))}
      </tbody>
    </table>`;
  }

  private row(bar: Bar): TemplateResult {
    const { zone, nowMs } = this;
    return html`<tr>
      <td class="clock">${dayClockText(bar.fromMs, nowMs, zone)}</td>
      <th scope="row" class="tag ${bar.step.verb === 'clean' ? 'long' : ''}">${bar.tag}</th>
      <td class="what">
        ${VERBS[bar.step.verb].running}${bar.pin === null ? nothing : html`<span class="note">${STATION_LIST.fixed}</span>`}
      </td>
      <td class="number pieces">${bar.pieces ?? ''}</td>
      <td class="number">${minutesWords(Math.max(1, Math.round((bar.toMs - bar.fromMs) / MINUTE_MS)))}</td>
      <td class="check">${bar.step.check ?? nothing}</td>
    </tr>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'station-sheet': StationSheet;
  }
}

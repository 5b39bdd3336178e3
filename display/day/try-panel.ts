import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { resourceSchema } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { TryResult } from '../../shared/plan/try/try-result.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import '../parts/role-mark.ts';
import { lengthWords, TRY } from '../words/day-sheet.ts';
import { TryWantedEvent } from './sheet-events.ts';
import { orderText, thingAloneText } from './sheet-texts.ts';
import { heldBackBy, percentText, triedOrders, type TriedOrder } from './try-model.ts';

/** The day played many times: how often each order is late, by how much, and what holds the day back. */
@customElement('try-panel')
export class TryPanel extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        min-width: 0;
        color: var(--ink);
        font-size: var(--type-text);
        font-variant-numeric: tabular-nums;
      }
      h2 {
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
      h3 {
        margin-bottom: var(--space-2);
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      .lead,
      .soft {
        max-width: 70ch;
        color: var(--ink-soft);
      }
      .plain {
        justify-self: start;
      }
      .progress {
        display: grid;
        gap: var(--space-1);
      }
      .track {
        position: relative;
        height: 22px;
        border: var(--hairline) solid var(--ink);
        background: var(--field);
      }
      .track span {
        position: absolute;
        inset-block: 0;
        left: 0;
        background: var(--block);
      }
      table {
        width: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: 7px var(--space-2);
        border-bottom: 1px solid var(--ink-soft);
        text-align: start;
        vertical-align: middle;
        font-weight: var(--weight-text);
      }
      thead th {
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
      tbody th {
        font-weight: var(--weight-word);
      }
      .nowrap {
        white-space: nowrap;
      }
      .often {
        display: grid;
        grid-template-columns: minmax(80px, 1fr) 11.5em;
        align-items: center;
        gap: var(--space-2) var(--space-3);
        min-width: 200px;
      }
      .held {
        display: grid;
        gap: var(--space-2);
        margin-top: var(--space-2);
      }
      section ul {
        margin-bottom: var(--space-2);
      }
      .held li {
        display: grid;
        grid-template-columns: minmax(120px, 240px) minmax(80px, 1fr) 4em;
        align-items: center;
        gap: var(--space-2) var(--space-3);
      }
      .fault {
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
        font-weight: var(--weight-word);
      }
      @media (max-width: 700px) {
        thead {
          position: absolute;
          width: 1px;
          height: 1px;
          overflow: hidden;
          clip-path: inset(50%);
        }
        tbody tr {
          display: grid;
          gap: var(--space-1);
          padding-block: var(--space-2);
          border-bottom: 1px solid var(--ink-soft);
        }
        tbody th,
        tbody td {
          padding: 0;
          border: none;
        }
        tbody td[data-name]::before {
          content: attr(data-name) ': ';
          color: var(--ink-soft);
        }
        .held li {
          grid-template-columns: minmax(0, 1fr) 4em;
        }
        .held .track {
          grid-column: 1 / -1;
          grid-row: 2;
        }
      }
    `,
  ];

  @property({ attribute: false }) state: FloorState | null = null;
  @property({ attribute: false }) result: TryResult | null = null;
  /** How many days are played of how many; null while none is. */
  @property({ attribute: false }) progress: { readonly done: number; readonly of: number } | null = null;
  /** Why it came to nothing. */
  @property({ attribute: false }) fault: string | null = null;
  /** There is no day to be played. */
  @property({ type: Boolean }) disabled = false;

  protected override render(): TemplateResult {
    const { result, progress, fault, state: floor } = this;
    return html`<h2>${TRY.title}</h2>
      <p class="lead">${TRY.lead}</p>
      <button
        type="button"
        class="plain filled"
        ?disabled=${this.disabled || progress !== null}
        @click=${() => this.dispatchEvent(new TryWantedEvent())}
      >
        ${result === null ? TRY.start : TRY.again}
      </button>
      ${progress === null ? nothing : this.running(progress)}
      ${fault === null ? nothing : html`<p class="fault" role="status">${TRY.failed} ${fault}</p>`}
      ${result === null || floor === null || progress !== null ? nothing : this.found(result, floor)}`;
  }

  private running({ done, of }: { readonly done: number; readonly of: number }): TemplateResult {
    const percent = of === 0 ? 0 : (100 * done) / of;
    return html`<div class="progress">
      <span id="words">${TRY.running(done, of)}</span>
      <div class="track" role="progressbar" aria-labelledby="words" aria-valuemin="0" aria-valuemax=${of} aria-valuenow=${done}>
        <span ${place({ width: `${percent}%` })}></span>
      </div>
    </div>`;
  }

  private found(result: TryResult, floor: FloorState): TemplateResult {
    const orders = triedOrders(floor, result);
    return html`<p role="status">
        ${TRY.runs(result.runs)} ${result.spoilShare === 0 ? TRY.spoilsNever : TRY.spoils(percentText(result.spoilShare))}
      </p>
      <section aria-labelledby="orders">
        <h3 id="orders">${TRY.orders}</h3>
        ${orders.length === 0 ? html`<p>${TRY.noOrders}</p>` : this.orders(orders, result.runs, floor)}
      </section>
      <section aria-labelledby="held">
        <h3 id="held">${TRY.holds}</h3>
        ${this.heldBack(result, floor.kitchen?.document ?? null)}
      </section>
      <section aria-labelledby="assumed">
        <h3 id="assumed">${TRY.assumed}</h3>
        <ul>
          ${result.spreads.map(
            ({ kind, mean, spread, learnedFrom }) =>
              html`<li>
                ${TRY.spread(TRY.kinds[kind], percentText(spread))}
                (${learnedFrom === 0 ? TRY.customary : `${TRY.learned(learnedFrom)}; ${TRY.average(percentText(mean))}`})
              </li>`,
          )}
        </ul>
        <p class="soft">${TRY.caution}</p>
      </section>`;
  }

  private orders(orders: readonly TriedOrder[], runs: number, floor: FloorState): TemplateResult {
    const zone = floor.house?.document.zone ?? 'UTC';
    return html`<table aria-labelledby="orders">
      <thead>
        <tr>
          <th scope="col">${TRY.order}</th>
          <th scope="col">${TRY.wanted}</th>
          <th scope="col">${TRY.late}</th>
          <th scope="col">${TRY.typical}</th>
          <th scope="col">${TRY.nineInTen}</th>
        </tr>
      </thead>
      <tbody>
        ${orders.map((order) => this.order(order, runs, zone))}
      </tbody>
    </table>`;
  }

  private order({ marked, lateShare, lateRuns, medianLateMin, p90LateMin }: TriedOrder, runs: number, zone: string): TemplateResult {
    const length = (minutes: number): string => (minutes < 1 ? TRY.inTime : TRY.upTo(lengthWords(minutes)));
    return html`<tr>
      <th scope="row">${orderText(marked)}</th>
      <td class="nowrap" data-name=${TRY.wanted}>${clockText(marked.order.readyMs, zone)}</td>
      <td data-name=${TRY.late}>
        <div class="often">
          ${bar(lateShare)}<span class="nowrap">${lateRuns === 0 ? TRY.never : TRY.lateOf(percentText(lateShare), lateRuns, runs)}</span>
        </div>
      </td>
      <td class="nowrap" data-name=${TRY.typical}>${lateRuns === 0 ? '–' : length(medianLateMin)}</td>
      <td class="nowrap" data-name=${TRY.nineInTen}>${length(p90LateMin)}</td>
    </tr>`;
  }

  private heldBack(result: TryResult, kitchen: Kitchen | null): TemplateResult {
    const held = heldBackBy(result);
    if (held.length === 0) return html`<p>${TRY.holdsNothing}</p>`;
    return html`<p class="soft">${TRY.holdsMore}</p>
      <ul class="held">
        ${held.map(
          ({ kind, id, share }) =>
            html`<li><span>${heldName(kind, id, kitchen)}</span>${bar(share)}<span>${TRY.share(percentText(share))}</span></li>`,
        )}
      </ul>`;
  }
}

/** A share as a length; its figure stands beside it. */
function bar(share: number): TemplateResult {
  return html`<span class="track" aria-hidden="true"><span ${place({ width: `${share * 100}%` })}></span></span>`;
}

function heldName(kind: string, id: string, kitchen: Kitchen | null): string {
  const resource = resourceSchema.safeParse({ kind, id });
  return resource.success ? thingAloneText(resource.data, kitchen) : TRY.doughItself;
}

declare global {
  interface HTMLElementTagNameMap {
    'try-panel': TryPanel;
  }
}

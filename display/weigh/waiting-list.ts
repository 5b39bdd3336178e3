import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { House } from '../../shared/documents/house.ts';
import { clockText } from '../parts/clock-text.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { WEIGH } from '../words/weigh.ts';
import type { Waiting } from './waiting-model.ts';
import { weightText } from '../parts/weight-text.ts';
import { PieceWantedEvent } from './weigh-events.ts';

/** What waits to be weighed, the next one first. A tap opens its weigh-out (`piece-wanted`). */
@customElement('waiting-list')
export class WaitingList extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
        padding-bottom: var(--space-5);
      }
      h1 {
        padding: var(--space-3) var(--space-4);
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
      li {
        border-top: 1px solid var(--line);
      }
      button {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr) auto;
        align-items: center;
        gap: 0 var(--space-4);
        width: 100%;
        min-height: var(--target);
        padding: var(--space-2) var(--space-4);
        border: none;
        border-radius: 0;
        text-align: start;
      }
      .tag {
        min-width: 72px;
        font-size: var(--type-verb);
        font-weight: var(--weight-strong);
      }
      .facts {
        text-align: end;
      }
      small {
        display: block;
        color: var(--ink-soft);
        font-variant-numeric: tabular-nums;
      }
      button[data-pressed] small {
        color: var(--ink);
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

  @property({ attribute: false }) waiting: readonly Waiting[] = [];
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) units: House['units'] = { temperature: 'C', weight: 'g' };

  protected override render(): TemplateResult {
    const { waiting } = this;
    return html`
      <h1>${WEIGH.waiting}</h1>
      ${
        waiting.length === 0
          ? html`<p class="empty"><strong>${WEIGH.nothingTitle}</strong>${WEIGH.nothingMore}</p>`
          : html`<ol>
              ${repeat(
                waiting,
                (one) => one.workpieceId,
                (one) => html`<li>${this.row(one)}</li>`,
              )}
            </ol>`
      }
    `;
  }

  private row({ workpieceId, tag, name, grams, plannedStartMs, inCount, lineCount }: Waiting): TemplateResult {
    return html`<button type="button" @act=${() => this.dispatchEvent(new PieceWantedEvent(workpieceId))}>
      <span class="tag">${tag}</span>
      <span>${name}<small>${WEIGH.from(clockText(plannedStartMs, this.zone))}</small></span>
      <span class="facts">${weightText(grams, this.units)}<small>${WEIGH.progress(inCount, lineCount)}</small></span>
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'waiting-list': WaitingList;
  }
}

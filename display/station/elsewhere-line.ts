import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { countdownText } from '../parts/clock-text.ts';
import { dayTag } from '../parts/day-tag.ts';
import '../parts/role-mark.ts';
import { ShowScreenEvent } from '../phone/phone-events.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { rowVerb } from '../parts/row-verb.ts';
import { roleWords } from '../phone/row-words.ts';
import { moreElsewhereWords, STATION } from '../words/station.ts';
import type { StationList } from './station-model.ts';

/** One line for what is late or being lost at other stations. A tap opens the worst of it: any hand may help. */
@customElement('elsewhere-line')
export class ElsewhereLine extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
        border-bottom: var(--hairline) solid var(--ink);
      }
      button {
        flex-direction: row;
        flex-wrap: wrap;
        justify-content: flex-start;
        gap: 0 10px;
        width: 100%;
        min-height: var(--bar, 56px);
        padding: var(--space-1) var(--space-4);
        border: none;
        border-radius: 0;
        font-size: var(--type-title);
        text-align: start;
        overflow-wrap: anywhere;
      }
      role-mark {
        font-size: var(--type-figure);
      }
      .soft {
        color: var(--ink-soft);
        font-size: var(--type-text);
        font-weight: var(--weight-text);
      }
    `,
  ];

  @property({ attribute: false }) elsewhere: StationList['elsewhere'] = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) floorDate: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { elsewhere } = this;
    if (elsewhere === null) return nothing;
    const { first, role, more } = elsewhere;
    return html`
      <button type="button" @act=${() => this.dispatchEvent(new ShowScreenEvent({ kind: 'card', workpieceId: first.workpieceId }))}>
        <span class="soft">${STATION.elsewhere}</span>
        <role-mark .level=${role} .heard=${true}></role-mark>
        <span
          >${dayTag(first.tag, first.serviceDate, this.floorDate)} ${rowVerb(first)}
          ${countdownText(first.dueMs, this.nowMs, this.zone)}</span
        >
        <span class="soft">${roleWords(first)}</span>
        ${more === 0 ? nothing : html`<span class="soft">${moreElsewhereWords(more)}</span>`}
      </button>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'elsewhere-line': ElsewhereLine;
  }
}

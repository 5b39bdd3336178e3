import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Row } from '../../shared/floor/board.ts';
import { countdownText } from '../parts/clock-text.ts';
import { dayTag } from '../parts/day-tag.ts';
import '../parts/role-mark.ts';
import { PHONE } from '../words/phone.ts';
import { ShowScreenEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';
import { rowVerb } from '../parts/row-verb.ts';
import { progressOf, quietWords, roleWords, standingWords, whoIds } from './row-words.ts';

/** One dough of the list, as the wall shows it: shape, tag, verb, countdown. A tap opens its card. */
@customElement('phone-row')
export class PhoneRow extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
        border-bottom: 1px solid var(--line);
      }
      button {
        display: grid;
        grid-template-columns: 36px minmax(0, 1fr);
        align-items: center;
        gap: 0 var(--space-3);
        width: 100%;
        min-height: var(--target);
        padding: var(--space-2) var(--space-4) var(--space-2) var(--space-3);
        border: none;
        border-inline-start: 8px solid transparent;
        border-radius: 0;
        text-align: start;
      }
      button[data-level='call'] {
        border-inline-start-color: var(--call);
      }
      button[data-level='late'] {
        border-inline-start-color: var(--late);
        box-shadow: inset 2px 0 0 var(--ink);
      }
      button[data-level='lost'] {
        border-inline-start-color: var(--lost);
        box-shadow: inset 0 0 0 4px var(--lost);
      }
      button[data-pressed] {
        background: var(--pressed);
      }
      role-mark {
        font-size: var(--type-verb);
      }
      .texts {
        display: flex;
        flex-direction: column;
        gap: 2px;
        min-width: 0;
      }
      .first {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 var(--space-2);
      }
      .tag {
        min-width: 68px;
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
        line-height: 1;
        white-space: nowrap;
      }
      .verb {
        font-size: var(--type-button);
        font-weight: var(--weight-word);
      }
      [data-level='call'] .verb,
      [data-level='late'] .verb,
      [data-level='lost'] .verb {
        font-weight: var(--weight-strong);
      }
      .countdown {
        margin-inline-start: auto;
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
        line-height: 1;
        white-space: nowrap;
      }
      [data-level='running'] .countdown {
        font-weight: var(--weight-word);
      }
      .second {
        font-size: var(--type-small);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
      }
      .second strong {
        font-weight: var(--weight-word);
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) row: Row | null = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  /** The floor's own date: dough of another day says which. */
  @property({ attribute: false }) floorDate: string | null = null;
  /** Names of stations by their ids. */
  @property({ attribute: false }) stations: ReadonlyMap<string, string> = new Map();
  @property({ type: Boolean }) notSent = false;

  protected override render(): TemplateResult | typeof nothing {
    const { row, nowMs, zone } = this;
    if (row === null) return nothing;
    const who = whoIds(row).map((id) => this.stations.get(id) ?? id);
    const quiet = [...(who.length === 0 ? [] : [who.join(' + ')]), ...quietWords(row, zone), ...standingWords(row, zone, nowMs)];
    return html`
      <button type="button" data-level=${row.role} @act=${this.open}>
        <role-mark .level=${row.role} .progress=${progressOf(row, nowMs)} .heard=${row.heardMs !== null}></role-mark>
        <span class="texts">
          <span class="first">
            <span class="tag">${dayTag(row.tag, row.serviceDate, this.floorDate)}</span>
            <span class="verb">${rowVerb(row)}</span>
            ${row.role === 'call' ? html`<span class="unseen">${roleWords(row)}</span>` : nothing}
            <span class="countdown">${countdownText(row.dueMs, nowMs, zone)}</span>
          </span>
          <span class="second">
            ${quiet.length === 0 ? nothing : html`<strong>${quiet.join(' · ')}</strong> · `}${row.name}${this.notSent ? html` · <strong>${PHONE.notSentShort}</strong>` : nothing}
          </span>
        </span>
      </button>
    `;
  }

  private open(): void {
    if (this.row !== null) this.dispatchEvent(new ShowScreenEvent({ kind: 'card', workpieceId: this.row.workpieceId }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'phone-row': PhoneRow;
  }
}

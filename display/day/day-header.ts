import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import type { FloorView } from '../link/floor-link.ts';
import { clockText } from '../parts/clock-text.ts';
import type { LookChoice } from '../parts/look.ts';
import '../parts/page-choices.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { zoneOf } from '../phone/floor-facts.ts';
import { DAY } from '../words/day.ts';
import { noLinkSinceWords, paceAtDeskWords } from '../words/fields.ts';
import type { Language } from '../words/page-language.ts';
import { daysOn } from './day-address.ts';
import { DateWantedEvent } from './day-events.ts';
import { dateText } from './day-text.ts';

/** Whose day this is, its date and the way to others, the clock, and how the page stands to its server. */
@customElement('day-header')
export class DayHeader extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) 20px;
        padding: var(--space-3) 0;
      }
      h1 {
        flex: 0 1 auto;
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
        line-height: 1.1;
      }
      h1 span {
        display: block;
        font-size: var(--type-text);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .dates {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2);
      }
      input {
        min-height: var(--target-desk);
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        font: inherit;
        font-size: var(--type-text);
      }
      .step {
        min-width: var(--target-desk);
        padding-inline: 8px;
      }
      .clock {
        margin-inline-start: auto;
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
      }
      .strip {
        padding: 10px 16px;
        background: var(--ink);
        color: var(--paper);
        font-size: var(--type-text);
      }
      .strip strong {
        margin-inline-end: var(--space-3);
      }
      .pace {
        padding: var(--space-1) var(--space-4);
        border: var(--hairline) dashed var(--ink);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        text-align: center;
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) nowMs = 0;
  /** The date that is looked at; empty before there is one. */
  @property({ attribute: false }) serviceDate = '';
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const zone = zoneOf(view.state);
    const house = view.state?.house?.document;
    return html`<div class="line">
        <h1>
          ${house === undefined ? nothing : html`<span>${house.name}</span>`}${this.serviceDate === '' ? DAY.title : dateText(this.serviceDate)}
        </h1>
        ${this.serviceDate === '' ? nothing : this.dates(zone)}
        ${view.state === null ? nothing : html`<span class="clock">${clockText(this.nowMs, zone)}</span>`}
        <page-choices .language=${this.language} .look=${this.look}></page-choices>
      </div>
      ${view.pace === 1 ? nothing : html`<p class="pace">${paceAtDeskWords(view.pace)}</p>`}
      <div role="status">
        ${
          view.connection.phase === 'lost'
            ? html`<p class="strip">
                <strong>${noLinkSinceWords(clockText(view.connection.lastContactMs, zone))}</strong>${DAY.noLinkMore}
              </p>`
            : nothing
        }
      </div>`;
  }

  private dates(zone: string): TemplateResult {
    const today = zonedDate(this.nowMs, zone);
    const tomorrow = daysOn(today, 1);
    return html`<div class="dates" role="group" aria-label=${DAY.date}>
      ${this.step(-1, '‹', DAY.dayBefore)}
      <input
        type="date"
        aria-label=${DAY.date}
        .value=${this.serviceDate}
        @change=${(event: Event) => this.go((event.target as HTMLInputElement).value)}
      />
      ${this.step(1, '›', DAY.dayAfter)}${this.dayButton(today, DAY.today)}${this.dayButton(tomorrow, DAY.tomorrow)}
    </div>`;
  }

  private step(days: number, sign: string, words: string): TemplateResult {
    return html`<button type="button" class="plain step" aria-label=${words} @click=${() => this.go(daysOn(this.serviceDate, days))}>
      ${sign}
    </button>`;
  }

  private dayButton(date: string, words: string): TemplateResult {
    return html`<button type="button" class="plain" aria-pressed=${date === this.serviceDate} @click=${() => this.go(date)}>
      ${words}
    </button>`;
  }

  /** A date that is being typed and is none yet changes nothing. */
  private go(date: string): void {
    if (date !== '' && date !== this.serviceDate) this.dispatchEvent(new DateWantedEvent(date));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'day-header': DayHeader;
  }
}

import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { clockText, countdownText } from '../parts/clock-text.ts';
import '../parts/role-mark.ts';
import { nthWords, PANELS, ripeSinceWords, takeWords } from '../words/panels.ts';
import { PHONE, piecesCountWords } from '../words/phone.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { stationName } from './floor-facts.ts';
import { pastClock, pastNotes } from './history-words.ts';
import type { ObstacleModel } from './obstacle-model.ts';
import { baseStyles } from './phone-styles.ts';
import { progressOf, quietWords, roleWords, standingWords, verbWords, whoIds } from './row-words.ts';
import './slot-picker.ts';
import './step-asides.ts';
import './ways-list.ts';

/** What a dough's card tells: what it is, what to look for, how long, and what comes after. Its buttons are `card-actions`. */
@customElement('dough-card')
export class DoughCard extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
        padding: 12px 16px 24px;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 12px;
      }
      role-mark {
        font-size: 40px;
      }
      h1 {
        font-size: 40px;
        font-weight: var(--weight-strong);
        line-height: 1.1;
      }
      /* It takes the focus for those who listen; nothing can be done on it, so that a ring would only mislead. */
      h1:focus-visible {
        outline: none;
      }
      .countdown {
        font-size: 48px;
        font-weight: var(--weight-strong);
        margin-inline-start: auto;
        line-height: 1.1;
        text-align: end;
        white-space: nowrap;
      }
      .countdown[data-wide] {
        font-size: 38px;
      }
      .step {
        margin-top: 4px;
        font-size: 26px;
        font-weight: var(--weight-strong);
        line-height: 1.15;
        overflow-wrap: anywhere;
      }
      .name {
        font-size: 18px;
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .name strong {
        color: var(--ink);
        font-weight: var(--weight-word);
      }
      .block {
        margin-top: 14px;
      }
      .check,
      .caution {
        padding-inline-start: 14px;
        font-size: 20px;
        line-height: 1.3;
        overflow-wrap: anywhere;
      }
      .check {
        border-inline-start: 4px solid var(--ink);
      }
      .caution {
        border-inline-start: 4px double var(--ink);
        font-size: 18px;
      }
      h2 {
        margin-bottom: 2px;
        font-size: 16px;
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .times {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(72px, 1fr));
        gap: 8px;
        padding: 10px 0;
        border-block: 1px solid var(--line);
      }
      .times dt {
        font-size: 16px;
        color: var(--ink-soft);
      }
      .times dd {
        font-size: 22px;
        font-weight: var(--weight-word);
      }
      .list li {
        display: flex;
        align-items: baseline;
        gap: 12px;
        padding: 5px 0;
        font-size: 19px;
      }
      .list li > :first-child {
        flex: 0 0 auto;
        min-width: 62px;
        font-weight: var(--weight-word);
      }
      .past li > :first-child {
        min-width: 124px;
      }
      .line {
        font-size: 19px;
        overflow-wrap: anywhere;
      }
      .list li > :nth-child(2) {
        flex: 1 1 auto;
        min-width: 0;
        overflow-wrap: anywhere;
      }
      .list li > :nth-child(3) {
        flex: 0 0 auto;
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) card: CardModel | null = null;
  @property({ attribute: false }) floor: FloorState | null = null;
  /** What is in the way of its step; null where nothing is. */
  @property({ attribute: false }) obstacle: ObstacleModel | null = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';
  /** Where a load is to go. */
  @property({ attribute: false }) chosenSlotIds: readonly string[] = [];
  /** Where this phone is; null where it is nowhere fixed. */
  @property({ attribute: false }) stationId: string | null = null;
  @property({ type: Boolean }) notSent = false;

  /** Takes the focus, so that whoever cannot see the card hears what it is. */
  focusHeading(): void {
    this.renderRoot.querySelector('h1')?.focus({ preventScroll: true });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { card } = this;
    if (card === null) return nothing;
    const { row } = card;
    const countdown = countdownText(row.dueMs, this.nowMs, this.zone);
    return html`
      <header>
        <role-mark .level=${row.role} .progress=${progressOf(row, this.nowMs)} .heard=${row.heardMs !== null}></role-mark>
        <h1 tabindex="-1">${card.tag}</h1>
        <p class="countdown" ?data-wide=${countdown.length > 6}>${countdown}</p>
      </header>
      <p class="step">${verbWords(row)}${row.role === 'call' ? html`<span class="unseen">, ${roleWords(row)}</span>` : nothing}</p>
      <p class="name">${this.nameLine(card)}</p>
      ${this.notSent ? html`<p class="block"><strong>${PHONE.notSentYet}</strong></p>` : nothing}
      ${this.obstacle === null ? nothing : html`<ways-list class="block" .obstacle=${this.obstacle}></ways-list>`}
      ${
        row.check === null
          ? nothing
          : html`<section class="block check">
              <h2>${PHONE.lookFor}</h2>
              <p>${row.check}</p>
            </section>`
      }
      ${
        row.caution === null
          ? nothing
          : html`<section class="block caution">
              <h2>${PHONE.caution}</h2>
              <p>${row.caution}</p>
            </section>`
      }
      <step-asides class="block" .card=${card} .stationId=${this.stationId}></step-asides>
      ${
        card.load === null
          ? nothing
          : html`<slot-picker
              class="block"
              .decks=${card.load.decks}
              .needed=${card.load.needed}
              .chosen=${this.chosenSlotIds}
              .unit=${this.unit}
            ></slot-picker>`
      }
      ${
        card.becomes.length === 0
          ? nothing
          : html`<section class="block">
              <h2>${PHONE.becomes}</h2>
              <ul class="list">
                ${card.becomes.map((cut) => html`<li><span>${cut.tag}</span><span>${cut.name}</span><span>${piecesCountWords(cut.pieces)}</span></li>`)}
              </ul>
            </section>`
      }
      ${this.takes(card)} ${this.pot(card)} ${this.times(card)} ${this.ahead(card)} ${this.soFar(card)}
    `;
  }

  private nameLine({ row, standsIn }: CardModel): TemplateResult {
    const { floor } = this;
    const who = floor === null ? [] : whoIds(row).map((id) => stationName(floor, id));
    const quiet = [
      ...(who.length === 0 ? [] : [who.join(' + ')]),
      ...quietWords(row, this.zone),
      ...standingWords(row, this.zone, this.nowMs),
    ];
    const parts = [row.name, ...(row.pieces === null ? [] : [piecesCountWords(row.pieces)]), ...standsIn];
    return html`${quiet.length === 0 ? nothing : html`<strong>${quiet.join(' · ')}</strong> · `}${parts.join(' · ')}`;
  }

  private takes({ takes }: CardModel): TemplateResult | typeof nothing {
    if (takes.length === 0) return nothing;
    return html`
      <section class="block">
        <h2>${PANELS.takes}</h2>
        <ul>
          ${takes.map((take) => {
            const [source] = take.sources;
            const ripeMs = source?.ripeFromMs ?? null;
            const ripe = ripeMs === null ? null : ripeSinceWords(clockText(ripeMs, this.zone), ripeMs <= this.nowMs);
            return html`<li class="line">${takeWords(take.grams, take.name, source?.tag ?? null, ripe)}</li>`;
          })}
        </ul>
      </section>
    `;
  }

  private pot({ row, feeds }: CardModel): TemplateResult | typeof nothing {
    const { stock } = row;
    if (stock === null) return nothing;
    const parts = [
      PANELS.potHas(stock.grams),
      PANELS.seedKept(stock.seedG),
      ...feeds.slice(0, 1).map((feed) => PANELS.feedPlanned(clockText(feed.feedMs, this.zone), feed.grams)),
    ];
    return html`
      <section class="block">
        <h2>${PANELS.pot}</h2>
        <p class="line">${parts.join(' · ')}</p>
      </section>
    `;
  }

  private soFar({ pasts }: CardModel): TemplateResult | typeof nothing {
    const { floor } = this;
    if (floor === null || pasts.length === 0) return nothing;
    return html`
      <section class="block">
        <h2>${PANELS.history}</h2>
        <ol class="list past">
          ${pasts.map((past) => {
            const words = [nthWords(VERBS[past.verb].running, past.nth), ...pastNotes(floor, past)];
            return html`<li><span>${pastClock(past, this.zone)}</span><span>${words.join(' · ')}</span></li>`;
          })}
        </ol>
      </section>
    `;
  }

  private times({ row }: CardModel): TemplateResult {
    const time = (label: string, atMs: number): TemplateResult =>
      html`<div>
        <dt>${label}</dt>
        <dd>${clockText(atMs, this.zone)}</dd>
      </div>`;
    return html`
      <dl class="block times">
        ${row.earliestMs < row.dueMs ? time(PHONE.earliest, row.earliestMs) : nothing} ${time(PHONE.target, row.dueMs)}
        ${time(PHONE.late, row.lateMs)} ${row.lostMs === null ? nothing : time(PHONE.latest, row.lostMs)}
      </dl>
    `;
  }

  private ahead({ ahead }: CardModel): TemplateResult {
    return html`
      <section class="block">
        <h2>${PHONE.comesAfter}</h2>
        ${
          ahead.length === 0
            ? html`<p>${PHONE.nothingAfter}</p>`
            : html`<ol class="list">
                ${ahead.map((step) => html`<li><span>${clockText(step.fromMs, this.zone)}</span><span>${VERBS[step.verb].running}</span></li>`)}
              </ol>`
        }
      </section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'dough-card': DoughCard;
  }
}

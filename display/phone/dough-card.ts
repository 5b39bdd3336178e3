import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { countdownText } from '../parts/clock-text.ts';
import '../parts/role-mark.ts';
import { PANELS } from '../words/panels.ts';
import { PHONE, piecesCountWords } from '../words/phone.ts';
import type { CardModel } from './card-model.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { stationName } from './floor-facts.ts';
import type { ObstacleModel } from './obstacle-model.ts';
import { baseStyles } from './phone-styles.ts';
import { rowVerb } from '../parts/row-verb.ts';
import { progressOf, quietWords, roleWords, standingWords, whoIds } from './row-words.ts';
import './step-asides.ts';

/** What a dough's card tells: what it is, what to look for, how long, and what comes after. Its buttons are `card-actions`. */
@customElement('dough-card')
export class DoughCard extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
        padding: var(--space-3) var(--space-4) var(--space-5);
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 var(--space-3);
      }
      role-mark {
        font-size: var(--type-tag);
      }
      h1 {
        font-size: var(--type-tag);
        font-weight: var(--weight-strong);
        line-height: 1.1;
      }
      /* It takes the focus for those who listen; nothing can be done on it, so that a ring would only mislead. */
      h1:focus-visible {
        outline: none;
      }
      .countdown {
        font-size: var(--type-countdown);
        font-weight: var(--weight-strong);
        margin-inline-start: auto;
        line-height: 1.1;
        text-align: end;
        white-space: nowrap;
      }
      .countdown[data-wide] {
        font-size: var(--type-verb);
      }
      .step {
        margin-top: var(--space-1);
        font-size: var(--type-step);
        font-weight: var(--weight-strong);
        line-height: 1.15;
        overflow-wrap: anywhere;
      }
      .name {
        font-size: var(--type-text);
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
        font-size: var(--type-button);
        line-height: 1.3;
        overflow-wrap: anywhere;
      }
      .check {
        border-inline-start: var(--rule) solid var(--ink);
      }
      .caution {
        border-inline-start: var(--rule) double var(--ink);
        font-size: var(--type-text);
      }
      .weigh {
        display: flex;
        align-items: center;
        justify-content: center;
        min-height: var(--target);
        margin-top: 14px;
        padding: 8px 10px;
        border: 3px solid var(--ink);
        border-radius: var(--radius-button);
        color: var(--ink);
        font-size: var(--type-button);
        font-weight: var(--weight-word);
        text-decoration: none;
      }
      h2 {
        margin-bottom: 2px;
        font-size: var(--type-small);
        font-weight: var(--weight-word);
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
      <p class="step">${rowVerb(row)}${row.role === 'call' ? html`<span class="unseen">, ${roleWords(row)}</span>` : nothing}</p>
      <p class="name">${this.nameLine(card)}</p>
      ${this.notSent ? html`<p class="block"><strong>${PHONE.notSentYet}</strong></p>` : nothing}
      ${
        this.obstacle === null
          ? nothing
          : html`<section class="block caution">
              <h2>${PANELS.inTheWay}</h2>
              <p>${this.obstacle.words}</p>
            </section>`
      }
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
      ${
        row.holding === null
          ? nothing
          : html`<holding-mark
              class="block"
              .floor=${this.floor}
              .workpieceId=${row.workpieceId}
              .nowMs=${this.nowMs}
              .zone=${this.zone}
              .unit=${this.unit}
            ></holding-mark>`
      }
      ${card.canWeigh ? html`<a class="weigh" href=${`/weigh?piece=${encodeURIComponent(row.workpieceId)}`}>${PHONE.weighOut}</a>` : nothing}
      <step-asides class="block" .card=${card} .stationId=${this.stationId}></step-asides>
      ${
        row.ripening === null
          ? nothing
          : html`<dough-ripening
              class="block"
              .card=${card}
              .floor=${this.floor}
              .nowMs=${this.nowMs}
              .zone=${this.zone}
              .unit=${this.unit}
            ></dough-ripening>`
      }
      ${
        row.stage === 'oven'
          ? html`<dough-baking
              class="block"
              .floor=${this.floor}
              .workpieceId=${row.workpieceId}
              .nowMs=${this.nowMs}
              .zone=${this.zone}
              .unit=${this.unit}
            ></dough-baking>`
          : nothing
      }
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
      <dough-facts .card=${card} .floor=${this.floor} .nowMs=${this.nowMs} .zone=${this.zone} .unit=${this.unit}></dough-facts>
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
}

declare global {
  interface HTMLElementTagNameMap {
    'dough-card': DoughCard;
  }
}

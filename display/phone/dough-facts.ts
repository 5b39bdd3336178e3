import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import { workpieceAllergens } from '../../shared/floor/workpiece-allergens.ts';
import '../parts/allergen-brief.ts';
import { clockText } from '../parts/clock-text.ts';
import { weightText } from '../parts/weight-text.ts';
import { ALLERGEN_LIST } from '../words/allergens.ts';
import { NUMBERS, READ_WHERE } from '../words/numbers.ts';
import { nthWords, PANELS, ripeSinceWords, takeWords } from '../words/panels.ts';
import { PHONE, piecesCountWords } from '../words/phone.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { readingText } from './degrees.ts';
import { unitsOf } from './floor-facts.ts';
import { pastClock, pastNotes } from './history-words.ts';
import { baseStyles } from './phone-styles.ts';

/** What is to be known of a dough beside what it wants now: what it becomes and takes, its times, what comes, what was. */
@customElement('dough-facts')
export class DoughFacts extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
      }
      .block {
        margin-top: 14px;
      }
      h2 {
        margin-bottom: 2px;
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .times {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(72px, 1fr));
        gap: var(--space-2);
        padding: 10px 0;
        border-block: 1px solid var(--line);
      }
      .times dt {
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
      .times dd {
        font-size: var(--type-title);
        font-weight: var(--weight-word);
      }
      .list li {
        display: flex;
        align-items: baseline;
        gap: var(--space-3);
        padding: 5px 0;
        font-size: var(--type-text);
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
        font-size: var(--type-text);
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
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const { card } = this;
    if (card === null) return nothing;
    return html`
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
      ${this.takes(card)} ${this.pot(card)} ${this.times(card)} ${this.ahead(card)} ${this.readings(card)} ${this.allergens(card)}
      ${this.soFar(card)}
    `;
  }

  private readings({ row }: CardModel): TemplateResult | typeof nothing {
    const readings = [...(this.floor?.workpieces[row.workpieceId]?.readings ?? [])].reverse();
    if (readings.length === 0) return nothing;
    return html`
      <section class="block">
        <h2>${NUMBERS.readings}</h2>
        <ol class="list">
          ${readings.map(
            ({ atMs, where, celsius }) =>
              html`<li>
                <span>${clockText(atMs, this.zone)}</span><span>${READ_WHERE[where]}</span><span>${readingText(celsius, this.unit)}</span>
              </li>`,
          )}
        </ol>
      </section>
    `;
  }

  private allergens({ row }: CardModel): TemplateResult | typeof nothing {
    const { floor } = this;
    const workpiece = floor?.workpieces[row.workpieceId];
    const all = floor === null || workpiece === undefined ? null : workpieceAllergens(floor, workpiece);
    if (floor === null || all === null) return nothing;
    return html`
      <section class="block">
        <h2>${ALLERGEN_LIST.title}</h2>
        <allergen-brief .facts=${all.facts} .products=${all.products} .mayContain=${floor.kitchen?.document.mayContain}></allergen-brief>
      </section>
    `;
  }

  private takes({ takes }: CardModel): TemplateResult | typeof nothing {
    if (takes.length === 0) return nothing;
    const units = unitsOf(this.floor);
    return html`
      <section class="block">
        <h2>${PANELS.takes}</h2>
        <ul>
          ${takes.map((take) => {
            const [source] = take.sources;
            const ripeMs = source?.ripeFromMs ?? null;
            const ripe = ripeMs === null ? null : ripeSinceWords(clockText(ripeMs, this.zone), ripeMs <= this.nowMs);
            return html`<li class="line">${takeWords(weightText(take.grams, units), take.name, source?.tag ?? null, ripe)}</li>`;
          })}
        </ul>
      </section>
    `;
  }

  private pot({ row, feeds }: CardModel): TemplateResult | typeof nothing {
    const { stock } = row;
    if (stock === null) return nothing;
    const units = unitsOf(this.floor);
    const parts = [
      weightText(stock.grams, units),
      PANELS.seedKept(weightText(stock.seedG, units)),
      ...feeds.slice(0, 1).map((feed) => PANELS.feedPlanned(clockText(feed.feedMs, this.zone), weightText(feed.grams, units))),
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
    'dough-facts': DoughFacts;
  }
}

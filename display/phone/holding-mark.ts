import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { holdingOf, markAt, type Holding } from '../../shared/floor/holding.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { clockText } from '../parts/clock-text.ts';
import { HOLDING, LIMIT_WHY, RULE_SET_NAMES } from '../words/holding.ts';
import { KEEPING_KINDS } from '../words/keeping.ts';
import { MINUTES_UNIT } from '../words/phone.ts';
import './cooling-chart.ts';
import { stepTexts } from './cooling-picture.ts';
import { baseStyles } from './phone-styles.ts';

/** The mark of food that has to be kept: rule set and clause, how long it has been out, when it is discarded, how it cools. */
@customElement('holding-mark')
export class HoldingMark extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
        padding-inline-start: var(--space-3);
        border-inline-start: var(--rule) double var(--ink);
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      h2 {
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .limit {
        font-weight: var(--weight-strong);
      }
      .small {
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const workpiece = this.floor?.workpieces[this.workpieceId];
    const holding = this.floor === null || workpiece === undefined ? null : holdingOf(this.floor, workpiece);
    if (holding === null || workpiece === undefined) return nothing;
    const { outMin, control, backByMs, clause } = markAt(holding, this.nowMs);
    return html`
      <h2>${HOLDING.title} · ${KEEPING_KINDS[holding.kind]}</h2>
      ${this.limitLine(holding)}
      <p>${HOLDING.out(`${Math.floor(outMin)} ${MINUTES_UNIT}`)} · ${HOLDING.isIn[control]}</p>
      ${backByMs === null || backByMs < this.nowMs ? nothing : html`<p>${HOLDING.backBy(clockText(backByMs, this.zone))}</p>`}
      ${this.decision(workpiece)} ${this.cooling(holding)}
      <p class="small">${RULE_SET_NAMES[holding.rules.name]}, ${holding.limit?.clause ?? clause}</p>
      <p class="small">${HOLDING.advice}</p>
    `;
  }

  private limitLine({ limit }: Holding): TemplateResult {
    if (limit === null) return html`<p>${HOLDING.noLimit}</p>`;
    const clock = clockText(limit.limitMs, this.zone);
    return html`<p class="limit">${limit.limitMs <= this.nowMs ? HOLDING.past(clock) : HOLDING.limit(clock)} (${LIMIT_WHY[limit.why]})</p>`;
  }

  private decision({ holdingDecisions }: Workpiece): TemplateResult | typeof nothing {
    const last = holdingDecisions.at(-1);
    return last === undefined ? nothing : html`<p>${HOLDING.decided(clockText(last.untilMs, this.zone), last.reason)}</p>`;
  }

  private cooling({ cooling }: Holding): TemplateResult | typeof nothing {
    if (cooling === null) return nothing;
    return html`
      <ul>
        ${stepTexts(cooling, this.zone, this.unit).map((text) => html`<li>${text}</li>`)}
      </ul>
      <cooling-chart .cooling=${cooling} .nowMs=${this.nowMs} .zone=${this.zone} .unit=${this.unit}></cooling-chart>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'holding-mark': HoldingMark;
  }
}

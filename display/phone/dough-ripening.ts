import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { dueOf } from '../../shared/floor/due.ts';
import { ripenessFactor } from '../../shared/floor/ripeness-taught.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { WARMTH } from '../words/warmth.ts';
import type { CardModel } from './card-model.ts';
import { baseStyles } from './phone-styles.ts';
import { ripenessCurve } from './ripeness-curve.ts';
import './ripeness-picture.ts';
import { ripenessTexts, taughtText } from './ripeness-texts.ts';

const MINUTE_MS = 60_000;

/** How the rest of a card's dough follows its warmth: in words, and as a picture. */
@customElement('dough-ripening')
export class DoughRipening extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      h2 {
        margin-bottom: 2px;
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .ripe {
        font-weight: var(--weight-word);
      }
      .taught {
        font-size: var(--type-small);
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
    const { card, floor } = this;
    const workpiece = card === null ? undefined : floor?.workpieces[card.row.workpieceId];
    const ripening = card?.row.ripening ?? null;
    const due = floor === null || workpiece === undefined ? null : dueOf(floor, workpiece);
    if (card === null || floor === null || workpiece === undefined || ripening === null || due === null) return nothing;
    // The picture moves by the minute: finer steps of it cannot be seen.
    const minuteMs = Math.floor(this.nowMs / MINUTE_MS) * MINUTE_MS;
    const { warmth, ripe, between, planned } = ripenessTexts(ripening, card.row.dueMs, this.nowMs, this.zone, this.unit);
    const taught = taughtText(ripenessFactor(floor, workpiece.formulaId, due.step.id));
    const whole = [ripe, ...(between === null ? [] : [between])].join('; ');
    return html`
      <h2>${WARMTH.title}</h2>
      <p>${warmth}</p>
      <p class="ripe">${whole}</p>
      ${planned === null ? nothing : html`<p>${planned}</p>`}
      <ripeness-picture
        .curve=${ripenessCurve(floor, workpiece, minuteMs)}
        .label=${`${warmth}, ${ripe}`}
        .nowMs=${minuteMs}
        .zone=${this.zone}
        .unit=${this.unit}
      ></ripeness-picture>
      ${taught === null ? nothing : html`<p class="taught">${taught}</p>`}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'dough-ripening': DoughRipening;
  }
}

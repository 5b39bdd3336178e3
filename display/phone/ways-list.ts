import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import { otherButton, usualButtons } from './card-buttons.ts';
import type { CardModel } from './card-model.ts';
import type { ObstacleModel } from './obstacle-model.ts';
import { FloorCommandEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** The ways out of what is in the way, in place of the card's buttons: each says what it does to the dough. */
@customElement('ways-list')
export class WaysList extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: var(--space-4);
        padding: var(--space-3) var(--space-4);
      }
      button {
        overflow-wrap: anywhere;
      }
      button small {
        font-size: var(--type-small);
      }
    `,
  ];

  @property({ attribute: false }) card: CardModel | null = null;
  @property({ attribute: false }) obstacle: ObstacleModel | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { card, obstacle } = this;
    if (card === null || obstacle === null) return nothing;
    return html`
      <h2 class="unseen">${PANELS.inTheWay}</h2>
      ${obstacle.ways.map(
        (way) =>
          html`<button type="button" class="middling filled" @act=${() => this.dispatchEvent(new FloorCommandEvent(way.command))}>
            ${way.act}${way.effect === '' ? nothing : html`<small>${way.effect}</small>`}
          </button>`,
      )}
      ${this.doneButton(card)} ${usualButtons(this, card)} ${otherButton(this)}
    `;
  }

  /** It can be done all the same: whoever stands there may know better than the floor, which then says why not. */
  private doneButton(card: CardModel): TemplateResult {
    const done = { type: 'finishStep' as const, workpieceId: card.row.workpieceId, stepId: card.action.id };
    return html`<button type="button" class="middling" @act=${() => this.dispatchEvent(new FloorCommandEvent(done))}>
      ${card.tag} ${VERBS[card.action.verb].done}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ways-list': WaysList;
  }
}

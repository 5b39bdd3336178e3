import { html, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { HOLDING } from '../words/holding.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';

/** For how long food may be used beyond its limit, with one touch. */
const DECIDED_MINUTES = [15, 30, 60] as const;

/** The decision of the person responsible about food that is past its limit: why, and for how long. */
@customElement('decide-holding-panel')
export class DecideHoldingPanel extends CardPanel {
  @state() private reason: string | null = null;

  protected override panel(card: CardModel, _floor: FloorState, workpiece: Workpiece): TemplateResult {
    const { reason } = this;
    return html`
      <h2>${HOLDING.decideTitle(card.tag)}</h2>
      <p class="note">${HOLDING.decideNote}</p>
      <div class="two">${HOLDING.decideReasons.map((text) => this.chip(text, () => (this.reason = text), text === reason))}</div>
      <h2>${HOLDING.decideMinutes}</h2>
      <div class="two">
        ${DECIDED_MINUTES.map((minutes) =>
          this.doing(`${HOLDING.decideDo(card.tag)}: ${minutes}`, reason !== null, () => {
            if (reason !== null) this.say({ type: 'decideHolding', workpieceId: workpiece.id, reason, minutes });
          }),
        )}
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'decide-holding-panel': DecideHoldingPanel;
  }
}

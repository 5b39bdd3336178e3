import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import './number-stepper.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { isUnderWay, quarterCounts } from './work-model.ts';

/** How many pieces are done, and whether they go on ahead of the rest. */
@customElement('how-far-panel')
export class HowFarPanel extends CardPanel {
  @state() private count: number | null = null;

  protected override panel(card: CardModel, _floor: FloorState, workpiece: Workpiece): TemplateResult {
    const pieces = workpiece.pieces ?? 0;
    const isWork = isUnderWay(card.row);
    const count = this.count ?? card.row.piecesDone ?? Math.ceil(pieces / 2);
    return html`
      <h2>${PANELS.howFarTitle(card.tag, VERBS[card.action.verb].running)}</h2>
      <div class="row">
        ${quarterCounts(pieces).map((quarter) => this.chip(String(quarter), () => (this.count = quarter), quarter === count))}
      </div>
      <number-stepper
        label=${PANELS.pieces}
        .value=${count}
        .most=${pieces}
        @value-chosen=${(event: ValueChosenEvent) => (this.count = event.value)}
      ></number-stepper>
      <div class="row">
        ${isWork ? this.doing(PANELS.sayDone(count, pieces), true, () => this.say({ type: 'reportProgress', ...this.onStep(card), piecesDone: count })) : nothing}
        <button
          type="button"
          class="middling"
          ?disabled=${count < 1 || count >= pieces}
          @act=${() => this.say({ type: 'finishStep', ...this.onStep(card), loadPieces: count })}
        >
          ${PANELS.goOn(count)}<small>${PANELS.goOnMore}</small>
        </button>
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'how-far-panel': HowFarPanel;
  }
}

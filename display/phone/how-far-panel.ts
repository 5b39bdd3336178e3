import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { NUMBERS } from '../words/numbers.ts';
import { PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { isUnderWay, quarterCounts } from './work-model.ts';

/** How many pieces are done, and whether some go on ahead of the rest: a touch each for the usual counts. */
@customElement('how-far-panel')
export class HowFarPanel extends CardPanel {
  @state() private done: number | null = null;
  @state() private ahead: number | null = null;

  protected override panel(card: CardModel, _floor: FloorState, workpiece: Workpiece): TemplateResult {
    const pieces = workpiece.pieces ?? 0;
    return html`
      <h2>${PANELS.howFarTitle(card.tag, VERBS[card.action.verb].running)}</h2>
      ${isUnderWay(card.row) ? this.doneSoFar(card, pieces) : nothing} ${this.goingOn(card, pieces)}
    `;
  }

  private doneSoFar(card: CardModel, pieces: number): TemplateResult {
    const { done } = this;
    const say = (piecesDone: number): void => this.say({ type: 'reportProgress', ...this.onStep(card), piecesDone });
    return html`
      <number-choice
        label=${PANELS.pieces}
        .values=${quarterCounts(pieces).slice(0, 3)}
        .value=${done ?? card.row.piecesDone ?? Math.ceil(pieces / 2)}
        .most=${pieces}
        @value-said=${(event: ValueSaidEvent) => say(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.done = event.value)}
      ></number-choice>
      ${done === null ? nothing : this.doing(PANELS.sayDone(done, pieces), true, () => say(done))}
    `;
  }

  private goingOn(card: CardModel, pieces: number): TemplateResult {
    const { ahead } = this;
    const say = (loadPieces: number): void => this.say({ type: 'finishStep', ...this.onStep(card), loadPieces });
    const counts = quarterCounts(pieces).filter((count) => count < pieces);
    return html`
      <number-choice
        label=${NUMBERS.goAhead}
        .values=${counts}
        .value=${ahead ?? Math.min(card.row.piecesDone ?? Math.ceil(pieces / 2), pieces - 1)}
        .least=${1}
        .most=${pieces - 1}
        @value-said=${(event: ValueSaidEvent) => say(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.ahead = event.value)}
      ></number-choice>
      ${ahead === null ? nothing : this.doing(PANELS.goOn(ahead), true, () => say(ahead))}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'how-far-panel': HowFarPanel;
  }
}

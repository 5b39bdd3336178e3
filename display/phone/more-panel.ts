import { html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { NUMBERS } from '../words/numbers.ts';
import { PANELS } from '../words/panels.ts';
import { canTakeIn } from './add-model.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { joinChoices, loadParts, putBackChoices } from './more-model.ts';
import { PanelWantedEvent, type Panel } from './phone-events.ts';
import { sourcesOf } from './takes-model.ts';
import { countsPieces, handOverTo } from './work-model.ts';

/** Everything that is said once in a day: where it really is, what was wrong, where it went. Only what applies is there. */
@customElement('more-panel')
export class MorePanel extends CardPanel {
  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const { row } = card;
    const isDough = workpiece.kind !== 'ferment' && workpiece.kind !== 'prep';
    const entries: readonly (readonly [boolean, Panel, string])[] = [
      [true, 'where', PANELS.where],
      [true, 'putRight', PANELS.putRight],
      [countsPieces(row), 'howFar', PANELS.howFar],
      [handOverTo(row, floor.kitchen?.document.stations ?? []).length > 0, 'handOver', PANELS.handOver],
      [true, 'move', PANELS.move],
      [loadParts(workpiece).length > 0, 'loads', PANELS.loads],
      [joinChoices(floor, workpiece).length > 0, 'join', PANELS.join],
      [isDough && sourcesOf(floor, workpiece).length > 0, 'extra', PANELS.extra],
      [putBackChoices(floor, workpiece).length > 0, 'putBack', PANELS.putBack],
      [workpiece.stock !== null, 'planFeed', PANELS.planFeed],
      [true, 'minutes', NUMBERS.minutes],
      [true, 'temperature', NUMBERS.temperature],
      [canTakeIn(workpiece), 'add', NUMBERS.add],
      [true, 'loss', PANELS.loss],
      [row.holding?.isNear === true && row.holding.limitMs !== null, 'decideHolding', PANELS.decideHolding],
      [true, 'discard', PANELS.discard],
    ];
    return html`
      <h2>${PANELS.moreTitle(card.tag)}</h2>
      <div class="two">
        ${entries.filter(([applies]) => applies).map(([, panel, label]) => this.chip(label, () => this.dispatchEvent(new PanelWantedEvent(panel))))}
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'more-panel': MorePanel;
  }
}

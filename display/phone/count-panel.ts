import { html, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { countables, countedCuts, neededG } from './count-model.ts';
import './number-stepper.ts';
import type { ValueChosenEvent } from './number-stepper.ts';

/** What a divide really became, product by product. */
@customElement('count-panel')
export class CountPanel extends CardPanel {
  @state() private counts: ReadonlyMap<string, number> = new Map();

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const items = countables(floor, workpiece, card.action);
    const needG = neededG(items, this.counts);
    const cuts = countedCuts(items, this.counts);
    return html`
      <h2>${PANELS.countTitle(card.tag)}</h2>
      ${items.map(
        (item) =>
          html`<number-stepper
            label=${item.name}
            .value=${this.counts.get(item.productId) ?? item.planned}
            @value-chosen=${(event: ValueChosenEvent) => (this.counts = new Map([...this.counts, [item.productId, event.value]]))}
          ></number-stepper>`,
      )}
      <p class="note" role="status">${PANELS.countWeight(needG, workpiece.grams)}</p>
      ${this.doing(PANELS.countDone(card.tag, VERBS[card.action.verb].done), cuts.length > 0 && needG <= workpiece.grams, () =>
        this.say({ type: 'finishStep', ...this.onStep(card), cuts }),
      )}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'count-panel': CountPanel;
  }
}

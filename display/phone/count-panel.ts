import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { piecesSchema } from '../../shared/documents/names.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import { valuesAround } from './around-model.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { countables, countedCuts, neededG, type Countable } from './count-model.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import type { ValueChosenEvent } from './number-stepper.ts';

const COUNT = { least: 0, most: piecesSchema.maxValue ?? 0 } as const;
/** Chips below and above what is planned, where one product is counted: with *Another…* two full rows. */
const ALONE = { below: 5, above: 2 } as const;
/** The same with several products: one full row each. */
const AMONG = { below: 1, above: 1 } as const;

/** What a divide really became. Of one product one touch says it; of several each is chosen, and the last button says it. */
@customElement('count-panel')
export class CountPanel extends CardPanel {
  @state() private counts: ReadonlyMap<string, number> = new Map();

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const items = countables(floor, workpiece, card.action);
    const isAlone = items.length === 1;
    const needG = neededG(items, this.counts);
    const canBe = countedCuts(items, this.counts).length > 0 && needG <= workpiece.grams;
    const isSaidHere = !isAlone || this.counts.size > 0;
    return html`
      <h2>${PANELS.countTitle(card.tag)}</h2>
      ${items.map((item) => this.countOf(card, items, item))}
      <p class="note" role="status">${PANELS.countWeight(this.weightText(needG), this.weightText(workpiece.grams))}</p>
      ${isSaidHere ? this.doing(PANELS.countDone(card.tag, VERBS[card.action.verb].done), canBe, () => this.finish(card, items, this.counts)) : nothing}
    `;
  }

  private countOf(card: CardModel, items: readonly Countable[], item: Countable): TemplateResult {
    const isAlone = items.length === 1;
    const { below, above } = isAlone ? ALONE : AMONG;
    const counted = (pieces: number): ReadonlyMap<string, number> => new Map([...this.counts, [item.productId, pieces]]);
    const said = (pieces: number): void => {
      if (isAlone && neededG(items, counted(pieces)) <= (this.floor?.workpieces[card.row.workpieceId]?.grams ?? 0))
        this.finish(card, items, counted(pieces));
      else this.counts = counted(pieces);
    };
    return html`<number-choice
      ?keeps=${!isAlone}
      label=${item.name}
      .values=${valuesAround(item.planned, 1, below, above, isAlone ? { ...COUNT, least: 1 } : COUNT)}
      .expected=${item.planned}
      .value=${this.counts.get(item.productId) ?? item.planned}
      .most=${COUNT.most}
      @value-said=${(event: ValueSaidEvent) => said(event.value)}
      @value-chosen=${(event: ValueChosenEvent) => (this.counts = counted(event.value))}
    ></number-choice>`;
  }

  private finish(card: CardModel, items: readonly Countable[], counts: ReadonlyMap<string, number>): void {
    this.say({ type: 'finishStep', ...this.onStep(card), cuts: countedCuts(items, counts) });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'count-panel': CountPanel;
  }
}

import { html, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { PANELS } from '../words/panels.ts';
import { piecesCountWords } from '../words/phone.ts';
import { deckChoices, type CardModel } from './card-model.ts';
import './slot-picker.ts';
import type { SlotsChosenEvent } from './slot-picker.ts';
import { CardPanel } from './card-panel.ts';
import { joinChoices, loadParts } from './more-model.ts';
import { equalLoads, handOverTo } from './work-model.ts';

/** Which station goes on with it. */
@customElement('hand-over-panel')
export class HandOverPanel extends CardPanel {
  protected override panel(card: CardModel, floor: FloorState): TemplateResult {
    const stations = handOverTo(card.row, floor.kitchen?.document.stations ?? []);
    return html`
      <h2>${PANELS.handOverTitle(card.tag)}</h2>
      <div class="two">
        ${stations.map((station) => this.chip(station.name, () => this.say({ type: 'handOver', ...this.onStep(card), toStationId: station.id })))}
      </div>
    `;
  }
}

/** Where it stands now. */
@customElement('move-panel')
export class MovePanel extends CardPanel {
  /** Slots chosen for what is in the oven; null until somebody has chosen. */
  @state() private slotIds: readonly string[] | null = null;

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    if (workpiece.slotIds.length > 0) return this.inOven(card, floor, workpiece);
    const places = (floor.kitchen?.document.restPlaces ?? []).filter((place) => place.id !== workpiece.placeId);
    return html`
      <h2>${PANELS.moveTitle(card.tag)}</h2>
      <div class="two">
        ${places.map(
          (place) =>
            html`<button
              type="button"
              class="middling"
              @act=${() => this.say({ type: 'moveWorkpiece', workpieceId: workpiece.id, placeId: place.id })}
            >
              ${place.name}<small>${temperatureText(place.temperatureC, this.unit)}</small>
            </button>`,
        )}
      </div>
    `;
  }

  /** To the side, onto another deck, or spread over two. */
  private inOven(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const chosen = this.slotIds ?? workpiece.slotIds;
    const isOther = chosen.length > 0 && chosen.join() !== workpiece.slotIds.join();
    return html`
      <h2>${PANELS.moveTitle(card.tag)}</h2>
      <slot-picker
        .decks=${deckChoices(floor, workpiece, this.nowMs)}
        .needed=${workpiece.slotIds.length}
        .chosen=${chosen}
        .unit=${this.unit}
        @slots-chosen=${(event: SlotsChosenEvent) => {
          event.stopPropagation();
          this.slotIds = event.slotIds;
        }}
      ></slot-picker>
      ${this.doing(PANELS.move, isOther, () => this.say({ type: 'moveLoad', workpieceId: workpiece.id, slotIds: [...chosen] }))}
    `;
  }
}

/** In how many loads it goes on. */
@customElement('loads-panel')
export class LoadsPanel extends CardPanel {
  protected override panel(card: CardModel, _floor: FloorState, workpiece: Workpiece): TemplateResult {
    return html`
      <h2>${PANELS.loadsTitle(card.tag)}</h2>
      <div class="row">
        ${loadParts(workpiece).map((loads) => {
          const pieces = [...equalLoads(workpiece.pieces ?? 0, loads)];
          return this.chip(pieces.join(' + '), () => this.say({ type: 'makeLoads', workpieceId: workpiece.id, pieces }));
        })}
      </div>
      <p class="note">${piecesCountWords(workpiece.pieces ?? 0)}</p>
    `;
  }
}

/** With which other mixes it goes on in one tub. */
@customElement('join-panel')
export class JoinPanel extends CardPanel {
  @state() private chosenIds: readonly string[] = [];

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const choices = joinChoices(floor, workpiece);
    const chosen = choices.filter((choice) => this.chosenIds.includes(choice.workpieceId));
    return html`
      <h2>${PANELS.joinTitle(card.tag)}</h2>
      <div class="two">
        ${choices.map((choice) => this.chip(choice.tag, () => this.toggle(choice.workpieceId), this.chosenIds.includes(choice.workpieceId)))}
      </div>
      ${this.doing(PANELS.joinDo([card.tag, ...chosen.map((choice) => choice.tag)].join(' + ')), chosen.length > 0, () =>
        this.say({ type: 'joinWorkpieces', workpieceIds: [workpiece.id, ...chosen.map((choice) => choice.workpieceId)] }),
      )}
    `;
  }

  private toggle(id: string): void {
    this.chosenIds = this.chosenIds.includes(id) ? this.chosenIds.filter((other) => other !== id) : [...this.chosenIds, id];
  }
}

/** The second step of giving a dough up: why. What is discarded is off the floor. */
@customElement('discard-panel')
export class DiscardPanel extends CardPanel {
  @state() private reason: string | null = null;

  protected override panel(card: CardModel, _floor: FloorState, workpiece: Workpiece): TemplateResult {
    const { reason } = this;
    return html`
      <h2>${PANELS.discardTitle(card.tag)}</h2>
      <div class="two">${PANELS.discardReasons.map((text) => this.chip(text, () => (this.reason = text), text === reason))}</div>
      <p class="note">${PANELS.discardMore}</p>
      ${this.doing(PANELS.discardDo(card.tag), reason !== null, () => {
        if (reason !== null) this.say({ type: 'discardWorkpiece', workpieceId: workpiece.id, reason });
      })}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'hand-over-panel': HandOverPanel;
    'move-panel': MovePanel;
    'loads-panel': LoadsPanel;
    'join-panel': JoinPanel;
    'discard-panel': DiscardPanel;
  }
}

import { html, type TemplateResult } from 'lit';
import type { FloorState } from '../../shared/floor/state.ts';
import './card-actions.ts';
import './ways-list.ts';
import type { CardModel } from './card-model.ts';
import { zoneOf } from './floor-facts.ts';
import type { ObstacleModel } from './obstacle-model.ts';
import type { Panel } from './phone-events.ts';

/** What a panel is to know of the page around it. */
export interface PanelSurroundings {
  /** What is in the way of the card's step: then the ways out stand in place of its buttons. */
  readonly obstacle?: ObstacleModel | null;
  /** The page has a drawing of where everything stands. */
  readonly hasPlaces?: boolean;
}

/** What stands below a card: its buttons, or the panel that was asked for, which `later-parts.ts` brings along. */
export function panelOf(
  panel: Panel,
  floor: FloorState,
  card: CardModel,
  slotIds: readonly string[],
  nowMs: number,
  { obstacle = null, hasPlaces = false }: PanelSurroundings = {},
): TemplateResult {
  const zone = zoneOf(floor);
  const unit = floor.house?.document.units.temperature ?? 'C';
  switch (panel) {
    case 'actions':
      if (obstacle !== null) return html`<ways-list .card=${card} .obstacle=${obstacle}></ways-list>`;
      return html`<card-actions .card=${card} .chosenSlotIds=${slotIds}></card-actions>`;
    case 'other':
      return html`<other-panel .card=${card} ?hasPlaces=${hasPlaces}></other-panel>`;
    case 'skip':
      return html`<skip-panel .card=${card}></skip-panel>`;
    case 'more':
      return html`<more-panel .card=${card} .floor=${floor}></more-panel>`;
    case 'where':
      return html`<where-panel .card=${card} .floor=${floor}></where-panel>`;
    case 'howFar':
      return html`<how-far-panel .card=${card} .floor=${floor}></how-far-panel>`;
    case 'handOver':
      return html`<hand-over-panel .card=${card} .floor=${floor}></hand-over-panel>`;
    case 'putRight':
      return html`<put-right-panel .card=${card} .floor=${floor} .zone=${zone}></put-right-panel>`;
    case 'count':
      return html`<count-panel .card=${card} .floor=${floor}></count-panel>`;
    case 'inputs':
      return html`<inputs-panel .card=${card} .floor=${floor}></inputs-panel>`;
    case 'extra':
      return html`<extra-panel .card=${card} .floor=${floor} .nowMs=${nowMs}></extra-panel>`;
    case 'feed':
      return html`<feed-panel .card=${card} .floor=${floor}></feed-panel>`;
    case 'planFeed':
      return html`<plan-feed-panel .card=${card} .floor=${floor} .nowMs=${nowMs} .zone=${zone}></plan-feed-panel>`;
    case 'move':
      return html`<move-panel .card=${card} .floor=${floor} .nowMs=${nowMs} .unit=${unit}></move-panel>`;
    case 'loads':
      return html`<loads-panel .card=${card} .floor=${floor}></loads-panel>`;
    case 'join':
      return html`<join-panel .card=${card} .floor=${floor}></join-panel>`;
    case 'putBack':
      return html`<put-back-panel .card=${card} .floor=${floor}></put-back-panel>`;
    case 'loss':
      return html`<loss-panel .card=${card} .floor=${floor}></loss-panel>`;
    case 'temperature':
      return html`<temperature-panel .card=${card} .floor=${floor} .nowMs=${nowMs} .unit=${unit} .zone=${zone}></temperature-panel>`;
    case 'minutes':
      return html`<minutes-panel .card=${card} .floor=${floor}></minutes-panel>`;
    case 'add':
      return html`<add-panel .card=${card} .floor=${floor}></add-panel>`;
    case 'decideHolding':
      return html`<decide-holding-panel .card=${card} .floor=${floor}></decide-holding-panel>`;
    case 'discard':
      return html`<discard-panel .card=${card} .floor=${floor}></discard-panel>`;
  }
}

import type { FloorState } from '../../shared/floor/state.ts';
import { obstacleOf } from '../../shared/floor/ways-out.ts';
import type { FloorView } from '../link/floor-link.ts';
import { firstFreeSlots, type CardModel } from './card-model.ts';
import { factsOf } from './floor-facts.ts';
import { obstacleModel, type ObstacleModel } from './obstacle-model.ts';

const MINUTE_MS = 60_000;

/** What decides whether a card is still about the same: the dough, its step, and how it stands with it. */
export function cardKey(card: CardModel): string {
  return `${card.row.workpieceId} ${card.action.id} ${card.row.phase}`;
}

/** What a page remembers of the card that it shows: the slots chosen for a load, and what is in the way of its step. */
export class OpenedCard {
  private chosen: { readonly key: string; readonly slotIds: readonly string[] } | null = null;
  private blocked: { readonly floor: FloorState; readonly key: string; readonly model: ObstacleModel | null } | null = null;

  /** The slots that a load is to go into, as somebody chose them. */
  choose(card: CardModel, slotIds: readonly string[]): void {
    this.chosen = { key: cardKey(card), slotIds };
  }

  /** The slots for a load: those chosen, as far as they are still free, otherwise the first free ones. Empty for other steps. */
  slotIds(floor: FloorState, card: CardModel, nowMs: number): readonly string[] {
    if (card.load === null) return [];
    if (this.chosen?.key !== cardKey(card)) return firstFreeSlots(floor, card.row.workpieceId, card.action, nowMs);
    const free = card.load.decks.flatMap((deck) => deck.slots.filter((slot) => slot.takenByTag === null).map((slot) => slot.slotId));
    return this.chosen.slotIds.filter((slotId) => free.includes(slotId));
  }

  /** What is in the way, worked out anew when the floor has changed or a minute has gone by; null where nothing is. */
  obstacle(view: FloorView, floor: FloorState, card: CardModel, nowMs: number): ObstacleModel | null {
    const key = `${cardKey(card)} ${Math.floor(nowMs / MINUTE_MS)}`;
    if (this.blocked?.floor !== floor || this.blocked.key !== key) {
      const found = obstacleOf(floor, card.row.workpieceId, nowMs);
      const facts = factsOf(floor, view.devices, view.device?.id ?? null);
      const model = found === null ? null : obstacleModel(floor, card.row, found, facts, floor.house?.document.units.temperature ?? 'C');
      this.blocked = { floor, key, model };
    }
    return this.blocked.model;
  }
}

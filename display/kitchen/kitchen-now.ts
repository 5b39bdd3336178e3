import { slotsByHeat, type MappedSlot } from '../../shared/floor/slot-heats.ts';
import type { Allergen } from '../../shared/documents/allergen.ts';
import type { EventOf } from '../../shared/floor/events.ts';
import { blockOn, holdings, type Resource } from '../../shared/floor/resources.ts';
import { heldVessels } from '../../shared/floor/vessels.ts';
import { slotHolders } from '../../shared/floor/slots.ts';
import type { FloorState } from '../../shared/floor/state.ts';

/** What of a vessel is where: held by doughs, on its way back to the shelf until an instant, free. */
export interface VesselCounts {
  readonly held: number;
  readonly returning: number;
  /** When the last of those on their way back is there; null where none is. */
  readonly backMs: number | null;
}

/** The kitchen as it stands on the floor: what is in what, what is blocked. */
export interface KitchenNow {
  /** Tags of the doughs that have, stand in, or are worked on at a thing. */
  tagsAt(resource: Resource): readonly string[];
  blockOn(resource: Resource): EventOf<'resourceBlocked'> | null;
  vessels(vesselId: string): VesselCounts;
  /** As set on the floor; null where it is as the kitchen says. */
  deckSetC(deckId: string): number | null;
  /** The slots of an oven, the hottest first. */
  byHeat(ovenId: string): readonly MappedSlot[];
  /** Allergens that have been in a mixer since it was cleaned. */
  allergensIn(mixerId: string): readonly Allergen[];
}

/** Reads the floor at an instant. */
export function kitchenNow(state: FloorState, nowMs: number): KitchenNow {
  const tags = new Map<string, string[]>();
  for (const { tag, resource } of holdings(state)) {
    const key = `${resource.kind} ${resource.id}`;
    tags.set(key, [...(tags.get(key) ?? []), tag]);
  }
  const slots = slotHolders(state);
  const inOrder = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });
  return {
    tagsAt: ({ kind, id }) => {
      // Also what was discarded in the oven is still in it until it is taken out.
      const tag = kind === 'slot' ? slots.get(id)?.tag : undefined;
      return tag === undefined ? [...(tags.get(`${kind} ${id}`) ?? [])].sort(inOrder) : [tag];
    },
    blockOn: (resource) => blockOn(state, resource, nowMs),
    vessels: (vesselId) => {
      const back = state.vesselReturns.filter((returned) => returned.vesselId === vesselId && returned.freeMs > nowMs);
      return {
        held: heldVessels(state, vesselId),
        returning: back.reduce((sum, returned) => sum + returned.count, 0),
        backMs: back.length === 0 ? null : Math.max(...back.map((returned) => returned.freeMs)),
      };
    },
    deckSetC: (deckId) => state.deckC[deckId] ?? null,
    byHeat: (ovenId) => slotsByHeat(state, ovenId, nowMs),
    allergensIn: (mixerId) => state.residues[mixerId]?.allergens ?? [],
  };
}

/** When something of what is shown changes by time alone: a block ends, a vessel is back. Infinity where nothing does. */
export function nextChangeOfKitchenMs(state: FloorState, nowMs: number): number {
  const instants = [...state.blocked.flatMap((block) => block.untilMs ?? []), ...state.vesselReturns.map((returned) => returned.freeMs)];
  return Math.min(...instants.filter((instantMs) => instantMs > nowMs));
}
